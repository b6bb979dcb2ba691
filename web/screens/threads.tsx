/** The thread book: any thread, its sizes and limits, and how this machine can cut it. */
import { useEffect, useMemo, useState } from 'react';
import { parseThread, type Side } from '../../engine/threads/index.ts';
import { Top } from '../parts/top.tsx';
import { Cutting } from './threads/cutting.tsx';
import { askField, FIELDS, type Field, type Fields, readField } from './threads/fields.ts';
import { PICKS } from './threads/pick.ts';
import { Sizes } from './threads/sizes.tsx';
import './threads/threads.css';

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
  ) as Fields;
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
              const question = askField(key, typed[key]);
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
                  {field.ok && question && <span className="small">{question}</span>}
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
