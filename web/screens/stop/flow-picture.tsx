/** The circuit as a flow from plus to minus: thick where current goes, thin where it could, a gap where a contact is open. */
import type { Flow, Simulation, Standing, State, Stream } from '../../../engine/circuit/stop/index.ts';
import { standingsOf } from '../../../engine/circuit/stop/index.ts';

const COLUMN = 92;
const ROW = 58;
const EDGE = 26;
const PILL = { width: 84, height: 24 };

const WORD: Readonly<Record<Standing, string>> = {
  open: 'open',
  closed: 'closed, no voltage',
  fed: 'closed, plus reaches it',
  flows: 'current flows',
};

interface Props {
  readonly flow: Flow;
  readonly simulation: Simulation;
  readonly state: State;
  readonly marked: string | undefined;
}

export function FlowPicture({ flow, simulation, state, marked }: Props) {
  const standings = standingsOf(flow, simulation, state);
  const width = Math.max(1, flow.columns) * COLUMN + 2 * EDGE;
  const height = (flow.rows - 1) * ROW + 2 * EDGE;
  const x = (column: number) => EDGE + (column + 0.5) * COLUMN;
  const y = (row: number) => EDGE + row * ROW;
  const flows = [...standings.values()].filter((each) => each === 'flows').length;
  return (
    <figure className="stop-figure">
      <figcaption className="small soft">
        {flow.supply}: plus at the top, minus at the bottom. {flows} of {flow.streams.length} paths carry
        current.
      </figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a picture wider than the window is moved by keys */}
      <section className="scroll" tabIndex={0} aria-label={`Flow from ${flow.supply}`}>
        <svg
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={`Flow of current from ${flow.supply}; the table below says the same`}
        >
          {flow.pools.map((pool) => (
            <line
              key={pool.net}
              className={`pool ${pool.kind}`}
              x1={x(pool.left) - (pool.kind === 'between' ? 0 : COLUMN / 2)}
              x2={x(pool.right) + (pool.kind === 'between' ? 0 : COLUMN / 2)}
              y1={y(pool.row)}
              y2={y(pool.row)}
            />
          ))}
          {flow.streams.map((stream) => (
            <Fall
              key={stream.id}
              stream={stream}
              standing={standings.get(stream)!}
              x={x(stream.column)}
              top={y(stream.top)}
              bottom={y(stream.bottom)}
              marked={stream.element === marked}
            />
          ))}
          <text x={4} y={EDGE - 10} className="pole">
            +
          </text>
          <text x={4} y={height - 6} className="pole">
            −
          </text>
        </svg>
      </section>
      <details>
        <summary className="small">The same as a table</summary>
        <div className="scroll">
          <table>
            <thead>
              <tr>
                <th scope="col">Path</th>
                <th scope="col">Now</th>
              </tr>
            </thead>
            <tbody>
              {flow.streams.map((stream) => (
                <tr key={stream.id}>
                  <th scope="row">{stream.id}</th>
                  <td>
                    {stream.kind === 'coil'
                      ? standings.get(stream) === 'open'
                        ? 'no current'
                        : 'held'
                      : WORD[standings.get(stream)!]}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </figure>
  );
}

interface FallProps {
  readonly stream: Stream;
  readonly standing: Standing;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly marked: boolean;
}

function Fall({ stream, standing, x, top, bottom, marked }: FallProps) {
  const middle = top + ROW / 2;
  const isLoad = stream.kind === 'coil' || stream.kind === 'unit';
  const open = standing === 'open';
  return (
    <g className={`fall ${standing}${marked ? ' marked' : ''}`}>
      <line x1={x} x2={x} y1={top} y2={middle - PILL.height / 2} className="stream" />
      <line x1={x} x2={x} y1={middle + PILL.height / 2} y2={bottom} className="stream" />
      <circle cx={x} cy={top} r={3.5} className="joint" />
      <circle cx={x} cy={bottom} r={3.5} className="joint" />
      <rect
        x={x - PILL.width / 2}
        y={middle - PILL.height / 2}
        width={PILL.width}
        height={PILL.height}
        rx={isLoad ? 3 : PILL.height / 2}
        className="pill"
        strokeDasharray={open && !isLoad ? '4 4' : undefined}
      />
      <text x={x} y={middle + 4} textAnchor="middle" className="pill-text">
        {label(stream.id)}
      </text>
    </g>
  );
}

const label = (id: string): string => (id.length > 12 ? `${id.slice(0, 11)}…` : id);
