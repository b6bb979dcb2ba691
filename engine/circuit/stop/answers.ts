/** Questions about the stop circuit as a whole. */

import { COMMON_CAUSE } from './iso-13849.ts';
import type { SettingSpec } from './kinds.ts';

export const CIRCUIT_SETTINGS: Readonly<Record<string, SettingSpec>> = {
  'uses-a-year': { kind: 'number', name: 'how often a stop is asked for in a year', usual: '', unit: '1' },
  'test-months': { kind: 'count', name: 'months until it is tested again', usual: '12', least: 1, most: 36 },
  ...Object.fromEntries(
    Object.entries(COMMON_CAUSE).map(([id, { asks }]): [string, SettingSpec] => [
      id,
      { kind: 'choice', name: asks, usual: 'no', options: ['no', 'yes'] },
    ]),
  ),
};
