/** Words such as length=30mm. */
import { shown } from './arguments.ts';
import { Refusal } from './refusal.ts';

/** Parted at its first “=”; `write` says how one is written: 'field=value, such as length=30mm'. */
export function assignment(word: string, write: string): readonly [name: string, value: string] {
  const at = word.indexOf('=');
  if (at < 1) throw new Refusal(`“${shown(word)}” was not understood; write ${write}.`);
  return [word.slice(0, at).trim(), word.slice(at + 1).trim()];
}
