/** Work: what the machine must cut, whether it can, which link gives way first, and the chart for the wall. */

import { useEffect } from 'react';
import { Link, useLocation } from 'wouter';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { Work } from '../../engine/refit/types.ts';
import type { JudgedWork } from '../../engine/work/index.ts';
import { Counts, Mark } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';
import { AddWork } from './work/add.tsx';
import { WorkChartPicture } from './work/chart.tsx';
import { WorkDetail } from './work/detail.tsx';
import { useWork } from './work/use-work.ts';
import '../pictures/pictures.css';
import './threads/threads.css';
import './work/work.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function WorkPage({ session, view }: Props) {
  const { refit } = view;
  const [place, go] = useLocation();
  const home = `/refit/${session.id}/work`;
  const picked = place.startsWith(`${home}/`) ? decodeURIComponent(place.slice(home.length + 1)) : '';
  const state = useWork(refit, picked);
  const { judged, latest, chart, progress, drawing } = state;
  const work = Object.hasOwn(refit.work, picked) ? refit.work[picked] : undefined;
  const shown = work && latest(picked);
  const isThere = shown !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when another one is picked, not whenever it is judged anew
  useEffect(() => {
    if (!isThere) return;
    // Where it stands below the list it is brought into view; whoever hears the page is taken to it either way.
    if (matchMedia('(max-width: 999px)').matches)
      document.getElementById('work-detail')?.scrollIntoView({ block: 'start' });
    document.getElementById('work-detail-name')?.focus({ preventScroll: true });
  }, [picked, isThere]);
  const record = (old: Work | null, next: Work | null): void => {
    const id = (next ?? old)!.id;
    void session.record([{ do: 'work', id, old, new: next }]);
    if (next === null) go(home);
    else if (old === null) go(`${home}/${encodeURIComponent(id)}`);
  };
  const names = Object.keys(refit.work).length;
  return (
    <div className="stack work-page">
      <div>
        <h1>Can it cut what you want?</h1>
        <p>{answerOf(judged, names)}</p>
        {judged && judged.length > 0 && <Counts counts={countVerdicts(judged)} />}
        <p role="status" className="small soft work-progress">
          {progress && names > 0
            ? `Judging … ${progress.done} of ${progress.all}`
            : drawing === undefined
              ? ''
              : `Drawing the chances … ${Math.round(100 * drawing)} %`}
        </p>
      </div>
      <div className="columns two">
        <section aria-labelledby="work-list" className="stack">
          <h2 id="work-list">Wanted</h2>
          {names === 0 && <p className="soft">Nothing yet. Add a thread, a tapped hole or a cut below.</p>}
          <ul className="findings">
            {Object.values(refit.work).map((work) => (
              <li key={work.id}>
                <Row
                  work={work}
                  judged={latest(work.id)}
                  href={`${home}/${encodeURIComponent(work.id)}`}
                  open={work.id === picked}
                />
              </li>
            ))}
          </ul>
          <AddWork refit={refit} record={record} />
        </section>
        <section id="work-detail" aria-label="The one that is picked">
          {shown ? (
            <WorkDetail
              key={work.id}
              work={work}
              judged={shown}
              state={state}
              record={record}
              session={session}
            />
          ) : (
            names > 0 && <p className="soft">Pick one of the list to see what it rests on.</p>
          )}
        </section>
      </div>
      {chart && <WorkChartPicture chart={chart} name={refit.name} />}
      <p className="work-aside">
        <Link href="/threads">Sizes, limits and drills of any thread stand in the thread book.</Link>
      </p>
    </div>
  );
}

function answerOf(judged: readonly JudgedWork[] | undefined, names: number): string {
  if (names === 0)
    return 'Say which threads, tapped holes and cuts the machine must do. Each is held against its spindle, axes, chuck and control.';
  if (!judged) return 'Working it out …';
  const counts = countVerdicts(judged);
  if (counts.fails > 0)
    return `${counts.fails} of ${judged.length} cannot be done as they stand; each says which link gives way and what goes round it.`;
  if (counts.unknown > 0)
    return `Nothing is known to fail, but ${counts.unknown} of ${judged.length} wait for facts.`;
  return 'Everything wanted can be done on this machine as it is known.';
}

interface RowProps {
  readonly work: Work;
  readonly judged: JudgedWork | undefined;
  readonly href: string;
  readonly open: boolean;
}

function Row({ work, judged, href, open }: RowProps) {
  return (
    <Link href={href} className="finding work-row" aria-current={open ? 'true' : undefined}>
      {judged ? <Mark verdict={judged.verdict} /> : <span className="mark" />}
      <span>
        <strong>{work.name || work.id}</strong>
        <span className="hidden">: {judged?.verdict ?? 'not judged yet'}</span>
        <br />
        <span className="small soft">{judged?.summary ?? ' '}</span>
      </span>
    </Link>
  );
}
