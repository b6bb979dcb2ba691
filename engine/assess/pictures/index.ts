/** The pictures of an axis: data to be drawn. Add one: its file and one line here. */
import type { UnitSystem } from '../../quantity/index.ts';
import type { Assessment } from '../assess.ts';
import { buckling } from './buckling.ts';
import { type Ground, groundOf } from './ground.ts';
import { pulses } from './pulses.ts';
import { torqueSpeed } from './torque-speed.ts';
import type { Picture } from './types.ts';
import { volts } from './volts.ts';
import { whirl } from './whirl.ts';

export type * from './types.ts';

/** In the order in which they are shown. A picture that has no meaning for the axis is left out. */
const PICTURES: readonly ((ground: Ground) => Picture | undefined)[] = [
  torqueSpeed,
  volts,
  whirl,
  buckling,
  pulses,
];

/**
 * The pictures of one axis, from the workings of an assessment; none for an axis that is not there. Numbers are SI, with
 * the units to read them in; sentences and units follow `system`, by default the assessment's own. Never throws for what
 * a person may have entered: what cannot be drawn says what is missing.
 */
export function pictures(
  assessment: Assessment,
  chainId: string,
  options: { readonly system?: UnitSystem } = {},
): Picture[] {
  const chain = assessment.refit.chains.find((each) => each.id === chainId);
  if (!chain) return [];
  const ground = groundOf(assessment, chain, options.system ?? assessment.kept.system);
  return PICTURES.flatMap((picture) => picture(ground) ?? []);
}
