/** A chart in our own drawing: hairlines, names at the lines, marks in the shape of their verdict. */
import { useId, useMemo } from 'react';
import type { ChartPicture, Series } from '../../engine/assess/pictures/index.ts';
import { Levels, pathThrough } from './axes.tsx';
import { along, type Box, type Label, type Named, type Point, placeLabels } from './labels.ts';
import { type Frame, frameOf } from './scales.ts';
import { Shape } from './shape.tsx';
import { type Stroke, strokesOf } from './strokes.ts';
import { heading } from './words.ts';

interface Drawn {
  readonly frame: Frame;
  readonly lines: readonly (readonly Point[])[];
  readonly strokes: readonly Stroke[];
  readonly lineLabels: readonly Label[];
  readonly markLabels: readonly Label[];
}

const path = (points: readonly Point[]): string =>
  pathThrough(
    points.length,
    (at) => points[at]![0],
    (at) => points[at]![1],
  );

/** The later half of a line first: there lines have parted. */
const fromTheEnd = (points: readonly Point[]): Point[] => points.filter((_, i) => i % 3 === 0).reverse();

export function drawChart(picture: ChartPicture, width: number): Drawn {
  const frame = frameOf(picture, width);
  const { x, y } = frame;
  const lines = picture.series.map(({ points }) =>
    points.map(([a, b]): Point => [x.place(a), Math.max(frame.top - 20, y.place(b))]),
  );
  const dense = lines.map((points) => along(points));
  const marks = picture.marks.map((mark): Point => [x.place(mark.x), y.place(mark.y)]);
  const boxes = marks.map(([a, b]): Box => ({ left: a - 8, right: a + 8, top: b - 8, bottom: b + 8 }));
  const names: Named[] = [
    ...picture.marks.map(({ name }, i) => ({ text: name, at: [marks[i]!], gaps: [9, 18, 28] })),
    // Long names have the fewest places, so they choose first.
    ...picture.series
      .map(({ name }, i) => ({ text: name, at: fromTheEnd(dense[i]!), own: i }))
      .sort((a, b) => b.text.length - a.text.length),
  ];
  const labels = placeLabels(names, dense, boxes, {
    left: frame.left + 2,
    right: frame.right + 10,
    top: frame.top - 8,
    bottom: frame.bottom - 1,
  });
  const isMark = new Set(picture.marks.map(({ name }) => name));
  return {
    frame,
    lines,
    strokes: strokesOf(picture.series),
    lineLabels: labels.filter(({ text }) => !isMark.has(text)),
    markLabels: labels.filter(({ text }) => isMark.has(text)),
  };
}

/** The band between low and high mains. */
function band(series: readonly Series[], lines: readonly (readonly Point[])[]): string | undefined {
  const low = lines[series.findIndex(({ role }) => role === 'low')];
  const high = lines[series.findIndex(({ role }) => role === 'high')];
  return low && high ? `${path([...low, ...[...high].reverse()])}Z` : undefined;
}

interface Props {
  readonly picture: ChartPicture;
  readonly width: number;
  /** SI; where the reading line stands. */
  readonly reading: number | undefined;
}

export function Chart({ picture, width, reading }: Props) {
  const clip = useId();
  const drawn = useMemo(() => drawChart(picture, width), [picture, width]);
  const { frame, lines, strokes, lineLabels, markLabels } = drawn;
  const between = band(picture.series, lines);
  const read = reading === undefined ? undefined : frame.x.place(reading);
  const strokeOf = (name: string) => strokes[picture.series.findIndex((each) => each.name === name)];
  return (
    <svg
      className="chart"
      width={frame.width}
      height={frame.height}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      role="img"
      aria-label={`${picture.title}. ${picture.says}`}
    >
      <clipPath id={clip}>
        <rect
          x={frame.left}
          y={frame.top - 6}
          width={frame.right - frame.left + 2}
          height={frame.bottom - frame.top + 7}
        />
      </clipPath>
      <Axes picture={picture} frame={frame} />
      <g clipPath={`url(#${clip})`}>
        {between && <path d={between} className="band" />}
        {lines.map((points, i) => (
          <path
            key={picture.series[i]!.name}
            d={path(points)}
            fill="none"
            stroke={strokes[i]!.colour}
            strokeWidth={strokes[i]!.width}
            strokeDasharray={strokes[i]!.dash}
            strokeLinejoin="round"
          />
        ))}
      </g>
      {read !== undefined && (
        <line className="reading" x1={read} x2={read} y1={frame.top - 6} y2={frame.bottom} />
      )}
      {picture.marks.map((mark) => (
        <Shape key={mark.name} x={frame.x.place(mark.x)} y={frame.y.place(mark.y)} verdict={mark.verdict} />
      ))}
      {lineLabels.map((label) => (
        <Name key={label.text} label={label} colour={strokeOf(label.text)?.colour ?? 'var(--ink)'} />
      ))}
      {markLabels.map((label) => (
        <Name key={label.text} label={label} colour="var(--ink)" bold />
      ))}
    </svg>
  );
}

function Name({ label, colour, bold = false }: { label: Label; colour: string; bold?: boolean }) {
  const { left, right, top, bottom, text } = label;
  return (
    <g>
      {label.on && (
        <rect className="behind" x={left - 3} y={top} width={right - left + 6} height={bottom - top} rx="3" />
      )}
      <text
        className={bold ? 'name bold' : 'name'}
        x={(left + right) / 2}
        y={top + 12}
        textAnchor="middle"
        fill={colour}
      >
        {text}
      </text>
    </g>
  );
}

function Axes({ picture, frame }: { picture: ChartPicture; frame: Frame }) {
  const { left, right, top, bottom, x, y } = frame;
  return (
    <g className="axes">
      <Levels ticks={y.ticks} left={left} right={right} />
      {x.ticks.map(({ at, text }) => (
        <g key={text}>
          <line x1={at} x2={at} y1={bottom} y2={bottom + 5} />
          <text x={Math.min(at, right - text.length * 3)} y={bottom + 19} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <line className="base" x1={left} x2={right} y1={bottom} y2={bottom} />
      <line className="base" x1={left} x2={left} y1={top - 6} y2={bottom} />
      <text className="title" x="0" y="14">
        {heading(picture.y.name, picture.y.unit)}
      </text>
      <text className="title" x={right} y={bottom + 38} textAnchor="end">
        {heading(picture.x.name, picture.x.unit)}
      </text>
    </g>
  );
}
