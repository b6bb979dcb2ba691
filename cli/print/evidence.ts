/** Bench methods and what came out of them, on a page. */

import type { Column, Entry, Method, Outcome, QuantityResult } from '../../engine/evidence/index.ts';
import { formatQuantity } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Page, Style } from './page.ts';
import { padEnd } from './text.ts';

const HANG = '      ';
const MARKS: Readonly<Record<Outcome['verdicts'][number]['level'], readonly [mark: string, style: Style]>> = {
  good: ['● good', 'green'],
  doubtful: ['◐ doubtful', 'yellow'],
  bad: ['✕ bad', 'red'],
  note: ['– note', 'dim'],
};

export function printMethods(page: Page, methods: readonly Method[]): void {
  const width = Math.max(...methods.map(({ id }) => id.length));
  for (const { id, purpose } of methods) page.prose(purpose, `${padEnd(id, width)}  `, ' '.repeat(width + 2));
}

/** What can hurt comes first. */
export function describeMethod(page: Page, method: Method): void {
  const { id, title, purpose, hazards, tools, steps, given, columns, least, settles } = method;
  page.prose(`${page.paint('bold', title)} (${id})`);
  page.prose(purpose);
  page.heading('Before you begin');
  for (const hazard of hazards) page.prose(`${page.paint('red', '!')} ${hazard}`, '  ', '    ');
  page.heading('Tools');
  for (const tool of tools) page.prose(`– ${capital(tool)}`, '  ', '    ');
  page.heading('Steps');
  steps.forEach((step, at) => {
    page.prose(`${at + 1}. ${step}`, '  ', '     ');
  });
  if (given.length > 0) page.heading('Typed once');
  const said = new Set<string>();
  for (const entry of given) {
    describeAsked(page, said.has(entry.help) ? { ...entry, help: '' } : entry, entry.usual);
    said.add(entry.help);
  }
  if (columns.length > 0)
    page.heading(
      least > 0
        ? `Readings, ${least} ${least === 1 ? 'row' : 'rows'} or more`
        : 'Readings, as many as there are',
    );
  for (const column of columns) describeAsked(page, column, undefined);
  if (settles.length > 0) {
    page.line();
    page.prose(`It can settle: ${settles.map(({ place, fact }) => `${place}.${fact}`).join(', ')}.`);
  }
}

function describeAsked(page: Page, asked: Entry | Column, usual: string | undefined): void {
  const what = {
    quantity: (): string =>
      asked.kind !== 'quantity' || asked.unit === '1' ? 'a plain number' : `in ${asked.unit}`,
    accuracy: (): string => 'such as 0.5 % + 2 digits',
    choice: (): string =>
      asked.kind === 'choice'
        ? `one of ${Object.entries(asked.options)
            .map(([key, says]) => (key === says ? key : `${key} (${says})`))
            .join(', ')}`
        : '',
  }[asked.kind]();
  const free = asked.optional ? ', may be left out' : usual === undefined ? '' : `, else ${usual}`;
  page.prose(`${asked.key}: ${asked.name}, ${what}${free}. ${asked.help}`, '  ', HANG);
}

export function printOutcome(page: Page, method: Method, outcome: Outcome): void {
  const { results, verdicts, candidates, questions, working } = outcome;
  page.prose(page.paint('bold', method.title));
  for (const result of results) {
    page.prose(`${result.name}: ${page.paint('bold', result.text)}`, '  ', HANG);
    if (result.kind === 'quantity' && result.parts.length > 0)
      page.prose(budgetOf(result), HANG, `${HANG}  `);
  }
  if (candidates && candidates.length > 0) {
    page.heading('What it could be');
    for (const { name, likely, why } of candidates)
      page.prose(`${likelihood(likely)}  ${name}: ${why}`, '  ', '         ');
  }
  if (verdicts.length > 0) page.heading('What it says');
  for (const { level, sentence } of verdicts) {
    const [mark, style] = MARKS[level];
    page.prose(`${page.paint(style, mark)}: ${sentence}`, '  ', HANG);
  }
  if (questions.length > 0) page.heading('To be looked at');
  for (const { sentence } of questions) page.prose(`? ${sentence}`, '  ', '    ');
  if (working.length > 0) page.heading('The working');
  for (const line of working) {
    page.prose(`${line.name}: ${line.plain}`, '  ', HANG);
    page.prose(line.plainWithNumbers, HANG);
    if (line.source) page.prose(page.paint('dim', `Source: ${line.source}`), HANG);
  }
}

const likelihood = (likely: number): string =>
  likely < 0.0005 ? ' <0.1 %' : `${(100 * likely).toFixed(1)} %`.padStart(7);

/** 'The ± holds …: scatter over the places 62 %, accuracy of the ammeter 30 %'. */
function budgetOf({ parts, factor, freedom }: QuantityResult): string {
  const shares = parts
    .filter(({ share }) => share >= 0.005)
    .sort((a, b) => b.share - a.share)
    .map(({ name, share }) => `${name} ${formatQuantity(share, '%', { digits: 2 })}`);
  const few =
    Number.isFinite(freedom) && freedom < 30
      ? `, ${factor.toFixed(2)} standard uncertainties for so few readings`
      : '';
  return `Where its doubt comes from: ${shares.join(', ')}${few}.`;
}
