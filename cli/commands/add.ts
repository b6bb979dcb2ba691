/** `fettle add`: gives a refit that is there one more axis or spindle. */

import { sayChain } from '../../engine/assess/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { addChain, SPINDLE } from '../../engine/refit/blank.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { changed, openRefit, writeRefitFile } from '../files.ts';
import { pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';

const KINDS = ['axis', 'spindle'] as const;

export const add: Command = {
  name: 'add',
  summary: 'gives a refit a spindle, or one more axis',
  usage: ['add FILE spindle [NAME]', 'add FILE axis NAME'],
  about:
    'All its places are there then, and nothing in them is known. A name is a letter, with a digit where there are two; the spindle is S unless you say otherwise.',
  options: {},
  examples: ['add lathe.refit spindle', 'add lathe.refit axis Y'],
  words: [2, 3],
  run: ({ io, words }) => {
    const [path, wanted, name] = words as [string, string, string | undefined];
    const kind = KINDS.find((each) => each === wanted.trim().toLowerCase());
    if (!kind) throw new Refusal(`“${shown(wanted)}” cannot be added; write spindle, or axis and its name.`);
    if (kind === 'axis' && name === undefined)
      throw new Refusal('Which axis? Write its name after it, such as Y.');
    const file = openRefit(path);
    const changes = need(addChain(file.refit, kind, name ?? SPINDLE));
    const after = changed(file, changes, io);
    writeRefitFile(after, true);
    const chain = after.refit.chains.find(({ id }) => !file.refit.chains.some((old) => old.id === id))!;
    const page = pageOn(io);
    page.prose(
      `${capital(sayChain(chain))} added. Nothing is known of it yet; its places are ${Object.keys(
        chain.places,
      )
        .map((place) => `${chain.id}.${place}`)
        .join(', ')}.`,
    );
    page.prose('To see what to find out first:');
    page.line(`    fettle next ${quoted(path)}`);
    return EXIT.fine;
  },
};
