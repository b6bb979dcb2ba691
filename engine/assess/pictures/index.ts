/** The pictures of an axis or a spindle: data to be drawn. Add one: its file and one line here. */
import type { UnitSystem } from '../../quantity/index.ts';
import type { Assessment } from '../assess.ts';
import { buckling } from './buckling.ts';
import { type Ground, groundOf } from './ground.ts';
import { jawGrip } from './jaw-grip.ts';
import { pulses } from './pulses.ts';
import { spindlePower, spindleTorque } from './spindle-ranges.ts';
import { spindleTimes } from './spindle-times.ts';
import { torqueSpeed } from './torque-speed.ts';
import type { Demand, Picture } from './types.ts';
import { volts } from './volts.ts';
import { whirl } from './whirl.ts';

export type * from './types.ts';

/** In the order in which they are shown. A picture that has no meaning for the axis is left out. */
const OF_AXIS: readonly ((ground: Ground) => Picture | undefined)[] = [
  torqueSpeed,
  volts,
  whirl,
  buckling,
  pulses,
];

const OF_SPINDLE: readonly ((ground: Ground, demands: readonly Demand[]) => Picture | undefined)[] = [
  spindleTorque,
  spindlePower,
  jawGrip,
  spindleTimes,
];

/**
 * The pictures of one axis or spindle, from the workings of an assessment; none for a chain that is not there. Numbers
 * are SI, with the units to read them in; sentences and units follow `system`, by default the assessment's own.
 * `demands` are marked in those of a spindle. Never throws for what a person may have entered: what cannot be drawn says
 * what is missing.
 */
export function pictures(
  assessment: Assessment,
  chainId: string,
  options: { readonly system?: UnitSystem; readonly demands?: readonly Demand[] } = {},
): Picture[] {
  const chain = assessment.refit.chains.find((each) => each.id === chainId);
  if (!chain) return [];
  const ground = groundOf(assessment, chain, options.system ?? assessment.kept.system);
  return chain.kind === 'spindle'
    ? OF_SPINDLE.flatMap((picture) => picture(ground, options.demands ?? []) ?? [])
    : OF_AXIS.flatMap((picture) => picture(ground) ?? []);
}
