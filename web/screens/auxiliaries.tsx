/** Auxiliaries: turret, chuck and the like, their steps, and where they can hang or do harm. */

import { useState } from 'react';
import { KINDS, kindOf, openAll } from '../../engine/control/index.ts';
import { worstVerdict } from '../../engine/quantity/verdict.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Auxiliary } from '../../engine/refit/types.ts';
import { Mark, WORD } from '../parts/verdict.tsx';
import type { Session, View } from '../state/session.ts';
import { Findings } from './control/findings.tsx';
import { OneAuxiliary } from './control/one-auxiliary.tsx';
import { useAuxiliaries } from './control/use-control.ts';
import './control/control.css';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export default function AuxiliariesPage({ session, view }: Props) {
  const { refit } = view;
  const { looked, share } = useAuxiliaries(refit);
  const reports = openAll(refit);
  const [picked, setPicked] = useState<string>();
  const [kind, setKind] = useState(KINDS[0]!.id);
  const open = reports.find(({ auxiliary }) => auxiliary.id === picked) ?? reports[0];
  const record = (old: Auxiliary | null, next: Auxiliary | null): void => {
    void session.record([{ do: 'auxiliary', id: (next ?? old)!.id, old, new: next }]);
  };
  const add = (): void => {
    let id = kind;
    for (let n = 2; refit.auxiliaries[id]; n++) id = `${kind}-${n}`;
    record(null, { id, kind, name: capital(kindOf(kind)!.name), settings: {} });
    setPicked(id);
  };
  const worst = (id: string) =>
    looked?.problems[id] ? 'unknown' : worstVerdict(looked?.checked[id]?.findings ?? []);
  return (
    <div className="stack">
      <div>
        <h1>What else moves, and can it hang?</h1>
        <p>
          Turret, chuck, door and the like: what each needs of the control, step by step. Every state is gone
          through, also with one thing broken, stopped in the middle, or with the power gone and back. It
          makes no machine safe: stopping is the business of the stop circuit.
        </p>
        <p role="status" className="small soft">
          {reports.length > 0 && share < 1 ? `Going through every state … ${Math.round(share * 100)} %` : ''}
        </p>
      </div>
      <nav className="row" aria-label="Auxiliaries">
        {reports.map(({ auxiliary: { id, name } }) => {
          const verdict = worst(id);
          return (
            <button
              key={id}
              type="button"
              className="tab"
              aria-pressed={open?.auxiliary.id === id}
              onClick={() => setPicked(id)}
            >
              {verdict && <Mark verdict={verdict} />} {name}
              {verdict && <span className="hidden">: {WORD[verdict]}</span>}
            </button>
          );
        })}
      </nav>
      <div className="row">
        <label>
          Add{' '}
          <select value={kind} onChange={(event) => setKind(event.target.value)}>
            {KINDS.map((each) => (
              <option key={each.id} value={each.id}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
        <button type="button" onClick={add}>
          Add it
        </button>
      </div>
      {looked && looked.together.length > 0 && (
        <section aria-labelledby="auxiliaries-together">
          <h2 id="auxiliaries-together">Waiting for each other</h2>
          <Findings findings={looked.together} />
        </section>
      )}
      {open ? (
        <OneAuxiliary
          key={open.auxiliary.id}
          report={open}
          checked={looked?.checked[open.auxiliary.id]}
          problem={looked?.problems[open.auxiliary.id]}
          record={record}
        />
      ) : (
        <p className="soft">None yet. Add what your machine has.</p>
      )}
    </div>
  );
}
