/** The circuit as tables: elements with their settings, wires, what moves, and questions about the whole. */
import { useState } from 'react';
import { CIRCUIT_SETTINGS, compileStop, type Model } from '../../../engine/circuit/stop/index.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import { Elements } from './edit-elements.tsx';
import { Moves } from './edit-motions.tsx';
import { Wires } from './edit-wires.tsx';
import { Settings } from './settings-form.tsx';

export interface EditProps {
  readonly circuit: StopCircuit;
  readonly record: (circuit: StopCircuit) => void;
}

export function EditCircuit({ circuit, record, model }: EditProps & { readonly model: Model | undefined }) {
  const [open, setOpen] = useState(false);
  const [problem, setProblem] = useState('');
  const put = (next: StopCircuit): void => {
    const made = compileStop(next);
    setProblem(made.ok ? '' : `Not taken over. ${made.problem.message}`);
    if (made.ok) record(next);
  };
  return (
    <details className="sheet" onToggle={(event) => setOpen(event.currentTarget.open)} data-part="edit">
      <summary>
        Change the circuit: {Object.keys(circuit.elements).length} elements,{' '}
        {Object.keys(circuit.wires).length} wires
      </summary>
      {open && (
        <div className="stack">
          <p role="alert" className="bad">
            {problem}
          </p>
          <Moves circuit={circuit} record={put} model={model} />
          <Elements circuit={circuit} record={put} />
          <Wires circuit={circuit} record={put} />
          <h3>The circuit as a whole</h3>
          <Settings
            specs={CIRCUIT_SETTINGS}
            values={circuit.settings}
            of="Circuit"
            set={(settings) => put({ ...circuit, settings })}
          />
        </div>
      )}
    </details>
  );
}
