/** `fettle duty`: what is usually asked of such a machine, as guesses to confirm. */
import { isSize, proposeDuty, SIZES, sizeByWeight } from '../../engine/advice/index.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { record } from '../record.ts';
import { Refusal } from '../refusal.ts';

export const duty: Command = {
  name: 'duty',
  summary: 'proposes what to ask of each axis, by the machine’s size',
  usage: ['duty FILE --size bench|small|medium [--write] [--json]'],
  about: `Only what is not known yet is proposed, each as a guess to be confirmed. --write records all of it as one edit. Sizes: ${Object.entries(
    SIZES,
  )
    .map(([id, says]) => `${id} (${says})`)
    .join('; ')}.`,
  options: {
    size: {
      takes: 'bench, small or medium',
      says: 'how large the machine is; else by its weight (job.weight)',
    },
    write: { says: 'record the proposal' },
    json: { says: 'as JSON' },
  },
  examples: ['duty lathe.refit --size small', 'duty lathe.refit --size small --write'],
  words: [1, 1],
  run: ({ io, words, text, has }) => {
    const file = openRefit(words[0]!);
    const asked = text('size')?.trim().toLowerCase() ?? sizeByWeight(file.refit);
    if (asked === undefined)
      throw new Refusal(`Say how large the machine is: --size ${Object.keys(SIZES).join(', --size ')}.`);
    if (!isSize(asked))
      throw new Refusal(`“${shown(asked)}” is no size; there are ${Object.keys(SIZES).join(', ')}.`);
    const proposal = proposeDuty(file.refit, asked);
    if (has('json')) {
      const { size, facts, notes } = proposal;
      io.out(`${JSON.stringify({ format: 'fettle-duty', version: 1, size, facts, notes }, null, 2)}\n`);
      if (!has('write')) return EXIT.fine;
    }
    const page = pageOn(io);
    if (!has('json')) {
      page.prose(
        `Usual for a ${asked} ${file.refit.machine === 'other' ? 'machine' : file.refit.machine}: ${SIZES[asked]}.`,
      );
      for (const { path, text: value, name, source } of proposal.facts)
        page.prose(`${path} ${value}: ${name} (${source})`, '', '    ');
      if (proposal.facts.length === 0) page.prose('Everything of this is entered already.');
      for (const note of proposal.notes) page.prose(note, '', '    ');
    }
    if (has('write')) {
      if (!has('json')) page.line();
      record(has('json') ? { ...io, out: io.err } : io, file, proposal.changes);
    } else if (proposal.facts.length > 0) {
      page.line();
      page.prose('Nothing is written yet. To record all of it as guesses, one edit:');
      page.line(`    fettle duty ${quoted(file.path)} --size ${asked} --write`);
    }
    return EXIT.fine;
  },
};
