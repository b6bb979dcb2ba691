/** The table that says the same as a chart. */
import type { ChartPicture } from '../../engine/assess/pictures/index.ts';
import { Scroll } from '../parts/scroll.tsx';
import { cell, heading } from './words.ts';

export function Numbers({ picture }: { picture: ChartPicture }) {
  const { columns, rows } = picture.table;
  return (
    <details className="numbers">
      <summary>Show the numbers</summary>
      <Scroll label={`Numbers of “${picture.title}”`}>
        <table>
          <caption className="hidden">{picture.title}</caption>
          <thead>
            <tr>
              {columns.map(({ name, unit }) => (
                <th key={name} scope="col" className="number">
                  {heading(name, unit)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([x, ...values]) => (
              <tr key={x}>
                <th scope="row" className="number">
                  {cell(x ?? null, columns[0]!.unit)}
                </th>
                {values.map((value, i) => (
                  <td key={columns[i + 1]!.name} className="number">
                    {cell(value, columns[i + 1]!.unit)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
