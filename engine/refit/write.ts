/** Writes refit.json and edits.jsonl: the same refit always gives the same text. */
import type { Chain, Edit, Fact, Part, Place, Refit } from './types.ts';

/** The text of refit.json: fields in the order of the format, names in the order of the alphabet. */
export function writeRefit(refit: Refit): string {
  const { format, version, id, name, about, machine } = refit;
  const ordered: Refit = {
    format,
    version,
    id,
    name,
    about,
    machine,
    places: sorted(refit.places, place),
    chains: refit.chains.map(chain),
    parts: sorted(refit.parts, part),
    policies: sorted(refit.policies, (text) => text),
  };
  return `${JSON.stringify(ordered, null, 2)}\n`;
}

/** The text of edits.jsonl, one edit a line. */
export const writeEdits = (edits: readonly Edit[]): string =>
  edits.map((edit) => `${JSON.stringify(edit)}\n`).join('');

function sorted<T>(record: Readonly<Record<string, T>>, each: (value: T) => T): Record<string, T> {
  const names = Object.keys(record).sort();
  return Object.fromEntries(names.map((name) => [name, each(record[name]!)]));
}

const place = ({ options, chosen }: Place): Place => ({ options, chosen });
const chain = ({ id, kind, places }: Chain): Chain => ({ id, kind, places: sorted(places, place) });
const part = ({ id, kind, name, facts }: Part): Part => ({ id, kind, name, facts: sorted(facts, fact) });

function fact({ value, basis, note }: Fact): Fact {
  return note === undefined ? { value, basis } : { value, basis, note };
}
