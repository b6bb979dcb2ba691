/** Start a refit from nothing: a name, the kind of machine, its axes, whether its spindle is refitted too. */
import { type FormEvent, useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { api } from '../api.ts';
import { Top } from '../parts/top.tsx';
import { getPerson } from '../state/person.ts';

type Machine = 'lathe' | 'mill' | 'other';
const AXES: Readonly<Record<Machine, string>> = { lathe: 'X, Z', mill: 'X, Y, Z', other: 'X' };
const WORDS: Readonly<Record<Machine, string>> = {
  lathe: 'a lathe',
  mill: 'a mill',
  other: 'something else',
};

export default function NewRefit() {
  const [machine, setMachine] = useState<Machine>('lathe');
  const [axes, setAxes] = useState(AXES.lathe);
  const [spindle, setSpindle] = useState(true);
  const [name, setName] = useState('');
  const [about, setAbout] = useState('');
  const [fault, setFault] = useState('');
  const [, go] = useLocation();
  useEffect(() => {
    document.title = 'Fettle: start a refit';
  }, []);

  const start = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setFault('');
    try {
      const { id } = await api.create({
        name: name.trim() || (machine === 'other' ? 'My machine' : `My ${machine}`),
        about,
        machine,
        who: getPerson().who,
        axes: axes.split(/[\s,;]+/).filter(Boolean),
        spindle,
      });
      go(`/refit/${id}`);
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  };

  return (
    <>
      <Top />
      <main id="content">
        <h1>What are you bringing back to life?</h1>
        <form className="sheet stack" onSubmit={(event) => void start(event)}>
          <fieldset>
            <legend>It is</legend>
            <div className="row">
              {(Object.keys(WORDS) as Machine[]).map((each) => (
                <button
                  key={each}
                  type="button"
                  aria-pressed={machine === each}
                  onClick={() => {
                    setMachine(each);
                    if (axes === AXES[machine]) setAxes(AXES[each]);
                    setSpindle(each !== 'other');
                  }}
                >
                  {WORDS[each]}
                </button>
              ))}
            </div>
          </fieldset>
          <div>
            <label htmlFor="axes">Its axes</label>
            <input
              id="axes"
              value={axes}
              onChange={(event) => setAxes(event.target.value)}
              aria-describedby="axes-help"
            />
            <p id="axes-help" className="small soft">
              Letters with commas. On a lathe X is the cross slide and Z runs along the bed.
            </p>
          </div>
          <fieldset>
            <legend>Is its spindle to be refitted as well?</legend>
            <div className="row">
              {[true, false].map((each) => (
                <button
                  key={String(each)}
                  type="button"
                  aria-pressed={spindle === each}
                  onClick={() => setSpindle(each)}
                >
                  {each ? 'Yes: drive, motor, belts, chuck' : 'No, or later'}
                </button>
              ))}
            </div>
          </fieldset>
          <div>
            <label htmlFor="name">What you call it</label>
            <input
              id="name"
              value={name}
              onChange={(event) => setName(event.target.value)}
              placeholder={machine === 'other' ? 'My machine' : `My ${machine}`}
            />
          </div>
          <div>
            <label htmlFor="about">A line about it, if you like</label>
            <input id="about" value={about} onChange={(event) => setAbout(event.target.value)} />
          </div>
          {fault && (
            <p role="alert" className="bad">
              {fault}
            </p>
          )}
          <button type="submit" className="main">
            Start, with everything still unknown
          </button>
        </form>
      </main>
    </>
  );
}
