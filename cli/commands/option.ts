/** `fettle option` and `fettle choose`: the parts that could fill a place, and which of them does. */

import { LIMITS, type Refit } from '../../engine/refit/index.ts';
import { addOption, set, type Target, target } from '../../engine/refit/set.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';

/** A place, without a fact or an option behind it. */
function placeIn(refit: Refit, text: string): Target {
  const where = need(target(refit, text));
  if (where.fact === undefined && where.part === undefined) return where;
  throw new Refusal(`“${shown(text)}” is more than a place; write one like X.motor or supply.`);
}

export const option: Command = {
  name: 'option',
  summary: 'adds another part that could fill a place',
  usage: ['option FILE PLACE NAME [--choose]'],
  about:
    'The new part has no facts yet. Its facts are set with PLACE@PART, as in X.motor@x-motor-2.resistance, also while another part is chosen.',
  options: { choose: { says: 'put it in the place at once' } },
  examples: ["option lathe.refit X.motor 'Motor from the shelf'"],
  words: [3, 3],
  run: ({ io, words, has }) => {
    const [path, at, name] = words as [string, string, string];
    const file = openRefit(path);
    const where = placeIn(file.refit, at);
    const called = name.trim();
    if (called === '' || called.length > LIMITS.name)
      throw new Refusal(`A part needs a name of 1 to ${LIMITS.name} characters.`);
    const { part, changes } = addOption(file.refit, where, called, has('choose'));
    const place = [where.chain, where.place].filter((step) => step !== null).join('.');
    record(io, file, changes, [`Its facts are set at ${place}@${part.id}.`]);
    return EXIT.fine;
  },
};

export const choose: Command = {
  name: 'choose',
  summary: 'puts one of its parts in a place',
  usage: ['choose FILE PLACE PART'],
  about:
    'PART is the id or the name of an option of the place; “none” when the machine has nothing there, “unknown” while that is not known.',
  options: {},
  examples: ['choose lathe.refit X.motor x-motor-2', 'choose lathe.refit X.brake none'],
  words: [3, 3],
  run: ({ io, words }) => {
    const [path, at, wanted] = words as [string, string, string];
    const file = openRefit(path);
    placeIn(file.refit, at);
    record(io, file, need(set(file.refit, at, wanted)).changes);
    return EXIT.fine;
  },
};
