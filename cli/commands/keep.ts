/** `fettle keep`: keep, repair or replace each part. */
import {
  adviseOn,
  type Bill,
  type Change,
  type PartAdvice,
  type Subject,
  subjects,
} from '../../engine/advice/index.ts';
import { assess, marginText } from '../../engine/assess/index.ts';
import { sayMoney } from '../../engine/quantity/index.ts';
import type { Refit } from '../../engine/refit/index.ts';
import { target } from '../../engine/refit/set.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { type Page, pageOn } from '../print/page.ts';
import { plural, quoted } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';

export const ANSWER = {
  keep: 'keep it',
  buy: 'to be bought',
  repair: 'repair it',
  replace: 'replace it',
  'find-out': 'find out first',
} as const;

const LEVEL = { good: 'passes', doubtful: 'doubtful', bad: 'does not pass', note: 'note' } as const;
const INDENT = '    ';

export const keep: Command = {
  name: 'keep',
  summary: 'keep, repair or replace: what speaks for each, part by part',
  usage: ['keep FILE [X.motor] [--json]'],
  about:
    'With a place, everything that was weighed: tests, what the machine asks of the part, what it costs, and for every other option of the place which findings would change. Prices are facts: set FILE X.motor.price=0 X.motor.repairCost="80–120 EUR".',
  options: { json: { says: 'as JSON' } },
  examples: ['keep lathe.refit', 'keep lathe.refit X.motor'],
  words: [1, 2],
  run: ({ io, words, has }) => {
    const file = openRefit(words[0]!);
    const assessment = assess(file.refit);
    const all = subjects(assessment);
    const wanted = words[1] === undefined ? all : [choose(file.refit, all, words[1])];
    const advice = wanted.map((subject) => adviseOn(assessment, subject));
    if (has('json')) {
      io.out(`${JSON.stringify({ format: 'fettle-keep', version: 1, parts: advice }, null, 2)}\n`);
      return EXIT.fine;
    }
    const page = pageOn(io);
    if (words[1] !== undefined) printWhole(page, file.path, advice[0]!);
    else for (const each of advice) printShort(page, each);
    if (advice.length === 0) page.prose('There is no part to decide about yet.');
    return EXIT.fine;
  },
};

function choose(refit: Refit, all: readonly Subject[], text: string): Subject {
  const { chain, place, fact, part } = need(target(refit, text));
  const at = [chain, place].filter((step) => step !== null).join('.');
  const found = fact === undefined && part === undefined ? all.find((each) => each.at === at) : undefined;
  if (!found)
    throw new Refusal(
      `There is no part to decide about at “${shown(text)}”; there are ${all.map((each) => each.at).join(', ') || 'none yet'}.`,
    );
  return found;
}

function printShort(page: Page, advice: PartAdvice): void {
  page.prose(
    `${page.paint('bold', `${advice.at}: ${ANSWER[advice.recommendation]}.`)} ${advice.sentence}`,
    '',
    INDENT,
  );
}

function printWhole(page: Page, path: string, advice: PartAdvice): void {
  page.prose(page.paint('bold', `${advice.at}: ${advice.name}`));
  printShort(page, advice);
  page.prose(`Condition: ${advice.condition ?? 'nobody has noted it'}. ${advice.notes}`);
  page.heading('Reasons');
  for (const { sentence, source } of advice.reasons) page.prose(`– ${sentence} (${source})`, '', INDENT);
  if (advice.tests.length > 0) page.heading('Tests');
  for (const { title, level, sentence } of advice.tests)
    page.prose(`${title}: ${LEVEL[level]}. ${sentence}`, '', INDENT);
  page.heading('What the machine asks of it');
  if (advice.asks.length === 0) page.prose('Nothing is asked of it by itself.');
  for (const { title, verdict, margin } of advice.asks)
    page.prose(
      `${verdict}: ${title}${typeof margin === 'number' ? ` (×${marginText(margin)})` : ''}`,
      '',
      INDENT,
    );
  page.heading('What keeping it costs');
  printBill(page, path, advice.keeping);
  page.heading('What else could be there');
  if (advice.swaps.length === 0)
    page.prose(`Nothing else is on offer. Add one: fettle option ${quoted(path)} ${advice.at} NAME`);
  for (const swap of advice.swaps) {
    page.prose(
      `${page.paint('bold', swap.says)}: mends ${plural(swap.mends, 'finding')}, breaks ${swap.breaks}, leaves ${swap.loses} unknown that ${swap.loses === 1 ? 'was' : 'were'} known.`,
    );
    for (const change of swap.changes) page.prose(sayChange(change), INDENT, `${INDENT}${INDENT}`);
    printBill(page, path, swap.bill);
  }
  if (advice.doubt.length > 0) page.heading('What doubt remains');
  for (const sentence of advice.doubt) page.prose(sentence, '', INDENT);
}

const sayMargin = (margin: number | null | undefined): string =>
  typeof margin === 'number' ? ` (×${marginText(margin)})` : '';

const sayChange = ({ title, before, after, marginBefore, marginAfter }: Change): string =>
  `${title}: ${before ?? 'not asked'}${sayMargin(marginBefore)} → ${after ?? 'not asked'}${sayMargin(marginAfter)}`;

function printBill(page: Page, path: string, bill: Bill): void {
  for (const { name, money } of bill.items)
    page.prose(`${name}: ${money ? sayMoney(money) : 'not known'}`, INDENT, `${INDENT}${INDENT}`);
  const unknown = bill.items.find(({ money }) => !money);
  if (bill.total && bill.complete) page.prose(`Together: ${sayMoney(bill.total)}.`, INDENT);
  else if (bill.items.every(({ money }) => money) && bill.items.length > 0)
    page.prose('The prices are in different currencies and are not added.', INDENT);
  if (unknown) page.line(`${INDENT}fettle set ${quoted(path)} ${unknown.path} '80–120 EUR'`);
}
