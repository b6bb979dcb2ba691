/** Countries whose rules Fettle knows something of. Add one: its file and one line here. */
import { australia } from './australia.ts';
import { canada } from './canada.ts';
import { france } from './france.ts';
import { germany } from './germany.ts';
import { netherlands } from './netherlands.ts';
import type { Country } from './types.ts';
import { unitedKingdom } from './united-kingdom.ts';
import { unitedStates } from './united-states.ts';

export type { Country, Rule } from './types.ts';

export const COUNTRIES: readonly Country[] = [
  australia,
  canada,
  france,
  germany,
  netherlands,
  unitedKingdom,
  unitedStates,
];

/** The country a person wrote, by any of its words; undefined for one that Fettle does not know. */
export function countryOf(typed: string): Country | undefined {
  const word = typed
    .trim()
    .toLowerCase()
    .replace(/\.|^the\s+/g, '');
  if (word === '') return undefined;
  return COUNTRIES.find(({ id, name, words }) => [id, name.toLowerCase(), ...words].includes(word));
}
