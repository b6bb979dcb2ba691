/** The table that says the same as the picture of the readings. */
import { formatNumber } from '../../../engine/quantity/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import type { Plot } from './plot-data.ts';
import { unitOf } from './plot-words.ts';

export function Numbers({ plot: { series, x, y, kind } }: { plot: Plot }) {
  return (
    <details>
      <summary>Show the numbers</summary>
      <Scroll label={`Numbers of ${y.name}`}>
        <table>
          <thead>
            <tr>
              <th scope="col">row</th>
              {series.length > 1 && <th scope="col">which</th>}
              {x && (
                <th scope="col" className="number">
                  {unitOf(x.name, x.unit)}
                </th>
              )}
              <th scope="col" className="number">
                {unitOf(y.name, y.unit)}
              </th>
              <th scope="col" className="number">
                {kind === 'line' ? 'off the line' : 'off the mean'}
              </th>
            </tr>
          </thead>
          <tbody>
            {series.flatMap(({ name, points }) =>
              points.map((point) => (
                <tr key={`${name} ${point.row}`}>
                  <th scope="row">
                    {point.row}
                    {point.isAside ? ', set aside' : ''}
                  </th>
                  {series.length > 1 && <td>{name}</td>}
                  {x && <td className="number">{formatNumber(point.x, 6)}</td>}
                  <td className="number">{formatNumber(point.y, 6)}</td>
                  <td className="number">{point.off === undefined ? '' : formatNumber(point.off, 2)}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
