/** What stands in the picture of the readings: dots, means with their bands, what is left over from a line. */
import { scaleLinear } from 'd3-scale';
import { formatNumber } from '../../../engine/quantity/index.ts';
import type { PlotPoint, PlotSeries } from './plot-data.ts';

type Place = (value: number) => number;

interface MeanProps {
  readonly of: PlotSeries;
  readonly xScale: Place;
  readonly yScale: Place;
  readonly alone: boolean;
}

/** Over the whole width where there is only one, else over its own dots. */
export function Mean({ of: { mean, half = 0, points }, xScale, yScale, alone }: MeanProps) {
  if (mean === undefined) return null;
  const rows = points.map(({ x }) => x);
  const [from, to] = [xScale(Math.min(...rows) - 0.4), xScale(Math.max(...rows) + 0.4)];
  return (
    <>
      <rect
        className="band"
        x={from}
        width={Math.max(0, to - from)}
        y={yScale(mean + half)}
        height={Math.max(1, yScale(mean - half) - yScale(mean + half))}
      />
      <line className={alone ? 'fit' : 'fit thin'} x1={from} x2={to} y1={yScale(mean)} y2={yScale(mean)} />
    </>
  );
}

interface ResidualsProps {
  readonly points: readonly PlotPoint[];
  readonly xScale: Place;
  readonly left: number;
  readonly right: number;
  readonly odd: ReadonlySet<number>;
}

export function Residuals({ points, xScale, left, right, odd }: ResidualsProps) {
  const used = points.filter(({ isAside }) => !isAside);
  const most = Math.max(...used.map(({ off = 0 }) => Math.abs(off)), Number.MIN_VALUE);
  const place = scaleLinear([-most, most], [264, 216]);
  return (
    <g>
      <text className="caption" x={left} y="207">
        off the line, up to {formatNumber(most, 2)}
      </text>
      <line className="zero" x1={left} x2={right} y1={place(0)} y2={place(0)} />
      {used.map(({ row, x, off = 0 }) => (
        <g key={row}>
          <line className="stem" x1={xScale(x)} x2={xScale(x)} y1={place(0)} y2={place(off)} />
          <Dot cx={xScale(x)} cy={place(off)} shape={0} isOdd={odd.has(row)} small />
        </g>
      ))}
    </g>
  );
}

interface DotProps {
  readonly cx: number;
  readonly cy: number;
  /** Which series it belongs to: disc, square, triangle, ring … */
  readonly shape: number;
  readonly isAside?: boolean;
  readonly isOdd?: boolean;
  readonly small?: boolean;
}

export function Dot({ cx, cy, shape, isAside = false, isOdd = false, small = false }: DotProps) {
  const size = small ? 3 : 4.5;
  return (
    <g transform={`translate(${cx} ${cy})`} className={isAside ? 'bench-dot aside' : 'bench-dot'}>
      {isAside ? (
        <path d="M-5 -5L5 5M5 -5L-5 5" />
      ) : shape % 4 === 0 ? (
        <circle r={size} />
      ) : shape % 4 === 1 ? (
        <rect className="open" x={-size} y={-size} width={2 * size} height={2 * size} />
      ) : shape % 4 === 2 ? (
        <path className="full" d={`M0 ${-size - 1}L${size + 1} ${size}L${-size - 1} ${size}Z`} />
      ) : (
        <circle className="open" r={size} />
      )}
      {isOdd && <circle className="odd" r={size + 5} />}
    </g>
  );
}
