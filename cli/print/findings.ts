/** Findings as a table, or one under the other where the terminal is narrow. */
import { type Amount, type Finding, sayDoubted, sayGuesses } from '../../engine/assess/index.ts';
import { formatNumber } from '../../engine/quantity/index.ts';
import { marginRule, RULE_SCALE, sayMargin } from './margin.ts';
import type { Page } from './page.ts';
import { padEnd, padStart, widthOf, wrap } from './text.ts';
import { sayVerdict } from './verdict.ts';

/** A number with its doubt, two standard uncertainties either way. */
export const sayAmount = (amount: Amount | undefined): string => (amount ? sayDoubted(amount) : '–');

const INDENT = '    ';
/** A chance nearer to one than this says nothing more than the margin does. */
const CERTAIN = 0.995;

/** A title narrower than this would be broken into single words. */
const NARROWEST_TITLE = 22;
const GAP = '  ';

interface Column {
  readonly title: string;
  readonly right?: boolean;
  readonly cell: (finding: Finding) => string;
}

const TITLE: Column = { title: 'finding', cell: ({ title }) => title };
const RULE: Column = { title: RULE_SCALE, cell: marginRule };

const columns = (page: Page): Column[] => [
  { title: 'verdict', cell: (finding) => sayVerdict(page, finding.verdict) },
  TITLE,
  { title: 'asked', right: true, cell: ({ asked }) => sayAmount(asked) },
  { title: 'there is', right: true, cell: ({ there }) => sayAmount(there) },
  { title: 'margin', right: true, cell: sayMargin },
  RULE,
  { title: 'basis', cell: ({ basis }) => basis ?? '–' },
];

type Measured = Column & { readonly width: number };

/** Columns that say something, the title as narrow as the page asks; undefined where they do not fit beside each other. */
function fitted(page: Page, findings: readonly Finding[], withRule: boolean): Measured[] | undefined {
  const measured = columns(page).flatMap((column) => {
    const cells = findings.map(column.cell);
    const empty = cells.every((cell) => cell === '–' || cell === '');
    if (empty || (column.title === RULE.title && !withRule)) return [];
    return [{ ...column, width: Math.max(widthOf(column.title), ...cells.map(widthOf)) }];
  });
  const total = measured.reduce((sum, { width }) => sum + width + GAP.length, -GAP.length);
  const own = measured.find(({ title }) => title === TITLE.title)?.width ?? 0;
  const left = Math.min(own, own + page.width - total);
  if (left < Math.min(own, NARROWEST_TITLE)) return undefined;
  return measured.map((column) => (column.title === TITLE.title ? { ...column, width: left } : column));
}

/** Each finding of a group, with its sentence under it. */
export function printFindings(page: Page, findings: readonly Finding[]): void {
  const kept = fitted(page, findings, true) ?? fitted(page, findings, false);
  if (!kept) {
    printStacked(page, findings);
    return;
  }
  const row = (say: (column: Measured) => string): string =>
    kept.map((column) => (column.right ? padStart : padEnd)(say(column), column.width)).join(GAP);
  const header = row(({ title }) => title);
  page.line(page.paint('dim', header));
  const width = kept.find(({ title }) => title === TITLE.title)?.width ?? page.width;
  for (const finding of findings) {
    const [first = '', ...rest] = wrap(finding.title, width).map((text) => page.paint('bold', text));
    page.line(row((column) => (column.title === TITLE.title ? first : column.cell(finding))));
    for (const text of rest) page.line(row((column) => (column.title === TITLE.title ? text : '')));
    printSentences(page, finding);
  }
}

function printStacked(page: Page, findings: readonly Finding[]): void {
  for (const finding of findings) {
    page.prose(`${sayVerdict(page, finding.verdict)}  ${page.paint('bold', finding.title)}`, '', INDENT);
    const numbers = [
      finding.asked && `asked ${sayAmount(finding.asked)}`,
      finding.there && `there is ${sayAmount(finding.there)}`,
      typeof finding.margin === 'number' && `margin ${sayMargin(finding)}`,
      finding.basis && `basis ${finding.basis}`,
    ].filter((each) => typeof each === 'string');
    if (numbers.length > 0) page.prose(numbers.join(' · '), INDENT);
    printSentences(page, finding);
  }
}

function printSentences(page: Page, finding: Finding): void {
  const notes = [sayGuesses(finding), sayChance(finding)].filter((each) => each !== undefined);
  page.prose([`${finding.id}: ${finding.sentence}`, ...notes].join(' '), INDENT);
}

/** 'It fits with a chance of 83 %.' */
export function sayChance({ chance, verdict }: Pick<Finding, 'chance' | 'verdict'>): string | undefined {
  if (chance === undefined || chance >= CERTAIN) return undefined;
  const percent = chance * 100;
  const text = percent < 0.1 ? 'less than 0.1 %' : `${formatNumber(percent, percent > 99 ? 3 : 2)} %`;
  return `With what is doubtful, the chance that it ${verdict === 'fails' ? 'fits all the same' : 'fits'} is ${text}.`;
}
