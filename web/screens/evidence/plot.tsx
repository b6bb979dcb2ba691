/** The picture of the readings: dots with their mean and its band, or points on a line with what is left over. */

import { scaleLinear } from 'd3-scale';
import { formatNumber } from '../../../engine/quantity/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { Levels } from '../../pictures/axes.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import type { Plot } from './plot-data.ts';
import { Dot, Mean, Residuals } from './plot-marks.tsx';
import { Numbers } from './plot-numbers.tsx';
import { sayPlot, unitOf } from './plot-words.ts';

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
        <Levels
          ticks={yTicks.map((tick) => ({ at: yScale(tick), text: label(tick) }))}
          left={left}
          right={right}
        />
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
