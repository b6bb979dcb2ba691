/** Fit: the page's question, its answer, the chain, the findings, and the working of the one selected. */

import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import { worstFirst } from '../../engine/assess/answer.ts';
import type { Finding } from '../../engine/assess/finding.ts';
import { heavyGuesses, sayBoth, sayChain } from '../../engine/assess/words.ts';
import { PLACES, type PlaceId } from '../../engine/parts/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import { capital } from '../../engine/quantity/words.ts';
import { AddSpindle } from '../parts/add-spindle.tsx';
import { Chain, findingsAt } from '../parts/chain.tsx';
import { MarginRule, sayMargin } from '../parts/margin-rule.tsx';
import { Scroll } from '../parts/scroll.tsx';
import { Counts, Mark } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';
import { PartPanel } from './part-panel.tsx';
import { Pictures } from './pictures.tsx';
import { WhyPanel } from './why-panel.tsx';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly subject: string;
}

export function Fit(props: Props) {
  const { session, view, subject } = props;
  const { chains } = view.refit;
  if (subject === 'machine' || chains.some(({ id }) => id === subject)) return <Judged {...props} />;
  return (
    <div className="stack">
      <h1>There is no axis or spindle “{subject.slice(0, 40)}”</h1>
      <p>This machine has these; choose one:</p>
      <Subjects session={session} view={view} subject={subject} />
    </div>
  );
}

function Judged({ session, view, subject }: Props) {
  const chain = view.refit.chains.find((each) => each.id === subject) ?? null;
  const own = useMemo(
    () => view.shown.findings.filter((finding) => finding.chain === (chain?.id ?? null)),
    [view.shown.findings, chain],
  );
  const sorted = useMemo(() => worstFirst(own), [own]);
  // The supply and the site carry every axis: what they decide is no finding of this one, but it is shown with them.
  const around = useMemo(
    () => view.shown.findings.filter(({ chain: of }) => of === (chain?.id ?? null) || of === null),
    [view.shown.findings, chain],
  );
  const [place, setPlace] = useState<PlaceId | null>(null);
  const [id, setId] = useState<string | null>(null);
  const selected =
    id ??
    worstFirst(view.recorded.findings.filter((finding) => finding.chain === (chain?.id ?? null)))[0]?.id ??
    null;
  const panel = useRef<HTMLDivElement>(null);
  const pick = useCallback((next: string): void => {
    setId(next);
    if (matchMedia('(max-width: 999px)').matches)
      requestAnimationFrame(() => panel.current?.scrollIntoView({ block: 'start' }));
  }, []);
  const toggle = useCallback((next: PlaceId) => setPlace((now) => (next === now ? null : next)), []);
  useEffect(() => {
    if (place && !chain?.places[place] && !view.refit.places[place]) setPlace(null);
  }, [place, chain, view.refit.places]);
  const shown = place ? worstFirst(findingsAt(around, place)) : sorted;
  return (
    <div>
      <h1>{chain ? `Will the ${sayChain(chain)} do what you ask?` : 'Will the supply carry it all?'}</h1>
      <p>{view.shown.answers[chain?.id ?? 'machine']}</p>
      <Counts counts={countVerdicts(own)} />
      <Subjects session={session} view={view} subject={subject} />
      {view.trial && <Trial session={session} view={view} />}
      {chain && (
        <Chain refit={view.refit} chain={chain} findings={around} selected={place} onSelect={toggle} />
      )}
      <div className="columns two" style={{ marginTop: '1.6rem' }}>
        <section aria-labelledby="findings">
          <div className="row spread">
            <h2 id="findings">
              {place
                ? `What the ${PLACES[place].name} decides`
                : chain
                  ? `Findings on this ${chain.kind}`
                  : 'Findings on the machine'}
            </h2>
            {place && (
              <button type="button" className="plain" onClick={() => setPlace(null)}>
                Show all
              </button>
            )}
          </div>
          {place && (
            <div className="sheet" style={{ marginBottom: '1rem' }}>
              <h3>{capital(PLACES[place].name)}</h3>
              <PartPanel session={session} view={view} chain={chain} place={place} />
            </div>
          )}
          {shown.length === 0 && <p className="soft">No question is asked of it.</p>}
          <ul className="findings">
            {shown.map((finding) => (
              <li key={finding.id}>
                <Row finding={finding} open={finding.id === selected} onOpen={pick} />
              </li>
            ))}
          </ul>
          <NotAsked view={view} chain={chain?.id ?? 'machine'} />
        </section>
        <div ref={panel} style={{ scrollMarginTop: '1rem' }}>
          {selected && <WhyPanel key={selected} session={session} view={view} id={selected} />}
        </div>
      </div>
      {chain && <Pictures session={session} view={view} chain={chain.id} onSelect={pick} />}
      {!chain && (
        <div className="sheet" style={{ marginTop: '1.6rem' }}>
          <h2>Supply and mains</h2>
          <PartPanel session={session} view={view} chain={null} place="supply" />
          <PartPanel session={session} view={view} chain={null} place="site" />
        </div>
      )}
    </div>
  );
}

/** Every axis and spindle, and what they share. */
function Subjects({ session, view, subject }: Props) {
  const home = `/refit/${session.id}/fit`;
  return (
    <nav className="row" aria-label="Axes and machine" style={{ marginBottom: '1rem' }}>
      {view.refit.chains.map((each) => (
        <Link
          key={each.id}
          className="button tab"
          href={`${home}/${each.id}`}
          aria-current={each.id === subject ? 'page' : undefined}
        >
          {each.kind === 'axis' ? each.id : capital(sayChain(each))}
        </Link>
      ))}
      <Link
        className="button tab"
        href={`${home}/machine`}
        aria-current={subject === 'machine' ? 'page' : undefined}
      >
        Supply
      </Link>
      <AddSpindle session={session} view={view} />
    </nav>
  );
}

interface RowProps {
  readonly finding: Finding;
  readonly open: boolean;
  readonly onOpen: (id: string) => void;
}

const Row = memo(function Row({ finding, open, onOpen }: RowProps) {
  const both = finding.asked && finding.there && sayBoth(finding.asked, finding.there);
  const asked = both ? `asked ${both[0]}, there is ${both[1]}` : finding.sentence;
  const guess = heavyGuesses(finding).length > 0 ? '; rests on a guess' : '';
  return (
    <button type="button" className="finding" aria-expanded={open} onClick={() => onOpen(finding.id)}>
      <Mark verdict={finding.verdict} />
      <span>
        <strong>{finding.title}</strong>
        <span className="hidden">: {finding.verdict}</span>
        <br />
        <span className="small soft">
          {asked}
          {guess}
        </span>
      </span>
      <MarginRule margin={finding.margin} range={finding.marginRange} verdict={finding.verdict} />
      <span className={`margin verdict ${finding.verdict}`} style={{ justifyContent: 'flex-end' }}>
        {sayMargin(finding)}
      </span>
    </button>
  );
});

function NotAsked({ view, chain }: { view: View; chain: string }) {
  const own = view.shown.notAsked.filter((each) => each.id.startsWith(`${chain}.`));
  if (own.length === 0) return null;
  return (
    <details style={{ marginTop: '0.8rem' }}>
      <summary>{own.length} questions are not asked here</summary>
      <ul>
        {own.map((each) => (
          <li key={each.id}>
            <strong>{each.title}:</strong> {each.reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What a remedy would change, before and after, to be kept or dropped. */
function Trial({ session, view }: { session: Session; view: View }) {
  const before = new Map(view.recorded.findings.map((finding) => [finding.id, finding]));
  const changed = view.shown.findings.filter((finding) => {
    const was = before.get(finding.id);
    return was && (was.verdict !== finding.verdict || was.margin !== finding.margin);
  });
  return (
    <section className="trial" aria-label="Trying">
      <h2>Trying: {view.trial?.says}</h2>
      <Scroll label="Findings that change">
        <table>
          <thead>
            <tr>
              <th>Finding</th>
              <th>Before</th>
              <th>After</th>
            </tr>
          </thead>
          <tbody>
            {worstFirst(changed).map((finding) => {
              const was = before.get(finding.id)!;
              return (
                <tr key={finding.id}>
                  <td>
                    {finding.chain ? `${finding.chain}: ` : ''}
                    {finding.title}
                  </td>
                  <td>
                    <span className={`verdict ${was.verdict}`}>
                      <Mark verdict={was.verdict} /> {was.verdict} {sayMargin(was)}
                    </span>
                  </td>
                  <td>
                    <span className={`verdict ${finding.verdict}`}>
                      <Mark verdict={finding.verdict} /> {finding.verdict} {sayMargin(finding)}
                    </span>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
      <div className="row">
        <button type="button" className="main" onClick={() => void session.keepTrial()}>
          Keep it
        </button>
        <button type="button" onClick={() => void session.dropTrial()}>
          Drop it
        </button>
      </div>
    </section>
  );
}
