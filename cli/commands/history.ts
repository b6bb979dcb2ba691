/** `fettle history`: who changed what, and when. */
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { pageOn } from '../print/page.ts';
import { Refusal } from '../refusal.ts';

export const history: Command = {
  name: 'history',
  summary: 'lists the edits of a .refit file, oldest first',
  usage: ['history FILE'],
  about: 'A bare refit.json has no history.',
  options: {},
  examples: ['history lathe.refit'],
  words: [1, 1],
  run: ({ io, words }) => {
    const { form, edits, path } = openRefit(words[0]!);
    if (form === 'json')
      throw new Refusal(
        `${path} holds the state alone; only a .refit file keeps a history. “fettle pack” makes one.`,
      );
    const page = pageOn(io);
    if (edits.length === 0) page.prose('Nothing has been edited yet.');
    for (const { number, when, who, says } of edits)
      page.prose(`${number}. ${when}, ${who}: ${says}`, '', '    ');
    return EXIT.fine;
  },
};
