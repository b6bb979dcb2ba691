/** How each motion stops after each act: by which category, after how long, how far on. */
import type { Act } from './acts.ts';
import type { Baseline, RunOn } from './baseline.ts';
import type { Model, MotionUnit } from './model.ts';
import type { StopOrder } from './order.ts';
import { drop, type RunDown, runDown, type Stretch } from './run-down.ts';
import type { Read } from './settings.ts';

/**
 * IEC 60204-1:2016, 9.2.2 (wording from memory): 0 takes the power away at once, 1 brakes first and then takes it away,
 * 2 brakes and leaves it on. 'none' does not stop.
 */
export type StopCategory = '0' | '1' | '2' | 'none';

export const SAY_CATEGORY: Readonly<Record<StopCategory, string>> = {
  '0': 'stop category 0: the power goes at once, it coasts',
  '1': 'stop category 1: it brakes, then the power goes',
  '2': 'stop category 2: it is only told to stop, the power stays',
  none: 'does not stop',
};

export interface Stopping {
  readonly motion: string;
  readonly kind: 'axis' | 'spindle';
  readonly category: StopCategory;
  /** Seconds until it stands, from the act; undefined where too little is known. */
  readonly time: number | undefined;
  /** Metres for an axis, radians for a spindle. */
  readonly distance: number | undefined;
  /** Seconds after the act; Infinity for never. */
  readonly torqueOff: number;
  readonly brakeOn: number;
  /** Metres it falls between the drive's letting go and the brake's closing; undefined where not known or not asked. */
  readonly drop: number | undefined;
  /** What is not known and would be needed. */
  readonly needs: readonly string[];
  readonly run: RunDown | undefined;
}

/** Radians of the shaft in a unit of what is counted: metres of an axis, radians of a spindle. */
const perRadian = ({ kind, numbers: { read } }: MotionUnit): number | undefined =>
  kind === 'spindle' ? 1 : read.lead === undefined ? undefined : read.lead / (2 * Math.PI);

/** How a motion comes to rest when its enable, its power and its brake go at these moments. */
export function stoppingOf(
  model: Model,
  at: number,
  order: Pick<StopOrder, 'enableOff' | 'torqueOff' | 'brakeOn'>,
): Stopping {
  const unit = model.motions[at]!;
  const { read } = unit.numbers;
  const [told, off, brake] = [order.enableOff[at]!, order.torqueOff[at]!, order.brakeOn[at]!];
  const { brakes } = model.drives[unit.drive]!;
  const base = {
    motion: unit.id,
    kind: unit.kind,
    torqueOff: off,
    brakeOn: brake,
    drop: dropOf(unit, off, brake),
  };
  if (told === Number.POSITIVE_INFINITY)
    return {
      ...base,
      category: 'none',
      time: Number.POSITIVE_INFINITY,
      distance: Number.POSITIVE_INFINITY,
      needs: [],
      run: undefined,
    };
  const scale = perRadian(unit);
  const needs: string[] = [];
  const need = (name: string): number => {
    const value = read[name];
    if (value === undefined && !needs.includes(name)) needs.push(name);
    return value ?? Number.NaN;
  };
  const speed = need('speed') / (scale ?? need('lead'));
  const ramps = brakes && off > told;
  const slowing = !ramps
    ? undefined
    : unit.kind === 'axis'
      ? need('deceleration') / (scale ?? Number.NaN)
      : speed / need('deceleration');
  // A ramp that ends before the power goes needs neither inertia nor friction.
  const rampTime = slowing === undefined ? Number.POSITIVE_INFINITY : speed / slowing;
  const onlyRamp = ramps && told + rampTime <= off;
  const [inertia, friction] = onlyRamp ? [1, 1] : [need('inertia'), need('friction')];
  // The worst way is down: the load pulls on where nothing but friction and brake hold it back.
  const weight = onlyRamp || !unit.vertical ? 0 : need('weight');
  if (!onlyRamp && weight >= friction && brake !== Number.POSITIVE_INFINITY) need('brake-torque');
  const stretches = stretchesOf(told, off, brake, slowing, friction - weight, read);
  const run = needs.length > 0 ? undefined : runDown(speed, inertia, stretches);
  const category: StopCategory =
    off === Number.POSITIVE_INFINITY
      ? '2'
      : ramps && (needs.length > 0 ? off - told > 0.1 : onlyRamp)
        ? '1'
        : '0';
  return { ...base, category, time: run?.time, distance: run && run.angle * scale!, needs, run };
}

function stretchesOf(
  told: number,
  off: number,
  brake: number,
  slows: number | undefined,
  holdsBack: number,
  read: Read,
): Stretch[] {
  const edges = [...new Set([0, told, off, brake].filter(Number.isFinite))].sort((a, b) => a - b);
  return edges.map((from, n) => {
    const lasts = (edges[n + 1] ?? Number.POSITIVE_INFINITY) - from;
    if (from < told) return { lasts, torque: 0, drag: 0, drives: true };
    if (slows !== undefined && from < off) return { lasts, torque: 0, drag: 0, slows };
    return {
      lasts,
      torque: holdsBack + (from >= brake ? (read['brake-torque'] ?? 0) : 0),
      drag: (read.viscous ?? 0) + (from >= off ? (read.drag ?? 0) : 0),
    };
  });
}

function dropOf(unit: MotionUnit, off: number, brake: number): number | undefined {
  const { read } = unit.numbers;
  if (read.vertical !== 1) return undefined;
  if (off === Number.POSITIVE_INFINITY || brake <= off) return 0;
  const scale = perRadian(unit);
  if (brake === Number.POSITIVE_INFINITY || !scale || read.weight === undefined || read.inertia === undefined)
    return undefined;
  // The worst case: friction holds nothing.
  return drop(brake - off, read.weight, read.inertia, scale);
}

export interface DemandStops {
  readonly act: Act;
  readonly role: Baseline['demands'][number]['role'];
  readonly stops: readonly Stopping[];
  readonly doesNotStop: readonly string[];
}

/** Every demand on the healthy running machine. */
export function stopsOf(base: Baseline): readonly DemandStops[] {
  return base.demands.map(({ act, role, stops, order }) => ({
    act,
    role,
    stops: stops.map((at) => stoppingOf(base.model, at, order)),
    doesNotStop: base.runs.filter((at) => !stops.includes(at)).map((at) => base.model.motions[at]!.id),
  }));
}

/** Seconds until a motion stands, for judging locks; 0 where too little is known. */
export const runOnOf =
  (model: Model): RunOn =>
  (order, motion) =>
    stoppingOf(model, motion, order).time ?? 0;

/** Longest of the run-ons of one motion over these stops; undefined where too little is known of any of them. */
export function longest(
  motion: string,
  stops: readonly DemandStops[],
): { readonly worst: Stopping | undefined; readonly after: string; readonly needs: readonly string[] } {
  const own = stops.flatMap(({ act, stops: list }) =>
    list.filter((stop) => stop.motion === motion).map((stop) => ({ stop, says: act.says })),
  );
  const needs = [...new Set(own.flatMap(({ stop }) => stop.needs))];
  let worst: (typeof own)[number] | undefined;
  for (const each of own)
    if (each.stop.distance !== undefined && each.stop.distance > (worst?.stop.distance ?? -1)) worst = each;
  return { worst: needs.length > 0 ? undefined : worst?.stop, after: worst?.says ?? '', needs };
}
