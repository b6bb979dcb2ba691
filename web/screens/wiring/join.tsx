/** Joining two terminals: choose one, see what fits and why the rest does not, see what would happen, and join. */
import { useDeferredValue, useEffect, useMemo, useState } from 'react';
import { inOrder, sayTerminal } from '../../../engine/circuit/lists/index.ts';
import type { Fit, ReadWiring, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { byVerdict } from '../../../engine/quantity/verdict.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { VerdictWord } from '../../parts/verdict.tsx';
import type { Session } from '../../state/session.ts';
import { recordLatest } from '../survey/record.ts';
import { putWire, wireBetween } from './changes.ts';
import { FindingCard } from './findings.tsx';
import { Pager, usePages } from './pager.tsx';
import type { WiringView } from './use-wiring.ts';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly read: ReadWiring;
  readonly wiring: WiringView;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly setFrom: (terminal: string | undefined) => void;
  readonly setTo: (terminal: string | undefined) => void;
}

export function Join({ session, refit, read, wiring, from, to, setFrom, setTo }: Props) {
  return (
    <section className="sheet stack" aria-labelledby="wiring-join" id="wiring-join-part">
      <h2 id="wiring-join">Join two terminals</h2>
      <div className="wiring-ends">
        <End words="From" chosen={from} read={read} choose={setFrom} />
        <End words="To" chosen={to} read={read} choose={setTo} />
      </div>
      {from !== undefined && to === undefined && (
        <Fits key={from} from={from} read={read} wiring={wiring} choose={setTo} />
      )}
      {from !== undefined && to !== undefined && (
        <WouldBe
          key={`${from} ${to}`}
          session={session}
          refit={refit}
          read={read}
          wiring={wiring}
          from={from}
          to={to}
          done={() => {
            setFrom(undefined);
            setTo(undefined);
          }}
        />
      )}
    </section>
  );
}

const HITS = 8;

function End({
  words,
  chosen,
  read,
  choose,
}: {
  words: string;
  chosen: string | undefined;
  read: ReadWiring;
  choose: (terminal: string | undefined) => void;
}) {
  const [text, setText] = useState('');
  const sought = useDeferredValue(text.trim().toLowerCase());
  const hits = useMemo(() => {
    if (sought === '') return [];
    const found = [...read.terminals.values()].filter(({ id, name }) =>
      `${id} ${name}`.toLowerCase().includes(sought),
    );
    return found.sort((a, b) => a.id.length - b.id.length || inOrder(a.id, b.id)).slice(0, HITS);
  }, [read, sought]);
  const terminal = chosen === undefined ? undefined : read.terminals.get(chosen);
  if (chosen !== undefined)
    return (
      <div>
        <span className="small soft">{words}</span>
        <p>
          <strong>{chosen}</strong> {terminal && sayTerminal(terminal)}
        </p>
        <button
          type="button"
          aria-label={`Choose another terminal: ${words}`}
          onClick={() => choose(undefined)}
        >
          Another
        </button>
      </div>
    );
  return (
    <div>
      <label>
        {words}
        <input
          type="search"
          value={text}
          maxLength={80}
          placeholder="like A1.x-step"
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <ul className="wiring-hits">
        {hits.map(({ id }) => (
          <li key={id}>
            <button type="button" onClick={() => choose(id)}>
              {id} <span className="small soft">{sayTerminal(read.terminals.get(id)!)}</span>
            </button>
          </li>
        ))}
      </ul>
      {sought !== '' && hits.length === 0 && <p className="small">No terminal has that in its name.</p>}
    </div>
  );
}

/** Those that fit, best first, and why the others do not. */
function Fits({
  from,
  read,
  wiring: { ask, stamp },
  choose,
}: {
  from: string;
  read: ReadWiring;
  wiring: WiringView;
  choose: (terminal: string) => void;
}) {
  const [fitting, setFitting] = useState<readonly Fit[]>();
  const [problem, setProblem] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: after an edit something else may fit
  useEffect(() => {
    let gone = false;
    ask({ do: 'fitting', terminal: from })
      .then((found) => !gone && setFitting(found))
      .catch((error: Error) => !gone && setProblem(error.message));
    return () => {
      gone = true;
    };
  }, [ask, from, stamp]);
  const good = useMemo(() => (fitting ?? []).filter(({ fits }) => fits), [fitting]);
  const others = useMemo(() => (fitting ?? []).filter(({ fits }) => !fits), [fitting]);
  const goodPages = usePages(good, 10, from);
  const otherPages = usePages(others, 10, from);
  if (problem) return <p className="bad">{problem}</p>;
  if (!fitting) return <p role="status">Looking what fits {from} …</p>;
  const table = (list: readonly Fit[], words: string) => (
    <ul className="wiring-fits" aria-label={words}>
      {list.map((each) => (
        <li key={each.terminal} data-fitting={each.terminal}>
          <button type="button" onClick={() => choose(each.terminal)}>
            {each.terminal}
          </button>{' '}
          <VerdictWord verdict={each.fits ? 'fits' : 'fails'} />
          <p className="small">
            {read.terminals.has(each.terminal) && `${sayTerminal(read.terminals.get(each.terminal)!)}. `}
            {each.why}
          </p>
        </li>
      ))}
    </ul>
  );
  return (
    <div className="stack">
      <h3>What fits {from}, best first</h3>
      {good.length === 0 && <p>Nothing that is here fits it.</p>}
      {table(goodPages.shown, 'What fits')}
      <Pager pages={goodPages} of="that fit" />
      {others.length > 0 && (
        <details>
          <summary>Why the other {others.length} do not fit</summary>
          {table(otherPages.shown, 'What does not fit')}
          <Pager pages={otherPages} of="that do not fit" />
        </details>
      )}
    </div>
  );
}

function WouldBe({
  session,
  refit,
  read,
  wiring: { ask, stamp },
  from,
  to,
  done,
}: Pick<Props, 'session' | 'refit' | 'read' | 'wiring'> & { from: string; to: string; done: () => void }) {
  const [tried, setTried] = useState<readonly WiringFinding[]>();
  const [problem, setProblem] = useState('');
  // biome-ignore lint/correctness/useExhaustiveDependencies: after an edit something else would happen
  useEffect(() => {
    let gone = false;
    ask({ do: 'try', wire: wireBetween(refit, from, to) })
      .then((found) => !gone && setTried(found))
      .catch((error: Error) => !gone && setProblem(error.message));
    return () => {
      gone = true;
    };
  }, [ask, from, to, stamp]);
  const there = Object.values(refit.wiring.wires).filter(
    (wire) => (wire.from === from && wire.to === to) || (wire.from === to && wire.to === from),
  );
  return (
    <div className="stack" data-would-be={`${from} ${to}`}>
      <h3>
        What would happen with a wire from {from} to {to}
      </h3>
      {problem && <p className="bad">{problem}</p>}
      {!tried && !problem && <p role="status">Trying it …</p>}
      {tried && tried.length === 0 && <p>Nothing new is said of it.</p>}
      {tried && (
        <ul className="wiring-findings">
          {[...tried].sort(byVerdict).map((finding) => (
            <FindingCard key={finding.id} finding={finding} read={read} />
          ))}
        </ul>
      )}
      {there.length > 0 && (
        <p>There is a wire between them already: {there.map(({ id }) => id).join(', ')}.</p>
      )}
      <div className="caution">
        <strong>Before you land it:</strong> main switch off and locked, wait until the drives and supplies
        have discharged, measure that it is dead. The fixed mains installation belongs to a licensed
        electrician.
      </div>
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={from === to}
          onClick={() => {
            void recordLatest(session, (now) => putWire(now, wireBetween(now, from, to))).then(
              (kept) => kept && done(),
            );
          }}
        >
          {tried?.some(({ verdict }) => verdict === 'fails') ? 'Join them all the same' : 'Join them'}
        </button>
        <button type="button" onClick={done}>
          Leave it
        </button>
      </div>
      {from === to && <p>A wire needs two different terminals.</p>}
    </div>
  );
}
