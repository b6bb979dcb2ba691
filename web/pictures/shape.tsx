/** A mark in a chart: the shape of its verdict, as everywhere, or an open square where nothing judges it. */
import type { Verdict } from '../../engine/quantity/verdict.ts';

export function Shape({ x, y, verdict }: { x: number; y: number; verdict: Verdict | undefined }) {
  const colour = `var(--${verdict ?? 'ink-soft'})`;
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle r="8" fill="var(--sheet)" />
      {verdict === 'fits' && <circle r="6" fill={colour} />}
      {verdict === 'tight' && (
        <>
          <circle r="5.4" fill="none" stroke={colour} strokeWidth="1.6" />
          <path d="M0 -5.4a5.4 5.4 0 0 1 0 10.8z" fill={colour} />
        </>
      )}
      {verdict === 'fails' && <path d="M-5 -5L5 5M5 -5L-5 5" stroke={colour} strokeWidth="3" />}
      {verdict === 'unknown' && (
        <circle r="5.6" fill="none" stroke={colour} strokeWidth="2" strokeDasharray="1.6 2.4" />
      )}
      {verdict === undefined && (
        <rect x="-4.5" y="-4.5" width="9" height="9" fill="none" stroke={colour} strokeWidth="1.8" />
      )}
    </g>
  );
}
