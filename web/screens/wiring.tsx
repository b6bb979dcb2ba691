/** The wiring: what is right and wrong with it, joined and cut, drawn and listed. */

import { useCallback, useMemo, useState } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import type { WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import { CautionOnce } from '../parts/caution-once.tsx';
import type { Session, View } from '../state/session.ts';
import { AddDevice, Cables, WholeSettings } from './wiring/add.tsx';
import { DevicePanel } from './wiring/device-panel.tsx';
import { Devices } from './wiring/devices.tsx';
import { Diagrams } from './wiring/diagrams.tsx';
import { Findings } from './wiring/findings.tsx';
import { Join } from './wiring/join.tsx';
import { Lists } from './wiring/lists.tsx';
import { WiringPrint } from './wiring/print.tsx';
import { Propose } from './wiring/propose.tsx';
import { StepShown } from './wiring/step.tsx';
import { useWiring } from './wiring/use-wiring.ts';
import { UsualValues } from './wiring/usual-values.tsx';
import './wiring/wiring.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function WiringPage({ session, view }: Props) {
  const { refit } = view;
  const wiring = useWiring(refit);
  const { looked, busy, problem, step, stopped } = wiring;
  const [place, go] = useLocation();
  const home = `/refit/${session.id}/wiring`;
  const drawing = place === `${home}/diagrams`;
  const [from, setFrom] = useState<string>();
  const [to, setTo] = useState<string>();
  const [device, setDevice] = useState<string>();
  const [seek, setSeek] = useState<string>();
  const pinned = useMemo(
    () =>
      new Set(
        Object.values(refit.wiring.devices).flatMap(({ id, pins }) =>
          Object.keys(pins).map((mark) => `${id}.${mark}`),
        ),
      ),
    [refit.wiring.devices],
  );
  const pick = useCallback(
    (terminal: string): void => {
      if (from === undefined || from === terminal) setFrom(terminal);
      else setTo(terminal);
      // Beside a drawing the first end is picked without losing sight of where the second is.
      if (!drawing || (from !== undefined && from !== terminal))
        setTimeout(
          () => document.getElementById('wiring-join-part')?.scrollIntoView({ block: 'nearest' }),
          50,
        );
    },
    [from, drawing],
  );
  /** A device, terminal or wire where it is. */
  const show = (id: string): void => {
    const wire = looked?.read.wires.get(id);
    const terminal = wire ? wire.from : id;
    setDevice(terminal.split('.')[0]);
    setSeek(terminal.includes('.') ? terminal : undefined);
    setTimeout(() => document.getElementById('wiring-device')?.scrollIntoView({ block: 'start' }), 50);
  };
  const opened = device === undefined ? undefined : looked?.read.devices.get(device);
  const tab = (at: string, words: string) => {
    const href = at === '' ? home : `${home}/${at}`;
    return (
      <Link href={href} className="button tab" aria-current={place === href ? 'page' : undefined}>
        {words}
      </Link>
    );
  };
  const join = looked && (
    <Join
      session={session}
      refit={refit}
      read={looked.read}
      wiring={wiring}
      from={from}
      to={to}
      setFrom={setFrom}
      setTo={setTo}
    />
  );
  const status = (
    <div className={problem ? 'row bad' : 'row small soft'} role="status">
      {problem}
      {!problem && busy && (step ? <StepShown step={step} /> : 'Looking the wiring through …')}
      {!problem && busy && looked && (
        <button type="button" className="plain" onClick={wiring.stopLooking}>
          Stop looking
        </button>
      )}
      {stopped && (
        <>
          Stopped: what devices and wires say of each other stands below; the supply was not judged again.
          <button type="button" className="plain" onClick={wiring.lookAgain}>
            Look all of it through
          </button>
        </>
      )}
    </div>
  );
  const printing = place.startsWith(`${home}/print/`);
  return (
    <div className="stack wiring">
      {!printing && (
        <>
          <h1>Is it wired right?</h1>
          {looked && place === home && <p>{answerOf(looked.findings)}</p>}
          <CautionOnce
            id="wiring"
            always={
              <>
                <strong>Before a wire is touched:</strong> main switch off and locked
              </>
            }
          >
            <p>
              Then wait until drives and supplies have discharged, and measure that it is dead. The fixed
              mains installation belongs to a licensed electrician, and local rules come first. This looks
              through what is written here; it makes no machine safe and certifies nothing.
            </p>
          </CautionOnce>
          <nav className="row" aria-label="Parts of the wiring">
            {tab('', 'Findings and terminals')}
            {tab('diagrams', 'Diagrams')}
            {tab('lists', 'Lists')}
          </nav>
        </>
      )}
      {status}
      <Switch>
        <Route path={`${home}/print/:what`}>
          {({ what }) => <WiringPrint refit={refit} wiring={wiring} what={what} home={home} />}
        </Route>
        <Route path={`${home}/lists`}>
          <Lists wiring={wiring} home={home} />
        </Route>
        <Route path={`${home}/diagrams`}>
          <div className={from === undefined ? undefined : 'wiring-beside'}>
            <Diagrams wiring={wiring} pinned={pinned} picked={from} seek={seek} pick={pick} />
            {from !== undefined && join}
          </div>
          <Link className="button" href={`${home}/print/diagrams`}>
            Look at all of them on paper
          </Link>
        </Route>
        <Route>
          {looked && (
            <>
              {looked.problems.length > 0 && (
                <div className="caution" role="alert">
                  <strong>Some of it cannot be read and counts as not known.</strong>
                  <ul>
                    {looked.problems.slice(0, 12).map(({ where, message }) => (
                      <li key={`${where} ${message}`}>{message}</li>
                    ))}
                  </ul>
                  {looked.problems.length > 12 && <p>and {looked.problems.length - 12} more.</p>}
                </div>
              )}
              <Propose session={session} refit={refit} wiring={wiring} />
              <Findings findings={looked.findings} read={looked.read} resting={looked.resting} show={show} />
              <UsualValues session={session} refit={refit} show={show} />
              {join}
              {opened && (
                <>
                  <DevicePanel
                    key={opened.id}
                    session={session}
                    refit={refit}
                    read={looked.read}
                    findings={looked.findings}
                    device={opened}
                    terminal={seek}
                    pick={pick}
                    close={() => setDevice(undefined)}
                  />
                  <p>
                    <button
                      type="button"
                      onClick={() => {
                        setSeek(seek?.startsWith(`${opened.id}.`) ? seek : opened.terminals[0]);
                        go(`${home}/diagrams`);
                      }}
                    >
                      Show {opened.id} in the diagrams
                    </button>
                  </p>
                </>
              )}
              <Devices
                read={looked.read}
                findings={looked.findings}
                pinned={pinned}
                chosen={device}
                choose={(id) => {
                  setDevice(id);
                  setTimeout(
                    () => document.getElementById('wiring-device')?.scrollIntoView({ block: 'start' }),
                    50,
                  );
                }}
                pick={pick}
              />
              <AddDevice session={session} refit={refit} added={setDevice} />
              <Cables session={session} refit={refit} />
              <WholeSettings session={session} refit={refit} />
            </>
          )}
        </Route>
      </Switch>
    </div>
  );
}

/** The answer in a sentence or two. */
function answerOf(findings: readonly WiringFinding[]): string {
  if (findings.length === 0)
    return 'Nothing is wired yet. Let the wiring be proposed, or add devices one by one.';
  const { fails, unknown, tight } = countVerdicts(findings);
  const worst = findings.find(({ verdict }) => verdict === 'fails');
  if (worst) {
    const more = fails > 1 ? ` ${fails - 1} more ${fails === 2 ? 'answer fails' : 'answers fail'}.` : '';
    return `Not yet. ${worst.sentence}${more}`;
  }
  if (unknown > 0) return `Nothing that is known speaks against it; ${unknown} answers wait for facts.`;
  return tight > 0 ? `Yes, with ${tight} answers that are tight.` : 'Yes, as far as it was looked at.';
}
