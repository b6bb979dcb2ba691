/** Verdicts: a mark, always with its word, in a colour that only repeats it. */
import type { Verdict } from '../../engine/quantity/verdict.ts';
import type { Page, Style } from './page.ts';

const MARKS: Readonly<Record<Verdict, readonly [mark: string, style: Style]>> = {
  fits: ['●', 'green'],
  tight: ['◐', 'yellow'],
  fails: ['✕', 'red'],
  unknown: ['◌', 'cyan'],
};

export const sayVerdict = (page: Page, verdict: Verdict): string =>
  page.paint(MARKS[verdict][1], `${MARKS[verdict][0]} ${verdict}`);
