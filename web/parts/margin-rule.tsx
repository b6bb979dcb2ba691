/** The margin rule: a short logarithmic scale from ½ to 4, a line at 1, a bar to the margin, a dot, a whisker for the doubt. */

import type { Finding } from '../../engine/assess/finding.ts';
import { marginText } from '../../engine/assess/say-margin.ts';
import type { Verdict } from '../../engine/quantity/verdict.ts';

const WIDTH = 160;
const MIDDLE = 9;
const LEAST = 0.5;
const MOST = 4;

const place = (margin: number): number => {
  const clamped = Math.min(MOST, Math.max(LEAST, margin));
  return 6 + ((Math.log(clamped) - Math.log(LEAST)) / Math.log(MOST / LEAST)) * (WIDTH - 12);
};

interface Props {
  readonly margin?: number | null | undefined;
  readonly range?: readonly [number, number] | undefined;
  readonly verdict: Verdict;
}

/**
 * Always beside its number, so it is hidden from readers of the screen. Dotted while the margin is unknown; nothing is drawn,
 * but its place is kept, where an answer has no margin: a yes or no, or nothing asked.
 */
export function MarginRule({ margin, range, verdict }: Props) {
  if (typeof margin !== 'number' && verdict !== 'unknown')
    return <span className="rule" aria-hidden="true" />;
  const colour = `var(--${verdict})`;
  const one = place(1);
  const at = typeof margin === 'number' ? place(margin) : undefined;
  return (
    <svg className="rule" viewBox={`0 0 ${WIDTH} 18`} preserveAspectRatio="none" aria-hidden="true">
      <line
        x1="6"
        x2={WIDTH - 6}
        y1={MIDDLE}
        y2={MIDDLE}
        stroke="var(--ink-soft)"
        strokeOpacity={at === undefined ? 1 : 0.35}
        strokeWidth="1.2"
        strokeDasharray={at === undefined ? '2 4' : undefined}
      />
      {[0.5, 2, 4].map((tick) => (
        <line
          key={tick}
          x1={place(tick)}
          x2={place(tick)}
          y1={MIDDLE - 3}
          y2={MIDDLE + 3}
          stroke="var(--ink-soft)"
          strokeOpacity="0.5"
        />
      ))}
      {at !== undefined && range && (
        <line
          x1={place(range[0])}
          x2={place(range[1])}
          y1={MIDDLE}
          y2={MIDDLE}
          stroke={colour}
          strokeWidth="1.5"
        />
      )}
      {at !== undefined && <line x1={one} x2={at} y1={MIDDLE} y2={MIDDLE} stroke={colour} strokeWidth="4" />}
      <line x1={one} x2={one} y1="1" y2="17" stroke="var(--ink)" strokeWidth="1.8" />
      {at !== undefined && typeof margin === 'number' && <End at={at} margin={margin} colour={colour} />}
    </svg>
  );
}

/** A dot, or an arrow where the margin lies beyond the scale. */
function End({ at, margin, colour }: { at: number; margin: number; colour: string }) {
  if (margin > MOST)
    return <path d={`M${at - 5} ${MIDDLE - 5}L${at + 5} ${MIDDLE}L${at - 5} ${MIDDLE + 5}z`} fill={colour} />;
  if (margin < LEAST)
    return <path d={`M${at + 5} ${MIDDLE - 5}L${at - 5} ${MIDDLE}L${at + 5} ${MIDDLE + 5}z`} fill={colour} />;
  return <circle cx={at} cy={MIDDLE} r="4.5" fill={colour} />;
}

/** '×0.86', 'unknown', 'nothing asked', or the word for a yes-or-no. */
export function sayMargin(finding: Pick<Finding, 'verdict' | 'margin'>): string {
  const { verdict, margin } = finding;
  if (verdict === 'unknown') return 'unknown';
  if (margin === null) return '–';
  if (margin === undefined) return { fits: 'yes', tight: 'nearly', fails: 'no' }[verdict];
  return margin >= 100 ? '×>99' : `×${marginText(margin)}`;
}
