/** Lists to work from: on the screen a page at a time, to print, and as CSV. */
import { useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type List, type ListId, listCsv, sharedLines } from '../../../engine/circuit/lists/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { Pager, usePages } from './pager.tsx';
import { type RingOut, useRingOut } from './use-ring-out.ts';
import type { WiringView } from './use-wiring.ts';

export const LIST_NAMES: Readonly<Record<ListId, string>> = {
  wires: 'Wires by both ends',
  cables: 'Cables',
  strips: 'Terminal strips',
  labels: 'Labels',
  pins: 'Pins of plugs and devices',
  'ring-out': 'Ring it out',
};

interface Putting {
  readonly list: List | undefined;
  readonly problem: string;
  /** Of the list that takes a while; absent for the others. */
  readonly work?: RingOut;
}

export function useList({ ask, stamp, looked }: WiringView, id: ListId): Putting {
  const [list, setList] = useState<List>();
  const [problem, setProblem] = useState('');
  const isLong = id === 'ring-out';
  const work = useRingOut(isLong ? looked?.read : undefined, stamp);
  useEffect(() => {
    if (stamp === 0 || isLong) return;
    let gone = false;
    setProblem('');
    ask({ do: 'list', list: id })
      .then((found) => !gone && setList(found))
      .catch((error: Error) => !gone && setProblem(error.message));
    return () => {
      gone = true;
    };
  }, [ask, stamp, id, isLong]);
  if (isLong) return { list: work.list, problem: work.problem, work };
  return { list: list?.id === id ? list : undefined, problem };
}

/** What stands in the place of a list until it is there. */
export function PuttingTogether({ work }: { work: RingOut | undefined }) {
  if (work?.isStopped)
    return (
      <div className="row">
        <p role="status">Stopped.</p>
        <button type="button" onClick={work.start}>
          Work it out
        </button>
      </div>
    );
  if (!work || work.share === undefined) return <p role="status">Putting it together …</p>;
  return (
    <div className="row">
      <p role="status">Working out what the meter should show …</p>
      <progress max={1} value={work.share} aria-label="How far the readings are" />
      <button type="button" onClick={work.stop}>
        Stop
      </button>
    </div>
  );
}

export function Lists({ wiring, home }: { wiring: WiringView; home: string }) {
  const [id, setId] = useState<ListId>('wires');
  const { list, problem, work } = useList(wiring, id);
  return (
    <section className="stack" aria-labelledby="wiring-lists">
      <h2 id="wiring-lists">Lists</h2>
      <fieldset className="row">
        <legend className="hidden">Which list</legend>
        {(Object.keys(LIST_NAMES) as ListId[]).map((each) => (
          <button key={each} type="button" aria-pressed={id === each} onClick={() => setId(each)}>
            {LIST_NAMES[each]}
          </button>
        ))}
      </fieldset>
      {problem && <p className="bad">{problem}</p>}
      {!list && !problem && <PuttingTogether work={work} />}
      {list && <ListTable list={list} home={home} />}
    </section>
  );
}

interface Line {
  readonly key: string;
  readonly group: string;
  readonly note: string;
  /** Absent on the line that begins a group. */
  readonly cells?: readonly string[];
}

function ListTable({ list, home }: { list: List; home: string }) {
  const lines = useMemo(
    () =>
      list.groups.flatMap((group, n): readonly Line[] => {
        const { title, note, rows, shared = [], cautions = [] } = group;
        return [
          {
            key: `group ${n}`,
            group: title,
            note: [...cautions, note, ...sharedLines(group, list.columns)].filter(Boolean).join(' '),
          },
          ...rows.map(({ id, cells }, at) => ({
            key: `${n} ${at} ${id}`,
            group: title,
            note: '',
            cells: cells.map((cell, column) => (shared.includes(column) ? '' : cell)),
          })),
        ];
      }),
    [list],
  );
  const pages = usePages(lines, 60, list.id);
  const save = (): void => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([listCsv(list)], { type: 'text/csv' }));
    link.download = `${list.id}.csv`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };
  return (
    <div className="stack" data-list={list.id}>
      <p>{list.about}</p>
      {list.caution && (
        <div className="caution">
          <strong>Take care.</strong> {list.caution}
        </div>
      )}
      <div className="row">
        <button type="button" onClick={save} disabled={lines.length === 0}>
          Save as CSV
        </button>
        <Link className="button" href={`${home}/print/${list.id}`}>
          Look at it on paper
        </Link>
      </div>
      {lines.length === 0 && <p>Nothing in it yet.</p>}
      {lines.length > 0 && (
        <Scroll label={list.title}>
          <table className="wiring-table">
            <thead>
              <tr>
                {list.columns.map((column) => (
                  <th key={column} scope="col">
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {pages.shown.map(({ key, group, note, cells }) =>
                cells ? (
                  <tr key={key}>
                    {cells.map((cell, at) => (
                      // biome-ignore lint/suspicious/noArrayIndexKey: columns have no other name
                      <td key={at}>{cell}</td>
                    ))}
                  </tr>
                ) : (
                  <tr key={key} className="wiring-group">
                    <th scope="rowgroup" colSpan={list.columns.length}>
                      {group} <span className="small soft">{note}</span>
                    </th>
                  </tr>
                ),
              )}
            </tbody>
          </table>
        </Scroll>
      )}
      <Pager pages={pages} of="lines" />
    </div>
  );
}
