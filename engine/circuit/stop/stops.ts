/** How each motion stops after each act: by which category, after how long, how far on. */
import type { Act } from './acts.ts';
import type { Baseline, RunOn } from './baseline.ts';
import type { Model, MotionUnit } from './model.ts';
import { DROPS } from './motion.ts';
import type { StopOrder } from './order.ts';
import { drop, type RunDown, runDown, type Stretch } from './run-down.ts';
import type { Read } from './settings.ts';

/**
 * IEC 60204-1:2016, 9.2.2 (wording from memory): 0 takes the power away at once, 1 brakes first and then takes it away,
 * 2 brakes and leaves it on. 'none' does not stop.
 */
export type StopCategory = '0' | '1' | '2' | 'none';

export const SAY_CATEGORY: Readonly<Record<StopCategory, string>> = {
  '0': 'stop category 0: the power goes at once',
  '1': 'stop category 1: it brakes, then the power goes',
  '2': 'stop category 2: it is only told to stop, the power stays',
  none: 'does not stop',
};

/**
 * What a load that pulls along the axis does once the stop is over: there is 'none'; it is 'held' by drive or brake; only
 * 'friction' stands against it, which is not to be relied on; it 'drops'; or nobody knows whether it does.
 */
export type Load = 'none' | 'held' | 'friction' | 'drops' | 'unknown';

/** Where it does not stand before its way ends. */
export interface Strike {
  /** Metres from where the stop was asked for to the hard stop, at most. */
  readonly room: number;
  /** Seconds after the act. */
  readonly time: number;
  /** m/s at the hard stop. */
  readonly speed: number;
}

export interface Stopping {
  readonly motion: string;
  readonly kind: 'axis' | 'spindle';
  readonly category: StopCategory;
  readonly load: Load;
  readonly strikes: Strike | undefined;
  /** Seconds until it stands, from the act, were its way long enough; undefined where too little is known. */
  readonly time: number | undefined;
  /** Metres for an axis, radians for a spindle, were the way long enough. */
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

/** Metres to the hard stop at most: the whole travel, or from the limit switch that is run onto. `act`: its mover. */
function roomOf({ limits }: Model, { id, numbers: { read } }: MotionUnit, act: number): number | undefined {
  const { travel } = read;
  const own = limits.find(({ mover, axis }) => mover === act && axis === id);
  const low = own?.end === 'upper' ? undefined : read['limit-low'];
  const high = own?.end === 'lower' || travel === undefined ? undefined : read['limit-high'];
  const ways = own
    ? [low, high === undefined ? undefined : travel! - high].filter((each) => each !== undefined)
    : [];
  return ways.length > 0 ? Math.max(0, Math.min(...ways)) : travel;
}

/** Whether a brake or the drive holds the load afterwards. */
function loadOf({ kind, vertical, numbers: { read } }: MotionUnit, letGo: number, brake: number): Load {
  if (kind === 'spindle' || !vertical) return 'none';
  if (letGo === Number.POSITIVE_INFINITY || brake !== Number.POSITIVE_INFINITY) return 'held';
  return read.vertical === undefined ? 'unknown' : read.vertical === DROPS.friction ? 'friction' : 'drops';
}

/** How a motion comes to rest when its enable, its power and its brake go at these moments. `act`: what asked for it. */
export function stoppingOf(
  model: Model,
  at: number,
  order: Pick<StopOrder, 'enableOff' | 'torqueOff' | 'brakeOn'>,
  act = -1,
): Stopping {
  const unit = model.motions[at]!;
  const { read } = unit.numbers;
  const [told, off, brake] = [order.enableOff[at]!, order.torqueOff[at]!, order.brakeOn[at]!];
  const { brakes } = model.drives[unit.drive]!;
  // A drive that does not brake lets go of what it holds with its enable.
  const letGo = brakes ? off : Math.min(told, off);
  const load = loadOf(unit, letGo, brake);
  const base = {
    motion: unit.id,
    kind: unit.kind,
    load,
    torqueOff: off,
    brakeOn: brake,
    drop: dropOf(unit, letGo, brake),
  };
  if (told === Number.POSITIVE_INFINITY)
    return {
      ...base,
      category: 'none',
      load: unit.vertical ? 'held' : 'none',
      strikes: undefined,
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
  // A ramp that ends before the power goes needs neither inertia nor friction, unless nothing holds the load then.
  const rampTime = slowing === undefined ? Number.POSITIVE_INFINITY : speed / slowing;
  const isControlled = ramps && told + rampTime <= off;
  const onlyRamp = isControlled && load !== 'drops' && load !== 'friction';
  const inertia = onlyRamp ? 1 : need('inertia');
  // Friction slows what coasts, and is not counted on against a load: the worst way is down, with nothing but the brake.
  const pulls = !onlyRamp && (load === 'drops' || (load === 'held' && unit.vertical));
  const friction = onlyRamp || pulls ? 0 : need('friction');
  const weight = !onlyRamp && unit.vertical ? need('weight') : 0;
  if (pulls && brake !== Number.POSITIVE_INFINITY) need('brake-torque');
  if (load === 'unknown' && !onlyRamp) need('vertical');
  const stretches = stretchesOf(told, off, brake, slowing, friction - weight, read);
  const room = unit.kind === 'axis' ? roomOf(model, unit, act) : undefined;
  const way = room === undefined || scale === undefined ? Number.POSITIVE_INFINITY : room / scale;
  const run = needs.length > 0 ? undefined : runDown(speed, inertia, stretches, way);
  const free = run?.strikes === undefined ? run : runDown(speed, inertia, stretches);
  const category: StopCategory =
    off === Number.POSITIVE_INFINITY
      ? '2'
      : ramps && (needs.length > 0 ? off - told > 0.1 : isControlled)
        ? '1'
        : '0';
  return {
    ...base,
    category,
    strikes:
      run?.strikes === undefined ? undefined : { room: room!, time: run.time, speed: run.strikes * scale! },
    time: free?.time,
    distance: free && free.angle * scale!,
    needs,
    run,
  };
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

function dropOf(unit: MotionUnit, letGo: number, brake: number): number | undefined {
  const { read } = unit.numbers;
  if (!unit.vertical) return undefined;
  if (letGo === Number.POSITIVE_INFINITY || brake <= letGo) return 0;
  const scale = perRadian(unit);
  if (brake === Number.POSITIVE_INFINITY || !scale || read.weight === undefined || read.inertia === undefined)
    return undefined;
  // The worst case: friction holds nothing.
  return drop(brake - letGo, read.weight, read.inertia, scale);
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
    stops: stops.map((at) => stoppingOf(base.model, at, order, act.mover)),
    doesNotStop: base.runs.filter((at) => !stops.includes(at)).map((at) => base.model.motions[at]!.id),
  }));
}

/** Seconds until a motion stands or has dropped as far as it can, for judging locks; 0 where too little is known. */
export const runOnOf =
  (model: Model): RunOn =>
  (order, motion) => {
    const { time, strikes, load } = stoppingOf(model, motion, order);
    // That it drops has a finding of its own.
    return strikes?.time ?? (load === 'drops' ? 0 : (time ?? 0));
  };

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
