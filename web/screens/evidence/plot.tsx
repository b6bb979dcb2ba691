/** The picture of the readings: dots with their mean and its band, or points on a line with what is left over. */
import { scaleLinear } from 'd3-scale';
import { formatNumber, formatQuantity, toSI } from '../../../engine/quantity/index.ts';
import { capital } from '../../parts/fact-field.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import type { Plot, PlotPoint, PlotSeries } from './plot-data.ts';

interface Props {
  readonly plot: Plot;
  /** Rows that are questioned, counted from 1. */
  readonly odd: ReadonlySet<number>;
}

export function PlotPicture({ plot, odd }: Props) {
  const [holder, width] = useWidth<HTMLDivElement>();
  const { y, x, series } = plot;
  const says = sayPlot(plot, odd);
  return (
    <figure className="bench-plot">
      <p className="small">
        {capital(unitOf(series.length > 1 ? 'readings' : y.name, y.unit))}
        {x ? ` against ${unitOf(x.name, x.unit)}` : ', row by row'}
      </p>
      <div ref={holder} className={plot.kind === 'line' ? 'holder tall' : 'holder'}>
        {width > 0 && <Drawn plot={plot} odd={odd} width={width} says={says} />}
      </div>
      {series.length > 1 && (
        <ul className="row small bench-key">
          {series.map(({ name }, i) => (
            <li key={name}>
              <svg width="14" height="14" viewBox="-7 -7 14 14" aria-hidden="true">
                <Dot cx={0} cy={0} shape={i} />
              </svg>{' '}
              {name}
            </li>
          ))}
        </ul>
      )}
      <figcaption className="small soft">{says}</figcaption>
      <Numbers plot={plot} />
    </figure>
  );
}

const unitOf = (name: string, unit: string): string => (unit === '1' ? name : `${name} in ${unit}`);

/** '51.5 ± 1.8 mm': no more digits than the band leaves. */
function sayMean(mean: number, half: number, unit: string): string {
  const zero = toSI(0, unit);
  return formatQuantity(toSI(mean, unit), unit, { half: toSI(half, unit) - zero });
}

function sayPlot({ kind, y, series, line }: Plot, odd: ReadonlySet<number>): string {
  const unit = y.unit === '1' ? '' : ` ${y.unit}`;
  const asked = odd.size > 0 ? ' A ring marks a reading that is questioned.' : '';
  const aside = series.some(({ points }) => points.some((each) => each.isAside))
    ? ' A cross marks a reading that was set aside and does not count.'
    : '';
  if (kind === 'line' && line)
    return `The line is the best straight line; below it stands how far each reading lies off it, typically ${formatNumber(line.deviation, 2)}${unit}.${asked}${aside}`;
  const means = series.flatMap(({ name, mean, half }) =>
    mean === undefined || half === undefined
      ? []
      : [`${series.length > 1 ? `${name}: ` : ''}mean ${sayMean(mean, half, y.unit)}`],
  );
  if (means.length === 0) return `A dot for each reading.${asked}${aside}`;
  const which = means.length <= 2 ? `: ${means.join('; ')}, which is` : ' show the mean of each kind and';
  return `A dot for each reading. Line and band${which} where the mean lies 95 times in a hundred by the scatter alone.${asked}${aside}`;
}

interface DrawnProps extends Props {
  readonly width: number;
  readonly says: string;
}

function Drawn({ plot, odd, width, says }: DrawnProps) {
  const { kind, series, line } = plot;
  const all = series.flatMap(({ points }) => points);
  const height = kind === 'line' ? 300 : 210;
  const bottom = kind === 'line' ? 190 : height - 34;
  const bands = series.flatMap(({ mean, half = 0 }) =>
    mean === undefined ? [] : [mean - half, mean + half],
  );
  // What was set aside must not squeeze the others together.
  const shownY = all.filter(({ isAside }) => !isAside).map(({ y }) => y);
  const [least, most] =
    kind === 'line'
      ? spread([0, ...all.map(({ x }) => x)], 0.04)
      : [0.4, Math.max(...all.map(({ x }) => x)) + 0.6];
  const from = all.some(({ x }) => x < 0) ? least : 0;
  const at = (x: number): number => (line ? line.intercept + line.slope * x : 0);
  const ends = line ? [at(from), at(most)] : [];
  const [low, high] = spread([...(shownY.length > 0 ? shownY : all.map(({ y }) => y)), ...bands, ...ends]);
  const yScale = scaleLinear([low, high], [bottom, 12]);
  const yTicks = yScale.ticks(4);
  const label = (value: number): string => formatNumber(value, 6);
  const left = 12 + 7.4 * Math.max(1, ...yTicks.map((tick) => label(tick).length));
  const right = width - 12;
  const xScale = scaleLinear([least, most], [left, right]);
  const count = Math.max(2, Math.floor((right - left) / 70));
  const xTicks = (kind === 'line' ? xScale.ticks(count) : rowTicks(most, count)).filter(
    (tick) => tick >= least,
  );
  const inside = (value: number): number => Math.min(bottom, Math.max(12, yScale(value)));
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      <g className="axes">
        {yTicks.map((tick) => (
          <g key={tick}>
            <line x1={left} x2={right} y1={yScale(tick)} y2={yScale(tick)} />
            <text x={left - 6} y={yScale(tick) + 4} textAnchor="end">
              {label(tick)}
            </text>
          </g>
        ))}
        {xTicks.map((tick) => (
          <text key={tick} x={xScale(tick)} y={height - 8} textAnchor="middle">
            {label(tick)}
          </text>
        ))}
      </g>
      {series.map((each) => (
        <Mean key={each.name} of={each} xScale={xScale} yScale={yScale} alone={series.length === 1} />
      ))}
      {line && (
        <line
          className="fit"
          x1={xScale(from)}
          x2={xScale(most)}
          y1={yScale(at(from))}
          y2={yScale(at(most))}
        />
      )}
      {series.map((each, i) =>
        each.points.map((point) => (
          <Dot
            key={`${each.name} ${point.row}`}
            cx={xScale(point.x)}
            cy={inside(point.y)}
            shape={i}
            isAside={point.isAside}
            isOdd={odd.has(point.row) && !point.isAside}
          />
        )),
      )}
      {kind === 'line' && <Residuals points={all} xScale={xScale} left={left} right={right} odd={odd} />}
    </svg>
  );
}

type Place = (value: number) => number;

interface MeanProps {
  readonly of: PlotSeries;
  readonly xScale: Place;
  readonly yScale: Place;
  readonly alone: boolean;
}

/** Over the whole width where there is only one, else over its own dots. */
function Mean({ of: { mean, half = 0, points }, xScale, yScale, alone }: MeanProps) {
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

function Residuals({ points, xScale, left, right, odd }: ResidualsProps) {
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

function Dot({ cx, cy, shape, isAside = false, isOdd = false, small = false }: DotProps) {
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

function spread(values: readonly number[], room = 0.12): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const more = high > low ? room * (high - low) : Math.abs(high) * 0.05 || 1;
  return [low - more, high + more];
}

function rowTicks(most: number, count: number): number[] {
  const rows = Math.floor(most);
  const step = Math.max(1, Math.ceil(rows / count));
  return Array.from({ length: Math.ceil(rows / step) }, (_, i) => 1 + i * step);
}

function Numbers({ plot: { series, x, y, kind } }: { plot: Plot }) {
  return (
    <details>
      <summary>Show the numbers</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className="scroll" tabIndex={0} aria-label={`Numbers of ${y.name}`}>
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
      </section>
    </details>
  );
}
