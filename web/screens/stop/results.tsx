/** Findings, the truth table, distances along the travel, and what the circuit resembles. */
import { useState } from 'react';
import type { AxisDistances } from '../../../engine/circuit/stop/index.ts';
import { sayStopping } from '../../../engine/circuit/stop/index.ts';
import { formatQuantity } from '../../../engine/quantity/index.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import { VerdictWord } from '../../parts/verdict.tsx';
import type { Looked } from './look-worker.ts';

export function StopFindings({ looked }: { looked: Looked }) {
  return (
    <section aria-labelledby="stop-findings">
      <h2 id="stop-findings">Does it really stop?</h2>
      <ul className="stop-findings">
        {looked.findings.map(({ id, title, verdict, sentence, remedy }) => (
          <li key={id} className="sheet" data-finding={id}>
            <VerdictWord verdict={verdict} /> <strong>{title}</strong>
            <p>{sentence}</p>
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

export function TruthTable({ looked, circuit }: { looked: Looked; circuit: StopCircuit }) {
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
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the window is moved by keys
        <section className="scroll" tabIndex={0} aria-label="Every act in every state">
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
                  <td>
                    {[
                      ...row.stops.map((stop) =>
                        sayStopping(stop, circuit.motions[stop.motion]?.kind === 'spindle'),
                      ),
                      ...row.starts.map((id) => `${id} starts${row.unasked ? ', and nobody asked' : ''}`),
                    ].join('; ') || '–'}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </details>
  );
}

/** Rows a page can hold; the command line shows all. */
const SHOWN = 400;

const mm = (metres: number): string => formatQuantity(metres, 'mm', { digits: 3 });

export function Distances({ looked }: { looked: Looked }) {
  return (
    <section className="stack" aria-labelledby="stop-distances">
      <h2 id="stop-distances">How far it runs on</h2>
      {looked.axes.map((axis) => (
        <Axis key={axis.motion} axis={axis} />
      ))}
      {looked.guards.map(({ motion, time, needed, says }) => (
        <div key={motion} className="sheet">
          <h3>Guard of {motion}</h3>
          <p>
            {time !== undefined && needed !== undefined
              ? `Stands after ${formatQuantity(time, 's', { digits: 3 })}; without a lock the guard must be ${formatQuantity(needed, 'm', { digits: 3 })} away (ISO 13855). `
              : ''}
            {says}
          </p>
        </div>
      ))}
    </section>
  );
}

function Axis({ axis: { motion, runOn, because, travel, marks, needs } }: { axis: AxisDistances }) {
  const known = marks.filter((mark) => mark.at !== undefined);
  return (
    <div className="sheet">
      <h3>{motion}</h3>
      <p>
        {runOn === undefined
          ? `How far it runs on is not known yet: ${needs.join(', ')}. Fill in the table below.`
          : `Runs on ${mm(runOn)}: ${because}.`}
      </p>
      {travel !== undefined && known.length > 1 && (
        <svg
          className="stop-travel"
          viewBox="0 0 600 46"
          role="img"
          aria-label={`Travel of ${motion}; the table below says the same`}
          preserveAspectRatio="none"
        >
          <line x1="6" x2="594" y1="23" y2="23" className="way" />
          {known.map(({ id, at, reserve }) => {
            const x = 6 + (588 * at!) / travel;
            const far = runOn === undefined ? 0 : (588 * runOn) / travel;
            return (
              <g
                key={id}
                className={
                  reserve !== undefined && reserve < 0
                    ? 'mark-short'
                    : id.startsWith('hard')
                      ? 'mark-hard'
                      : 'mark-fine'
                }
              >
                {id.startsWith('limit') && (
                  <rect
                    x={id === 'limit-low' ? x - far : x}
                    width={far}
                    y="18"
                    height="10"
                    className="run-on"
                  />
                )}
                <line
                  x1={x}
                  x2={x}
                  y1={id.startsWith('hard') ? 4 : id.startsWith('limit') ? 10 : 15}
                  y2={id.startsWith('hard') ? 42 : id.startsWith('limit') ? 36 : 31}
                />
              </g>
            );
          })}
        </svg>
      )}
      {known.length > 0 && (
        <div className="scroll">
          <table>
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">At</th>
                <th scope="col">Left over</th>
              </tr>
            </thead>
            <tbody>
              {known.map(({ id, name, at, reserve }) => (
                <tr key={id}>
                  <th scope="row">{name}</th>
                  <td>{mm(at!)}</td>
                  <td>
                    {reserve === undefined ? (
                      '–'
                    ) : reserve < 0 ? (
                      <span className="verdict fails">{mm(-reserve)} too little</span>
                    ) : (
                      mm(reserve)
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </div>
  );
}

export function Resembles({ looked: { estimate, notExamined } }: { looked: Looked }) {
  return (
    <section className="sheet" aria-labelledby="stop-resembles">
      <h2 id="stop-resembles">What it resembles, and what was not looked at</h2>
      <p>
        {estimate.why} That resembles category {estimate.resembles} of ISO 13849-1.{' '}
        {estimate.level
          ? `The simplified chart would give level ${estimate.level}.`
          : 'The simplified chart gives no level.'}{' '}
        An indication, no certificate.
      </p>
      {estimate.missing.length > 0 && (
        <ul className="small">
          {estimate.missing.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      )}
      <p className="small soft">{estimate.source}</p>
      <h3>Not examined</h3>
      <ul className="small">
        {notExamined.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </section>
  );
}
