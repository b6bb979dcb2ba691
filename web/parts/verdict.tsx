/** A verdict: shape, word and colour together. */
import type { Verdict } from '../../engine/quantity/verdict.ts';

export const WORD: Readonly<Record<Verdict, string>> = {
  fits: 'fits',
  tight: 'tight',
  fails: 'fails',
  unknown: 'unknown',
};

/** Full disc, half disc, cross, dotted ring. */
export function Mark({ verdict }: { verdict: Verdict }) {
  const colour = `var(--${verdict})`;
  return (
    <svg className="mark" viewBox="0 0 18 18" aria-hidden="true">
      {verdict === 'fits' && <circle cx="9" cy="9" r="7" fill={colour} />}
      {verdict === 'tight' && (
        <>
          <circle cx="9" cy="9" r="6.2" fill="none" stroke={colour} strokeWidth="1.8" />
          <path d="M9 2.8a6.2 6.2 0 0 1 0 12.4z" fill={colour} />
        </>
      )}
      {verdict === 'fails' && <path d="M3.5 3.5l11 11M14.5 3.5l-11 11" stroke={colour} strokeWidth="3" />}
      {verdict === 'unknown' && (
        <circle cx="9" cy="9" r="6.5" fill="none" stroke={colour} strokeWidth="2" strokeDasharray="1.6 2.6" />
      )}
    </svg>
  );
}

export function VerdictWord({ verdict }: { verdict: Verdict }) {
  return (
    <span className={`verdict ${verdict}`}>
      <Mark verdict={verdict} /> {WORD[verdict]}
    </span>
  );
}

const ORDER: readonly Verdict[] = ['fits', 'tight', 'fails', 'unknown'];
const PHRASE: Readonly<Record<Verdict, string>> = {
  fits: 'fit',
  tight: 'tight',
  fails: 'fail',
  unknown: 'unknown',
};

export function Counts({ counts }: { counts: Readonly<Record<Verdict, number>> }) {
  return (
    <ul className="counts" aria-label="How many answers">
      {ORDER.map((verdict) => (
        <li key={verdict} className={`verdict ${verdict}`}>
          <Mark verdict={verdict} /> {counts[verdict]} {PHRASE[verdict]}
        </li>
      ))}
    </ul>
  );
}
