/** The chains as a table: what is fed, through what, and how it stands. */
import type { Model, Way } from '../../../engine/circuit/stop/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import type { Shown } from './chains.tsx';

interface Props {
  readonly model: Model;
  readonly groups: readonly { readonly name: string; readonly shown: readonly Shown[] }[];
  readonly closed: (contact: number) => boolean;
}

export function ChainTable({ model, groups, closed }: Props) {
  const say = (way: Way | undefined): string => {
    if (!way) return 'not joined';
    if (way.kind === 'link')
      return `${model.contacts[way.contact]!.id}${closed(way.contact) ? '' : ' (open)'}`;
    if (way.kind === 'row') return way.pieces.map(say).join(', ');
    return `one of: ${way.ways.map(say).join('; or ')}`;
  };
  return (
    <details className="stop-chain-table">
      <summary className="small">The same as a table</summary>
      <Scroll label="What keeps it driven, as a table">
        <table>
          <thead>
            <tr>
              <th scope="col">What is fed</th>
              <th scope="col">From</th>
              <th scope="col">Through</th>
              <th scope="col">And back through</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {groups.flatMap(({ name, shown }) =>
              shown.map(({ id, feed, says }) => (
                <tr key={id}>
                  <th scope="row">{[name, feed.name].filter(Boolean).join(', ')}</th>
                  <td>{feed.from || 'nothing'}</td>
                  <td>{say(feed.out) || 'a wire'}</td>
                  <td>{say(feed.back) || 'a wire'}</td>
                  <td>{says}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
