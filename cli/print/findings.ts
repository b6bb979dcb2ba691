/** Findings as a table, or one under the other where the terminal is narrow. */
import { type Amount, type Finding, list, sayPath } from '../../engine/assess/index.ts';
import { formatNumber, formatQuantity } from '../../engine/quantity/index.ts';
import { marginRule, RULE_SCALE, sayMargin } from './margin.ts';
import type { Page } from './page.ts';
import { padEnd, padStart, widthOf } from './text.ts';
import { sayVerdict } from './verdict.ts';

/** A number with its doubt, two standard uncertainties either way. */
export const sayAmount = (amount: Amount | undefined): string =>
  amount ? formatQuantity(amount.value, amount.unit, { half: 2 * amount.doubt }) : '–';

const INDENT = '    ';
/** A chance nearer to one than this says nothing more than the margin does. */
const CERTAIN = 0.995;

interface Column {
  readonly title: string;
  readonly right?: boolean;
  readonly cell: (finding: Finding) => string;
}

function columns(page: Page): Column[] {
  return [
    { title: 'verdict', cell: (finding) => sayVerdict(page, finding.verdict) },
    { title: 'finding', cell: (finding) => page.paint('bold', finding.title) },
    { title: 'asked', right: true, cell: ({ asked }) => sayAmount(asked) },
    { title: 'there is', right: true, cell: ({ there }) => sayAmount(there) },
    { title: 'margin', right: true, cell: sayMargin },
    { title: RULE_SCALE, cell: marginRule },
    { title: 'basis', cell: ({ basis }) => basis ?? '–' },
  ];
}

/** Each finding of a group, with its sentence under it. */
export function printFindings(page: Page, findings: readonly Finding[]): void {
  const rule = findings.some((finding) => marginRule(finding) !== '');
  const all = columns(page)
    .map((column) => {
      const cells = findings.map((finding) => column.cell(finding));
      const width = Math.max(widthOf(column.title), ...cells.map(widthOf));
      return { ...column, width, empty: cells.every((cell) => cell === '–') };
    })
    .filter(({ empty, title }) => !empty && (rule || title !== RULE_SCALE));
  const fits = (columns: typeof all): boolean =>
    columns.reduce((sum, { width }) => sum + width + 2, -2) <= page.width;
  const kept = fits(all) ? all : all.filter(({ title }) => title !== RULE_SCALE);
  if (!fits(kept)) {
    printStacked(page, findings);
    return;
  }
  const row = (say: (column: Column) => string): string =>
    kept.map((column) => (column.right ? padStart : padEnd)(say(column), column.width)).join('  ');
  page.line(
    page.paint(
      'dim',
      row(({ title }) => title),
    ),
  );
  for (const finding of findings) {
    page.line(row(({ cell }) => cell(finding)));
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

/** 'It rests on a guess: the root diameter of the X screw.' */
export function sayGuesses({ guesses }: Pick<Finding, 'guesses'>): string | undefined {
  if (guesses.length === 0) return undefined;
  const named = guesses.slice(0, 3).map(sayPath);
  const rest = guesses.length - named.length;
  const what = list(rest > 0 ? [...named, `${rest} more`] : named);
  return guesses.length === 1 ? `It rests on a guess: ${what}.` : `It rests on guesses: ${what}.`;
}

/** 'It fits with a chance of 83 %.' */
export function sayChance({ chance, verdict }: Pick<Finding, 'chance' | 'verdict'>): string | undefined {
  if (chance === undefined || chance >= CERTAIN) return undefined;
  const percent = chance * 100;
  const text =
    percent < 0.1 ? 'less than 0.1 %' : `${formatNumber(percent, percent > 99 || percent < 10 ? 3 : 2)} %`;
  return `With what is doubtful, the chance that it ${verdict === 'fails' ? 'fits all the same' : 'fits'} is ${text}.`;
}
