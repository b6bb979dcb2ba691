/** `fettle pack` and `fettle unpack`: between a bare refit.json and a `.refit` file. */
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile, writeRefitFile } from '../files.ts';
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
    convert(openRefit(from), 'json', to, has('force'));
    pageOn(io).prose(`${to} now holds what stood in ${from}, and keeps a history from here on.`);
    return EXIT.fine;
  },
};

export const unpack: Command = {
  name: 'unpack',
  summary: 'takes the bare refit.json out of a .refit file',
  usage: ['unpack FILE.refit FILE.json [--force]'],
  about: 'History and photos stay behind in the .refit file.',
  options: FORCE,
  examples: ['unpack lathe.refit lathe.json'],
  words: [2, 2],
  run: ({ io, words, has }) => {
    const [from, to] = words as [string, string];
    const file = openRefit(from);
    convert(file, 'refit', to, has('force'));
    pageOn(io).prose(
      `${to} now holds the state alone; ${plural(file.edits.length, 'edit')} and ${plural(file.photos.size, 'photo')} stay behind in ${from}.`,
    );
    return EXIT.fine;
  },
};

function convert(file: RefitFile, from: RefitFile['form'], to: string, force: boolean): void {
  const names = { json: 'a bare refit.json', refit: 'a .refit file' };
  if (file.form !== from) throw new Refusal(`${shown(file.path)} is ${names[file.form]} already.`);
  if (to.trim() === '') throw new Refusal('The name of the file to write is empty.');
  const { refit } = file;
  writeRefitFile(
    { path: to, form: from === 'json' ? 'refit' : 'json', refit, edits: [], photos: new Map() },
    force,
  );
}
