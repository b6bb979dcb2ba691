/** A new device by its kind, a new cable, and what is asked of the wiring as a whole. */
import { useState } from 'react';
import { POWER_SETTINGS } from '../../../engine/circuit/power/index.ts';
import { CABLE_SETTINGS, WIRING_KINDS } from '../../../engine/circuit/wiring/index.ts';
import type { Change, Refit } from '../../../engine/refit/types.ts';
import { withStated } from '../../../engine/refit/usual.ts';
import type { Session } from '../../state/session.ts';
import { DraftField } from '../survey/draft-field.tsx';
import { recordLatest } from '../survey/record.ts';
import { freeName, newDevice, putDevice } from './changes.ts';
import { Pager, usePages } from './pager.tsx';
import { SettingsForm } from './settings-form.tsx';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
}

export function AddDevice({ session, added }: Props & { added: (id: string) => void }) {
  const [kind, setKind] = useState('strip');
  const kinds = Object.values(WIRING_KINDS);
  const chosen = WIRING_KINDS[kind] ?? kinds[0]!;
  const add = async (): Promise<void> => {
    let id = '';
    const done = await recordLatest(session, (now) => {
      const device = newDevice(now, chosen.id, 'cabinet', '');
      ({ id } = device);
      return putDevice(now, device);
    });
    if (done) added(id);
  };
  return (
    <details className="sheet">
      <summary>Add a device</summary>
      <label className="wiring-choice">
        Kind of the new device
        <select value={chosen.id} onChange={(event) => setKind(event.target.value)}>
          {[...kinds]
            .sort((a, b) => a.name.localeCompare(b.name))
            .map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
        </select>
      </label>
      <p className="small">{chosen.says}</p>
      <button type="button" onClick={() => void add()}>
        Add it
      </button>
    </details>
  );
}

export function Cables({ session, refit }: Props) {
  const all = Object.values(refit.wiring.cables);
  const pages = usePages(all, 10, '');
  const put = (id: string, name: string, text: string): Promise<boolean> =>
    recordLatest(session, (now): Change | undefined => {
      const cable = now.wiring.cables[id];
      if (!cable) return undefined;
      const next = name === 'name' ? { ...cable, name: text } : withStated(cable, name, text.trim());
      return { do: 'cable', id, old: cable, new: next };
    });
  const add = (): void =>
    void recordLatest(session, (now): Change => {
      const id = freeName(now.wiring.cables, 'W');
      return { do: 'cable', id, old: null, new: { id, name: '', settings: {} } };
    });
  const takeOut = (id: string): void => {
    const cable = refit.wiring.cables[id];
    if (!cable) return;
    const cores = Object.values(refit.wiring.wires).filter((wire) => wire.cable === id);
    void session.record([
      ...cores.map((wire): Change => ({ do: 'wire', id: wire.id, old: wire, new: { ...wire, cable: null } })),
      { do: 'cable', id, old: cable, new: null },
    ]);
  };
  return (
    <details className="sheet">
      <summary>Cables: {all.length}</summary>
      {pages.shown.map((cable) => (
        <details key={cable.id} data-cable={cable.id}>
          <summary>
            {cable.id}
            {cable.name && `: ${cable.name}`}
          </summary>
          <DraftField
            label={`Name of ${cable.id}`}
            draft={`${session.id}.cable.${cable.id}.name`}
            recorded={cable.name}
            onSave={(text) => put(cable.id, 'name', text)}
          />
          <SettingsForm
            specs={CABLE_SETTINGS}
            values={cable.settings}
            of={cable.id}
            draft={`${session.id}.cable.${cable.id}`}
            usual={cable.usual}
            set={(name, text) => put(cable.id, name, text)}
          />
          <button type="button" onClick={() => takeOut(cable.id)}>
            Take {cable.id} out; its wires stay
          </button>
        </details>
      ))}
      <Pager pages={pages} of="cables" />
      <button type="button" onClick={add}>
        Add a cable
      </button>
    </details>
  );
}

export function WholeSettings({ session, refit }: Props) {
  const set = (setting: string, text: string): Promise<boolean> =>
    recordLatest(session, (now): Change => {
      const { settings } = now.wiring;
      return {
        do: 'wiring-setting',
        setting,
        old: Object.hasOwn(settings, setting) ? settings[setting]! : null,
        new: text.trim() || null,
      };
    });
  return (
    <details className="sheet">
      <summary>The supply, the cabinet and how wires are laid</summary>
      <SettingsForm
        specs={POWER_SETTINGS}
        values={refit.wiring.settings}
        of="Wiring"
        draft={`${session.id}.wiring`}
        set={set}
      />
    </details>
  );
}
