/** Quantities against time, one panel under the other on one time axis; what happened stands as ticks below. */
import { scaleLinear } from 'd3-scale';
import { useMemo } from 'react';
import { convert, formatNumber } from '../../../engine/quantity/index.ts';
import { baseAtZero, Levels, pathThrough } from '../../pictures/axes.tsx';
import type { RunEvent } from './parts.ts';

export interface Line {
  readonly name: string;
  /** SI, beside `time`. */
  readonly values: Float64Array;
  readonly time: Float64Array;
  readonly look: 'main' | 'aside' | 'other' | 'beside';
}

export interface Panel {
  readonly name: string;
  /** The unit it is read in. */
  readonly unit: string;
  readonly lines: readonly Line[];
  /** An area between two lines, such as what nine runs of ten stay within. */
  readonly band?: { readonly time: Float64Array; readonly low: Float64Array; readonly high: Float64Array };
  /** Levels that must not be passed, SI. */
  readonly limits?: readonly { readonly name: string; readonly at: number }[];
}

const LOOKS = { main: '━ ', aside: '╌ ', other: '┈ ', beside: '┅ ' } as const;

const HEIGHT = 140;
/** Room for the name, and on a phone for the legend under it. */
const topOf = (width: number): number => (width < 480 ? 38 : 24);
const FOOT = 8;
const LEFT = 58;
const RIGHT = 10;

interface Props {
  readonly panels: readonly Panel[];
  readonly events: readonly RunEvent[];
  readonly width: number;
  readonly until: number;
}

export function TimeChart({ panels, events, width, until }: Props) {
  const x = useMemo(() => scaleLinear([0, until * 1000], [LEFT, width - RIGHT]), [until, width]);
  const ticks = x.ticks(Math.max(2, Math.floor((width - LEFT) / 90)));
  const height = panels.length * HEIGHT + 34;
  return (
    <svg
      className="chart move-chart"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${panels.map(({ name }) => name).join(', ')} against time; the numbers stand in the table below.`}
    >
      {panels.map((panel, at) => (
        <g key={panel.name} transform={`translate(0 ${at * HEIGHT})`}>
          <PanelDrawing
            panel={panel}
            width={width}
            place={(t) => x(t * 1000)}
            ticks={ticks.map((each) => x(each))}
          />
        </g>
      ))}
      <g transform={`translate(0 ${panels.length * HEIGHT})`} className="axes">
        {events.map((event, at) => (
          <line
            // biome-ignore lint/suspicious/noArrayIndexKey: events have no name of their own and never move
            key={at}
            className={isBad(event) ? 'event bad-event' : 'event'}
            x1={x(event.time * 1000)}
            x2={x(event.time * 1000)}
            y1={-5}
            y2={3}
          >
            <title>{`${formatNumber(event.time * 1000, 4)} ms: ${event.sentence}`}</title>
          </line>
        ))}
        {ticks.map((tick) => (
          <text key={tick} x={x(tick)} y={18} textAnchor="middle">
            {formatNumber(tick, 6)}
          </text>
        ))}
        <text className="title" x={width - RIGHT} y={32} textAnchor="end">
          time, ms
        </text>
      </g>
    </svg>
  );
}

const isBad = ({ kind }: RunEvent): boolean =>
  kind.startsWith('trip') || kind === 'stall' || kind === 'unstable';

interface PanelProps {
  readonly panel: Panel;
  readonly width: number;
  readonly place: (time: number) => number;
  readonly ticks: readonly number[];
}

function PanelDrawing({ panel, width, place, ticks }: PanelProps) {
  const { name, unit, lines, band, limits = [] } = panel;
  const drawn = useMemo(() => {
    let [low, high] = [0, 0];
    const widen = (values: Float64Array): void => {
      for (const value of values) {
        if (value < low) low = value;
        if (value > high) high = value;
      }
    };
    for (const { values } of lines) widen(values);
    if (band) for (const values of [band.low, band.high]) widen(values);
    // A limit far away would flatten the line; it is named in words then.
    const near = limits.filter(
      ({ at }) => at <= 2.5 * Math.max(high, 1e-30) && at >= 2.5 * Math.min(low, -1e-30),
    );
    for (const { at } of near) [low, high] = [Math.min(low, at), Math.max(high, at)];
    const room = (high - low || 1) * 0.06;
    const y = scaleLinear(
      [convert(low === 0 ? 0 : low - room, unit), convert(high + room, unit)],
      [HEIGHT - FOOT, topOf(width)],
    );
    const path = (time: Float64Array, values: Float64Array): string =>
      pathThrough(
        values.length,
        (at) => place(time[at]!),
        (at) => y(convert(values[at]!, unit)),
      );
    return {
      y,
      near,
      paths: lines.map(({ time, values }) => path(time, values)),
      area: band
        ? `${path(band.time, band.high)}${path(band.time.toReversed(), band.low.toReversed()).replace('M', 'L')}Z`
        : undefined,
    };
  }, [lines, band, limits, unit, place, width]);
  const { y } = drawn;
  return (
    <g className="axes">
      {ticks.map((at) => (
        <line key={at} x1={at} x2={at} y1={topOf(width)} y2={HEIGHT - FOOT} />
      ))}
      <Levels
        ticks={y.ticks(4).map((tick) => ({ at: y(tick), text: formatNumber(tick, 6) }))}
        left={LEFT}
        right={width - RIGHT}
        look={baseAtZero}
      />
      {drawn.area && <path d={drawn.area} className="band" />}
      {drawn.near.map((limit) => (
        <g key={limit.name}>
          <line
            className="limit"
            x1={LEFT}
            x2={width - RIGHT}
            y1={y(convert(limit.at, unit))}
            y2={y(convert(limit.at, unit))}
          />
          <text className="name" x={width - RIGHT - 4} y={y(convert(limit.at, unit)) - 4} textAnchor="end">
            {limit.name}
          </text>
        </g>
      ))}
      {lines.map((line, at) => (
        <path key={line.name} className={`trace ${line.look}`} d={drawn.paths[at]} fill="none" />
      ))}
      <text className="title" x={LEFT} y={14}>
        {name}, {unit}
      </text>
      {lines.length > 1 && (
        <text
          className="title"
          x={width < 480 ? LEFT : width - RIGHT}
          y={width < 480 ? 30 : 14}
          textAnchor={width < 480 ? 'start' : 'end'}
        >
          {lines.map(({ name: own, look }, at) => (
            <tspan key={own} className={`legend ${look}`} dx={at === 0 ? 0 : 10}>
              {LOOKS[look]}
              {own}
            </tspan>
          ))}
        </text>
      )}
    </g>
  );
}
