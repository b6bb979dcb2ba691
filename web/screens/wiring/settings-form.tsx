/** Settings of a device, a wire, a cable or the whole, each with what is wrong said beside it. */

import { readSetting, type SettingSpec, type SettingSpecs } from '../../../engine/circuit/wiring/index.ts';
import { askBackOfSetting } from '../../../engine/quantity/read-setting.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { DraftField } from '../survey/draft-field.tsx';

interface Props {
  readonly specs: SettingSpecs;
  readonly values: Readonly<Record<string, string>>;
  /** Whose settings: 'K1'; under this name drafts are kept. */
  readonly of: string;
  readonly draft: string;
  /** Names of settings that were only taken as usual. */
  readonly usual?: readonly string[] | undefined;
  readonly set: (name: string, text: string) => Promise<boolean>;
}

export function SettingsForm({ specs, values, of, draft, usual, set }: Props) {
  const entries = Object.entries(specs);
  if (entries.length === 0) return <p className="small soft">Nothing to be told about it.</p>;
  const field = (name: string, spec: SettingSpec) =>
    spec.kind === 'choice' ? (
      <label className="wiring-choice">
        {capital(spec.name)}
        <select
          aria-label={`${of}: ${spec.name}`}
          value={values[name] ?? ''}
          onChange={(event) => void set(name, event.target.value)}
        >
          <option value="">{spec.usual ? `usually: ${spec.usual}` : 'not known'}</option>
          {spec.options.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </label>
    ) : (
      <DraftField
        label={capital(spec.name)}
        draft={`${draft}.${name}`}
        recorded={values[name] ?? ''}
        most={120}
        {...(spec.kind === 'quantity' && spec.unit !== '1' ? { unit: spec.unit } : {})}
        {...(spec.usual ? { like: spec.usual } : {})}
        check={(text) => {
          const read = readSetting(spec, text);
          return read.ok ? undefined : read.problem.message;
        }}
        askBack={(text) => askBackOfSetting(spec, text)}
        onSave={(text) => set(name, text)}
      />
    );
  return (
    <div className="wiring-settings">
      {entries.map(([name, spec]) => (
        <div key={name}>
          {field(name, spec)}
          {usual?.includes(name) && values[name] !== undefined && (
            <p className="small" data-usual={name}>
              Usual value, not looked at yet.{' '}
              <button
                type="button"
                aria-label={`${of}: ${spec.name} is so`}
                onClick={() => void set(name, values[name]!)}
              >
                I looked, it is so
              </button>
            </p>
          )}
        </div>
      ))}
    </div>
  );
}
