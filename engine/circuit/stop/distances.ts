/** How far slides run on, and where their switches must stand because of that. */
import type { Model, MotionUnit } from './model.ts';
import { type DemandStops, longest } from './stops.ts';

/** One place along the travel, in metres from the lower hard stop. */
export interface Mark {
  readonly id: 'hard-low' | 'limit-low' | 'soft-low' | 'home' | 'soft-high' | 'limit-high' | 'hard-high';
  /** 'lower limit switch S11' */
  readonly name: string;
  readonly at: number | undefined;
  /** Where it would have to stand at least, seen from the nearer end; neighbours that are not known are taken as needed. */
  readonly needed: number | undefined;
  /** Metres left over; negative where it runs into the next. */
  readonly reserve: number | undefined;
  readonly says: string;
}

/** Stands for an act where no limit switch is drawn for an axis. */
export const ANY_STOP = 'any stop';

export interface AxisDistances {
  readonly motion: string;
  /** Longest run-on of any stop that a limit switch asks for, metres, were the way long enough; Infinity where it never stands. */
  readonly runOn: number | undefined;
  /** Nothing holds its load after that stop. */
  readonly drops: boolean;
  /** Seconds. */
  readonly time: number | undefined;
  /** After which act: 'run onto S11'; 'any stop' where no limit switch is drawn for this axis. */
  readonly after: string;
  readonly travel: number | undefined;
  readonly marks: readonly Mark[];
  readonly needs: readonly string[];
}

export const axisDistances = (model: Model, stops: readonly DemandStops[]): readonly AxisDistances[] =>
  model.motions.filter(({ kind }) => kind === 'axis').map((motion) => distancesOf(model, motion, stops));

const less = (from: number | undefined, take: number | undefined): number | undefined =>
  from === undefined || take === undefined ? undefined : from - take;

function distancesOf(model: Model, motion: MotionUnit, stops: readonly DemandStops[]): AxisDistances {
  const { read } = motion.numbers;
  const own = model.limits.filter(({ axis }) => axis === motion.id);
  const asked = stops.filter(({ act }) => own.some(({ mover }) => mover === act.mover));
  const { worst, needs, after } = longest(motion.id, asked.length > 0 ? asked : stops);
  // No place would do for what never stands.
  const runOn = worst && Number.isFinite(worst.distance) ? worst.distance : undefined;
  const { travel } = read;
  // Looked for at a share of the highest speed, it runs on by that share at most: what brakes it does not grow weaker.
  const slow =
    runOn === undefined || read.speed === undefined || read['home-speed'] === undefined
      ? undefined
      : runOn * Math.min(1, read['home-speed'] / read.speed);
  /** From its own end inwards. */
  const inwards = (id: 'limit' | 'soft', high: boolean): number | undefined => {
    const at = read[`${id}-${high ? 'high' : 'low'}`];
    return high ? less(travel, at) : at;
  };
  /** The same from the lower hard stop. */
  const fromLow = (distance: number | undefined, high: boolean): number | undefined =>
    high ? less(travel, distance) : distance;
  const side = (high: boolean): string => (high ? 'upper' : 'lower');
  const named = (words: string, switches: readonly { readonly element: string }[]): string =>
    [words, ...switches.map(({ element }) => element)].join(' ');

  const hard = (high: boolean): Mark => ({
    id: high ? 'hard-high' : 'hard-low',
    name: `${side(high)} hard stop`,
    at: high ? travel : 0,
    needed: undefined,
    reserve: undefined,
    says: 'Metal on metal.',
  });
  const limit = (high: boolean): Mark => ({
    id: high ? 'limit-high' : 'limit-low',
    name: named(
      `${side(high)} limit switch`,
      own.filter(({ end }) => end === 'either' || end === side(high)),
    ),
    at: fromLow(inwards('limit', high), high),
    needed: fromLow(runOn, high),
    reserve: less(inwards('limit', high), runOn),
    says: 'It must act so far before the hard stop that the run-on ends before it.',
  });
  const soft = (high: boolean): Mark => ({
    id: high ? 'soft-high' : 'soft-low',
    name: `${side(high)} software limit`,
    at: fromLow(inwards('soft', high), high),
    needed: fromLow(inwards('limit', high) ?? runOn, high),
    reserve: less(inwards('soft', high), inwards('limit', high)),
    says: 'The control plans its stop to end here; it must lie inside the limit switch.',
  });
  const rooms = [
    less(less(read.home, inwards('limit', false)), slow),
    less(less(less(travel, read.home), inwards('limit', true)), slow),
  ];
  const home: Mark = {
    id: 'home',
    name: named(
      'home switch',
      model.homes.filter(({ axis }) => axis === motion.id),
    ),
    at: read.home,
    needed: slow === undefined ? undefined : (inwards('limit', false) ?? runOn!) + slow,
    reserve: rooms.some((room) => room === undefined) ? undefined : Math.min(rooms[0]!, rooms[1]!),
    says: 'Running past it at the speed of looking for home must not reach a limit switch.',
  };
  return {
    motion: motion.id,
    runOn: worst?.distance,
    drops: worst?.load === 'drops',
    time: worst?.time,
    after: asked.length > 0 ? after : ANY_STOP,
    travel,
    marks: [hard(false), limit(false), soft(false), home, soft(true), limit(true), hard(true)],
    needs: [
      ...needs,
      ...(['travel', 'limit-low', 'limit-high', 'home', 'home-speed'] as const).filter(
        (name) => read[name] === undefined,
      ),
    ],
  };
}
