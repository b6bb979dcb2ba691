/** How far everything runs on, where switches and guards must stand, and the numbers that rests on. */
import {
  type AxisDistances,
  type Model,
  markVerdict,
  type NumberRow,
  sayGuard,
  sayMargin,
  sayPlace,
  sayRunOn,
} from '../../../engine/circuit/stop/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { VerdictWord } from '../../parts/verdict.tsx';
import type { Looked } from './look-worker.ts';
import { Travel } from './travel.tsx';

export function Distances({ looked, model }: { looked: Looked; model: Model }) {
  const rowsOf = (id: string) => model.motions.find((each) => each.id === id)?.numbers.rows ?? [];
  const nameOf = (id: string) => model.motions.find((each) => each.id === id)?.name ?? id;
  return (
    <section className="stack" aria-labelledby="stop-distances">
      <h2 id="stop-distances">How far it runs on</h2>
      {looked.axes.map((axis) => (
        <Axis key={axis.motion} axis={axis} name={nameOf(axis.motion)} rows={rowsOf(axis.motion)} />
      ))}
      {looked.guards.map((guard) => (
        <div key={guard.motion} className="sheet">
          <h3>Guard of {nameOf(guard.motion)}</h3>
          <p>{sayGuard(guard)}</p>
          <Numbers rows={rowsOf(guard.motion)} name={nameOf(guard.motion)} />
        </div>
      ))}
    </section>
  );
}

function Axis({ axis, name, rows }: { axis: AxisDistances; name: string; rows: readonly NumberRow[] }) {
  const placed = axis.marks.filter(({ at, needed }) => at !== undefined || needed !== undefined);
  return (
    <div className="sheet" data-axis={axis.motion}>
      <h3>{name}</h3>
      <p>{sayRunOn(axis)}</p>
      <div className={`stop-axis${axis.travel !== undefined && placed.length > 2 ? ' drawn' : ''}`}>
        <Travel axis={axis} name={name} />
        {placed.length > 1 && (
          <Scroll label={`Places along ${name}`}>
            <table className="stop-places">
              <thead>
                <tr>
                  <th scope="col">Place</th>
                  <th scope="col">From the lower hard stop</th>
                  <th scope="col">Will it do?</th>
                </tr>
              </thead>
              <tbody>
                {placed.map((mark) => {
                  const verdict = markVerdict(axis, mark);
                  return (
                    <tr key={mark.id}>
                      <th scope="row">{mark.name}</th>
                      <td>{sayPlace(mark)}</td>
                      <td>
                        {verdict ? (
                          <>
                            <VerdictWord verdict={verdict} /> {sayMargin(axis, mark)}
                          </>
                        ) : (
                          '–'
                        )}
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </Scroll>
        )}
      </div>
      <Numbers rows={rows} name={name} />
    </div>
  );
}

/** Every number with where it comes from; what is not known is said. */
function Numbers({ rows, name }: { rows: readonly NumberRow[]; name: string }) {
  const unknown = rows.filter(({ origin }) => origin === 'unknown').length;
  return (
    <details className="stop-rests">
      <summary>
        The numbers this rests on{unknown > 0 ? `, ${unknown} of ${rows.length} unknown` : ''}
      </summary>
      <Scroll label={`Numbers of ${name}`}>
        <table className="stop-numbers">
          <thead>
            <tr>
              <th scope="col">Number</th>
              <th scope="col">Value</th>
              <th scope="col">Where it comes from</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ setting, name: what, says, origin, from }) => (
              <tr key={setting}>
                <th scope="row">{what}</th>
                <td className="number">{says || '–'}</td>
                <td className="small">{origin === 'unknown' ? <strong>{from}</strong> : from}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
