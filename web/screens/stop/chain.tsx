/** One chain: its ends, its contacts as pills, ways beside each other as branches. */
import type { Held, Model, Simulation, State, Way } from '../../../engine/circuit/stop/index.ts';
import { contactsOf, isJoined } from '../../../engine/circuit/stop/index.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import { anchor, type Shown } from './chains.tsx';

export interface ChainProps {
  readonly model: Model;
  readonly circuit: StopCircuit;
  readonly simulation: Simulation;
  readonly state: State;
  readonly marked: string | undefined;
  readonly held: readonly Held[];
  readonly shown: Shown;
  /** What it leads to, in order. */
  readonly ends: readonly string[];
}

export function Chain(props: ChainProps) {
  const { shown, ends } = props;
  const { feed, now, says, title } = shown;
  const flows = now.standing === 'flows' || now.standing === 'astray';
  const through = flows ? 'flows' : '';
  return (
    <div className="stop-way" data-standing={now.standing}>
      <p className="small">
        {title && <strong>{title}: </strong>}
        {says}
      </p>
      <ol className="links" aria-label={`From ${feed.from || 'nothing'}`}>
        <li className={`end ${through}`}>{feed.from ? `${feed.from} +` : 'nothing'}</li>
        <Pieces {...props} way={feed.out} flows={now.standing === 'flows'} />
        {ends.map((each) => (
          <li key={each} className={`end ${each === 'motor' ? 'motor' : ''} ${through}`}>
            {each === 'motor' ? <abbr title="motor">M</abbr> : each}
          </li>
        ))}
      </ol>
      {feed.back && contactsOf(feed.back).length === 0 ? null : (
        <ol className="links back" aria-label="And back">
          <li className={`end ${through}`}>and back from {ends[0]}</li>
          <Pieces {...props} way={feed.back} flows={now.standing === 'flows'} />
          <li className={`end ${through}`}>{feed.from} −</li>
        </ol>
      )}
    </div>
  );
}

type PiecesProps = ChainProps & { readonly way: Way | undefined; readonly flows: boolean };

/** The pieces of a way as items of a list. */
function Pieces(props: PiecesProps) {
  const { way, flows, simulation, state } = props;
  if (!way) return <li className="piece open">not joined</li>;
  if (way.kind === 'link') return <Link {...props} contact={way.contact} />;
  if (way.kind === 'row')
    return way.pieces.map((each, n) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of a drawn circuit keep their places
      <Pieces key={n} {...props} way={each} />
    ));
  const joined = (each: Way): boolean => isJoined(each, (contact) => simulation.closed(state, contact));
  return (
    <li className={`ways ${flows && joined(way) ? 'flows' : ''}`}>
      <span className="hidden">{way.ways.length} ways beside each other:</span>
      <ul>
        {way.ways.map((each, n) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the ways of a drawn circuit keep their places
          <li key={n}>
            <ol className={`links ${flows && joined(each) ? 'flows' : ''}`}>
              <Pieces {...props} way={each} flows={flows && joined(each)} />
            </ol>
          </li>
        ))}
      </ul>
    </li>
  );
}

function Link({
  model,
  circuit,
  simulation,
  state,
  marked,
  held,
  flows,
  contact,
}: PiecesProps & { contact: number }) {
  const { id, element, mover, fuse } = model.contacts[contact]!;
  const closed = simulation.closed(state, contact);
  const holder = held.find((each) => each.mover === mover);
  const name = circuit.elements[element]?.name;
  const label = fuse ? `fuse ${element}` : id;
  return (
    <li
      className={`piece ${closed ? 'closed' : 'open'} ${closed && flows ? 'flows' : ''} ${element === marked ? 'marked' : ''}`}
    >
      <span className="pill" title={name || undefined}>
        {holder ? <a href={`#${anchor(holder)}`}>{label}</a> : label}
      </span>
      {!closed && <span className="gap">{fuse ? 'melted' : 'open here'}</span>}
    </li>
  );
}
