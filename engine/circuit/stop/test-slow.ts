/** The machine at the slow speeds at which stops are tried first: a tenth of the highest, rounded down. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Model, MotionUnit } from './model.ts';

const SHARE = 0.1;
/** SI in a unit of what people read: m/min of an axis, r/min of a spindle. */
const UNIT = { axis: 1 / 60, spindle: (2 * Math.PI) / 60 } as const;

/** m/s of an axis, rad/s of a spindle; undefined while its highest speed is not known. */
export function slowSpeed({ kind, numbers: { read } }: MotionUnit): number | undefined {
  const wanted = ((read.speed ?? 0) * SHARE) / UNIT[kind];
  if (!(wanted > 0)) return undefined;
  const step = 10 ** Math.floor(Math.log10(wanted) + 1e-9);
  return Math.floor(wanted / step + 1e-9) * step * UNIT[kind];
}

/** The same model with everything at its slow speed; what brakes it brakes as it does at the highest. */
export const slowModel = (model: Model): Model => ({
  ...model,
  motions: model.motions.map((unit) => {
    const { read, rows } = unit.numbers;
    const speed = slowSpeed(unit);
    if (speed === undefined) return unit;
    // The time a spindle's drive takes to brake it is from the highest speed.
    const shorter =
      unit.kind === 'spindle' && read.deceleration !== undefined
        ? { deceleration: (read.deceleration * speed) / read.speed! }
        : {};
    return { ...unit, numbers: { rows, read: { ...read, speed, ...shorter } } };
  }),
});

/** 'Z at 1 m/min', 'Z slowly' where nothing is known of its speed. */
export function sayAt({ id, kind }: MotionUnit, speed: number | undefined): string {
  if (speed === undefined) return `${id} slowly`;
  return `${id} at ${formatQuantity(speed, kind === 'axis' ? 'm/min' : 'r/min', { digits: 3 })}`;
}
