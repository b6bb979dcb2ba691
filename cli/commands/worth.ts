/** `fettle worth`: what may stop it, what it may cost, and whether that is worth it. */

import { type CostLine, type Worth, worthOf } from '../../engine/advice/index.ts';
import { sayMoney } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { type Page, pageOn } from '../print/page.ts';
import { padEnd, padStart, quoted } from '../print/text.ts';

const FROM = {
  entered: '',
  parts: 'from the parts',
  usual: 'usual value, a guess',
  none: 'not known',
} as const;
const LEVEL = { stops: 'STOPS IT', unknown: 'not known', close: 'close' } as const;
const INDENT = '    ';

export const worth: Command = {
  name: 'worth',
  summary: 'what may stop it, what it may cost, and whether that is worth it',
  usage: ['worth FILE [--json]'],
  about:
    'What stops it comes first. Costs are ranges; those nobody has entered stand at usual values, which are guesses and never enough for a yes. Enter yours: set FILE job.worth="4000 EUR" job.transport="150–250–400 EUR".',
  options: { json: { says: 'as JSON' } },
  examples: ['worth lathe.refit'],
  words: [1, 1],
  run: ({ io, words, has }) => {
    const file = openRefit(words[0]!);
    const worth = worthOf(file.refit);
    if (has('json')) io.out(`${JSON.stringify({ format: 'fettle-worth', version: 1, ...worth }, null, 2)}\n`);
    else print(pageOn(io), file.path, worth);
    return EXIT.fine;
  },
};

function print(page: Page, path: string, worth: Worth): void {
  page.prose(page.paint('bold', worth.sentence));
  page.heading('What may stop it');
  if (worth.stoppers.length === 0) page.prose('Nothing that was asked.');
  for (const { level, title, sentence, paths } of worth.stoppers) {
    page.prose(`${LEVEL[level]}: ${title}. ${sentence}`, '', INDENT);
    if (level === 'unknown')
      for (const each of paths)
        page.line(`${INDENT}fettle set ${quoted(path)} ${each} 'VALUE' --basis BASIS`);
  }
  page.heading('What it may cost');
  if (worth.asked) page.prose(`Price asked: ${sayMoney(worth.asked)}.`);
  const named = Math.max(...worth.lines.map(({ name }) => name.length));
  for (const line of worth.lines) page.line(row(line, named));
  page.prose(
    `${Math.round(100 * worth.contingency)} % is added for what was forgotten (policies.contingency).`,
  );
  if (worth.doubt.length > 0) page.heading('What doubt remains');
  for (const sentence of worth.doubt) page.prose(sentence, '', INDENT);
}

function row({ name, path, money, from, guess }: CostLine, width: number): string {
  const amounts = money
    ? [money.low, money.likely, money.high].map((each) => padStart(String(Math.round(each)), 6)).join('')
    : padStart('–', 18);
  const remark =
    from === 'entered' && guess
      ? 'entered as a guess'
      : guess || from !== 'usual'
        ? FROM[from]
        : 'sound, nothing';
  return `${padEnd(capital(name), width)}${amounts} ${padEnd(money?.currency ?? '', 4)} ${padEnd(path, 17)} ${remark}`;
}
