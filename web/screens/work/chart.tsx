/** The chart for the wall: travel of one turn against spindle speed, the region this machine can cut, the wanted threads. */
import { scaleLog } from 'd3-scale';
import { useRef } from 'react';
import { capital } from '../../../engine/quantity/words.ts';
import type { WorkChart } from '../../../engine/work/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { WORD } from '../../parts/verdict.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import { LEADS, turns, WallGrid } from '../../pictures/wall-grid.tsx';
import { rpm } from './say.ts';

interface Props {
  readonly chart: WorkChart;
  readonly name: string;
}

const HEIGHT = 420;
const TICKS_N = [20, 50, 100, 200, 500, 1000, 2000, 5000];
const SLOWEST = 15;
const FASTEST = 5000;

export function WorkChartPicture({ chart, name }: Props) {
  const [ref, width] = useWidth<HTMLDivElement>();
  const table = useRef<HTMLDetailsElement>(null);
  return (
    <section aria-labelledby="wall" className="wall">
      <div className="row spread">
        <h2 id="wall">For the wall: which threads at which speed</h2>
        <button
          type="button"
          className="no-print"
          onClick={() => {
            if (table.current) table.current.open = true;
            print();
          }}
        >
          Print
        </button>
      </div>
      <p className="print-only">{name}</p>
      {chart.noPermission === null ? (
        <p>
          Travel of one turn (pitch times starts) along {chart.axis} against spindle speed. In the shaded
          region this machine can cut; the bend shows where another link takes over.
        </p>
      ) : (
        <div className="caution">
          <p>
            <strong>{capital(chart.noPermission)}.</strong> Until it is known there is no speed to hang on the
            wall. Not known: {chart.unknown.join('; ')}.
          </p>
          {chart.known.length > 0 && (
            <p className="small no-print">
              What is known limits it all the same:{' '}
              {chart.known.map(({ name: each, speed }) => `${each} ${rpm(speed)}`).join('; ')}.
            </p>
          )}
        </div>
      )}
      <div ref={ref} style={{ minHeight: HEIGHT }}>
        {width > 0 && <Drawn chart={chart} width={width} />}
      </div>
      {chart.points.length > 0 && (
        <ol className="wall-points small">
          {chart.points.map(({ id, name: each, lead, speed, verdict }) => (
            <li key={id}>
              {each}: {(lead * 1e3).toFixed(2)} mm a turn{' '}
              {speed === null ? `(${chart.noPermission})` : `at ${rpm(speed)}`}, {WORD[verdict]}
            </li>
          ))}
        </ol>
      )}
      <details className="wall-table" ref={table}>
        <summary>The same as a table</summary>
        <Scroll label="The chart as a table">
          <table>
            <thead>
              <tr>
                <th scope="col" className="number">
                  mm a turn
                </th>
                <th scope="col" className="number">
                  per inch
                </th>
                <th scope="col" className="number">
                  at most
                </th>
                <th scope="col">what limits it</th>
              </tr>
            </thead>
            <tbody>
              {chart.rows.map(({ lead, speed, by }) => (
                <tr key={lead}>
                  <td className="number">{(lead * 1e3).toFixed(2)}</td>
                  <td className="number">{(0.0254 / lead).toFixed(1)}</td>
                  {chart.noPermission === null ? (
                    <>
                      <td className="number">
                        {speed !== null && speed < chart.slowest ? 'below the slowest' : rpm(speed)}
                      </td>
                      <td>{by}</td>
                    </>
                  ) : (
                    <td colSpan={2}>{chart.noPermission}</td>
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </section>
  );
}

function Drawn({ chart, width }: { readonly chart: WorkChart; readonly width: number }) {
  const [left, right, top, bottom] = [52, width - 14, 26, HEIGHT - 46];
  const x = scaleLog(LEADS, [left, right]).clamp(true);
  const y = scaleLog([SLOWEST, FASTEST], [bottom, top]).clamp(true);
  const known = chart.rows.filter((row) => row.speed !== null);
  const edge = known.map(
    ({ lead, speed }) => `${x(lead * 1e3).toFixed(1)} ${y(Math.max(SLOWEST, turns(speed!))).toFixed(1)}`,
  );
  const floor = y(Math.max(SLOWEST, turns(chart.slowest)));
  // Where the limit falls below the slowest speed nothing can be cut at all.
  const within = known.map(
    ({ lead, speed }) => `${x(lead * 1e3).toFixed(1)} ${Math.min(floor, y(turns(speed!))).toFixed(1)}`,
  );
  const breaks = known.filter((row, at) => at === 0 || row.by !== known[at - 1]!.by);
  return (
    <svg
      className="wall-chart-picture"
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={
        chart.noPermission ?? 'Highest spindle speed by travel of one turn; the table below has the numbers.'
      }
    >
      {edge.length > 1 && (
        <path className="region" d={`M${within.join('L')}L${right} ${floor}L${left} ${floor}Z`} />
      )}
      <WallGrid x={x} y={y} speeds={TICKS_N} frame={[left, right, top, bottom]} />
      {edge.length > 1 && <path className="edge" d={`M${edge.join('L')}`} />}
      {chart.slowest > 0 && chart.noPermission === null && (
        <>
          <line className="edge" x1={left} x2={right} y1={floor} y2={floor} strokeDasharray="6 4" />
          <text x={left + 6} y={floor + 15}>
            slowest of the spindle, {rpm(chart.slowest)}
          </text>
        </>
      )}
      {breaks.map(({ by }, at) => {
        const own = known.filter((row) => row.by === by);
        // The first stands over the level line; the others beside the middle of the stretch they limit.
        const { lead, speed } = own[at === 0 ? 0 : Math.floor(own.length / 2)]!;
        const px = x(lead * 1e3) + 8;
        const py = y(turns(speed!)) - 8;
        const isFar = px > width - 170;
        return (
          <text
            key={by}
            className="name"
            x={isFar ? right : px}
            y={py > top + 8 ? py : py + 24}
            textAnchor={isFar ? 'end' : 'start'}
          >
            {by}
          </text>
        );
      })}
      {chart.noPermission !== null && (
        <text className="name" x={(left + right) / 2} y={(top + bottom) / 2} textAnchor="middle">
          {chart.noPermission}
        </text>
      )}
      {chart.points.map(({ id, lead, speed, verdict }, at) => {
        if (speed === null) return null;
        const [px, py] = [x(lead * 1e3), y(turns(speed))];
        return (
          <g key={id} className={`point ${verdict}`}>
            <circle cx={px} cy={py} r="10" />
            <text x={px} y={py + 4.5} textAnchor="middle">
              {at + 1}
            </text>
          </g>
        );
      })}
      <text x="0" y="14">
        r/min
      </text>
      <text x={right} y={bottom + 38} textAnchor="end">
        travel of one turn, mm
      </text>
    </svg>
  );
}
