/** A proposal for the whole wiring: what it asks, what it would put in, and what would still be wrong with it. */
import { useState } from 'react';
import type { Proposal } from '../../../engine/circuit/wiring/index.ts';
import { byVerdict } from '../../../engine/quantity/verdict.ts';
import type { Session } from '../../state/session.ts';
import { FindingCard } from './findings.tsx';
import { Pager, usePages } from './pager.tsx';
import type { WiringView } from './use-wiring.ts';

export function Propose({ session, wiring }: { session: Session; wiring: WiringView }) {
  const [proposal, setProposal] = useState<Proposal>();
  const [said, setSaid] = useState('');
  const seek = (): void => {
    setSaid('Laying wires …');
    wiring
      .ask({ do: 'propose' })
      .then((found) => {
        setProposal(found);
        setSaid('');
      })
      .catch((error: Error) => setSaid(error.message));
  };
  return (
    <section className="sheet stack" aria-labelledby="wiring-propose">
      <h2 id="wiring-propose">Let it propose the wires</h2>
      <p>
        From the devices that are here and what their terminals are. Nothing is recorded before you say so,
        and one undo takes all of it back.
      </p>
      <button type="button" onClick={seek}>
        {proposal ? 'Propose again' : 'Propose the wiring'}
      </button>
      <p role="status">{said}</p>
      {proposal && (
        <Proposed
          proposal={proposal}
          keep={() => {
            void session.record(proposal.changes).then((kept) => kept && setProposal(undefined));
          }}
          drop={() => setProposal(undefined)}
        />
      )}
    </section>
  );
}

function Proposed({ proposal, keep, drop }: { proposal: Proposal; keep: () => void; drop: () => void }) {
  const { changes, questions, findings } = proposal;
  const wires = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const devices = changes.flatMap((change) => (change.do === 'device' && change.new ? [change.new] : []));
  const pages = usePages(wires, 20, String(wires.length));
  const open = findings.filter(({ verdict }) => verdict !== 'fits').sort(byVerdict);
  const openPages = usePages(open, 8, String(open.length));
  return (
    <div className="stack" data-proposal>
      {questions.length > 0 && (
        <>
          <h3>What it has to be told</h3>
          <ul className="wiring-questions">
            {questions.map((question) => (
              <li key={question.id}>
                {question.asks}
                {question.options && <span className="small soft"> {question.options.join(' or ')}</span>}
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>
        {wires.length === 0 ? 'No wire to propose' : `${wires.length} wires`}
        {devices.length > 0 && `, ${devices.length} devices`}
      </h3>
      {devices.length > 0 && (
        <p className="small">{devices.map(({ id, name, kind }) => `${id} (${name || kind})`).join(', ')}</p>
      )}
      <ol className="small wiring-proposed" start={pages.at * pages.size + 1}>
        {pages.shown.map((wire) => (
          <li key={wire.id}>
            {wire.from} to {wire.to}
            {Object.keys(wire.settings).length > 0 && (
              <span className="soft"> {Object.values(wire.settings).join(', ')}</span>
            )}
          </li>
        ))}
      </ol>
      <Pager pages={pages} of="wires" />
      {open.length > 0 && (
        <details>
          <summary>What would not be fine with it: {open.length}</summary>
          <ul className="wiring-findings">
            {openPages.shown.map((finding) => (
              <FindingCard key={finding.id} finding={finding} />
            ))}
          </ul>
          <Pager pages={openPages} of="answers" />
        </details>
      )}
      <div className="row">
        <button type="button" className="main" disabled={changes.length === 0} onClick={keep}>
          Record all of it
        </button>
        <button type="button" onClick={drop}>
          Leave it
        </button>
      </div>
    </div>
  );
}
