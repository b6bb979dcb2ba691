/** The stop circuit: choose or draw one, try it by hand, and see what every single fault does. */
import { useMemo } from 'react';
import {
  analyseStop,
  compileStop,
  type Model,
  type Offers,
  testSheet,
  testSheetHtml,
} from '../../engine/circuit/stop/index.ts';
import type { Refit, StopCircuit } from '../../engine/refit/types.ts';
import type { Session, View } from '../state/session.ts';
import { EditCircuit } from './stop/edit.tsx';
import { FaultList, PairList } from './stop/fault-list.tsx';
import { Live } from './stop/live.tsx';
import { Patterns } from './stop/patterns.tsx';
import { Distances } from './stop/places.tsx';
import { Answer, Resembles, StopFindings, TruthTable } from './stop/results.tsx';
import { type Look, useLook } from './stop/use-look.ts';
import { useMachine } from './stop/use-machine.ts';
import './stop/stop.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function StopPage({ session, view }: Props) {
  const { stop } = view.refit;
  const record = (next: StopCircuit): void => {
    void session.record([{ do: 'stop', old: stop, new: next }]);
  };
  const look = useLook(view.refit);
  const { offers } = look;
  const made = useMemo(() => (stop === null ? undefined : compileStop(stop, offers ?? {})), [stop, offers]);
  return (
    <div className="stack stop-page">
      <h1>What stops the machine</h1>
      <Answer drawn={stop !== null} readable={made?.ok === true} look={look} />
      <div className="caution">
        <strong>A drawing stops nothing.</strong> This looks through what is drawn here. It makes no machine
        safe and certifies nothing. Mains wiring belongs to a licensed electrician, and local rules come
        first. Switch off, lock, wait until the drives have discharged and measure before you touch a wire.
      </div>
      <Patterns refit={view.refit} choice={look.choice} record={record} />
      {stop !== null && made && !made.ok && (
        <p role="alert" className="bad">
          {made.problem.where}: {made.problem.message}
        </p>
      )}
      {stop !== null && made?.ok && offers === undefined && (
        <p role="status" className="small soft">
          Bringing the numbers of the axes …
        </p>
      )}
      {stop !== null && made?.ok && offers !== undefined && (
        <Opened
          circuit={stop}
          model={made.value}
          look={look}
          offers={offers}
          refit={view.refit}
          at={session.id}
        />
      )}
      {stop !== null && (
        <EditCircuit circuit={stop} record={record} model={made?.ok ? made.value : undefined} />
      )}
    </div>
  );
}

interface OpenedProps {
  readonly circuit: StopCircuit;
  readonly model: Model;
  readonly look: Look;
  readonly offers: Offers;
  readonly refit: Refit;
  /** The refit's id in addresses. */
  readonly at: string;
}

function Opened({ circuit, model, look, offers, refit, at }: OpenedProps) {
  const { looked, problem, progress, pairs, seekPairs } = look;
  const machine = useMachine(model);
  return (
    <>
      {circuit.note && <p>{circuit.note}</p>}
      <p role="status" className="small soft">
        {problem ??
          (progress
            ? `Trying ${progress.doing} … ${progress.done}${progress.all > 0 ? ` of ${progress.all}` : ''}`
            : looked
              ? `${looked.faults.length} single faults tried.`
              : '')}
      </p>
      <Live model={model} circuit={circuit} machine={machine} />
      {looked && <StopFindings looked={looked} refit={at} />}
      {looked && (
        <>
          <FaultList
            faults={looked.faults}
            shown={machine.fault?.id}
            show={(fault) => {
              machine.show(fault);
              const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
              document.getElementById('stop-live')?.scrollIntoView({ behavior: still ? 'auto' : 'smooth' });
            }}
          />
          <PairList pairs={pairs} seek={seekPairs} />
          <TruthTable looked={looked} />
          <Distances looked={looked} model={model} />
          <Resembles looked={looked} />
          <Sheet circuit={circuit} offers={offers} refit={refit} />
        </>
      )}
    </>
  );
}

/** The sheet to do at the machine, as a file that needs nothing else. */
function Sheet({ circuit, offers, refit }: { circuit: StopCircuit; offers: Offers; refit: Refit }) {
  const save = async (): Promise<void> => {
    const found = analyseStop(circuit, offers);
    if (!found.ok) return;
    const today = new Date().toISOString().slice(0, 10);
    // Only whoever saves a sheet needs the wiring read.
    const { builtOf } = await import('./stop/built.ts');
    const html = testSheetHtml(testSheet(refit.name, circuit, found.value, today, builtOf(refit)));
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([html], { type: 'text/html' }));
    link.download = 'stop-test-sheet.html';
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };
  return (
    <section aria-labelledby="stop-sheet">
      <h2 id="stop-sheet">Test it at the machine</h2>
      <p>One act a line, what must happen, and room to sign. Again after every change.</p>
      <button type="button" onClick={() => void save()}>
        Save the test sheet to print
      </button>
    </section>
  );
}
