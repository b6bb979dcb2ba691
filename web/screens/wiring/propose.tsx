/** A proposal for the whole wiring: what it asks, what it would put in, and what would still be wrong with it. */
import { useEffect, useState } from 'react';
import type { Resting, Settled } from '../../../engine/circuit/whole/index.ts';
import type { ReadWiring, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { byVerdict, countVerdicts, WORST_FIRST } from '../../../engine/quantity/verdict.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Change, Refit, WiringWire } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { AssumedConnections } from './assumed.tsx';
import { FindingCard } from './findings.tsx';
import { Pager, usePages } from './pager.tsx';
import { Questions } from './questions.tsx';
import { StepShown } from './step.tsx';
import type { WiringView } from './use-wiring.ts';
import type { Proposed } from './wiring-protocol.ts';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly wiring: WiringView;
}

export function Propose({ session, refit, wiring: { ask, stamp, asked } }: Props) {
  const [wanted, setWanted] = useState(false);
  const [proposed, setProposed] = useState<Proposed>();
  const [said, setSaid] = useState('');
  // Made anew whenever the wiring changed: an answer, a wire joined by hand.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another state of the wiring, another proposal
  useEffect(() => {
    if (!wanted) return;
    let gone = false;
    setSaid('Laying wires …');
    ask({ do: 'propose' })
      .then((found) => {
        if (gone) return;
        setProposed(found);
        setSaid('');
      })
      .catch((error: Error) => !gone && setSaid(error.message));
    return () => {
      gone = true;
    };
  }, [wanted, stamp, ask]);
  const close = (): void => {
    setWanted(false);
    setProposed(undefined);
    setSaid('');
  };
  const isBare = Object.keys(refit.wiring.wires).length === 0;
  return (
    <section className="sheet stack" aria-labelledby="wiring-propose">
      <h2 id="wiring-propose">Let it propose the wires</h2>
      <p>
        From the parts that are chosen and the devices that are here. It asks only what it cannot know.
        Nothing is recorded before you say so, and one undo takes a step back.
      </p>
      {!wanted && (
        <p>
          <button type="button" className={isBare ? 'main' : undefined} onClick={() => setWanted(true)}>
            Propose the wiring
          </button>
        </p>
      )}
      {said !== '' && wanted && asked ? (
        <div className="row" role="status">
          <StepShown step={asked} />
          <button type="button" onClick={close}>
            Leave it
          </button>
        </div>
      ) : (
        <p role="status">{said}</p>
      )}
      {proposed && (
        <ProposedWiring
          proposed={proposed}
          session={session}
          keep={(changes) => {
            void session.record(changes).then((kept) => {
              if (kept && changes === proposed.settled.everything) close();
            });
          }}
          drop={close}
        />
      )}
    </section>
  );
}

/** Wires named under one reason; more are only counted. */
const NAMED = 6;

interface ProposedProps {
  readonly proposed: Proposed;
  readonly session: Session;
  readonly keep: (changes: readonly Change[]) => void;
  readonly drop: () => void;
}

function ProposedWiring({ proposed, session, keep, drop }: ProposedProps) {
  const { proposal, settled, assumed, resting, read } = proposed;
  const { changes, left, reasons } = proposal;
  const bad = settled.findings.filter(({ verdict }) => verdict !== 'fits').sort(byVerdict);
  const wires = wiresOf(settled.changes).length;
  const devices = devicesOf(settled.changes).length;
  return (
    <div className="stack" data-proposal>
      <p>{sayHead(settled, left.length, bad)}</p>
      <Questions session={session} settled={settled} />
      <AssumedConnections assumed={assumed} session={session} wiring={settled.wiring} />
      {left.length > 0 && (
        <>
          <h3>What is left out</h3>
          <ul>
            {left.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </>
      )}
      <Laid changes={changes} settled={settled} />
      <Reasons changes={changes} reasons={reasons} />
      <Bad findings={bad} resting={resting} read={read} />
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={settled.changes.length === 0}
          onClick={() => keep(settled.waiting === 0 ? settled.everything : settled.changes)}
        >
          {settled.waiting === 0
            ? 'Record all of it'
            : `Record what waits for nothing: ${wires} wires, ${devices} devices`}
        </button>
        {settled.waiting > 0 && (
          <button type="button" onClick={() => keep(settled.everything)}>
            Record the {settled.waiting} that wait too, unanswered
          </button>
        )}
        <button type="button" onClick={drop}>
          Leave it
        </button>
      </div>
    </div>
  );
}

/** How much there is of it, and what stays open. */
function sayHead(settled: Settled, left: number, bad: readonly WiringFinding[]): string {
  const { everything, waiting, groups } = settled;
  const wires = wiresOf(everything).length;
  const counts = countVerdicts(bad);
  const said = WORST_FIRST.flatMap((verdict) =>
    verdict === 'fits' || counts[verdict] === 0 ? [] : [`${counts[verdict]} ${verdict}`],
  );
  const open = [
    `${groups.length} ${groups.length === 1 ? 'question' : 'questions'}`,
    ...(left > 0 ? [`${left} left out`] : []),
    ...(said.length > 0 ? [`answers that would not be fine with it: ${said.join(', ')}`] : []),
  ];
  return `${wires} wires and ${devicesOf(everything).length} devices; ${wires - waiting} of the wires can be recorded now. Still open: ${open.join('; ')}.`;
}

const wiresOf = (changes: readonly Change[]): readonly WiringWire[] =>
  changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
const devicesOf = (changes: readonly Change[]) =>
  changes.flatMap((change) => (change.do === 'device' && change.new ? [change.new] : []));

function Laid({ changes, settled: { open } }: { changes: readonly Change[]; settled: Settled }) {
  const wires = wiresOf(changes);
  const devices = devicesOf(changes);
  const held = new Set(open.flatMap((each) => each.wires));
  const pages = usePages(wires, 20, String(wires.length));
  if (changes.length === 0) return <p>There is nothing left to propose.</p>;
  return (
    <>
      <h3>
        {wires.length === 0 ? 'No wire to propose' : `${wires.length} wires`}
        {devices.length > 0 && `, ${devices.length} devices`}
      </h3>
      {devices.length > 0 && (
        <p className="small">{devices.map(({ id, name, kind }) => `${id} (${name || kind})`).join(', ')}</p>
      )}
      <ol className="small wiring-proposed" start={pages.at * pages.size + 1}>
        {pages.shown.map(({ id, from, to, settings }) => (
          <li key={id}>
            {from} to {to}
            {Object.keys(settings).length > 0 && (
              <span className="soft"> {Object.values(settings).join(', ')}</span>
            )}
            {held.has(id) && <em> waits for an answer</em>}
          </li>
        ))}
      </ol>
      <Pager pages={pages} of="wires" />
    </>
  );
}

/** Why each wire has the section it has, what has one reason together. */
function Reasons({
  changes,
  reasons,
}: {
  changes: readonly Change[];
  reasons: Readonly<Record<string, string>>;
}) {
  const by = new Map<string, WiringWire[]>();
  for (const wire of wiresOf(changes)) {
    const reason = reasons[wire.id];
    if (reason !== undefined) by.set(reason, [...(by.get(reason) ?? []), wire]);
  }
  // What waits for somebody's answer first, then what most wires share.
  const groups = [...by].sort(
    ([a, one], [b, other]) =>
      Number(b.includes('waits for')) - Number(a.includes('waits for')) || other.length - one.length,
  );
  const pages = usePages(groups, 20, String(groups.length));
  if (groups.length === 0) return null;
  return (
    <details data-reasons>
      <summary>Why each wire is as thick as it is: {groups.length} reasons</summary>
      <ul className="small">
        {pages.shown.map(([reason, wires]) => (
          <li key={reason}>
            {capital(reason)}:{' '}
            <span className="soft">
              {wires
                .slice(0, NAMED)
                .map(({ from, to }) => `${from} to ${to}`)
                .join('; ')}
              {wires.length > NAMED && ` and ${wires.length - NAMED} more`}
            </span>
          </li>
        ))}
      </ul>
      <Pager pages={pages} of="reasons" />
    </details>
  );
}

interface BadProps {
  readonly findings: readonly WiringFinding[];
  readonly resting: Resting;
  readonly read: ReadWiring;
}

function Bad({ findings, resting, read }: BadProps) {
  const pages = usePages(findings, 8, String(findings.length));
  if (findings.length === 0) return null;
  return (
    <details>
      <summary>What would not be fine with it: {findings.length}</summary>
      <ul className="wiring-findings">
        {pages.shown.map((finding) => (
          <FindingCard key={finding.id} finding={finding} rests={resting.get(finding.id)} read={read} />
        ))}
      </ul>
      <Pager pages={pages} of="answers" />
    </details>
  );
}
