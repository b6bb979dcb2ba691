/** What a bench test came to: values with their doubt, verdicts, candidates, where the doubt comes from, the working. */

import type { EvidenceResult, Outcome, QuantityResult, Verdict } from '../../../engine/evidence/index.ts';
import { factSpec } from '../../../engine/parts/index.ts';
import { formatNumber, formatQuantity } from '../../../engine/quantity/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { Formula } from '../../parts/formula.tsx';
import { Scroll } from '../../parts/scroll.tsx';
import { Mark } from '../../parts/verdict.tsx';

/** A value as a person reads it; an option in its words. */
export function sayResult(result: EvidenceResult): string {
  if (result.kind === 'quantity') return result.text;
  const spec = result.fact && factSpec(result.fact.place, result.fact.fact);
  const words = spec && 'options' in spec ? spec.options[result.option] : undefined;
  return words ?? result.text;
}

const MARKS = { good: 'fits', doubtful: 'tight', bad: 'fails' } as const;
const WORDS = { good: 'Good', doubtful: 'Doubtful', bad: 'Bad' } as const;

export function Results({ results }: { results: Outcome['results'] }) {
  return (
    <dl className="bench-values">
      {results.map((result) => (
        <div key={result.key}>
          <dt>{capital(result.name)}</dt>
          <dd>
            <strong className={result.kind === 'quantity' ? 'value' : 'value words'}>
              {sayResult(result)}
            </strong>
            {result.kind === 'quantity' && <p className="small soft">{sayCoverage(result)}</p>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Degrees of freedom below which the factor is far from the usual 2. */
const FEW = 10;

function sayCoverage({ expanded, factor, freedom, standard, unit }: QuantityResult): string {
  if (expanded === 0) return 'Counted, so without a ±.';
  const few = freedom < FEW ? ', a large factor because few readings stand behind it' : '';
  return `The ± holds the truth 95 times in a hundred: ${formatNumber(factor, 3)} times the standard uncertainty of ${formatQuantity(standard, unit, { digits: 2 })}${few}.`;
}

export function Verdicts({
  verdicts,
  tidy,
}: {
  verdicts: readonly Verdict[];
  tidy: (text: string) => string;
}) {
  return (
    <ul className="bench-verdicts">
      {verdicts.map(({ level, sentence }) => (
        <li key={sentence}>
          {level === 'note' ? (
            <span className="note" aria-hidden="true">
              i
            </span>
          ) : (
            <Mark verdict={MARKS[level]} />
          )}
          <span>
            {level === 'note' ? (
              <span className="hidden">Note: </span>
            ) : (
              <strong className={`verdict ${MARKS[level]}`}>{WORDS[level]}.</strong>
            )}{' '}
            {tidy(sentence)}
          </span>
        </li>
      ))}
    </ul>
  );
}

const SHARES = 0.005;

/** Where the doubt comes from: bars and a table in one. */
export function Budget({ results }: { results: Outcome['results'] }) {
  const doubtful = results.filter(
    (each): each is QuantityResult => each.kind === 'quantity' && each.parts.length > 0,
  );
  if (doubtful.length === 0) return null;
  return (
    <section className="stack">
      <h3>Where the doubt comes from</h3>
      {doubtful.map((result) => {
        const parts = [...result.parts].sort((a, b) => b.share - a.share);
        const shown = parts.filter(({ share }) => Math.abs(share) >= SHARES);
        const left = parts.length - shown.length;
        return (
          <table key={result.key} className="bench-budget">
            <caption>{capital(result.name)}</caption>
            <thead>
              <tr>
                <th scope="col">from</th>
                <th scope="col" className="number">
                  standard
                </th>
                <th scope="col" className="number">
                  share
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map(({ name, standard, slope, share }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: two sources may bear the same name
                <tr key={i}>
                  <th scope="row">
                    {name}
                    <Bar share={share} />
                  </th>
                  <td className="number">
                    {formatQuantity(Math.abs(slope) * standard, result.unit, { digits: 2 })}
                  </td>
                  <td className="number">{(100 * share).toFixed(0)} %</td>
                </tr>
              ))}
              {left > 0 && (
                <tr>
                  <td colSpan={3} className="small soft">
                    {left} more, each below half a per cent
                  </td>
                </tr>
              )}
            </tbody>
          </table>
        );
      })}
      <p className="small soft">
        The largest share is what to improve: a better meter, more readings, or a longer lever. Shares are of
        the square of the doubt.
      </p>
    </section>
  );
}

function Bar({ share }: { share: number }) {
  return (
    <svg className="bench-bar" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect className="ground" width="100" height="6" />
      <rect className="part" width={Math.max(0.5, Math.min(100, 100 * Math.abs(share)))} height="6" />
    </svg>
  );
}

const sayLikely = (likely: number): string =>
  likely >= 0.995 ? 'over 99 %' : likely < 0.005 ? 'under 1 %' : `${(100 * likely).toFixed(0)} %`;

export function Candidates({ candidates }: { candidates: NonNullable<Outcome['candidates']> }) {
  return (
    <table className="bench-candidates">
      <caption>What it could be, the likeliest first</caption>
      <thead>
        <tr>
          <th scope="col">it could be</th>
          <th scope="col" className="number">
            likely
          </th>
        </tr>
      </thead>
      <tbody>
        {candidates.map(({ name, likely, why }) => (
          <tr key={name}>
            <th scope="row">
              {capital(name)}
              <Bar share={likely} />
              <span className="small soft why">{why}</span>
            </th>
            <td className="number">{sayLikely(likely)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function Working({ working }: { working: Outcome['working'] }) {
  if (working.length === 0) return null;
  return (
    <details className="bench-working">
      <summary>The working, formula by formula</summary>
      <Scroll label="The working">
        <ol className="steps">
          {working.map((line) => (
            <li key={`${line.sheet} ${line.plain}`}>
              <strong>{capital(line.name)}</strong>
              <Formula tex={line.tex} plain={line.plain} />
              <Formula tex={line.texWithNumbers} plain={line.plainWithNumbers} />
              {line.source && <p className="small soft">Source: {line.source}</p>}
            </li>
          ))}
        </ol>
      </Scroll>
    </details>
  );
}
