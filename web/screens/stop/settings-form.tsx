/** Settings of one thing as fields. */
import { useId, useState } from 'react';
import type { NumberRow } from '../../../engine/circuit/stop/index.ts';
import { askBackOfSetting } from '../../../engine/quantity/read-setting.ts';
import type { SettingSpecs } from '../../../engine/quantity/settings.ts';
import { AskBack, focusOn, useAskBack } from '../../parts/ask-back.tsx';

interface SettingsProps {
  readonly specs: SettingSpecs;
  readonly values: Readonly<Record<string, string>>;
  readonly of: string;
  /** Where the number comes from that counts, for a motion. */
  readonly rows?: readonly NumberRow[] | undefined;
  readonly set: (values: Readonly<Record<string, string>>) => void;
}

export function Settings({ specs, values, of, rows, set }: SettingsProps) {
  const put = (id: string, text: string): void => {
    const { [id]: _old, ...rest } = values;
    set(text.trim() === '' ? rest : { ...rest, [id]: text.trim() });
  };
  return (
    <div className="stop-settings">
      {Object.entries(specs).map(([id, spec]) => {
        const row = rows?.find(({ setting }) => setting === id);
        const brought = row?.origin === 'refit' ? row.says : undefined;
        return (
          <div key={id}>
            <span className="small">
              {spec.name}
              {spec.kind === 'quantity' && spec.unit !== '1' && spec.usual === '' && `, ${spec.unit}`}
            </span>
            {spec.kind === 'choice' ? (
              <select
                aria-label={`${of}: ${spec.name}`}
                value={values[id] ?? brought ?? spec.usual}
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
                hint={brought ?? (spec.usual ? `usually ${spec.usual}` : undefined)}
                set={(text) => put(id, text)}
                askBack={(text) => askBackOfSetting(spec, text)}
              />
            )}
            {rows && <span className="small soft stop-origin">{row ? sayBrief(row) : ''}</span>}
          </div>
        );
      })}
    </div>
  );
}

/** Where a number comes from in a few words; the table of numbers says it in full. */
function sayBrief({ origin, says, over }: NumberRow): string {
  if (origin === 'typed')
    return over === undefined || over === says ? 'typed here' : `the refit says ${over}`;
  return origin === 'refit' ? 'from the refit' : origin === 'unknown' ? 'not known' : 'usual';
}

/** Leaving it or Enter records it, Escape goes back. */
export function Text({
  label,
  value,
  hint,
  set,
  askBack,
}: {
  label: string;
  value: string;
  hint?: string | undefined;
  set: (text: string) => void;
  /** What is asked back of a text before it is recorded. */
  askBack?: (text: string) => string | undefined;
}) {
  const id = useId();
  const [text, setText] = useState(value);
  const back = useAskBack((typed) => askBack?.(typed));
  const done = (): void => {
    if (text.trim() === value) back.drop();
    else if (!back.holds(text)) set(text);
  };
  return (
    <>
      <input
        id={id}
        aria-describedby={back.asked ? `${id}-asked` : undefined}
        aria-label={label}
        value={text}
        placeholder={hint}
        maxLength={120}
        onChange={(event) => {
          setText(event.target.value);
          back.drop();
        }}
        onBlur={done}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done();
          if (event.key === 'Escape') {
            setText(value);
            back.drop();
          }
        }}
      />
      <AskBack
        id={`${id}-asked`}
        says={back.asked?.says}
        onAnyway={() => {
          back.allow(text);
          done();
          focusOn(id);
        }}
        onChange={() => focusOn(id)}
      />
    </>
  );
}
