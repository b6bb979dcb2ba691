/** The travel of an axis with its switches on it, to scale; each end once more and larger, since what matters lies there. */
import { type AxisDistances, type Mark, markVerdict, sayLength } from '../../../engine/circuit/stop/index.ts';
import type { Verdict } from '../../../engine/quantity/verdict.ts';
import { Mark as Shape, WORD } from '../../parts/verdict.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import {
  barLength,
  endZones,
  hangLabels,
  type LabelAsked,
  type Placed,
  placedMarks,
  type Stretch,
} from './travel-layout.ts';

const EDGE = 14;
const WAY = 40;
/** Height of a line of a label; the first label hangs this far below the way. */
const LINE = 18;
const ROOM = 6;
const BELOW = 34;
const SHAPE = 16;
/** Width of a letter at the size of the labels. */
const LETTER = 7.4;
/** Least width of a drawing; a phone is wider. */
const NARROWEST = 240;
/** Below this width labels take two lines. */
const NARROW = 560;

/** Short names for the picture; the table has the full ones. */
const LABELS: Readonly<Record<Mark['id'], string>> = {
  'hard-low': 'hard stop',
  'limit-low': 'limit',
  'soft-low': 'soft limit',
  home: 'home',
  'soft-high': 'soft limit',
  'limit-high': 'limit',
  'hard-high': 'hard stop',
};

export function Travel({ axis, name }: { axis: AxisDistances; name: string }) {
  const { travel } = axis;
  const placed = placedMarks(axis);
  if (travel === undefined || placed.length < 3) return null;
  const { low, high } = endZones(axis);
  const whole = { from: 0, to: travel };
  const inZone = ({ mark, at }: Placed) =>
    !mark.id.startsWith('hard') && [low, high].some((zone) => zone && at >= zone.from && at <= zone.to);
  return (
    <div className="stop-travel">
      <Drawing
        axis={axis}
        title={`Travel of ${name}, to scale`}
        stretch={whole}
        placed={placed}
        labelled={placed.filter((each) => !inZone(each))}
        zones={[low, high].filter((zone) => zone !== undefined)}
      />
      <p className="small soft">
        To scale.
        {axis.runOn !== undefined &&
          ' The band is how far it runs on from a limit switch, red where that is past the hard stop.'}
        {(low || high) && ' The ends are drawn once more, larger.'}
      </p>
      {(low || high) && (
        <div className="stop-lenses">
          {low && <Lens axis={axis} name={name} end="Lower end" stretch={low} placed={placed} />}
          {high && <Lens axis={axis} name={name} end="Upper end" stretch={high} placed={placed} />}
        </div>
      )}
    </div>
  );
}

interface LensProps {
  readonly axis: AxisDistances;
  readonly name: string;
  readonly end: string;
  readonly stretch: Stretch;
  readonly placed: readonly Placed[];
}

/** One end by itself, with a scale of its own. */
function Lens({ axis, name, end, stretch, placed }: LensProps) {
  const own = placed.filter(({ at }) => at >= stretch.from && at <= stretch.to);
  return (
    <figure className="stop-lens">
      <Drawing
        axis={axis}
        title={`${end} of the travel of ${name}, drawn larger`}
        stretch={stretch}
        placed={own}
        labelled={own}
        zones={[]}
        bar={barLength(stretch)}
      />
      <figcaption className="small soft">
        {end}, at a scale of its own: the bar is {sayLength(barLength(stretch))} long.
      </figcaption>
    </figure>
  );
}

interface DrawingProps {
  readonly axis: AxisDistances;
  readonly title: string;
  readonly stretch: Stretch;
  readonly placed: readonly Placed[];
  readonly labelled: readonly Placed[];
  readonly zones: readonly Stretch[];
  /** Metres. */
  readonly bar?: number;
}

function Drawing({ axis, title, stretch, placed, labelled, zones, bar }: DrawingProps) {
  const [ref, measured] = useWidth<HTMLDivElement>();
  const width = Math.max(measured, NARROWEST);
  const travel = axis.travel!;
  const x = (at: number): number =>
    EDGE + ((at - stretch.from) / (stretch.to - stretch.from)) * (width - 2 * EDGE);
  const within = (at: number): number => x(Math.min(Math.max(at, stretch.from), stretch.to));
  const texts = labelled.map((each) => sayLabel(axis, each, width < NARROW));
  const asked = texts.map(
    ({ lines, judged }, n): LabelAsked => ({
      x: x(labelled[n]!.at),
      width: Math.max(...lines.map(({ length }) => length)) * LETTER + (judged ? SHAPE + 12 : 12),
    }),
  );
  const places = hangLabels(asked, width);
  const rows = Math.max(0, ...places.map(({ row }) => row)) + 1;
  const row = ROOM + LINE * (width < NARROW ? 2 : 1);
  const height = WAY + BELOW + rows * row;
  return (
    <div ref={ref}>
      {measured > 0 && (
        <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img">
          <title>{`${title}; the table says the same`}</title>
          {zones.map((zone) => (
            <rect
              key={zone.from}
              className="zone"
              x={within(zone.from) - 4}
              width={within(zone.to) - within(zone.from) + 8}
              y={WAY - 26}
              height={52}
              rx={4}
            />
          ))}
          <line x1={within(0)} x2={within(travel)} y1={WAY} y2={WAY} className="way" />
          {placed.map(({ mark }) => (
            <RunOn key={mark.id} mark={mark} axis={axis} within={within} />
          ))}
          {placed.map((each) => (
            <Tick key={each.mark.id} axis={axis} each={each} x={x(each.at)} />
          ))}
          {labelled.map((each, n) => (
            <Label
              key={each.mark.id}
              className={classOf(axis, each)}
              x={asked[n]!.x}
              y={WAY + BELOW + places[n]!.row * row}
              anchor={places[n]!.anchor}
              {...texts[n]!}
            />
          ))}
          {bar !== undefined && (
            <path
              className="scale-bar"
              d={`M${EDGE} 6v8M${EDGE} 10h${x(stretch.from + bar) - EDGE}M${x(stretch.from + bar)} 6v8`}
            />
          )}
        </svg>
      )}
    </div>
  );
}

const classOf = (axis: AxisDistances, { mark, known }: Placed): string =>
  `place ${markVerdict(axis, mark) ?? 'hard'}${known ? '' : ' wanted'}`;

function Tick({ axis, each, x }: { axis: AxisDistances; each: Placed; x: number }) {
  const { id } = each.mark;
  const half = id.startsWith('hard') ? 22 : id.startsWith('limit') ? 16 : 11;
  return (
    <g className={classOf(axis, each)} data-mark={id}>
      <line x1={x} x2={x} y1={WAY - half} y2={WAY + half} />
    </g>
  );
}

/** 'limit S11', '4 mm', in one line or two. */
function sayLabel(axis: AxisDistances, { mark, at, known }: Placed, isNarrow: boolean) {
  const element = / (S\w+)$/.exec(mark.name)?.[1];
  const name = [LABELS[mark.id], element].filter((each) => each !== undefined).join(' ');
  const lines = [name, `${sayLength(at)}${known ? '' : ' would do'}`];
  return { judged: markVerdict(axis, mark), lines: isNarrow ? lines : [lines.join(' ')] };
}

interface LabelProps {
  readonly className: string;
  readonly x: number;
  /** Top of the label. */
  readonly y: number;
  readonly anchor: 'start' | 'end';
  readonly judged: Verdict | undefined;
  readonly lines: readonly string[];
}

/** Shape and words on the same side of the line they hang on. */
function Label({ className, x, y, anchor, judged, lines }: LabelProps) {
  const away = anchor === 'start' ? 1 : -1;
  const beside = x + away * 5;
  return (
    <g className={className}>
      <line className="hang" x1={x} x2={x} y1={WAY + 12} y2={y + lines.length * LINE} />
      {judged && (
        <svg
          x={anchor === 'start' ? beside : beside - SHAPE}
          y={y}
          width={SHAPE}
          height={SHAPE}
          viewBox="0 0 18 18"
          role="img"
          aria-label={WORD[judged]}
        >
          <Shape verdict={judged} />
        </svg>
      )}
      {lines.map((line, n) => (
        <text
          key={line}
          x={beside + away * (judged ? SHAPE + 3 : 0)}
          y={y + 13 + n * LINE}
          textAnchor={anchor}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** From a limit switch towards its hard stop, as long as it runs on; what goes beyond the hard stop stands out. */
function RunOn({
  mark: { id, at },
  axis: { runOn, travel },
  within,
}: {
  mark: Mark;
  axis: AxisDistances;
  within: (at: number) => number;
}) {
  if (!id.startsWith('limit') || runOn === undefined || at === undefined) return null;
  const high = id === 'limit-high';
  const stop = high ? travel! : 0;
  const end = high ? at + runOn : at - runOn;
  const isOver = high ? end > stop : end < stop;
  const bar = (from: number, to: number, className: string) => (
    <rect
      className={className}
      x={Math.min(within(from), within(to))}
      width={Math.abs(within(to) - within(from))}
      y={WAY - 7}
      height={14}
    />
  );
  return (
    <>
      {bar(at, isOver ? stop : end, 'run-on')}
      {isOver && bar(stop, end, 'run-on over')}
    </>
  );
}
