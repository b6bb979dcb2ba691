/** What a drive puts across an input, on and off: pure arithmetic on numbers. */
import { optoInput } from '../../handbook/opto-input.ts';
import { pullUp } from '../../handbook/pull-up.ts';
import { evaluate } from '../../sheet/index.ts';
import { e24Below, ratingFor } from './e-series.ts';
import type { Input } from './types.ts';

/** Volts across an input in one state; null where nothing flows because the other side lets go. */
export interface Across {
  readonly on?: number | undefined;
  readonly off?: number | null | undefined;
  /** The most there can be. */
  readonly top?: number | undefined;
  /** Ohms in the way outside the input. */
  readonly ohms: number;
  readonly leaks?: number | undefined;
}

export interface Margin {
  readonly name: 'on' | 'off' | 'survives';
  readonly capacity: number;
  readonly demand: number;
  readonly unit: 'V' | 'A';
  readonly margin: number;
}

/** Infinite where nothing is demanded, capped so that it can be shown. */
const ratio = (capacity: number, demand: number): number =>
  demand <= 0 ? 1e6 : Math.min(1e6, Math.max(0, capacity) / demand);

/** Current through an input whose curve is known, in A. */
export const inputCurrent = (
  { forward = 0, series }: { readonly forward?: number; readonly series: number },
  across: number,
  outside = 0,
): number => Math.max(0, (across - forward) / (series + outside));

/**
 * How an input fares with what is put across it. Where its current curve is known, on and off are judged by current,
 * as an opto-coupler does; otherwise by voltage.
 */
export function marginsOf(input: Input, across: Across): readonly Margin[] {
  const made: Margin[] = [];
  const curve =
    input.series === undefined ? undefined : { forward: input.forward ?? 0, series: input.series };
  if (across.on !== undefined) {
    if (curve && input.onCurrent !== undefined) {
      const current = inputCurrent(curve, across.on, across.ohms);
      made.push({
        name: 'on',
        capacity: current,
        demand: input.onCurrent,
        unit: 'A',
        margin: ratio(current, input.onCurrent),
      });
    } else if (input.on !== undefined)
      made.push({
        name: 'on',
        capacity: across.on - across.ohms * (input.onCurrent ?? 0),
        demand: input.on,
        unit: 'V',
        margin: ratio(across.on - across.ohms * (input.onCurrent ?? 0), input.on),
      });
  }
  if (across.off === null) {
    if (across.leaks !== undefined && input.offCurrent !== undefined)
      made.push({
        name: 'off',
        capacity: input.offCurrent,
        demand: across.leaks,
        unit: 'A',
        margin: ratio(input.offCurrent, across.leaks),
      });
  } else if (across.off !== undefined) {
    if (curve && input.offCurrent !== undefined) {
      const current = inputCurrent(curve, across.off, across.ohms);
      made.push({
        name: 'off',
        capacity: input.offCurrent,
        demand: current,
        unit: 'A',
        margin: ratio(input.offCurrent, current),
      });
    } else if (input.off !== undefined)
      made.push({
        name: 'off',
        capacity: input.off,
        demand: across.off,
        unit: 'V',
        margin: ratio(input.off, across.off),
      });
  }
  if (across.top !== undefined && input.most !== undefined) {
    const reaching =
      across.ohms > 0 && curve
        ? (curve.forward ?? 0) + inputCurrent(curve, across.top, across.ohms) * curve.series
        : across.top;
    made.push({
      name: 'survives',
      capacity: input.most,
      demand: reaching,
      unit: 'V',
      margin: ratio(input.most, reaching),
    });
  }
  return made;
}

export interface SeriesResistor {
  /** Worked out, and as it is sold: E24, the next below. */
  readonly exact: number;
  readonly ohms: number;
  readonly watts: number;
  /** Rating to buy. */
  readonly rating: number;
}

/** The resistor that takes up what is too much for an input made for less; undefined where there is nothing to take up. */
export function seriesResistor(
  volts: number,
  rated: number,
  current: number | undefined,
): SeriesResistor | undefined {
  if (current === undefined || !(current > 0) || volts <= rated) return undefined;
  const worked = evaluate(optoInput, { V: volts, V_rated: rated, I_F: current });
  if (worked.R_add.state !== 'known' || worked.P_add.state !== 'known') return undefined;
  return {
    exact: worked.R_add.value,
    ohms: e24Below(worked.R_add.value),
    watts: worked.P_add.value,
    rating: ratingFor(worked.P_add.value),
  };
}

/** Window for a pull-up and a value in it; undefined where there is none or too little is known. */
export function pullUpFor(given: {
  readonly supply: number;
  readonly on: number;
  readonly low: number;
  readonly leaks: number;
  readonly swallows: number;
}): { readonly least: number; readonly most: number; readonly ohms: number } | undefined {
  const worked = evaluate(pullUp, {
    Vcc: given.supply,
    VIH: given.on,
    VOL: given.low,
    I_leak: given.leaks,
    I_OL: given.swallows,
  });
  if (worked.R_max.state !== 'known' || worked.R_min.state !== 'known') return undefined;
  const [least, most] = [worked.R_min.value, worked.R_max.value];
  if (!(least > 0) || least > most) return undefined;
  // Twice the smallest: quick, and easy to pull down.
  const ohms = e24Below(Math.min(most, 2 * least));
  return ohms < least ? undefined : { least, most, ohms };
}
