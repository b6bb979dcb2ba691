/** One device: its settings, its terminals with the wires on them, its photos, and how it is taken out. */
import { useEffect, useMemo, useState } from 'react';
import { farEnds, sayTerminal } from '../../../engine/circuit/lists/index.ts';
import {
  type Device,
  type ReadWiring,
  WIRE_SETTINGS,
  WIRING_KINDS,
  type WiringFinding,
} from '../../../engine/circuit/wiring/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { withStated } from '../../../engine/refit/usual.ts';
import { Scroll } from '../../parts/scroll.tsx';
import type { Session } from '../../state/session.ts';
import { DraftField } from '../survey/draft-field.tsx';
import { recordLatest } from '../survey/record.ts';
import { cutWire, putDevice, putWire, takeOut, withSetting } from './changes.ts';
import { Pins } from './pins.tsx';
import { SettingsForm } from './settings-form.tsx';
import { TerminalPanel } from './terminal-panel.tsx';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly read: ReadWiring;
  readonly findings: readonly WiringFinding[];
  readonly device: Device;
  /** One of its terminals to open at once. */
  readonly terminal: string | undefined;
  readonly pick: (terminal: string) => void;
  readonly close: () => void;
}

export function DevicePanel({
  session,
  refit,
  read,
  findings,
  device,
  terminal: sought,
  pick,
  close,
}: Props) {
  const [opened, setOpened] = useState<string>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another wish opens another terminal
  useEffect(() => {
    if (sought?.startsWith(`${device.id}.`)) setOpened(sought);
  }, [sought]);
  const typed = refit.wiring.devices[device.id];
  const ends = useMemo(() => farEnds(read), [read]);
  if (!typed) return null;
  const kind = WIRING_KINDS[typed.kind];
  const problems = read.problems.filter(({ where }) => where.startsWith(`wiring.devices.${device.id}.`));
  const save = (change: Partial<typeof typed>): Promise<boolean> =>
    recordLatest(session, (now) => {
      const latest = now.wiring.devices[device.id];
      return latest && putDevice(now, { ...latest, ...change });
    });
  const set = (name: string, text: string): Promise<boolean> =>
    recordLatest(session, (now) => {
      const latest = now.wiring.devices[device.id];
      return latest && putDevice(now, withStated(latest, name, text.trim()));
    });
  const setWire = (id: string, name: string, text: string): Promise<boolean> =>
    recordLatest(session, (now) => {
      const wire = now.wiring.wires[id];
      return wire && putWire(now, { ...wire, settings: withSetting(wire.settings, name, text) });
    });
  const parts = Object.values(refit.parts);
  const draft = `${session.id}.wiring.${device.id}`;
  return (
    <section
      className="sheet stack wiring-device"
      aria-labelledby="wiring-device"
      data-device-panel={device.id}
    >
      <div className="row spread">
        <h2 id="wiring-device">
          {device.id}: {device.name || device.kindName}
        </h2>
        <button type="button" className="plain" onClick={close}>
          Close
        </button>
      </div>
      {kind && <p>{kind.says}</p>}
      {problems.length > 0 && (
        <ul className="bad" role="alert">
          {problems.map(({ where, message }) => (
            <li key={where}>{message}</li>
          ))}
        </ul>
      )}
      <div className="wiring-settings">
        <DraftField
          label="Name"
          draft={`${draft}.name`}
          recorded={typed.name}
          onSave={(name) => save({ name })}
        />
        <DraftField
          label="Where it sits"
          draft={`${draft}.where`}
          recorded={typed.where}
          like="cabinet, slide, door"
          onSave={(where) => save({ where })}
        />
        <label className="wiring-choice">
          The part it stands for
          <select
            value={typed.part ?? ''}
            onChange={(event) => void save({ part: event.target.value || null })}
          >
            <option value="">none</option>
            {typed.part !== null && !Object.hasOwn(refit.parts, typed.part) && (
              <option value={typed.part}>{typed.part}, which is not there any more</option>
            )}
            {parts.map(({ id, name }) => (
              <option key={id} value={id}>
                {name || id} ({id})
              </option>
            ))}
          </select>
        </label>
      </div>
      {kind && (
        <SettingsForm
          specs={kind.settings}
          values={typed.settings}
          of={device.id}
          draft={draft}
          usual={typed.usual}
          set={set}
        />
      )}
      <h3>Terminals</h3>
      <p className="small soft">
        A mark joins it; the words beside it open what it is taken for, to be changed.
      </p>
      <Scroll label={`Terminals of ${device.id}`}>
        <table className="wiring-table">
          <thead>
            <tr>
              <th scope="col">Terminal</th>
              <th scope="col">What it is</th>
              <th scope="col">Wires</th>
            </tr>
          </thead>
          <tbody>
            {device.terminals.map((id) => {
              const terminal = read.terminals.get(id);
              return (
                <tr key={id}>
                  <th scope="row">
                    <button type="button" aria-label={`Join ${id}`} onClick={() => pick(id)}>
                      {id.slice(device.id.length + 1)}
                    </button>
                  </th>
                  <td>
                    {terminal && (
                      <button
                        type="button"
                        className="plain wiring-nature"
                        aria-expanded={opened === id}
                        aria-label={`Open ${id}: ${sayTerminal(terminal)}`}
                        onClick={() => setOpened(opened === id ? undefined : id)}
                      >
                        {sayTerminal(terminal)}
                      </button>
                    )}
                    {Object.hasOwn(typed.terminals, id.slice(device.id.length + 1)) && (
                      <span className="small soft"> as said here</span>
                    )}
                  </td>
                  <td>
                    {(ends.get(id) ?? []).map(({ wire, far }) => (
                      <details key={wire.id}>
                        <summary>
                          {wire.number || wire.id} to {far}
                        </summary>
                        <SettingsForm
                          specs={WIRE_SETTINGS}
                          values={refit.wiring.wires[wire.id]?.settings ?? {}}
                          of={`wire ${wire.id}`}
                          draft={`${session.id}.wire.${wire.id}`}
                          set={(name, text) => setWire(wire.id, name, text)}
                        />
                        <CableOf session={session} refit={refit} wire={wire.id} />
                        <button
                          type="button"
                          onClick={() => void recordLatest(session, (now) => cutWire(now, wire.id))}
                        >
                          Cut wire {wire.number || wire.id}
                        </button>
                      </details>
                    ))}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
      {opened !== undefined && read.terminals.has(opened) && (
        <TerminalPanel
          key={opened}
          session={session}
          refit={refit}
          read={read}
          findings={findings}
          device={device}
          terminal={opened}
          close={() => setOpened(undefined)}
        />
      )}
      <Pins
        session={session}
        refit={refit}
        device={typed}
        marks={device.terminals.map((id) => id.slice(device.id.length + 1))}
      />
      <p>
        <button
          type="button"
          onClick={() => {
            void session.record(takeOut(refit, device.id)).then((done) => done && close());
          }}
        >
          Take {device.id} out with its wires
        </button>
      </p>
    </section>
  );
}

function CableOf({ session, refit, wire }: { session: Session; refit: Refit; wire: string }) {
  const typed = refit.wiring.wires[wire];
  if (!typed) return null;
  return (
    <label className="wiring-choice">
      Cable it is a core of
      <select
        value={typed.cable ?? ''}
        onChange={(event) => {
          const cable = event.target.value || null;
          void recordLatest(session, (now) => {
            const latest = now.wiring.wires[wire];
            return latest && putWire(now, { ...latest, cable });
          });
        }}
      >
        <option value="">none, it lies alone</option>
        {typed.cable !== null && !Object.hasOwn(refit.wiring.cables, typed.cable) && (
          <option value={typed.cable}>{typed.cable}, which is not there</option>
        )}
        {Object.values(refit.wiring.cables).map(({ id, name }) => (
          <option key={id} value={id}>
            {name ? `${id}: ${name}` : id}
          </option>
        ))}
      </select>
    </label>
  );
}
