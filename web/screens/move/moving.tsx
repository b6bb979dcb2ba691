/** An axis under trial: what it shall do, what may be changed, and what happens. */
import { useCallback, useMemo, useState } from 'react';
import type { MoveSetting } from '../../../engine/advice/axis-model.ts';
import { type InWordsOptions, MOVE_KINDS, MOVES } from '../../../engine/simulate/index.ts';
import { getPerson } from '../../state/person.ts';
import { Assumed } from './assumed.tsx';
import { BandPanel } from './band.tsx';
import { Charts } from './charts.tsx';
import { Controls } from './controls.tsx';
import { LoopPanel } from './loop.tsx';
import { MoveForm } from './move-form.tsx';
import { type AxisModel, type Changes, changed, type MoveKind } from './parts.ts';
import { type Fields, readMove } from './read-move.ts';
import { Says } from './says.tsx';
import { type Kept, useRun } from './use-run.ts';

interface MovingProps {
  readonly subject: string;
  readonly setting: MoveSetting;
  readonly model: AxisModel;
}

/** The axis with everything that may be tried on it. */
export function Moving({ subject, setting, model: base }: MovingProps) {
  const [kind, setKind] = useState<MoveKind>('rapid');
  const [typed, setTyped] = useState<Partial<Record<MoveKind, Fields>>>({});
  const [changes, setChanges] = useState<Changes>({});
  const [control, setControl] = useState<AxisModel['control']>();
  const [kept, setKept] = useState<Kept>();

  const usual = useMemo(() => {
    const own: Record<string, string> = {};
    for (const [key, field] of Object.entries(MOVES[kind].fields))
      own[key] = setting.usual[kind]?.[key] ?? field.usual;
    return own;
  }, [kind, setting]);
  const fields = typed[kind] ?? usual;
  const read = useMemo(() => readMove(kind, fields), [kind, fields]);
  const model = useMemo(
    () => changed(control ? { ...base, control } : base, changes),
    [base, control, changes],
  );
  const words = useMemo<InWordsOptions>(
    () => ({
      continuousCurrent: setting.continuousCurrent,
      system: getPerson().system,
      names: [subject, setting.second?.chain ?? 'other'],
      travel: setting.travel,
      travelFact: `${subject}.slide.travel`,
    }),
    [setting, subject],
  );

  const { movers, now, fault } = useRun(model, read, setting, words);
  // What stands there is of other numbers until the new run is in.
  const isOld =
    now !== undefined && fault === '' && (now.model !== model || now.typed !== read) && !('fault' in read);

  const setField = useCallback(
    (key: string, text: string) => setTyped((all) => ({ ...all, [kind]: { ...fields, [key]: text } })),
    [kind, fields],
  );

  const kinds = MOVE_KINDS.filter((each) => each !== 'drop' || base.brake || base.slide.tilt !== 0);
  return (
    <>
      <Assumed setting={setting} />
      <div className="columns move-columns">
        <section className="sheet stack" aria-labelledby="which-move">
          <MoveForm
            kind={kind}
            kinds={kinds}
            fields={fields}
            fault={'fault' in read ? read.fault : {}}
            onKind={(next) => {
              setKind(next);
              setKept(undefined);
            }}
            onField={setField}
          />
          <h2>What may be changed</h2>
          <p className="small soft">Only here, to try it: the refit stays as it is.</p>
          <Controls base={control ? { ...base, control } : base} changes={changes} onChange={setChanges} />
          {(Object.keys(changes).length > 0 || control) && (
            <button
              type="button"
              onClick={() => {
                setChanges({});
                setControl(undefined);
              }}
            >
              Everything back to the refit’s own
            </button>
          )}
        </section>
        <section className="stack" aria-label="What happens">
          <div className="sheet says" aria-live="polite">
            <h2>
              What happens
              {isOld && (
                <span className="small soft" aria-hidden="true">
                  {' '}
                  moving …
                </span>
              )}
            </h2>
            {fault && <p className="bad">{fault}</p>}
            {!now && !fault && <p role="status">Moving …</p>}
            {now && (
              <div className={isOld ? 'working' : undefined}>
                <Says says={now.says} />
                {now.beside && (
                  <>
                    <h3>The same {now.beside.name}</h3>
                    <Says says={now.beside.says} />
                  </>
                )}
              </div>
            )}
            {kept && (
              <>
                <h3>{kept.name}</h3>
                <Says says={kept.says} />
              </>
            )}
            {now && (
              <div className="row">
                <button
                  type="button"
                  onClick={() => setKept({ ...now, name: `To compare: ${sayChanges(changes, control)}` })}
                >
                  Keep this to compare
                </button>
                {kept && (
                  <button type="button" className="plain" onClick={() => setKept(undefined)}>
                    Drop what was kept
                  </button>
                )}
              </div>
            )}
          </div>
          {now && <Charts now={now} kept={kept} kind={kind} />}
        </section>
      </div>
      {now && 'move' in read && (
        <div className="columns two">
          <LoopPanel
            movers={movers}
            model={model}
            onUse={(own) => {
              setControl({ ...model.control, ...own } as AxisModel['control']);
              setChanges((all) =>
                Object.fromEntries(Object.entries(all).filter(([path]) => !path.startsWith('control.'))),
              );
            }}
          />
          <BandPanel
            movers={movers}
            model={model}
            second={setting.second?.model}
            move={read.move}
            spread={setting.spread}
          />
        </div>
      )}
    </>
  );
}

function sayChanges(changes: Changes, control: unknown): string {
  const names = Object.keys(changes).map((path) =>
    path.split('.')[1]!.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`),
  );
  if (control) names.unshift('other gains');
  return names.length === 0 ? 'as the refit has it' : names.join(', ');
}
