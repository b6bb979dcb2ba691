/** Devices and their terminals as a table that stays quick however many there are, with a search. */
import { useDeferredValue, useMemo, useState } from 'react';
import { inOrder, sayTerminal } from '../../../engine/circuit/lists/index.ts';
import type { Device, ReadWiring, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { Mark } from '../../parts/verdict.tsx';
import { Pager, usePages } from './pager.tsx';
import { worstOf } from './worst.ts';

interface Props {
  readonly read: ReadWiring;
  readonly findings: readonly WiringFinding[];
  readonly pinned: ReadonlySet<string>;
  readonly chosen: string | undefined;
  readonly choose: (device: string) => void;
  readonly pick: (terminal: string) => void;
}

const PAGE = 25;

export function Devices({ read, findings, pinned, chosen, choose, pick }: Props) {
  const [text, setText] = useState('');
  const sought = useDeferredValue(text.trim().toLowerCase());
  const worst = useMemo(() => worstOf(findings), [findings]);
  const all = useMemo(() => [...read.devices.values()].sort((a, b) => inOrder(a.id, b.id)), [read]);
  const found = useMemo(
    () => (sought === '' ? all : all.filter((device) => holds(device, read, sought))),
    [all, read, sought],
  );
  const pages = usePages(found, PAGE, sought);
  return (
    <section aria-labelledby="wiring-devices" className="stack">
      <h2 id="wiring-devices">Devices and terminals</h2>
      <label className="wiring-search">
        Look for a device, a terminal, a wire
        <input
          type="search"
          value={text}
          maxLength={80}
          placeholder="like K1, A1.x-step, limit"
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <p className="small soft" role="status">
        {found.length === all.length ? `${all.length} devices` : `${found.length} of ${all.length} devices`},{' '}
        {read.terminals.size} terminals, {read.wires.size} wires, {read.cables.size} cables.
      </p>
      <Scroll label="Devices and terminals, a table">
        <table className="wiring-table">
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">What it is</th>
              <th scope="col">Where</th>
              <th scope="col">Terminals</th>
            </tr>
          </thead>
          <tbody>
            {pages.shown.map((device) => (
              <tr key={device.id} data-device-row={device.id}>
                <th scope="row">
                  <button
                    type="button"
                    className="plain"
                    aria-pressed={chosen === device.id}
                    aria-label={`Open ${device.id}`}
                    onClick={() => choose(device.id)}
                  >
                    {worst.has(device.id) && <Mark verdict={worst.get(device.id)!} />} {device.id}
                  </button>
                </th>
                <td>
                  {device.name || device.kindName}
                  {device.name && <span className="small soft"> {device.kindName}</span>}
                </td>
                <td>{device.where}</td>
                <td>
                  <Terminals device={device} read={read} worst={worst} pinned={pinned} pick={pick} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Pager pages={pages} of="devices" />
    </section>
  );
}

/** More than this many terminals are shown when the device is opened. */
const MANY = 16;

function Terminals({
  device,
  read,
  worst,
  pinned,
  pick,
}: Pick<Props, 'read' | 'pinned' | 'pick'> & { device: Device; worst: ReturnType<typeof worstOf> }) {
  const shown = device.terminals.slice(0, MANY);
  return (
    <div className="wiring-terminals">
      {shown.map((id) => {
        const terminal = read.terminals.get(id);
        const bad = worst.get(id);
        return (
          <button
            key={id}
            type="button"
            className="wiring-terminal"
            title={terminal ? sayTerminal(terminal) : id}
            aria-label={`Pick terminal ${id}`}
            onClick={() => pick(id)}
          >
            {bad && <Mark verdict={bad} />}
            {id.slice(device.id.length + 1)}
            {pinned.has(id) && <span aria-hidden="true"> ▣</span>}
          </button>
        );
      })}
      {device.terminals.length > MANY && (
        <span className="small soft">and {device.terminals.length - MANY} more; open the device</span>
      )}
    </div>
  );
}

function holds({ id, name, kindName, where, terminals }: Device, read: ReadWiring, sought: string): boolean {
  if (`${id} ${name} ${kindName} ${where}`.toLowerCase().includes(sought)) return true;
  return terminals.some((each) => {
    const terminal = read.terminals.get(each);
    if (`${each} ${terminal?.name ?? ''}`.toLowerCase().includes(sought)) return true;
    const net = read.netOf.get(each);
    return (
      net?.wires.some(
        (wire) => wire.toLowerCase() === sought || read.wires.get(wire)?.number.toLowerCase() === sought,
      ) ?? false
    );
  });
}
