/** One auxiliary: its steps as charts, what was found, its settings. */

import { useId, useState } from 'react';
import {
  type AuxiliaryReport,
  type Chart,
  type Checked,
  chartSvg,
  chartsOf,
  kindOf,
} from '../../../engine/control/index.ts';
import { askBackOfSetting, readNamed } from '../../../engine/quantity/read-setting.ts';
import { type SettingSpec, wordsOf } from '../../../engine/quantity/settings.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Auxiliary } from '../../../engine/refit/types.ts';
import { AskBack, focusOn, useAskBack } from '../../parts/ask-back.tsx';
import { Scroll } from '../../parts/scroll.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import { Findings } from './findings.tsx';

interface Props {
  readonly report: AuxiliaryReport;
  readonly checked: Checked | undefined;
  readonly problem: string | undefined;
  readonly record: (old: Auxiliary | null, next: Auxiliary | null) => void;
}

export function OneAuxiliary({
  report: { auxiliary, opened, problem: own },
  checked,
  problem,
  record,
}: Props) {
  const kind = kindOf(auxiliary.kind);
  const specs = kind?.settings ?? {};
  const put = (id: string, text: string): void => {
    const { [id]: _old, ...rest } = auxiliary.settings;
    record(auxiliary, { ...auxiliary, settings: text.trim() === '' ? rest : { ...rest, [id]: text.trim() } });
  };
  const said = problem ?? own?.message;
  return (
    <>
      <div className="columns two">
        <section aria-labelledby="auxiliary-steps" className="stack">
          <h2 id="auxiliary-steps">{auxiliary.name}: its steps</h2>
          {kind && <p className="soft">{kind.says}</p>}
          {said && (
            <p role="alert" className="bad">
              {said}
            </p>
          )}
          {opened &&
            chartsOf(opened.machine).map((chart) => <StepChart key={chart.operation} chart={chart} />)}
        </section>
        <div className="stack">
          <section aria-labelledby="auxiliary-found" aria-live="polite">
            <h2 id="auxiliary-found">What can go wrong</h2>
            {checked ? (
              <>
                <p className="small soft">
                  {checked.states} states gone through, with {checked.faults} single faults
                  {checked.whole ? '' : '; cut short'}.
                </p>
                <Findings findings={checked.findings} />
              </>
            ) : (
              <p className="soft">{opened ? 'Going through every state …' : 'It cannot be read.'}</p>
            )}
          </section>
        </div>
      </div>
      <section aria-labelledby="auxiliary-settings" className="sheet">
        <h2 id="auxiliary-settings">How yours is</h2>
        <div className="control-settings">
          <Setting
            key={auxiliary.name}
            name="name"
            value={auxiliary.name}
            check={(text) => (text.trim() === '' ? 'Give it a name.' : undefined)}
            set={(text) => record(auxiliary, { ...auxiliary, name: text.trim() })}
          />
          {Object.entries(specs).map(([id, spec]) => (
            <Setting
              key={`${id} ${auxiliary.settings[id] ?? ''}`}
              name={spec.name}
              spec={spec}
              value={auxiliary.settings[id] ?? ''}
              check={(text) => {
                const read = readNamed(specs, id, text);
                return read.ok ? undefined : read.problem.message;
              }}
              set={(text) => put(id, text)}
            />
          ))}
        </div>
        <button type="button" onClick={() => record(auxiliary, null)}>
          Take {auxiliary.name} out
        </button>
      </section>
    </>
  );
}

interface SettingProps {
  readonly name: string;
  readonly spec?: SettingSpec;
  readonly value: string;
  readonly check: (text: string) => string | undefined;
  readonly set: (text: string) => void;
}

/** Leaving it or Enter records it, Escape goes back. */
function Setting({ name, spec, value, check, set }: SettingProps) {
  const id = useId();
  const [text, setText] = useState(value);
  const [fault, setFault] = useState<string>();
  const back = useAskBack((typed) => (spec ? askBackOfSetting(spec, typed) : undefined));
  const done = (): void => {
    if (text.trim() === value) {
      setFault(undefined);
      back.drop();
      return;
    }
    const wrong = check(text);
    setFault(wrong);
    if (wrong === undefined && !back.holds(text)) set(text);
  };
  const said = fault ?? spec?.help;
  return (
    <div className="field">
      <label htmlFor={id}>{capital(name)}</label>
      {spec?.kind === 'choice' ? (
        <select
          id={id}
          value={value === '' ? spec.usual : value}
          aria-describedby={said ? `${id}-said` : undefined}
          onChange={(event) => set(event.target.value)}
        >
          {spec.options.map((option) => (
            <option key={option} value={option}>
              {wordsOf(spec, option)}
            </option>
          ))}
        </select>
      ) : (
        <input
          id={id}
          value={text}
          maxLength={200}
          placeholder={
            spec?.usual
              ? `usually ${spec.usual}`
              : spec?.kind === 'text' && spec.like
                ? `like ${spec.like}`
                : undefined
          }
          aria-invalid={fault !== undefined}
          aria-describedby={
            [back.asked && `${id}-asked`, said && `${id}-said`].filter(Boolean).join(' ') || undefined
          }
          onChange={(event) => {
            setText(event.target.value);
            back.drop();
          }}
          onBlur={done}
          onKeyDown={(event) => {
            if (event.key === 'Enter') done();
            if (event.key === 'Escape') {
              setText(value);
              setFault(undefined);
              back.drop();
            }
          }}
        />
      )}
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
      {said && (
        <p
          id={`${id}-said`}
          className={fault ? 'bad small' : 'soft small'}
          role={fault ? 'alert' : undefined}
        >
          {said}
        </p>
      )}
    </div>
  );
}

function StepChart({ chart }: { chart: Chart }) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <figure className="control-chart sheet">
      <figcaption>
        <h3>{capital(chart.title)}</h3>
      </figcaption>
      <div
        ref={box}
        // biome-ignore lint/security/noDangerouslySetInnerHtml: made by the engine, with every text escaped
        dangerouslySetInnerHTML={{ __html: width > 0 ? chartSvg(chart, Math.max(260, width)) : '' }}
      />
      <details>
        <summary>As a table</summary>
        <Scroll label={`Steps: ${chart.title}`}>
          <table>
            <thead>
              <tr>
                <th>Step</th>
                <th>On</th>
                <th>Off</th>
                <th>Waits for</th>
                <th>At most</th>
                <th>If late</th>
              </tr>
            </thead>
            <tbody>
              {chart.rows.map((row) => (
                <tr key={row.n}>
                  <th scope="row">
                    {row.n}. {row.says}
                  </th>
                  <td>{row.on.join(', ') || '–'}</td>
                  <td>{row.off.join(', ') || '–'}</td>
                  <td>{row.waits}</td>
                  <td>{row.most}</td>
                  <td>{row.late || '–'}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </figure>
  );
}
