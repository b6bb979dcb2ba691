/** What the words of `fettle stop` change in the circuit. */
import {
  addElement,
  cutWire,
  EMPTY_CIRCUIT,
  joinTerminals,
  removeElement,
  setPlace,
  wholeCircuit,
} from '../engine/circuit/stop/index.ts';
import type { StopCircuit } from '../engine/refit/index.ts';
import { shown } from './arguments.ts';
import { refuseSlip } from './ask-back.ts';
import { need, Refusal } from './refusal.ts';

export interface StopWords {
  /** 'K9=relay' */
  readonly add: string | undefined;
  readonly remove: string | undefined;
  readonly cut: string | undefined;
  /** 'K1.linked=yes', or two terminals and perhaps 'cable=W1'. */
  readonly words: readonly string[];
  readonly anyway: boolean;
}

/** Throws a Refusal that names the word; the circuit that comes back can be looked through. */
export function editedStop(
  circuit: StopCircuit | null,
  { add, remove, cut, words, anyway }: StopWords,
): StopCircuit {
  let now = circuit ?? EMPTY_CIRCUIT;
  if (cut !== undefined) now = need(cutWire(now, cut.trim()));
  if (remove !== undefined) now = need(removeElement(now, remove.trim()));
  if (add !== undefined) {
    const at = add.indexOf('=');
    if (at < 0) throw new Refusal(`“${shown(add)}” has no “=”; write a name and a kind, such as K9=relay.`);
    now = need(addElement(now, add.slice(0, at).trim(), add.slice(at + 1).trim()));
  }
  const [from, to] = words;
  if (from !== undefined && to !== undefined && !from.includes('=') && !to.includes('=')) {
    const [cable, ...rest] = words.slice(2);
    if (rest.length > 0 || (cable !== undefined && !cable.startsWith('cable=')))
      throw new Refusal(
        `“${shown(rest[0] ?? cable!)}” is not understood; behind two terminals stands at most cable=….`,
      );
    now = need(joinTerminals(now, from, to, cable?.slice('cable='.length)));
  } else for (const word of words) now = setWord(now, word, anyway);
  return need(wholeCircuit(now));
}

function setWord(circuit: StopCircuit, word: string, anyway: boolean): StopCircuit {
  const at = word.indexOf('=');
  if (at < 0)
    throw new Refusal(
      `“${shown(word)}” has no “=”; write PLACE=VALUE, such as K1.linked=yes or X.travel='210 mm', or two terminals to join.`,
    );
  const typed = need(setPlace(circuit, word.slice(0, at).trim(), word.slice(at + 1)));
  if (!anyway) refuseSlip(shown(word.slice(0, at)), typed.askBack);
  return typed.circuit;
}
