/** What keeps everything driven, as chains from left to right: joined where a contact is closed, with a gap where it is open. */
import { useMemo } from 'react';
import {
  chainsOf,
  type Feed,
  type FeedNow,
  feedNow,
  type Held,
  isKind,
  KINDS,
  type Model,
  type Simulation,
  type State,
  sayFeed,
  standingOf,
} from '../../../engine/circuit/stop/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import { Chain } from './chain.tsx';
import { ChainTable } from './chain-table.tsx';
import './chains.css';

interface Props {
  readonly model: Model;
  readonly circuit: StopCircuit;
  readonly simulation: Simulation;
  readonly state: State;
  /** Element with a fault that is being shown. */
  readonly marked: string | undefined;
}

/** One feed as it stands now. */
export interface Shown {
  /** Of the page; links lead there. */
  readonly id: string;
  readonly title: string;
  readonly feed: Feed;
  readonly now: FeedNow;
  readonly says: string;
}

export function Chains({ model, circuit, simulation, state, marked }: Props) {
  const { motions, held } = useMemo(() => chainsOf(model), [model]);
  const show = (id: string, title: string, feed: Feed): Shown => {
    const now = feedNow(feed, simulation, state);
    return { id: `${id}-${feed.name.replaceAll(' ', '-')}`, title, feed, now, says: sayFeed(model, now) };
  };
  const driven = motions.map(({ motion, feeds }) => ({
    motion,
    shown: feeds.map((feed) => show(`chain-${model.motions[motion]!.id}`, capital(feed.name), feed)),
  }));
  const kept = held.map((each) => ({
    held: each,
    shown: each.feeds.map((feed) => show(`chain-${each.id}`, capital(feed.name), feed)),
  }));
  const chain = { model, circuit, simulation, state, marked, held };
  return (
    <section className="stack" aria-labelledby="stop-chains">
      <h3 id="stop-chains">What keeps it driven</h3>
      <p className="small soft">
        Each chain runs from the supply to what it feeds. A thick line carries current; a thin one does not.
        Where a contact is open there is a gap.
      </p>
      <div className="stop-driven">
        {driven.map(({ motion, shown }) => {
          const { id, drive } = model.motions[motion]!;
          const unit = model.drives[drive]!.element;
          const name = circuit.motions[id]?.name || id;
          const moves = standingOf(model, state, motion).driven;
          return (
            <figure key={id} className="stop-chain sheet" data-chain={id}>
              <figcaption>
                <strong>{name}</strong> {moves ? 'is driven' : 'is not driven'}
              </figcaption>
              {shown.map((each) => (
                <Chain
                  key={each.id}
                  shown={each}
                  ends={each.feed.name === 'power' ? [`drive ${unit}`, 'motor'] : [`drive ${unit}`]}
                  {...chain}
                />
              ))}
            </figure>
          );
        })}
      </div>
      {kept.length > 0 && <h3>What keeps each contact as it is</h3>}
      <div className="stop-held">
        {kept.map(({ held: each, shown }) => (
          <figure key={each.id} id={anchor(each)} className="stop-chain small sheet" data-chain={each.id}>
            <figcaption>
              <strong>{each.id}</strong> <span className="soft">{nameOf(circuit, each.element)}</span>{' '}
              {state.at[each.mover] === 1 ? 'is on' : 'is off'}
            </figcaption>
            {shown.map((one) => (
              <Chain
                key={one.id}
                shown={one}
                ends={[model.movers[each.mover]!.kind === 'coil' ? `coil of ${each.id}` : each.element]}
                {...chain}
              />
            ))}
          </figure>
        ))}
      </div>
      <ChainTable
        model={model}
        groups={[
          ...driven.map(({ motion, shown }) => ({
            name: circuit.motions[model.motions[motion]!.id]?.name || model.motions[motion]!.id,
            shown,
          })),
          ...kept.map(({ held: each, shown }) => ({ name: each.id, shown })),
        ]}
        closed={(contact) => simulation.closed(state, contact)}
      />
    </section>
  );
}

/** Id of the figure of something that is held. */
export const anchor = ({ id }: Held): string => `held-${id.replaceAll(' ', '-')}`;

function nameOf({ elements }: StopCircuit, element: string): string {
  const each = elements[element];
  return each?.name || (each && isKind(each.kind) ? KINDS[each.kind].name : '');
}
