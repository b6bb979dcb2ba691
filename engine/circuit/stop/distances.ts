/** How far things run on, and where switches and guards must stand because of that. */
import { guardDistance } from '../../handbook/guard-distance.ts';
import type { StopCircuit } from '../../refit/types.ts';
import { evaluate } from '../../sheet/index.ts';
import { type DemandStops, motionRead, type Stopping } from './stops.ts';

/** One place along the travel, in metres from the lower hard stop. */
export interface Mark {
  readonly id: 'hard-low' | 'limit-low' | 'soft-low' | 'home' | 'soft-high' | 'limit-high' | 'hard-high';
  readonly name: string;
  readonly at: number | undefined;
  /** Where it would have to stand at least, from this side. */
  readonly needed: number | undefined;
  /** Metres left over; negative where it runs into the next. */
  readonly reserve: number | undefined;
  readonly says: string;
}

export interface AxisDistances {
  readonly motion: string;
  /** Longest run-on of any stop that a limit switch may ask for, metres. */
  readonly runOn: number | undefined;
  readonly because: string;
  readonly travel: number | undefined;
  readonly marks: readonly Mark[];
  readonly needs: readonly string[];
}

export interface GuardDistance {
  readonly motion: string;
  /** Seconds until it stands. */
  readonly time: number | undefined;
  /** Metres. */
  readonly needed: number | undefined;
  readonly there: number | undefined;
  readonly reserve: number | undefined;
  readonly says: string;
}

/** Longest of the run-ons of one motion over all stops but those that are not braked by anything known. */
export function longest(
  stops: readonly DemandStops[],
  motion: string,
): { worst: Stopping | undefined; needs: readonly string[] } {
  const own = stops.flatMap((each) => each.stops.filter((stop) => stop.motion === motion));
  const needs = [...new Set(own.flatMap((stop) => stop.needs))];
  let worst: Stopping | undefined;
  for (const stop of own)
    if (stop.distance !== undefined && (worst?.distance === undefined || stop.distance > worst.distance))
      worst = stop;
  return { worst: needs.length > 0 ? undefined : worst, needs };
}

export function axisDistances(circuit: StopCircuit, stops: readonly DemandStops[]): readonly AxisDistances[] {
  return Object.values(circuit.motions)
    .filter(({ kind }) => kind === 'axis')
    .map((motion) => {
      const read = motionRead(motion);
      const { worst, needs } = longest(stops, motion.id);
      const runOn = worst?.distance;
      const { travel } = read;
      // Looked for at a share of the highest speed, it runs on by that share at most: what brakes it does not grow weaker.
      const slow =
        runOn === undefined || read.speed === undefined || read['home-speed'] === undefined
          ? undefined
          : runOn * Math.min(1, read['home-speed'] / read.speed);
      const from = (id: 'limit' | 'soft', high: boolean): number | undefined => {
        const at = read[`${id}-${high ? 'high' : 'low'}`];
        return at === undefined || (high && travel === undefined) ? undefined : high ? travel! - at : at;
      };
      const place = (near: number | undefined, high: boolean) =>
        near === undefined || (high && travel === undefined) ? undefined : high ? travel! - near : near;
      const limit = (high: boolean): Mark => {
        const has = from('limit', high);
        return {
          id: high ? 'limit-high' : 'limit-low',
          name: `${high ? 'upper' : 'lower'} limit switch`,
          at: place(has, high),
          needed: place(runOn, high),
          reserve: has === undefined || runOn === undefined ? undefined : has - runOn,
          says: 'It must act so far before the hard stop that the run-on ends before it.',
        };
      };
      const soft = (high: boolean): Mark => {
        const own = from('soft', high);
        const has = from('limit', high);
        return {
          id: high ? 'soft-high' : 'soft-low',
          name: `${high ? 'upper' : 'lower'} software limit`,
          at: place(own, high),
          needed: place(has, high),
          reserve: own === undefined || has === undefined ? undefined : own - has,
          says: 'The control plans its stop to end here; it must lie inside the limit switch.',
        };
      };
      const home: Mark = {
        id: 'home',
        name: 'home switch',
        at: read.home,
        needed: read['limit-low'] === undefined || slow === undefined ? undefined : read['limit-low'] + slow,
        reserve:
          read.home === undefined ||
          slow === undefined ||
          read['limit-low'] === undefined ||
          read['limit-high'] === undefined
            ? undefined
            : Math.min(read.home - read['limit-low'], read['limit-high'] - read.home) - slow,
        says: 'Running past it at the speed of looking for home must not reach a limit switch.',
      };
      const hard = (high: boolean): Mark => ({
        id: high ? 'hard-high' : 'hard-low',
        name: `${high ? 'upper' : 'lower'} hard stop`,
        at: high ? travel : 0,
        needed: undefined,
        reserve: undefined,
        says: 'Metal on metal.',
      });
      return {
        motion: motion.id,
        runOn,
        because: worst
          ? `the longest of its stops, from the highest speed, in ${worst.time?.toPrecision(3)} s`
          : '',
        travel,
        marks: [hard(false), limit(false), soft(false), home, soft(true), limit(true), hard(true)],
        needs: [
          ...needs,
          ...(['travel', 'limit-low', 'limit-high', 'home', 'home-speed'] as const).filter(
            (name) => read[name] === undefined,
          ),
        ],
      };
    });
}

/** How far a guard without lock would have to stand, by ISO 13855. */
export function guardDistances(
  circuit: StopCircuit,
  stops: readonly DemandStops[],
): readonly GuardDistance[] {
  return Object.values(circuit.motions)
    .filter(({ kind }) => kind === 'spindle')
    .map((motion) => {
      const { worst } = longest(stops, motion.id);
      const there = motionRead(motion).guard;
      const time = worst?.time;
      const found =
        time === undefined || !Number.isFinite(time) || time <= 0
          ? undefined
          : evaluate(guardDistance, { T: time, D_reach: 0 }).S_door;
      const needed = found?.state === 'known' ? found.value : undefined;
      const reserve = needed === undefined || there === undefined ? undefined : there - needed;
      return {
        motion: motion.id,
        time,
        needed,
        there,
        reserve,
        says:
          needed === undefined
            ? 'How long it turns on is not known.'
            : reserve === undefined || reserve < 0
              ? 'A guard that is not locked would have to stand that far away. Lock it until the spindle stands, or brake.'
              : 'A guard that is not locked may stand there, by this working. Measure the time on the machine.',
      };
    });
}
