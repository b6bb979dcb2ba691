/** `fettle set`: records facts, places and policies as a person types them. */
import { setPath } from '../../engine/assess/index.ts';
import { BASES } from '../../engine/quantity/index.ts';
import { applyEdit, type Change, type Refit } from '../../engine/refit/index.ts';
import { readBasis, type SetOptions } from '../../engine/refit/set.ts';
import { shown } from '../arguments.ts';
import { ANYWAY, refuseSlip } from '../ask-back.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';
import { settingsOf } from '../settings.ts';

export const set: Command = {
  name: 'set',
  summary: 'records facts as you type them, and says what they change',
  usage: [
    'set FILE PATH VALUE [--basis BASIS] [--note TEXT] [--anyway]',
    'set FILE PATH=VALUE … [--basis BASIS] [--note TEXT] [--anyway]',
  ],
  about:
    'PATH is axis, place and fact (X.motor.resistance), place and fact (supply.secondary), a place alone (X.brake: fitted, none, unknown or one of its parts), a fact of a part that is not chosen (X.motor@x-motor-2.resistance), or a policy (policies.whirl; “usual” takes it back). VALUE is a number with its unit and, where there is doubt, ± and how much; “unknown” forgets a fact. Several settings stand or fall together. What lies far outside what is usual is asked back, and not recorded without --anyway.',
  options: {
    basis: { takes: 'a basis', says: `where it comes from: ${BASES.join(', ')}; else it counts as a guess` },
    ...ANYWAY,
    note: { takes: 'a text', says: 'where it was read, who told it, how it was measured' },
  },
  examples: [
    "set lathe.refit X.motor.resistance '1.32 ± 0.06 ohm' --basis measured",
    "set lathe.refit X.screw.lead='5 mm' X.screw.root='16.9 mm' --basis measured",
    'set lathe.refit X.brake none',
    'set lathe.refit policies.whirl 0.7',
  ],
  words: [2],
  run: ({ io, words, text, has }) => {
    const [path, ...rest] = words as [string, ...string[]];
    const options = optionsFrom(text('basis'), text('note'));
    const file = openRefit(path);
    const settings = settingsOf(file.refit, rest);
    let refit: Refit = file.refit;
    const changes: Change[] = [];
    const remarks: string[] = [];
    for (const [at, typed] of settings) {
      const setting = setPath(refit, at, typed, options);
      if (!setting.ok) {
        const { message, readings = [] } = setting.problem;
        throw new Refusal([`${shown(at)}: ${message}`, ...readings.map((each) => `– ${each}`)].join('\n'));
      }
      if (!has('anyway')) refuseSlip(shown(at), setting.value.askBack);
      refit = need(applyEdit(refit, setting.value));
      changes.push(...setting.value.changes);
      const about = settings.length > 1 ? `${at}: ` : '';
      remarks.push(
        ...setting.value.notes.map((note) => `${about}How it was read: ${note}.`),
        ...setting.value.questions.map((question) => `${about}Is this right? ${question}`),
      );
    }
    if (options.basis === undefined && changes.some(isNewGuess)) {
      remarks.push(
        `No basis was given, so it counts as a guess. If it is more, set it again with --basis and one of ${BASES.slice(0, -1).join(', ')}.`,
      );
    }
    record(io, file, changes, remarks);
    return EXIT.fine;
  },
};

const isNewGuess = (change: Change): boolean =>
  change.do === 'fact' && change.new?.basis === 'guess' && change.old?.basis !== 'guess';

function optionsFrom(basis: string | undefined, note: string | undefined): SetOptions {
  return {
    ...(basis === undefined ? {} : { basis: need(readBasis(basis)) }),
    ...(note === undefined ? {} : { note }),
  };
}
