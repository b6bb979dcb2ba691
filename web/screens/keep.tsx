/** Keep, repair or replace: every part with its answer; opened, what was weighed. */
import { useState } from 'react';
import type { PartAdvice, Recommendation } from '../../engine/advice/index.ts';
import { AXIS_PLACES, PLACES, type PlaceId } from '../../engine/parts/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { Sign } from '../parts/signs.tsx';
import type { Session, View } from '../state/session.ts';
import { useAsked } from '../state/use-asked.ts';
import './advice.css';
import { KeepPart } from './keep-part.tsx';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export const ANSWER: Readonly<Record<Recommendation, string>> = {
  keep: 'Keep it',
  buy: 'To be bought',
  repair: 'Repair it',
  replace: 'Replace it',
  'find-out': 'Find out first',
};

export function Keep({ session, view }: Props) {
  const { answer, progress, fault } = useAsked(session, view, 'keep', null);
  return (
    <div className="stack">
      <div>
        <h1>Which parts are worth keeping?</h1>
        <p>
          Each answer weighs how the part was found, its tests, what the machine asks of it, what it costs,
          and what every other part on offer would change elsewhere.
        </p>
        <p role="status" className="small soft">
          {fault ??
            (progress === undefined
              ? `${answer?.length ?? 0} parts weighed.`
              : `Weighing … ${Math.round(100 * progress)} %`)}
        </p>
      </div>
      <ul className="findings keep">
        {(answer ?? []).map((advice) => (
          <li key={advice.at}>
            <Row session={session} view={view} advice={advice} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** 'X drive', 'Spindle drive', or 'S2 spindle drive' where there are several. */
function sayAt({ chain, place }: PartAdvice): string {
  const { name } = PLACES[place as PlaceId];
  if (chain === null) return capital(name);
  return Object.hasOwn(AXIS_PLACES, place) || chain !== 'S' ? `${chain} ${name}` : capital(name);
}

function Row({ session, view, advice }: Props & { advice: PartAdvice }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="sheet" onToggle={(event) => setOpen(event.currentTarget.open)} data-part={advice.at}>
      <summary>
        <span className="row">
          <Sign place={advice.place} />
          <span style={{ flex: 1, minWidth: 0 }}>
            <strong>
              {sayAt(advice)}: {ANSWER[advice.recommendation].toLowerCase()}
            </strong>
            <br />
            <span className="small soft">{advice.name}</span>
            <br />
            <span className="small soft">{advice.sentence}</span>
          </span>
        </span>
      </summary>
      {open && <KeepPart session={session} view={view} advice={advice} />}
    </details>
  );
}
