/** A margin as a number and as a place on a rule. */
import { type Finding, marginText } from '../../engine/assess/index.ts';

/** '×0.86', or '–' where there is none. */
export function sayMargin({ margin }: Pick<Finding, 'margin'>): string {
  return margin === undefined || margin === null ? '–' : `×${marginText(margin)}`;
}

const LOW = 0.5;
const HIGH = 4;
export const RULE_WIDTH = 16;
/** Even in the logarithm: ½, 1, 2 and 4 stand five apart. */
export const RULE_SCALE = '½    1    2    4';

const at = (margin: number): number => {
  const inside = Math.min(HIGH, Math.max(LOW, margin));
  return Math.round((Math.log2(inside / LOW) / Math.log2(HIGH / LOW)) * (RULE_WIDTH - 1));
};

/** The margin on a rule from a half to four: '|' at 1, '●' at the margin, '━' where it lies with 95 % confidence. */
export function marginRule({ margin, marginRange }: Pick<Finding, 'margin' | 'marginRange'>): string {
  if (margin === undefined || margin === null) return '';
  const marks = Array.from({ length: RULE_WIDTH }, () => '─');
  if (marginRange) marks.fill('━', at(marginRange[0]), at(marginRange[1]) + 1);
  const one = at(1);
  marks[one] = '|';
  // A margin next to one still stands on its own side of it.
  marks[margin < 1 ? Math.min(at(margin), one - 1) : margin > 1 ? Math.max(at(margin), one + 1) : one] = '●';
  return marks.join('');
}
