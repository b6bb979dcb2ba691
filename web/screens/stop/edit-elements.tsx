/** Elements with their settings; some can be added and taken out. */
import { useState } from 'react';
import { isKind, KINDS, kindSpec, terminalsOf } from '../../../engine/circuit/stop/index.ts';
import type { StopElement } from '../../../engine/refit/types.ts';
import type { EditProps } from './edit.tsx';
import { Settings } from './settings-form.tsx';

export function Elements({ circuit, record }: EditProps) {
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
  home: 'S',
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
