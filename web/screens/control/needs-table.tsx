/** Needs down, candidates across; on a narrow screen one candidate at a time. */

import { Fragment, useState } from 'react';
import type { ControlReport } from '../../../engine/control/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { Mark, WORD } from '../../parts/verdict.tsx';

export interface Picked {
  readonly row: string;
  /** Id of the part. */
  readonly candidate: string;
}

interface Props {
  readonly report: ControlReport;
  readonly picked: Picked | undefined;
  readonly pick: (picked: Picked) => void;
}

export function NeedsTable({ report: { candidates }, picked, pick }: Props) {
  const [one, setOne] = useState<string>();
  const shown = one ?? candidates.find(({ chosen }) => chosen)?.part.id ?? candidates[0]?.part.id;
  const first = candidates[0];
  if (!first) return <p>No control is offered yet: add one under “Controls that could go here”.</p>;
  if (first.rows.length === 0) return <p>Nothing is asked of it yet.</p>;
  return (
    <>
      {candidates.length > 1 && (
        <label className="control-one">
          Show{' '}
          <select value={shown} onChange={(event) => setOne(event.target.value)}>
            {candidates.map(({ part }) => (
              <option key={part.id} value={part.id}>
                {part.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <table className="control-table">
        <thead>
          <tr>
            <th>Needed</th>
            {candidates.map(({ part, chosen }) => (
              <th key={part.id} className={part.id === shown ? undefined : 'control-other'}>
                {part.name}
                {chosen && <span className="small soft"> (chosen)</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first.rows.map((row, n) => (
            <Fragment key={row.id}>
              {row.group !== first.rows[n - 1]?.group && (
                <tr className="control-group">
                  <th colSpan={candidates.length + 1} scope="colgroup">
                    {row.group}
                  </th>
                </tr>
              )}
              <tr>
                <th scope="row">
                  {capital(row.name)}
                  {row.asked !== 'yes' && <span className="small soft"> {row.asked}</span>}
                  {row.waived && <span className="small soft"> (can do without)</span>}
                </th>
                {candidates.map(({ part, rows }) => {
                  const cell = rows[n]!;
                  const isPicked = picked?.row === row.id && picked.candidate === part.id;
                  return (
                    <td key={part.id} className={part.id === shown ? undefined : 'control-other'}>
                      <button
                        type="button"
                        className="control-cell"
                        aria-pressed={isPicked}
                        onClick={() => pick({ row: row.id, candidate: part.id })}
                      >
                        <Mark verdict={cell.verdict} />
                        <span className="hidden">
                          {part.name}, {row.name}: {WORD[cell.verdict]}.{' '}
                        </span>
                        <span className="small">{cell.says}</span>
                      </button>
                    </td>
                  );
                })}
              </tr>
            </Fragment>
          ))}
        </tbody>
      </table>
    </>
  );
}
