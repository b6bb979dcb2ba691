/** Wires as a table. */
import { terminalsOf } from '../../../engine/circuit/stop/index.ts';
import type { StopWire } from '../../../engine/refit/types.ts';
import { Scroll } from '../../parts/scroll.tsx';
import type { EditProps } from './edit.tsx';
import { Text } from './settings-form.tsx';

export function Wires({ circuit, record }: EditProps) {
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
      <Scroll label="Wires">
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
      </Scroll>
      <button type="button" onClick={add}>
        Add a wire
      </button>
    </>
  );
}
