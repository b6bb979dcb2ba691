/** What the drives draw from their bus and where its volts lie, as the rules of the supply want it. */
import { type Assessment, scopesOf } from '../assess/assess.ts';
import { resolve } from '../assess/resolve.ts';
import { BUS_CURRENT, BUS_HIGH, BUS_LOW } from '../checks/bus.ts';
import { type Ref, when } from '../checks/refs.ts';
import type { Drawn } from '../circuit/power/index.ts';
import { transformerRating } from '../handbook/transformer-rating.ts';
import { evaluate } from '../sheet/index.ts';

/** Of all peaks together, for good: the usual allowance of 50 to 70 %, in its middle (common practice, no source). */
const SHARE = 0.6;

const result = (working: string, symbol: string): Ref => ({ kind: 'result', working, symbol });

/** The peak of one axis, by the kind of its motor. */
const AXIS_PEAK = when('motor', 'type', {
  brushed: result('bus-current', 'I_bus'),
  brushless: result('bus-current', 'I_bus'),
  stepper: result('stepper-current', 'I_bus'),
});

/** What is not known is left out. */
export function supplyDrawn(assessment: Assessment): Drawn {
  const scopeFor = scopesOf(assessment);
  const value = (ref: Ref, chain: Parameters<typeof scopeFor>[0] = null): number | undefined => {
    const found = resolve(scopeFor(chain), ref);
    return found.state === 'known' ? found.value : undefined;
  };
  const axes = assessment.refit.chains.filter(({ kind }) => kind === 'axis');
  const peaks = axes.map((chain) => value(AXIS_PEAK, chain));
  const all = value(BUS_CURRENT);
  const largest = peaks.every((each) => each !== undefined) ? Math.max(0, ...peaks) : undefined;
  // The sheet shares watts; at one voltage amperes are shared alike.
  const shared = (amps: number): number => {
    const { P_shared } = evaluate(transformerRating, { P_sum: amps, share: SHARE });
    return P_shared.state === 'known' ? P_shared.value : amps;
  };
  const [high, low] = [value(BUS_HIGH), value(BUS_LOW)];
  return {
    ...(all === undefined ? {} : { busPeakAmps: all, busSteadyAmps: shared(all) }),
    ...(all === undefined || largest === undefined ? {} : { busOneAmps: largest + shared(all - largest) }),
    ...(high === undefined ? {} : { busHigh: high }),
    ...(low === undefined ? {} : { busLow: low }),
  };
}
