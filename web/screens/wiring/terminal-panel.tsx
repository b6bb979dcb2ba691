/** One terminal: what it is taken for, field by field, where each comes from, and what it really is. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { symbolOf, symbolPicture } from '../../../engine/circuit/drawing/index.ts';
import {
  exampleOf,
  type FieldLine,
  setBack,
  state,
  terminalSheet,
} from '../../../engine/circuit/whole/index.ts';
import type { Device, ReadWiring, WiringFinding } from '../../../engine/circuit/wiring/index.ts';
import { askBackOfSetting } from '../../../engine/quantity/read-setting.ts';
import { wordsOf } from '../../../engine/quantity/settings.ts';
import { byVerdict } from '../../../engine/quantity/verdict.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { VerdictWord } from '../../parts/verdict.tsx';
import type { Session } from '../../state/session.ts';
import { DraftField } from '../survey/draft-field.tsx';
import { drawNode } from './draw-node.tsx';
import { recordAll } from './record-all.ts';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly read: ReadWiring;
  readonly findings: readonly WiringFinding[];
  readonly device: Device;
  readonly terminal: string;
  readonly close: () => void;
}

/** Findings shown here; all stand above. */
const SHOWN = 4;

export function TerminalPanel({ session, refit, read, findings, device, terminal: id, close }: Props) {
  const mark = id.slice(device.id.length + 1);
  const [fault, setFault] = useState('');
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'nearest' });
  }, []);
  const sheet = useMemo(() => terminalSheet(refit, device.id, mark), [refit, device.id, mark]);
  const symbol = useMemo(() => symbolOf(id, device, read), [id, device, read]);
  const said = useMemo(
    () => findings.filter(({ about, verdict }) => verdict !== 'fits' && about.includes(id)).sort(byVerdict),
    [findings, id],
  );
  if (!sheet) return null;
  const at = (setting: string) =>
    ({ of: 'terminal', id: device.id, mark, kind: sheet.nature.kind, setting }) as const;
  const check = (line: FieldLine, text: string): string | undefined => {
    const done = state(refit, at(line.setting), text);
    return done.ok ? undefined : done.problem.message;
  };
  const set = async (line: FieldLine, text: string): Promise<boolean> => {
    const wrong = await recordAll(session, (now) => state(now, at(line.setting), text));
    setFault(wrong ?? '');
    return wrong === undefined;
  };
  const back = async (): Promise<void> =>
    setFault((await recordAll(session, (now) => setBack(now, device.id, mark))) ?? '');
  const fields = (lines: readonly FieldLine[]) => (
    <div className="wiring-settings wiring-fields">
      {lines.map((line) => (
        <Field
          key={line.setting}
          line={line}
          of={id}
          draft={`${session.id}.wiring.${id}.${line.setting}`}
          check={(text) => check(line, text)}
          set={(text) => set(line, text)}
        />
      ))}
    </div>
  );
  return (
    <section
      className="stack wiring-terminal-panel"
      aria-labelledby="wiring-terminal"
      data-terminal-panel={id}
    >
      <div className="row spread">
        <div className="row">
          {symbol && <span className="wiring-symbol">{drawNode(symbolPicture(symbol))}</span>}
          <h3 id="wiring-terminal" ref={heading} tabIndex={-1}>
            {id}: {sheet.name && sheet.name !== sheet.words ? `${sheet.name}, ` : ''}
            {sheet.words}
          </h3>
        </div>
        <button type="button" className="plain" onClick={close}>
          Close {id}
        </button>
      </div>
      {said.length > 0 && (
        <ul className="wiring-said" aria-label={`What is said of ${id}`}>
          {said.slice(0, SHOWN).map((each) => (
            <li key={each.id} data-said={each.id}>
              <VerdictWord verdict={each.verdict} /> {each.sentence}
            </li>
          ))}
          {said.length > SHOWN && <li>and {said.length - SHOWN} more, in the findings above.</li>}
        </ul>
      )}
      <p className="small soft">
        Leave a field empty to keep what is taken to be so. What you know better from a data sheet or a meter,
        write here; what it changes is said at once.
      </p>
      {fields(sheet.fields)}
      <details>
        <summary>How it belongs to {device.id}</summary>
        {fields(sheet.bonds)}
      </details>
      {fault && (
        <p className="bad" role="alert">
          {fault}
        </p>
      )}
      {sheet.isStated && (
        <p>
          <button type="button" onClick={() => void back()}>
            {sheet.isAdded ? `Take ${id} out` : `Set ${id} back to the usual`}
          </button>
        </p>
      )}
    </section>
  );
}

function Field({
  line: { spec, setting, typed, value, from },
  of,
  draft,
  check,
  set,
}: {
  line: FieldLine;
  of: string;
  draft: string;
  check: (text: string) => string | undefined;
  set: (text: string) => Promise<boolean>;
}) {
  const taken =
    typed === '' ? (value === '' ? 'Not known.' : `Taken as ${value}: ${from}.`) : 'Said of this terminal.';
  return (
    <div data-field={setting}>
      {spec.kind === 'choice' ? (
        <label className="wiring-choice">
          {capital(spec.name)}
          <select
            aria-label={`${of}: ${spec.name}`}
            value={typed}
            onChange={(event) => void set(event.target.value)}
          >
            <option value="">{value === '' || typed !== '' ? 'as is usual' : value}</option>
            {spec.options.map((each) => (
              <option key={each} value={each}>
                {wordsOf(spec, each)}
              </option>
            ))}
          </select>
        </label>
      ) : (
        <DraftField
          label={capital(spec.name)}
          draft={draft}
          recorded={typed}
          {...(spec.kind === 'quantity' && spec.unit !== '1' ? { unit: spec.unit } : {})}
          like={value || exampleOf(spec)}
          check={check}
          askBack={(text) => askBackOfSetting(spec, text)}
          onSave={set}
        />
      )}
      <p className="small soft">{taken}</p>
    </div>
  );
}
