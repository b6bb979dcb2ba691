/** Sizes to buy: what the supply needs and does not have, in one list. */
import { discharge } from '../../handbook/discharge.ts';
import { ripple } from '../../handbook/ripple.ts';
import { transformerRating } from '../../handbook/transformer-rating.ts';
import { evaluate, type Outcome } from '../../sheet/index.ts';
import { RATINGS } from '../../tables/breakers.ts';
import { FOR_GOOD, saidOf, sumOf } from './bus-share.ts';
import type { PowerContext } from './context.ts';
import { guardingEnd } from './rules/protection.ts';
import { amps } from './say.ts';

export interface Size {
  readonly what: 'transformer' | 'capacitor' | 'bleeder' | 'fuse' | 'supply';
  /** Device it is for; null where none is drawn yet. */
  readonly device: string | null;
  /** SI: VA, F, Ω, A. The least, or of a bleeder the most. */
  readonly value: number;
  readonly unit: 'VA' | 'µF' | 'Ω' | 'A';
  readonly sentence: string;
  readonly source: string;
}

/** Ripple that drives bear well, as a share of the bus: common practice, no source. */
const RIPPLE = 0.05;

const value = (outcome: Outcome | undefined): number | undefined =>
  outcome?.state === 'known' ? outcome.value : undefined;

/** What stands behind the transformer of the drives, drawn or not. */
export function busSizes(context: PowerContext): readonly Size[] {
  const { supply, site, drawn } = context.facts;
  if (supply.choice('type') !== 'transformer') return [];
  const sizes: Size[] = [];
  const secondary = supply.value('secondary');
  const steady =
    drawn.busSteadyAmps === undefined ? undefined : Math.max(drawn.busSteadyAmps, saidAmps(context));
  const VA = value(
    secondary === undefined || steady === undefined
      ? undefined
      : evaluate(transformerRating, { Vsec: secondary, I_dc: steady }).VA,
  );
  if (VA !== undefined)
    sizes.push({
      what: 'transformer',
      device: null,
      value: VA,
      unit: 'VA',
      sentence: `A transformer of ${Math.ceil(VA / 10) * 10} VA or more for the ${amps(steady!)} that the drives take for good: heat goes by that, and as it gives its current in gulps they heat like 1.8 times as much.`,
      source: `transformer maker’s application note on rectifiers: bridge with capacitor; ${FOR_GOOD}`,
    });
  const frequency = site.value('frequency');
  const worst = drawn.busOneAmps ?? drawn.busPeakAmps;
  const { busLow, busHigh } = drawn;
  if (frequency !== undefined && worst !== undefined && busLow !== undefined) {
    const C = value(evaluate(ripple, { f: frequency, I: worst, dV_want: RIPPLE * busLow }).C_need);
    if (C !== undefined)
      sizes.push({
        what: 'capacitor',
        device: null,
        value: C,
        unit: 'µF',
        sentence: `${Math.ceil((C * 1e6) / 100) * 100} µF or more for a ripple of a twentieth of the bus at ${amps(worst)}, the hardest-working axis at its peak and the others holding, since ripple goes by the peak${busHigh === undefined ? '' : `, for ${Math.ceil(busHigh * 1.2)} V or more`}: several in parallel, so that they share the gulps.`,
        source:
          'derived: as if the capacitor fed the drives for the whole half cycle; ripple of 5 % and 1.2 times the volts are habits',
      });
  }
  const C = supply.value('capacitance');
  if (C !== undefined && busHigh !== undefined) {
    const R = value(evaluate(discharge, { V0: busHigh, C }).R_max);
    if (R !== undefined)
      sizes.push({
        what: 'bleeder',
        device: null,
        value: R,
        unit: 'Ω',
        sentence: `A bleeder of ${Math.floor(R)} Ω or less, for at least ${Math.ceil((2 * busHigh * busHigh) / R)} W (twice what it burns), never switched off. Measure before you touch all the same.`,
        source: 'IEC 60204-1:2016, 6.2.4: 60 V within 5 s',
      });
  }
  return sizes;
}

/** What has been said of the drives on a bus, together, in A. */
function saidAmps({ wiring, terminalsOf }: PowerContext): number {
  const feeds = terminalsOf('power-feed').map((id) => wiring.terminals.get(id)!);
  return sumOf(saidOf(feeds, (device) => wiring.devices.get(device)?.kind));
}

/** @param pole either end of a fuse or breaker */
export function fuseSizes(context: PowerContext, pole: string): readonly Size[] {
  const terminal = guardingEnd(context, pole);
  const load = terminal && context.flow.pairs.get(terminal.id);
  if (!terminal || !load || load.amps === 0 || load.needs.length > 0) return [];
  const { amps: rated, release } = terminal.nature;
  // One with a dial goes by the plate of its motor.
  if (release) return [];
  if (rated !== undefined && rated >= load.amps) return [];
  const size = RATINGS.find((each) => each >= load.amps * 1.25);
  if (size === undefined) return [];
  return [
    {
      what: 'fuse',
      device: terminal.device,
      value: size,
      unit: 'A',
      sentence: `${terminal.device}: ${size} A, a quarter over its load (habit); the wires behind it must carry that.`,
      source: 'IEC 60364-4-43, 433.1: load ≤ fuse ≤ wire',
    },
  ];
}

export function supplySizes(context: PowerContext, id: string): readonly Size[] {
  const source = context.flow.source.get(id);
  const load = context.flow.gives.get(id);
  if (source?.kind !== 'supply' || !source.limits || !load || load.amps === 0 || load.needs.length > 0)
    return [];
  if (source.amps !== undefined && source.amps >= load.amps) return [];
  const size = Math.ceil(load.amps * 1.25 * 10) / 10;
  return [
    {
      what: 'supply',
      device: source.device,
      value: size,
      unit: 'A',
      sentence: `${source.device}: one that gives ${size} A or more, a quarter over its load (habit).`,
      source: 'sum of the currents that hang on it',
    },
  ];
}
