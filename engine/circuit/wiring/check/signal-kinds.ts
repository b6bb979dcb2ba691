/** What carries signals and the few volts of a control: made for no mains. */
import type { Nature } from '../types.ts';

export const SIGNAL_KINDS = [
  'input',
  'output',
  'differential-input',
  'differential-output',
  'analogue-input',
  'analogue-output',
  'supply',
  'feed',
  'common',
  'sensor',
] as const satisfies readonly Nature['kind'][];
