/** Your refits: open one, start one, bring one in. */
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { RefitListed } from '../../engine/refit/wire.ts';
import { api } from '../api.ts';
import { sayDay } from '../parts/day.ts';
import { Top } from '../parts/top.tsx';

export function Home() {
  const [refits, setRefits] = useState<readonly RefitListed[]>();
  const [fault, setFault] = useState('');
  const [, go] = useLocation();
  useEffect(() => {
    document.title = 'Fettle: your refits';
    api.list().then(
      ({ refits: all }) => setRefits(all),
      (error: Error) => setFault(error.message),
    );
  }, []);

  const bring = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setFault('');
    try {
      const { id } = await api.import(file);
      go(`/refit/${id}`);
    } catch (error) {
      setFault(
        `“${file.name}” was not taken in, and nothing changed. ${error instanceof Error ? error.message : ''}`,
      );
    }
  };

  return (
    <>
      <Top />
      <main id="content" className="stack">
        <div>
          <h1>Will it work, and if not, what is in the way?</h1>
          <p>
            Fettle takes what is known of an old lathe or mill and says, for every question that matters
            before money is spent, whether it fits, by how much, how sure that is, and what would make it fit.
          </p>
        </div>
        <div className="row">
          <Link className="button main" href="/new">
            Start a refit
          </Link>
          <Link className="button" href="/threads">
            Threads: sizes and how to cut them
          </Link>
          <label className="button" htmlFor="bring">
            Bring in a file
          </label>
          <input
            className="hidden"
            id="bring"
            type="file"
            accept=".refit,.json"
            onChange={(event) => {
              void bring(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
        </div>
        {fault && (
          <p role="alert" className="bad">
            {fault}
          </p>
        )}
        <section aria-labelledby="refits">
          <h2 id="refits">Your refits</h2>
          {refits === undefined && !fault && <p role="status">Looking …</p>}
          {refits?.length === 0 && (
            <p>None yet. Start one: two or three facts are enough to see the first answers.</p>
          )}
          <ul className="cards">
            {refits?.map((refit) => (
              <li key={refit.id}>
                <Link className="sheet card" href={`/refit/${refit.id}`}>
                  <h3>{refit.name}</h3>
                  {refit.problem ? (
                    <p className="bad">{refit.problem.message}</p>
                  ) : (
                    <p className="soft">{refit.about}</p>
                  )}
                  <p className="small soft">
                    {refit.machine === 'other' ? 'machine' : refit.machine}, {refit.edits}{' '}
                    {refit.edits === 1 ? 'edit' : 'edits'}, changed {sayDay(refit.changed)}
                  </p>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      </main>
    </>
  );
}
