/** The circuit as tables: elements with their settings, wires, what moves, and questions about the whole. */
import { useState } from 'react';
import {
  CIRCUIT_SETTINGS,
  compileStop,
  isKind,
  KINDS,
  kindSpec,
  MOTION_SETTINGS,
  terminalsOf,
} from '../../../engine/circuit/stop/index.ts';
import type { StopCircuit, StopElement, StopWire } from '../../../engine/refit/types.ts';

type SettingSpecs = ReturnType<typeof kindSpec>['settings'];
interface Props {
  readonly circuit: StopCircuit;
  readonly record: (circuit: StopCircuit) => void;
}

export function EditCircuit({ circuit, record }: Props) {
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
          <Moves circuit={circuit} record={put} />
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

function Moves({ circuit, record }: Props) {
  return (
    <>
      <h3>What moves</h3>
      {Object.values(circuit.motions).map((motion) => (
        <details key={motion.id} className="stop-element">
          <summary>{motion.name}</summary>
          <Settings
            specs={MOTION_SETTINGS[motion.kind]}
            values={motion.settings}
            of={motion.id}
            set={(settings) =>
              record({ ...circuit, motions: { ...circuit.motions, [motion.id]: { ...motion, settings } } })
            }
          />
        </details>
      ))}
    </>
  );
}

function Elements({ circuit, record }: Props) {
  const [kind, setKind] = useState('contactor');
  const put = (element: StopElement) =>
    record({ ...circuit, elements: { ...circuit.elements, [element.id]: element } });
  const add = (): void => {
    const letter = LETTER[kind] ?? 'E';
    let n = 1;
    while (Object.hasOwn(circuit.elements, `${letter}${n}`)) n++;
    put({ id: `${letter}${n}`, kind, name: '', settings: {} });
  };
  const remove = (id: string): void => {
    const { [id]: _gone, ...elements } = circuit.elements;
    const wires = Object.fromEntries(
      Object.entries(circuit.wires).filter(
        ([, { from, to }]) => from.split('.')[0] !== id && to.split('.')[0] !== id,
      ),
    );
    const motions = Object.fromEntries(
      Object.entries(circuit.motions)
        .filter(([, { drive }]) => drive !== id)
        .map(([at, motion]) => [at, motion.brake === id ? { ...motion, brake: null } : motion]),
    );
    record({ ...circuit, elements, wires, motions });
  };
  return (
    <>
      <h3>Elements</h3>
      {Object.values(circuit.elements).map((element) => (
        <details key={element.id} className="stop-element" data-element={element.id}>
          <summary>
            {element.id}: {isKind(element.kind) ? KINDS[element.kind].name : element.kind}
            {element.name && ` (${element.name})`}
          </summary>
          {isKind(element.kind) && (
            <>
              <p className="small">
                {KINDS[element.kind].says} Terminals:{' '}
                {terminalsOf(element)
                  .map((each) => each.split('.')[1])
                  .join(', ')}
                .
              </p>
              <Settings
                specs={kindSpec(element.kind).settings}
                values={element.settings}
                of={element.id}
                set={(settings) => put({ ...element, settings })}
              />
            </>
          )}
          <button type="button" onClick={() => remove(element.id)}>
            Take {element.id} out with its wires
          </button>
        </details>
      ))}
      <div className="row">
        <label>
          Kind of a new element
          <select value={kind} onChange={(event) => setKind(event.target.value)}>
            {Object.entries(KINDS).map(([id, { name }]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={add}>
          Add it
        </button>
      </div>
    </>
  );
}

const LETTER: Readonly<Record<string, string>> = {
  supply: 'G',
  fuse: 'F',
  button: 'S',
  mushroom: 'S',
  door: 'S',
  'locked-door': 'S',
  limit: 'S',
  key: 'S',
  contactor: 'K',
  relay: 'K',
  'delayed-relay': 'K',
  'safety-relay': 'U',
  drive: 'T',
  inverter: 'T',
  brake: 'Y',
  control: 'A',
};

function Wires({ circuit, record }: Props) {
  const put = (wire: StopWire) => record({ ...circuit, wires: { ...circuit.wires, [wire.id]: wire } });
  const terminals = Object.values(circuit.elements).flatMap(terminalsOf);
  const add = (): void => {
    let n = 1;
    while (Object.hasOwn(circuit.wires, `w${n}`)) n++;
    put({ id: `w${n}`, from: terminals[0] ?? 'G1.plus', to: terminals[1] ?? 'G1.minus', cable: '' });
  };
  const end = (wire: StopWire, which: 'from' | 'to') => (
    <select
      aria-label={`${wire.id} ${which}`}
      value={wire[which]}
      onChange={(event) => put({ ...wire, [which]: event.target.value })}
    >
      {[...new Set([wire[which], ...terminals])].map((each) => (
        <option key={each}>{each}</option>
      ))}
    </select>
  );
  return (
    <>
      <h3>Wires</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the window is moved by keys */}
      <section className="scroll" tabIndex={0} aria-label="Wires">
        <table className="stop-wires">
          <thead>
            <tr>
              <th scope="col">Wire</th>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">Cable</th>
              <th scope="col">
                <span className="hidden">Take out</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {Object.values(circuit.wires)
              .sort((a, b) => Number(a.id.slice(1)) - Number(b.id.slice(1)))
              .map((wire) => (
                <tr key={wire.id}>
                  <th scope="row">{wire.id}</th>
                  <td>{end(wire, 'from')}</td>
                  <td>{end(wire, 'to')}</td>
                  <td>
                    <Text
                      key={wire.cable}
                      label={`${wire.id} cable`}
                      value={wire.cable}
                      set={(cable) => put({ ...wire, cable })}
                    />
                  </td>
                  <td>
                    <button
                      type="button"
                      aria-label={`Take out ${wire.id}`}
                      onClick={() => {
                        const { [wire.id]: _gone, ...wires } = circuit.wires;
                        record({ ...circuit, wires });
                      }}
                    >
                      Take out
                    </button>
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </section>
      <button type="button" onClick={add}>
        Add a wire
      </button>
    </>
  );
}

interface SettingsProps {
  readonly specs: SettingSpecs;
  readonly values: Readonly<Record<string, string>>;
  readonly of: string;
  readonly set: (values: Readonly<Record<string, string>>) => void;
}

function Settings({ specs, values, of, set }: SettingsProps) {
  const put = (id: string, text: string): void => {
    const { [id]: _old, ...rest } = values;
    set(text.trim() === '' ? rest : { ...rest, [id]: text.trim() });
  };
  return (
    <div className="stop-settings">
      {Object.entries(specs).map(([id, spec]) => (
        <div key={id}>
          <span className="small">
            {spec.name}
            {spec.kind === 'number' && spec.unit !== '1' && `, ${spec.unit}`}
          </span>
          {spec.kind === 'choice' ? (
            <select
              aria-label={`${of}: ${spec.name}`}
              value={values[id] ?? spec.usual}
              onChange={(event) => put(id, event.target.value)}
            >
              {spec.options.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          ) : (
            <Text
              key={values[id] ?? ''}
              label={`${of}: ${spec.name}`}
              value={values[id] ?? ''}
              usual={spec.usual}
              set={(text) => put(id, text)}
            />
          )}
        </div>
      ))}
    </div>
  );
}

/** Leaving it or Enter records it, Escape goes back. */
function Text({
  label,
  value,
  usual,
  set,
}: {
  label: string;
  value: string;
  usual?: string;
  set: (text: string) => void;
}) {
  const [text, setText] = useState(value);
  const done = (): void => {
    if (text.trim() !== value) set(text);
  };
  return (
    <input
      aria-label={label}
      value={text}
      placeholder={usual ? `usually ${usual}` : undefined}
      maxLength={120}
      onChange={(event) => setText(event.target.value)}
      onBlur={done}
      onKeyDown={(event) => {
        if (event.key === 'Enter') done();
        if (event.key === 'Escape') setText(value);
      }}
    />
  );
}
