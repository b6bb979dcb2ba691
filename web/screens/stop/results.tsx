/** The answer, the findings, the truth table, and what the circuit resembles. */
import { useState } from 'react';
import { Link } from 'wouter';
import {
  AS_WIRED,
  ESTIMATE_TITLE,
  NO_CIRCUIT,
  sayEstimate,
  sayRow,
  stopAnswer,
} from '../../../engine/circuit/stop/index.ts';
import { byVerdict } from '../../../engine/quantity/verdict.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { VerdictWord } from '../../parts/verdict.tsx';
import { WORST } from './fault-list.tsx';
import type { Looked } from './look-worker.ts';
import type { Look } from './use-look.ts';

/** The answer in a sentence and a mark, before everything it rests on. */
export function Answer({
  drawn,
  readable,
  look: { looked, problem, progress },
}: {
  drawn: boolean;
  readable: boolean;
  look: Look;
}) {
  if (!drawn)
    return (
      <p data-answer="unknown">
        <VerdictWord verdict="unknown" /> {NO_CIRCUIT}
      </p>
    );
  if (!readable || problem !== undefined)
    return (
      <p data-answer="unknown">
        <VerdictWord verdict="unknown" /> The circuit cannot be read yet, so nothing is known of what it
        stops.
      </p>
    );
  if (!looked)
    return (
      <p data-answer="unknown" className="soft">
        Every single fault is being tried; the answer comes in a moment.
      </p>
    );
  const { verdict, sentence, worst, also, caution } = stopAnswer(looked);
  return (
    <>
      <p data-answer={verdict} aria-busy={progress !== undefined}>
        <VerdictWord verdict={verdict} /> {sentence}
        {worst && (
          <>
            {' '}
            {worst.lead} <a href={`#${WORST}`}>{worst.fault}</a>.
          </>
        )}
        {also && ` ${also}`}
      </p>
      {caution && (
        <p className="caution">
          <strong>First:</strong> {caution}
        </p>
      )}
    </>
  );
}

export function StopFindings({ looked, refit }: { looked: Looked; refit: string }) {
  return (
    <section aria-labelledby="stop-findings">
      <h2 id="stop-findings">Does it really stop?</h2>
      <ul className="stop-findings">
        {[...looked.findings]
          .sort(byVerdict)
          .map(({ id, title, verdict, sentence, pieces, remedy, caution }) => (
            <li key={id} className="sheet" data-finding={id}>
              <VerdictWord verdict={verdict} /> <strong>{title}</strong>
              {pieces ? (
                <ul>
                  {pieces.map((each) => (
                    <li key={each}>{each}</li>
                  ))}
                </ul>
              ) : (
                <p>{sentence}</p>
              )}
              {id === AS_WIRED && (
                <p className="small">
                  <Link href={`/refit/${refit}/wiring`}>Look at the wiring</Link> of the same devices, or
                  change the circuit below.
                </p>
              )}
              {caution && (
                <p className="caution small">
                  <strong>First:</strong> {caution}
                </p>
              )}
              {remedy && (
                <p className="small">
                  <strong>What would do:</strong> {remedy}
                </p>
              )}
            </li>
          ))}
      </ul>
    </section>
  );
}

export function TruthTable({ looked }: { looked: Looked }) {
  const [open, setOpen] = useState(false);
  const { truth } = looked;
  return (
    <details className="sheet" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Every act in every state: {truth.rows.length} rows, {truth.states} states
        {truth.complete ? '' : ' (not all there are)'}
        {truth.rows.length > SHOWN && `, of which the first ${SHOWN} are shown`}
      </summary>
      {open && (
        <Scroll label="Every act in every state">
          <table className="stop-truth">
            <thead>
              <tr>
                <th scope="col">State</th>
                <th scope="col">Act</th>
                <th scope="col">Held after it</th>
                <th scope="col">What stops or starts, how and when</th>
              </tr>
            </thead>
            <tbody>
              {truth.rows.slice(0, SHOWN).map((row) => (
                <tr key={`${row.from}|${row.act}|${row.held.join()}`}>
                  <td>{row.from}</td>
                  <td>{row.act}</td>
                  <td>{row.held.join(', ') || 'nothing'}</td>
                  <td>{sayRow(row).join('; ') || '–'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </details>
  );
}

/** Rows a page can hold; the command line shows all. */
const SHOWN = 400;

export function Resembles({ looked: { estimate, notExamined } }: { looked: Looked }) {
  return (
    <section className="sheet" aria-labelledby="stop-resembles">
      <h2 id="stop-resembles">{ESTIMATE_TITLE}</h2>
      {sayEstimate(estimate).map((each) => (
        <p key={each}>{each}</p>
      ))}
      {estimate.missing.length > 0 && (
        <ul className="small">
          {estimate.missing.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      <details>
        <summary>Parts counted, and the clause of every number</summary>
        <ul className="small">
          {estimate.parts.map(({ element, says, source }) => (
            <li key={element}>
              {element}: {says}; {source}
            </li>
          ))}
          {estimate.sources.map(({ what, source }) => (
            <li key={what}>
              {what}: {source}
            </li>
          ))}
        </ul>
      </details>
      <h3>Not examined</h3>
      <ul className="small">
        {notExamined.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </section>
  );
}
