/** A sheet on a page: what it asks for and works out, and its answers. */
import {
  explain,
  type Outcome,
  type Sheet,
  type SheetDescription,
  type SymbolDescription,
} from '../../engine/sheet/index.ts';
import type { SheetAnswer } from '../sheet-answer.ts';
import type { SheetGiven } from '../sheet-given.ts';
import type { Page } from './page.ts';
import { padEnd } from './text.ts';

const HANG = '      ';

export function printSheetList(page: Page, sheets: readonly Sheet[]): void {
  const width = Math.max(...sheets.map(({ id }) => id.length));
  for (const { id, title } of sheets) page.prose(title, `${padEnd(id, width)}  `, ' '.repeat(width + 2));
}

/** Names, units, formulas and sources of all symbols. */
export function describeOnPage(page: Page, { id, title, about, symbols }: SheetDescription): void {
  page.prose(`${page.paint('bold', title)} (${id})`);
  page.prose(about);
  const asked = symbols.filter(({ kind }) => kind === 'input' || kind === 'curve');
  const fixed = symbols.filter(({ kind }) => kind === 'constant');
  const found = symbols.filter(({ kind }) => kind === 'formula' || kind === 'procedure');
  if (asked.length > 0) page.heading('It asks for');
  for (const symbol of asked) page.prose(`${named(symbol)}${sayAsked(symbol)}`, '  ', HANG);
  if (fixed.length > 0) page.heading('Fixed numbers in it');
  for (const symbol of fixed)
    page.prose(`${named(symbol)}: ${symbol.value}. Source: ${symbol.source}`, '  ', HANG);
  page.heading('It works out');
  for (const symbol of found) {
    const { formula, reads, unit, says, note, source } = symbol;
    page.prose(`${named(symbol)}${unit === '1' ? '' : `, in ${unit}`}`, '  ', HANG);
    page.prose(formula ? `${symbol.plain} = ${formula.plain}` : `from ${reads.join(', ')}`, HANG);
    for (const text of [says, note]) if (text) page.prose(text, HANG);
    if (source) page.prose(page.paint('dim', `Source: ${source}`), HANG);
  }
}

const named = ({ key, plain, name }: SymbolDescription): string =>
  `${key}${plain === key ? '' : ` (${plain})`}: ${name}`;

function sayAsked({ kind, unit, over, domain, note }: SymbolDescription): string {
  const what =
    kind === 'curve' && over
      ? `, points as “… ${unit} at … ${over.unit}; …” over ${over.name}`
      : unit === '1'
        ? ', a plain number'
        : `, such as in ${unit}`;
  const limit = {
    any: '',
    positive: ', above zero',
    'not negative': ', not below zero',
    fraction: ', between 0 and 100 %',
  }[domain];
  return `${what}${limit}.${note ? ` ${note}` : ''}`;
}

/** Each answer with its doubt, the formula, and the formula with its numbers. */
export function printAnswers(
  page: Page,
  sheet: Sheet,
  given: SheetGiven,
  answers: readonly SheetAnswer[],
): void {
  page.prose(page.paint('bold', sheet.title));
  for (const { key, name, outcome, text, doubt } of answers) {
    const doubtful = text !== undefined && doubt === undefined ? ' (how doubtful cannot be told here)' : '';
    const answer = text === undefined ? sayNone(sheet, outcome) : page.paint('bold', text);
    page.prose(`${key}: ${name}: ${answer}${doubtful}`, '  ', HANG);
    const { plain, plainWithNumbers, source } = explain(sheet, key, given.values);
    page.prose(plain, HANG);
    if (text !== undefined) page.prose(plainWithNumbers, HANG);
    if (source) page.prose(page.paint('dim', `Source: ${source}`), HANG);
  }
}

function sayNone(sheet: Sheet, outcome: Outcome): string {
  if (outcome.state === 'undefined') return `no answer: ${outcome.reason}`;
  if (outcome.state === 'missing')
    return `not known yet; it needs ${outcome.needs.map((key) => `${key} (${sheet.symbols[key]?.name ?? key})`).join(', ')}`;
  return '–';
}
