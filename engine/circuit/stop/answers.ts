/** Questions about the stop circuit as a whole. */
import { amount, choice, count, type SettingSpecs } from '../../quantity/settings.ts';
import { COMMON_CAUSE } from './iso-13849.ts';

export const CIRCUIT_SETTINGS: SettingSpecs = {
  'uses-a-year': amount('how often a stop is asked for in a year', '1'),
  'test-months': count('months until it is tested again', '12', 36, 1),
  ...Object.fromEntries(
    Object.entries(COMMON_CAUSE).map(([id, { asks }]) => [id, choice(asks, ['no', 'yes'], 'no')]),
  ),
};
