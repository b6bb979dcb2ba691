/** The numbers behind the curves. */
import { formatQuantity, preferred } from '../../../engine/quantity/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import type { Run } from './parts.ts';

const ROWS = 24;

export function RunTable({ run, system }: { run: Run; system: 'mm' | 'in' }) {
  const { length } = run.time;
  const rows = Array.from({ length: Math.min(ROWS, length) }, (_, at) =>
    Math.round((at * (length - 1)) / Math.max(1, Math.min(ROWS, length) - 1)),
  );
  const unit = preferred('mm', system);
  return (
    <details>
      <summary>As a table</summary>
      <Scroll label="The run as a table">
        <table>
          <thead>
            <tr>
              {['Time', 'Commanded', 'Slide', 'Behind', 'Motor speed', 'Current', 'Bus'].map((name) => (
                <th key={name} className="number">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((at) => (
              <tr key={at}>
                <td className="number">{formatQuantity(run.time[at]! * 1000, '1', { digits: 4 })} ms</td>
                <td className="number">{formatQuantity(run.commanded[at]!, unit)}</td>
                <td className="number">{formatQuantity(run.actual[at]!, unit)}</td>
                <td className="number">
                  {formatQuantity(run.following[at]!, system === 'in' ? 'in' : 'µm', { digits: 3 })}
                </td>
                <td className="number">{formatQuantity(run.speed[at]!, 'r/min', { digits: 3 })}</td>
                <td className="number">{formatQuantity(run.current[at]!, 'A', { digits: 3 })}</td>
                <td className="number">{formatQuantity(run.bus[at]!, 'V', { digits: 3 })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </details>
  );
}
