/** `fettle new`: an empty refit with all its places. */
import { randomUUID } from 'node:crypto';
import { blankRefit } from '../../engine/refit/blank.ts';
import { LIMITS, type Refit, writeRefit } from '../../engine/refit/index.ts';
import { shown } from '../arguments.ts';
import { type Command, TO_OUT } from '../command.ts';
import { EXIT } from '../exit.ts';
import { writeRefitFile } from '../files.ts';
import { writeOut } from '../output.ts';
import { pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';
import { chainWords } from './show.ts';

const MACHINES: readonly Refit['machine'][] = ['lathe', 'mill', 'other'];

/** A file name that every system takes. */
const fileName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);

export const newRefitFile: Command = {
  name: 'new',
  summary: 'writes an empty refit in which everything is still unknown',
  usage: ['new lathe|mill|other AXIS… [--spindle] [--name TEXT] [--about TEXT] [--out FILE] [--force]'],
  about:
    'An axis is a letter, with a digit where there are two of them. A file that ends in .json, and “-” for the standard output, holds the state alone; any other is a .refit file, which keeps a history.',
  options: {
    spindle: { says: 'there is a spindle to refit as well; it is called S' },
    name: { takes: 'a name', says: 'what you call the machine' },
    about: { takes: 'a text', says: 'a few words about it' },
    out: {
      takes: 'a file',
      writes: true,
      says: 'where to write; else the name or kind of the machine, with .refit',
    },
    force: { says: 'write over a file that is there' },
  },
  examples: [
    "new lathe X Z --name 'Old lathe'",
    'new lathe X Z --spindle',
    'new mill X Y Z --out mill.refit',
  ],
  words: [1],
  run: ({ io, words, text, has }) => {
    const [kind, ...axes] = words as [string, ...string[]];
    const machine = MACHINES.find((each) => each === kind.trim().toLowerCase());
    if (!machine)
      throw new Refusal(
        `“${shown(kind)}” is no kind of machine; write ${MACHINES.join(', ')}, then its axes.`,
      );
    const name = (text('name') ?? `My ${machine === 'other' ? 'machine' : machine}`).trim();
    if (name === '' || name.length > LIMITS.name)
      throw new Refusal(`A machine needs a name of 1 to ${LIMITS.name} characters.`);
    const path = text('out') ?? `${fileName(text('name') ?? '') || machine}.refit`;
    if (path.trim() === '') throw new Refusal('The name of the file after --out is empty.');
    const refit = need(
      blankRefit({
        id: randomUUID(),
        name,
        about: text('about') ?? '',
        machine,
        axes,
        spindle: has('spindle'),
      }),
    );
    if (path === TO_OUT) {
      writeOut(io, path, writeRefit(refit), false);
      return EXIT.fine;
    }
    const form = path.toLowerCase().endsWith('.json') ? 'json' : 'refit';
    writeRefitFile({ path, form, refit, edits: [], photos: new Map() }, has('force'));
    const page = pageOn(io);
    page.prose(`${path} now holds “${name}” with ${chainWords(refit)}. Nothing is known of it yet.`);
    page.prose('To see what to find out first:');
    page.line(`    fettle next ${quoted(path)}`);
    return EXIT.fine;
  },
};
