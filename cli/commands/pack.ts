/** `fettle pack` and `fettle unpack`: between a bare refit.json and a `.refit` file. */

import { writeRefit } from '../../engine/refit/index.ts';
import { shown } from '../arguments.ts';
import { type Command, TO_OUT } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile, writeRefitFile } from '../files.ts';
import { writeOut } from '../output.ts';
import { pageOn } from '../print/page.ts';
import { plural } from '../print/text.ts';
import { Refusal } from '../refusal.ts';

const FORCE = { force: { says: 'write over a file that is there' } };

export const pack: Command = {
  name: 'pack',
  summary: 'makes a .refit file of a bare refit.json',
  usage: ['pack FILE.json FILE.refit [--force]'],
  about: 'The .refit file begins with an empty history; from then on every change is kept in it.',
  options: FORCE,
  examples: ['pack lathe.json lathe.refit'],
  words: [2, 2],
  run: ({ io, words, has }) => {
    const [from, to] = words as [string, string];
    if (to === TO_OUT)
      throw new Refusal('A .refit file is no text, so it does not go to the standard output; name a file.');
    convert(openRefit(from), 'json', to, has('force'));
    pageOn(io).prose(`${to} now holds what stood in ${from}, and keeps a history from here on.`);
    return EXIT.fine;
  },
};

export const unpack: Command = {
  name: 'unpack',
  summary: 'takes the bare refit.json out of a .refit file',
  usage: ['unpack FILE.refit FILE.json [--force]'],
  about:
    'History and photos stay behind in the .refit file. With “-” for FILE.json the state goes to the standard output.',
  options: FORCE,
  examples: ['unpack lathe.refit lathe.json'],
  words: [2, 2],
  run: ({ io, words, has }) => {
    const [from, to] = words as [string, string];
    const file = openRefit(from);
    if (to === TO_OUT) {
      sameForm(file, 'refit');
      writeOut(io, to, writeRefit(file.refit), false);
      return EXIT.fine;
    }
    convert(file, 'refit', to, has('force'));
    pageOn(io).prose(
      `${to} now holds the state alone; ${plural(file.edits.length, 'edit')} and ${plural(file.photos.size, 'photo')} stay behind in ${from}.`,
    );
    return EXIT.fine;
  },
};

const NAMES = { json: 'a bare refit.json', refit: 'a .refit file' };

function sameForm(file: RefitFile, from: RefitFile['form']): void {
  if (file.form !== from) throw new Refusal(`${shown(file.path)} is ${NAMES[file.form]} already.`);
}

function convert(file: RefitFile, from: RefitFile['form'], to: string, force: boolean): void {
  sameForm(file, from);
  if (to.trim() === '') throw new Refusal('The name of the file to write is empty.');
  const { refit } = file;
  writeRefitFile(
    { path: to, form: from === 'json' ? 'refit' : 'json', refit, edits: [], photos: new Map() },
    force,
  );
}
