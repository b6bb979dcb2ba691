/** A milled thread: the circle the cutter goes, and what limits the spindle. */
import type { MilledDetail } from '../../../engine/work/index.ts';
import { length, value } from './say.ts';
import { SpeedBars } from './speed-bars.tsx';

export function MilledDetails({ detail }: { readonly detail: MilledDetail }) {
  const { cutter, radius, feed, climb, time, axis, limits, speed, caution } = detail;
  return (
    <div className="stack">
      {feed !== null && climb !== null && time !== null && (
        <div>
          <h3>The helix</h3>
          <p className="caution">
            <strong>Take care.</strong> {caution}
          </p>
          <table>
            <tbody>
              <tr>
                <th scope="row">diameter of the cutter</th>
                <td className="number">{length(cutter)}</td>
              </tr>
              <tr>
                <th scope="row">its middle goes round on a radius of</th>
                <td className="number">{length(radius)}</td>
              </tr>
              <tr>
                <th scope="row">at a feed of</th>
                <td className="number">{value(feed, 'mm/min')}</td>
              </tr>
              <tr>
                <th scope="row">{axis} climbs at</th>
                <td className="number">{value(climb, 'mm/min')}</td>
              </tr>
              <tr>
                <th scope="row">in all about</th>
                <td className="number">{value(time, 's')}</td>
              </tr>
            </tbody>
          </table>
        </div>
      )}
      <div>
        <h3>How fast the spindle may turn</h3>
        <SpeedBars limits={limits} speed={speed} />
      </div>
    </div>
  );
}
