/** Lead against spindle speed, with the region the machine can cut: a chart for the wall. */
import { scaleLog } from 'd3-scale';
import { type ChartRow, chartOf, type Machine, type Thread } from '../../../engine/threads/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import { LEADS, turns, WallGrid } from '../../pictures/wall-grid.tsx';
import { mm, rpm } from './say.ts';

interface Props {
  readonly machine: Machine;
  readonly room: number | undefined;
  readonly thread: Thread;
}

const TICKS_N = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
const HEIGHT = 340;

export function WallChart({ machine, room, thread }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const rows = chartOf(machine, room);
  const [here] = chartOf(machine, room, [thread.lead]);
  return (
    <figure className="wall-chart">
      <div ref={ref} style={{ minHeight: HEIGHT }}>
        {width > 0 && <Drawn rows={rows} here={here!} name={thread.designation} width={width} />}
      </div>
      <figcaption className="small soft">
        Travel of one turn against spindle speed. In the shaded region this machine can cut; beyond its edge
        the slide cannot follow{room === undefined ? '' : ' within the room before the thread'}.
      </figcaption>
      <details>
        <summary>The same as a table</summary>
        <Scroll label="The chart as a table">
          <table>
            <thead>
              <tr>
                <th scope="col" className="number">
                  lead, mm
                </th>
                <th scope="col" className="number">
                  threads per inch
                </th>
                <th scope="col" className="number">
                  at most
                </th>
                <th scope="col" className="number">
                  run-in, mm
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ lead, speed, runIn }) => (
                <tr key={lead}>
                  <td className="number">{mm(lead, 2)}</td>
                  <td className="number">{(0.0254 / lead).toFixed(1)}</td>
                  <td className="number">{speed > 0 ? rpm(speed) : 'no speed'}</td>
                  <td className="number">{mm(runIn, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </figure>
  );
}

interface DrawnProps {
  readonly rows: readonly ChartRow[];
  readonly here: ChartRow;
  readonly name: string;
  readonly width: number;
}

function Drawn({ rows, here, name, width }: DrawnProps) {
  const [left, right, top, bottom] = [52, width - 12, 28, HEIGHT - 44];
  const x = scaleLog(LEADS, [left, right]).clamp(true);
  const y = scaleLog([10, 5000], [bottom, top]).clamp(true);
  const edge = rows.map(
    ({ lead, speed }) => `${x(lead * 1e3).toFixed(1)} ${y(Math.max(10, turns(speed))).toFixed(1)}`,
  );
  const [hx, hy] = [x(here.lead * 1e3), y(Math.max(10, turns(here.speed)))];
  const onChart = here.lead * 1e3 >= LEADS[0] && here.lead * 1e3 <= LEADS[1];
  const label = `${name}: ${rpm(here.speed)}${onChart ? '' : ' (its travel lies beyond the chart)'}`;
  return (
    <svg
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={`Highest spindle speed by lead. ${label}.`}
    >
      <path className="region" d={`M${edge.join('L')}L${right} ${bottom}L${left} ${bottom}Z`} />
      <WallGrid x={x} y={y} speeds={TICKS_N} frame={[left, right, top, bottom]} />
      <path className="edge" d={`M${edge.join('L')}`} />
      {onChart && <circle className="here" cx={hx} cy={hy} r="6" />}
      <text
        className="name"
        x={Math.min(hx + 10, right)}
        y={Math.max(top + 12, hy - 10)}
        textAnchor={hx > width / 2 ? 'end' : 'start'}
      >
        {label}
      </text>
      <text x="0" y="14">
        r/min
      </text>
      <text x={right} y={bottom + 36} textAnchor="end">
        travel of one turn, mm
      </text>
    </svg>
  );
}
