/** Move it: the axis moves on the screen before anything is bought. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { MoveSetting } from '../../engine/advice/axis-model.ts';
import { formatQuantity, parseQuantity, preferred } from '../../engine/quantity/index.ts';
import { type InWordsOptions, inWords, MOVE_KINDS, MOVES, type Saying } from '../../engine/simulate/index.ts';
import { capital } from '../parts/fact-field.tsx';
import { Mark } from '../parts/verdict.tsx';
import { useWidth } from '../pictures/use-width.ts';
import { getPerson } from '../state/person.ts';
import type { Session, View } from '../state/session.ts';
import { CannotMove, Movers } from '../worker/move-client.ts';
import { BandPanel } from './move/band.tsx';
import { CircleChart } from './move/circle.tsx';
import { Controls } from './move/controls.tsx';
import { LoopPanel } from './move/loop.tsx';
import { type AxisModel, type Changes, changed, type Move, type MoveKind, type Run } from './move/parts.ts';
import { RunTable } from './move/run-table.tsx';
import { type Line, type Panel, TimeChart } from './move/time-chart.tsx';
import '../pictures/pictures.css';
import './move/move.css';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly subject: string;
}

/** Points kept of each quantity: more than a wide screen has pixels. */
const POINTS = 1600;

export default function MovePage({ session, view, subject }: Props) {
  const [setting, setSetting] = useState<MoveSetting>();
  const [parts, setParts] = useState<Parts>({});
  const { shown } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new snapshot is a new model
  useEffect(() => {
    let current = true;
    session.engine.ask('axisModel', { chain: subject, parts }).then(
      (got) => current && setSetting(got),
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [session, subject, shown, parts]);
  const home = `/refit/${session.id}/move`;
  return (
    <div>
      <h1>How will the {subject} axis move?</h1>
      <nav className="row" aria-label="Axes" style={{ marginBottom: '1rem' }}>
        {view.refit.chains.map(({ id }) => (
          <Link
            key={id}
            className="button tab"
            href={`${home}/${id}`}
            aria-current={id === subject ? 'page' : undefined}
          >
            {id}
          </Link>
        ))}
      </nav>
      <Others key={subject} view={view} subject={subject} parts={parts} onChange={setParts} />
      {!setting && <p role="status">Putting the axis together …</p>}
      {setting && !setting.model && <Lacking session={session} setting={setting} />}
      {setting?.model && <Moving key={subject} subject={subject} setting={setting} model={setting.model} />}
    </div>
  );
}

/** Parts put in places of the axis for a try, by place. */
type Parts = Readonly<Record<string, string>>;

/** Places of the axis for which there is more than one part: tried here, not chosen in the refit. */
function Others({
  view,
  subject,
  parts,
  onChange,
}: {
  view: View;
  subject: string;
  parts: Parts;
  onChange: (parts: Parts) => void;
}) {
  const places = view.refit.chains.find(({ id }) => id === subject)?.places ?? {};
  const open = Object.entries(places).filter(
    ([, { options, chosen }]) => options.length > 1 && chosen !== null && chosen !== 'none',
  );
  useEffect(() => () => onChange({}), [onChange]);
  if (open.length === 0) return null;
  return (
    <fieldset className="row others" aria-label="Parts to try">
      {open.map(([place, { options, chosen }]) => (
        <div key={place}>
          <label htmlFor={`try-${place}`}>{capital(place)}</label>
          <select
            id={`try-${place}`}
            value={parts[place] ?? chosen ?? ''}
            onChange={(event) => {
              const { [place]: _gone, ...rest } = parts;
              onChange(event.target.value === chosen ? rest : { ...rest, [place]: event.target.value });
            }}
          >
            {options.map((id) => (
              <option key={id} value={id}>
                {view.refit.parts[id]?.name ?? id}
              </option>
            ))}
          </select>
        </div>
      ))}
    </fieldset>
  );
}

function Lacking({ session, setting }: { session: Session; setting: MoveSetting }) {
  return (
    <div className="sheet">
      <h2>It cannot be moved yet</h2>
      <p>To put the axis together, these have to be known, if only as a guess:</p>
      <ul>
        {setting.missing.map(({ path, name }) => (
          <li key={path}>
            {capital(name)} <span className="small soft">({path})</span>
          </li>
        ))}
      </ul>
      <p>
        <Link href={`/refit/${session.id}/know`}>Enter them on the page Know</Link>
      </p>
    </div>
  );
}

type Fields = Readonly<Record<string, string>>;

interface Shown {
  readonly run: Run;
  readonly model: AxisModel;
  readonly says: readonly Saying[];
}

interface Kept extends Shown {
  readonly name: string;
}

/** The move with its texts read, or what is wrong with one of them. */
function readMove(
  kind: MoveKind,
  fields: Fields,
): { move: Move } | { fault: Readonly<Record<string, string>> } {
  const fault: Record<string, string> = {};
  const values: Record<string, number> = {};
  for (const [key, { unit }] of Object.entries(MOVES[kind].fields)) {
    const read = parseQuantity(fields[key] ?? '', unit);
    if (read.ok) values[key] = read.value.value;
    else fault[key] = read.problem.message;
  }
  return Object.keys(fault).length > 0 ? { fault } : { move: { kind, ...values } as unknown as Move };
}

interface MovingProps {
  readonly subject: string;
  readonly setting: MoveSetting;
  readonly model: AxisModel;
}

function Moving({ subject, setting, model: base }: MovingProps) {
  const [kind, setKind] = useState<MoveKind>('rapid');
  const [typed, setTyped] = useState<Partial<Record<MoveKind, Fields>>>({});
  const [changes, setChanges] = useState<Changes>({});
  const [control, setControl] = useState<AxisModel['control']>();
  const [now, setNow] = useState<Shown>();
  const [fault, setFault] = useState('');
  const [kept, setKept] = useState<Kept>();
  const movers = useRef<Movers>(undefined);
  const turn = useRef(0);
  const busy = useRef(false);
  const wanted = useRef<(() => Promise<void>) | undefined>(undefined);

  useEffect(() => {
    const own = new Movers();
    movers.current = own;
    return () => own.close();
  }, []);

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
    }),
    [setting, subject],
  );

  // While one run is under way only the newest wish waits: a slider must never queue up work.
  useEffect(() => {
    if ('fault' in read) return;
    const mine = ++turn.current;
    const { move } = read;
    const next = async (): Promise<void> => {
      try {
        const run = await movers.current!.run({
          model,
          move,
          points: POINTS,
          settleBand: setting.settleBand,
          ...(kind === 'circle' && setting.second ? { second: setting.second.model } : {}),
        });
        if (mine === turn.current) {
          setFault('');
          setNow({ run, model, says: inWords(run, model, words) });
        }
      } catch (error) {
        if (mine === turn.current)
          setFault(error instanceof CannotMove || error instanceof Error ? error.message : String(error));
      }
    };
    const work = async (task: () => Promise<void>): Promise<void> => {
      if (busy.current) {
        wanted.current = task;
        return;
      }
      busy.current = true;
      await task();
      busy.current = false;
      const waiting = wanted.current;
      wanted.current = undefined;
      if (waiting) await work(waiting);
    };
    void work(next);
  }, [model, read, words, setting, kind]);

  const setField = useCallback(
    (key: string, text: string) => setTyped((all) => ({ ...all, [kind]: { ...fields, [key]: text } })),
    [kind, fields],
  );

  return (
    <>
      {setting.assumed.length > 0 && (
        <details className="sheet assumed">
          <summary>{setting.assumed.length} numbers are assumed, because the refit does not say them</summary>
          <ul>
            {setting.assumed.map(({ path, says }) => (
              <li key={path}>
                {says} <span className="small soft">({path})</span>
              </li>
            ))}
          </ul>
        </details>
      )}
      <div className="columns move-columns">
        <section className="sheet stack" aria-labelledby="which-move">
          <h2 id="which-move">What it shall do</h2>
          <div>
            <label htmlFor="move-kind">Move</label>
            <select
              id="move-kind"
              value={kind}
              onChange={(event) => {
                setKind(event.target.value as MoveKind);
                setKept(undefined);
              }}
            >
              {MOVE_KINDS.filter((each) => each !== 'drop' || base.brake || base.slide.tilt !== 0).map(
                (each) => (
                  <option key={each} value={each}>
                    {capital(each.replaceAll('-', ' '))}
                  </option>
                ),
              )}
            </select>
            <p className="small soft">{MOVES[kind].says}</p>
          </div>
          <div className="move-fields">
            {Object.entries(MOVES[kind].fields).map(([key, { name }]) => {
              const wrong = 'fault' in read ? read.fault[key] : undefined;
              return (
                <div key={`${kind} ${key}`} className="field">
                  <label htmlFor={`move-${key}`}>{capital(name)}</label>
                  <input
                    id={`move-${key}`}
                    value={fields[key] ?? ''}
                    autoComplete="off"
                    spellCheck={false}
                    aria-invalid={wrong !== undefined}
                    aria-describedby={`move-${key}-said`}
                    onChange={(event) => setField(key, event.target.value)}
                  />
                  <p id={`move-${key}-said`} className="said" aria-live="polite">
                    {wrong && <span className="bad">{wrong}</span>}
                  </p>
                </div>
              );
            })}
          </div>
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
            <h2>What happens</h2>
            {fault && <p className="bad">{fault}</p>}
            {!now && !fault && <p role="status">Moving …</p>}
            {now && <Says says={now.says} />}
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
          <BandPanel movers={movers} model={model} move={read.move} spread={setting.spread} />
        </div>
      )}
    </>
  );
}

const LEVELS = { bad: 'fails', doubtful: 'tight', good: 'fits', note: 'unknown' } as const;
const WORDS = { bad: 'It fails: ', doubtful: 'Beware: ', good: 'Good: ', note: '' } as const;

function Says({ says }: { says: readonly Saying[] }) {
  return (
    <ul className="sayings">
      {says.map(({ level, sentence }) => (
        <li key={sentence} className={level}>
          {level === 'note' ? <span className="mark" aria-hidden="true" /> : <Mark verdict={LEVELS[level]} />}
          <span>
            <span className="hidden">{WORDS[level]}</span>
            {sentence}
          </span>
        </li>
      ))}
    </ul>
  );
}

function sayChanges(changes: Changes, control: unknown): string {
  const names = Object.keys(changes).map((path) =>
    path.split('.')[1]!.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`),
  );
  if (control) names.unshift('other gains');
  return names.length === 0 ? 'as the refit has it' : names.join(', ');
}

function Charts({ now, kept, kind }: { now: Shown; kept: Kept | undefined; kind: MoveKind }) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const { system } = getPerson();
  const panels = useMemo(() => panelsOf(now, kept, system), [now, kept, system]);
  const { run } = now;
  const said = run.events.filter(({ kind: each }) => each !== 'stick' && each !== 'slip').slice(0, 12);
  return (
    <div className="sheet">
      <div ref={ref}>
        {width > 0 && kind === 'circle' && run.circle && (
          <CircleChart now={run.circle} kept={kept?.run.circle ?? undefined} width={Math.min(width, 460)} />
        )}
        {width > 0 && <TimeChart panels={panels} events={run.events} width={width} until={run.until} />}
      </div>
      {said.length > 0 && (
        <details>
          <summary>What happened when</summary>
          <ol className="happened">
            {said.map((event) => (
              <li key={`${event.time} ${event.kind} ${event.axis}`}>
                {formatQuantity(event.time * 1000, '1', { digits: 4 })} ms: {event.sentence}
              </li>
            ))}
          </ol>
        </details>
      )}
      <RunTable run={run} system={system} />
    </div>
  );
}

function panelsOf(now: Shown, kept: Kept | undefined, system: 'mm' | 'in'): Panel[] {
  const length = preferred('mm', system);
  const one = (name: string, unit: string, key: 'following' | 'speed' | 'current' | 'bus'): Panel => {
    const lines: Line[] = [{ name: 'now', values: now.run[key], time: now.run.time, look: 'main' }];
    if (kept) lines.push({ name: 'kept', values: kept.run[key], time: kept.run.time, look: 'other' });
    if (now.run.second && key !== 'bus')
      lines.push({ name: 'second axis', values: now.run.second[key], time: now.run.time, look: 'aside' });
    return { name, unit, lines };
  };
  const { drive } = now.model;
  const limit = (name: string, at: number): { name: string; at: number }[] =>
    Number.isFinite(at) ? [{ name, at }] : [];
  return [
    {
      name: 'Position',
      unit: length,
      lines: [
        { name: 'the slide', values: now.run.actual, time: now.run.time, look: 'main' },
        { name: 'commanded', values: now.run.commanded, time: now.run.time, look: 'aside' },
        ...(kept
          ? [{ name: 'kept', values: kept.run.actual, time: kept.run.time, look: 'other' } as const]
          : []),
      ],
    },
    {
      ...one('Behind the command', system === 'in' ? 'in' : 'µm', 'following'),
      limits: limit('trips', drive.followingLimit),
    },
    one('Motor speed', 'r/min', 'speed'),
    ...(now.model.motor.kind === 'stepper'
      ? []
      : [{ ...one('Current', 'A', 'current'), limits: limit('limit', drive.currentLimit) }]),
    ...(now.model.supply.kind === 'constant'
      ? []
      : [{ ...one('Bus', 'V', 'bus'), limits: limit('trips', drive.overvoltage) }]),
  ];
}
