/** The thread book: any thread, its sizes and limits, and how this machine can cut it. */
import { useEffect, useMemo, useState } from 'react';
import { formatQuantity, parseQuantity, type Result } from '../../engine/quantity/index.ts';
import {
  dimensionsOf,
  drillsFor,
  limitsOf,
  type Machine,
  parseThread,
  planThread,
  type Side,
  type Thread,
} from '../../engine/threads/index.ts';
import { Top } from '../parts/top.tsx';
import { usePerson } from '../state/person.ts';
import { Passes } from './threads/passes.tsx';
import { PICKS } from './threads/pick.ts';
import { Profile } from './threads/profile.tsx';
import { mm, rpm, sayLength, sayValue } from './threads/say.ts';
import './threads/threads.css';
import { WallChart } from './threads/wall-chart.tsx';

const FIELDS = [
  ['rapid', 'Fastest speed of the slide', 'm/min', '3 m/min', true],
  ['accel', 'Its acceleration', 'm/s²', '0.5 m/s²', true],
  ['gain', 'Gain of its loop', '1/s', '', false],
  ['spindle', 'Highest spindle speed', 'r/min', '2000 r/min', false],
  ['length', 'Length of thread', 'mm', '20 mm', true],
  ['room', 'Room before the thread', 'mm', '', false],
] as const;
type Field = (typeof FIELDS)[number][0];

/** A value above zero, nothing for an empty field that may be empty, or why not. */
function readField(text: string, unit: string, needed: boolean): Result<number | undefined> {
  if (text.trim() === '' && !needed) return { ok: true, value: undefined };
  const read = parseQuantity(text, unit);
  if (!read.ok) return read;
  return read.value.value > 0 && read.value.value < 1e9
    ? { ok: true, value: read.value.value }
    : {
        ok: false,
        problem: {
          code: 'out-of-domain',
          message: 'It must be above zero, and no more than a machine can have.',
        },
      };
}

export default function Threads() {
  const [text, setText] = useState('M10');
  const [className, setClassName] = useState('');
  const [side, setSide] = useState<Side>('external');
  const [infeed, setInfeed] = useState<'straight' | 'flank'>('flank');
  const [typed, setTyped] = useState<Readonly<Record<Field, string>>>(
    Object.fromEntries(FIELDS.map(([key, , , usual]) => [key, usual])) as Record<Field, string>,
  );
  useEffect(() => {
    document.title = 'Fettle: threads';
  }, []);
  const read = useMemo(() => parseThread(text), [text]);
  const fields = Object.fromEntries(
    FIELDS.map(([key, , unit, , needed]) => [key, readField(typed[key], unit, needed)]),
  ) as Record<Field, Result<number | undefined>>;
  return (
    <>
      <Top />
      <main id="content" className="stack thread-page">
        <div>
          <h1>Threads</h1>
          <p>Sizes and limits of any thread, the hole to drill, and how your machine can cut it.</p>
        </div>
        <form className="thread-form" onSubmit={(event) => event.preventDefault()}>
          <label>
            Thread
            <input
              value={text}
              onChange={(event) => setText(event.target.value)}
              aria-describedby="thread-said"
              aria-invalid={!read.ok}
            />
          </label>
          <label>
            or pick one
            <select value="" onChange={(event) => setText(event.target.value)}>
              <option value="">…</option>
              {PICKS.map(([family, names]) => (
                <optgroup key={family} label={family}>
                  {names.map((name) => (
                    <option key={name}>{name}</option>
                  ))}
                </optgroup>
              ))}
            </select>
          </label>
          <label>
            Tolerance class
            <input
              value={className}
              placeholder="usual"
              onChange={(event) => setClassName(event.target.value)}
            />
          </label>
          <div id="thread-said" className="said" role="status">
            {read.ok ? (
              read.value.notes.map((note) => (
                <p key={note} className="small soft">
                  {note}
                </p>
              ))
            ) : (
              <>
                <p className="bad">{read.problem.message}</p>
                <div className="row">
                  {read.problem.readings?.map((each) => (
                    <button key={each} type="button" onClick={() => setText(each)}>
                      {each}
                    </button>
                  ))}
                </div>
              </>
            )}
          </div>
        </form>
        {read.ok && <Sizes thread={read.value} className={className} />}
        <section aria-labelledby="cutting">
          <h2 id="cutting">Cutting it on your machine</h2>
          <form className="thread-form" onSubmit={(event) => event.preventDefault()}>
            {FIELDS.map(([key, name, unit, usual]) => {
              const field = fields[key];
              return (
                <label key={key}>
                  {name}
                  <input
                    value={typed[key]}
                    placeholder={
                      usual === '' ? `not known, such as ${unit === 'mm' ? '8 mm' : '30 1/s'}` : usual
                    }
                    aria-invalid={!field.ok}
                    onChange={(event) => setTyped({ ...typed, [key]: event.target.value })}
                  />
                  {!field.ok && <span className="small bad">{field.problem.message}</span>}
                </label>
              );
            })}
            <label>
              Where
              <select value={side} onChange={(event) => setSide(event.target.value as Side)}>
                <option value="external">outside (bolt)</option>
                <option value="internal">inside (nut)</option>
              </select>
            </label>
            <label>
              How the tool goes in
              <select
                value={infeed}
                onChange={(event) => setInfeed(event.target.value as 'straight' | 'flank')}
              >
                <option value="flank">along a flank</option>
                <option value="straight">straight</option>
              </select>
            </label>
          </form>
          {read.ok && <Cutting thread={read.value} side={side} infeed={infeed} fields={fields} />}
        </section>
      </main>
    </>
  );
}

function Sizes({ thread, className }: { readonly thread: Thread; readonly className: string }) {
  const { system } = usePerson();
  const limits = limitsOf(thread, className.trim() === '' ? undefined : className);
  const inch = system === 'in';
  return (
    <div className="columns two">
      <section aria-labelledby="sizes">
        <h2 id="sizes">{thread.designation}</h2>
        <Profile thread={thread} system={system} />
        <h3>Hole to drill</h3>
        <ul>
          {drillsFor(thread).map(({ name, use, share, inLimits }) => (
            <li key={`${name} ${use}`}>
              {name}, {use}
              {share !== undefined && share < 1 ? `: ${Math.round(100 * share)} % of the thread is left` : ''}
              {inLimits === false ? '; outside the limits of the bore' : ''}
            </li>
          ))}
        </ul>
        {limits.ok ? (
          limits.value.map((each) => (
            <div key={each.side + each.className}>
              <h3>
                Limits {each.side === 'external' ? 'outside' : 'inside'}
                {each.className.includes(' ') ? '' : `, class ${each.className}`}
              </h3>
              <table>
                <thead>
                  <tr>
                    <th scope="col">size</th>
                    <th scope="col" className="number">
                      smallest
                    </th>
                    <th scope="col" className="number">
                      largest
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {each.rows.map(({ key, name, low, high }) => (
                    <tr key={key}>
                      <th scope="row">{name}</th>
                      <td className="number">{low === undefined ? '–' : sayLength(low, system)}</td>
                      <td className="number">{high === undefined ? '–' : sayLength(high, system)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
              <p className="small soft">
                {each.note} Source: {each.source}.
              </p>
            </div>
          ))
        ) : (
          <p className="bad" role="alert">
            {limits.problem.message}
          </p>
        )}
      </section>
      <section aria-labelledby="all-sizes">
        <h2 id="all-sizes">All sizes, before any tolerance</h2>
        <table>
          <tbody>
            {dimensionsOf(thread).map(({ key, name, value, unit, says }) => (
              <tr key={key}>
                <th scope="row">
                  {name}
                  {says && <div className="small soft">{says}</div>}
                </th>
                <td className="number">{sayValue(value, unit, inch ? 'in' : 'mm')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </div>
  );
}

interface CuttingProps {
  readonly thread: Thread;
  readonly side: Side;
  readonly infeed: 'straight' | 'flank';
  readonly fields: Readonly<Record<Field, Result<number | undefined>>>;
}

function Cutting({ thread, side, infeed, fields }: CuttingProps) {
  const { system } = usePerson();
  const value = (key: Field): number | undefined => {
    const field = fields[key];
    return field.ok ? field.value : undefined;
  };
  const [rapid, acceleration, length] = [value('rapid'), value('accel'), value('length')];
  const wrong = Object.values(fields).some((field) => !field.ok);
  if (wrong || rapid === undefined || acceleration === undefined || length === undefined)
    return (
      <p role="status">A plan needs speed and acceleration of the slide, and the length of the thread.</p>
    );
  const [gain, spindle, room] = [value('gain'), value('spindle'), value('room')];
  const machine: Machine = {
    rapid,
    acceleration,
    ...(gain === undefined ? {} : { gain }),
    ...(spindle === undefined ? {} : { spindle }),
  };
  const plan = planThread(thread, machine, { side, length, infeed, ...(room === undefined ? {} : { room }) });
  if (plan.speed < 0.1)
    return (
      <p className="bad">
        No spindle speed leaves the slide enough room before the thread; begin further away.
      </p>
    );
  return (
    <div className="columns two" style={{ marginTop: '1rem' }}>
      <div>
        <h3>Passes</h3>
        <p>
          At most <strong>{rpm(plan.speed)}</strong>: {plan.limits[0]!.name} allows no more. Begin at least{' '}
          {mm(plan.runIn, 1)} mm before the thread and leave {mm(plan.runOut, 1)} mm behind it. Keep the
          spindle speed from the first pass to the last: the slide trails by {mm(plan.trail, 2)} mm.
        </p>
        {thread.starts > 1 && (
          <p>
            Starts:{' '}
            {plan.starts
              .map(
                ({ number, angle, shift }) =>
                  `${number} at ${((angle * 180) / Math.PI).toFixed(0)}° or ${mm(shift, 2)} mm further`,
              )
              .join('; ')}
            .
          </p>
        )}
        <p>
          {plan.passes.length} passes and {plan.springs} without infeed, about{' '}
          {formatQuantity(plan.time, 's', { digits: 2 })}.
        </p>
        {plan.assumed.map((sentence) => (
          <p key={sentence} className="small soft">
            {sentence}
          </p>
        ))}
        <Passes thread={thread} plan={plan} side={side} system={system} />
      </div>
      <div>
        <div className="row spread">
          <h3>For the wall</h3>
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
        <WallChart machine={machine} room={room} thread={thread} />
      </div>
    </div>
  );
}
