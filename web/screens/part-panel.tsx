/** One place: which part fills it, and the facts of that part, those that decide something first. */

import { useMemo, useState } from 'react';
import { PLACES, type PlaceId } from '../../engine/parts/index.ts';
import type { PartKind } from '../../engine/parts/types.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Chain, Change, Part, Place } from '../../engine/refit/types.ts';
import { FactField } from '../parts/fact-field.tsx';
import type { Session, View } from '../state/session.ts';

/** Places that a machine may well have nothing in. */
const MAY_LACK: ReadonlySet<PlaceId> = new Set(['brake', 'chuck', 'spindle-feedback']);

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly chain: Chain | null;
  readonly place: PlaceId;
}

export function PartPanel(props: Props) {
  const at = props.chain?.places[props.place] ?? props.view.refit.places[props.place];
  return at ? <Facts key={`${props.place} ${at.chosen}`} {...props} at={at} /> : null;
}

function Facts({ session, view, chain, place, at }: Props & { at: Place }) {
  const where = chain?.places[place] ? chain : null;
  const kind = PLACES[place] as PartKind;
  const prefix = where ? `${where.id}.${place}` : place;
  const part = at.chosen && at.chosen !== 'none' ? view.refit.parts[at.chosen] : undefined;
  const { findings } = view.shown;
  const counts = useMemo(() => {
    const all = new Map<string, number>();
    for (const { facts, missing } of findings)
      for (const path of new Set([...facts, ...missing])) all.set(path, (all.get(path) ?? 0) + 1);
    return all;
  }, [findings]);
  const decides = (path: string): number => counts.get(path) ?? 0;
  // The order stays as it was when the place was opened: fields must not move under the hand that fills them in.
  const [order] = useState(() => {
    const names = Object.keys(kind.facts).sort(
      (a, b) => decides(`${prefix}.${b}`) - decides(`${prefix}.${a}`),
    );
    const first = names.filter((name) => decides(`${prefix}.${name}`) > 0 || part?.facts[name]);
    return { first, rest: names.filter((name) => !first.includes(name)) };
  });
  const field = (name: string) => {
    const n = decides(`${prefix}.${name}`);
    return (
      <FactField
        key={`${part?.id}.${name}`}
        session={session}
        view={view}
        path={`${prefix}.${name}`}
        spec={kind.facts[name]!}
        fact={part?.facts[name]}
        aside={n > 0 ? `decides ${n} ${n === 1 ? 'answer' : 'answers'}` : 'decides nothing now'}
      />
    );
  };
  return (
    <div>
      <p className="soft">{kind.about}</p>
      <Options session={session} view={view} chain={where} place={place} at={at} />
      {at.chosen === 'none' ? (
        <p>The machine has none here.</p>
      ) : (
        <>
          {order.first.map(field)}
          {order.rest.length > 0 && (
            <details>
              <summary>{order.rest.length} more that decide nothing now</summary>
              {order.rest.map(field)}
            </details>
          )}
        </>
      )}
    </div>
  );
}

function Options({ session, view, chain, place, at }: Props & { at: Place }) {
  const kind = PLACES[place];
  const choose = (chosen: Place['chosen']): void => {
    void session.record([{ do: 'place', chain: chain?.id ?? null, place, old: at, new: { ...at, chosen } }]);
  };
  const add = (): void => {
    const base = [chain?.id.toLowerCase(), place].filter(Boolean).join('-');
    let id = base;
    for (let n = 2; view.refit.parts[id]; n++) id = `${base}-${n}`;
    const name = `${chain ? `${chain.id} ` : ''}${kind.name} ${at.options.length + 1}`;
    const part: Part = { id, kind: kind.id, name, facts: {} };
    const changes: Change[] = [
      { do: 'part', id, old: null, new: part },
      {
        do: 'place',
        chain: chain?.id ?? null,
        place,
        old: at,
        new: { options: [...at.options, id], chosen: id },
      },
    ];
    void session.record(changes);
  };
  return (
    <fieldset>
      <legend>What is here</legend>
      <div className="row">
        {at.options.map((id) => (
          <button key={id} type="button" aria-pressed={at.chosen === id} onClick={() => choose(id)}>
            {view.refit.parts[id]?.name ?? id}
          </button>
        ))}
        {MAY_LACK.has(place) && (
          <button type="button" aria-pressed={at.chosen === 'none'} onClick={() => choose('none')}>
            None
          </button>
        )}
        <button type="button" className="plain" onClick={add}>
          {at.options.length === 0
            ? `Add ${capital(kind.name).toLowerCase()}`
            : 'Add another that could go here'}
        </button>
      </div>
    </fieldset>
  );
}
