/** What to ask of each axis, where nothing is entered: usual values by size, taken as one edit and then confirmed. */
import { useState } from 'react';
import {
  emptyDuties,
  guessedDuties,
  type ProposedFact,
  proposeDuty,
  SIZES,
  type Size,
  sizeByWeight,
} from '../../engine/advice/duty.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { andList } from '../../engine/quantity/words.ts';
import { findFact } from '../../engine/refit/place.ts';
import { FactField } from '../parts/fact-field.tsx';
import type { Session, View } from '../state/session.ts';

interface Props {
  readonly session: Session;
  readonly view: View;
}

export function DutyProposal({ session, view }: Props) {
  if (emptyDuties(view.refit).length > 0) return <Propose session={session} view={view} />;
  const guessed = guessedDuties(view.refit).filter(({ source }) => source.startsWith('usual for this size'));
  return guessed.length > 0 ? <Confirm session={session} facts={guessed} /> : null;
}

function Propose({ session, view }: Props) {
  const [size, setSize] = useState<Size | undefined>(() => sizeByWeight(view.refit));
  const proposal = size && proposeDuty(view.refit, size);
  return (
    <section className="sheet duty-proposal" aria-labelledby="duty-proposal">
      <h2 id="duty-proposal">What shall it do?</h2>
      <p>
        Nothing is asked of {emptyDuties(view.refit).join(' and ')} yet. Say how large the machine is, and
        start from what is usual; every value is a guess until you confirm it.
      </p>
      <div className="row">
        {(Object.keys(SIZES) as Size[]).map((each) => (
          <button key={each} type="button" aria-pressed={size === each} onClick={() => setSize(each)}>
            {each}
          </button>
        ))}
      </div>
      {size && <p className="small soft">{SIZES[size]}</p>}
      {proposal && (
        <>
          <details>
            <summary>See the {proposal.facts.length} values</summary>
            <Values facts={proposal.facts} />
          </details>
          {proposal.notes.map((note) => (
            <p key={note} className="small soft">
              {note}
            </p>
          ))}
          {proposal.wanted.length > 0 && (
            <details>
              <summary>
                Enter {andList(proposal.wanted.map((path) => factSpec(...placeAndFact(path))?.name ?? path))}
              </summary>
              {proposal.wanted.map((path) => {
                const spec = factSpec(...placeAndFact(path));
                return (
                  spec && (
                    <FactField
                      key={path}
                      session={session}
                      view={view}
                      path={path}
                      spec={spec}
                      fact={findFact(view.refit, path) ?? undefined}
                      guide
                    />
                  )
                );
              })}
            </details>
          )}
          <button
            type="button"
            className="main"
            disabled={proposal.changes.length === 0}
            onClick={() => void session.record(proposal.changes)}
          >
            Take all as guesses
          </button>
        </>
      )}
    </section>
  );
}

function placeAndFact(path: string): [place: string, fact: string] {
  const [place = '', fact = ''] = path.split('.').slice(-2);
  return [place, fact];
}

function Values({ facts }: { facts: readonly ProposedFact[] }) {
  return (
    <table>
      <caption className="hidden">Usual values and where they come from</caption>
      <thead>
        <tr>
          <th scope="col">Wish</th>
          <th scope="col">Usual</th>
          <th scope="col">Source</th>
        </tr>
      </thead>
      <tbody>
        {facts.map(({ path, name, text, source }) => (
          <tr key={path}>
            <td>
              {path.split('.')[0]}: {name}
            </td>
            <td>{text}</td>
            <td className="small soft">{source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Confirm({ session, facts }: { session: Session; facts: readonly ProposedFact[] }) {
  return (
    <section className="sheet duty-proposal" aria-labelledby="duty-proposal">
      <h2 id="duty-proposal">Is this what you want of it?</h2>
      <p>These wishes were taken as guesses. Confirm each, or change it in its place below.</p>
      <details>
        <summary>
          {facts.length} {facts.length === 1 ? 'guess' : 'guesses'} to confirm
        </summary>
        <ul className="steps">
          {facts.map(({ path, name, text }) => (
            <li key={path} className="row spread">
              <span>
                {path.split('.')[0]}: {name}, <strong>{text}</strong>
              </span>
              <button
                type="button"
                onClick={() => void session.commit(path, text, 'told', 'confirmed')}
                aria-label={`That is right: ${path.split('.')[0]} ${name}`}
              >
                That is right
              </button>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
