/** The travel of an axis with its switches on it: both ends drawn large, since what matters lies there. */
import { type AxisDistances, type Mark, sayLength, sayReserve } from '../../../engine/circuit/stop/index.ts';
import { Scroll } from '../../parts/scroll.tsx';

const WIDTH = 900;
const EDGE = 30;
const WAY = 96;
const HEIGHT = 196;

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

interface Placed {
  readonly mark: Mark;
  readonly at: number;
  readonly known: boolean;
}

/**
 * Not to scale: the ends would vanish in it. From each end inwards the marks stand in the order of their places, as far apart
 * as their labels need; the run-on is the stretch from the limit switch to the hard stop that it fills or overruns.
 */
export function Travel({ axis: { marks, travel, runOn }, name }: { axis: AxisDistances; name: string }) {
  if (travel === undefined) return null;
  const placed = marks
    .flatMap((mark): Placed[] => {
      const at = mark.at ?? mark.needed;
      return at === undefined || at < 0 || at > travel ? [] : [{ mark, at, known: mark.at !== undefined }];
    })
    .sort((a, b) => a.at - b.at);
  if (placed.length < 3) return null;
  const step = (WIDTH - 2 * EDGE) / (placed.length - 1);
  const x = (n: number): number => EDGE + n * step;
  return (
    <Scroll label={`Travel of ${name}, a picture`}>
      <svg className="stop-travel" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img">
        <title>{`Travel of ${name}, in order, not to scale; the table below says the same`}</title>
        <line x1={EDGE} x2={WIDTH - EDGE} y1={WAY} y2={WAY} className="way" />
        {placed.map(({ mark }, n) => (
          <RunOn key={mark.id} mark={mark} from={x(n)} placed={placed} x={x} runOn={runOn} />
        ))}
        {placed.map(({ mark, known }, n) => (
          <Tick
            key={mark.id}
            mark={mark}
            known={known}
            x={x(n)}
            first={n === 0}
            last={n === placed.length - 1}
          />
        ))}
      </svg>
      <p className="small soft">In order from the lower end, not to scale.</p>
    </Scroll>
  );
}

function Tick({
  mark,
  known,
  x,
  first,
  last,
}: {
  mark: Mark;
  known: boolean;
  x: number;
  first: boolean;
  last: boolean;
}) {
  const hard = mark.id.startsWith('hard');
  const short = mark.reserve !== undefined && mark.reserve < 0;
  const anchor = first ? 'start' : last ? 'end' : 'middle';
  const edge = first ? x - EDGE + 4 : last ? x + EDGE - 4 : x;
  const element = / (S\w+)$/.exec(mark.name)?.[1];
  const half = hard ? 34 : mark.id.startsWith('limit') ? 24 : 16;
  const place = sayLength(mark.at ?? mark.needed!);
  return (
    <g className={`mark ${hard ? 'mark-hard' : short ? 'mark-short' : known ? 'mark-fine' : 'mark-wanted'}`}>
      <line x1={x} x2={x} y1={WAY - half} y2={WAY + half} />
      <text x={edge} y={26} textAnchor={anchor}>
        {LABELS[mark.id]}
      </text>
      <text x={edge} y={48} textAnchor={anchor} className="soft">
        {element ?? ''}
      </text>
      <text x={edge} y={156} textAnchor={anchor}>
        {known ? place : `${place} would do`}
      </text>
      <text x={edge} y={180} textAnchor={anchor} className={short ? 'short' : 'soft'}>
        {sayReserve(mark)}
      </text>
    </g>
  );
}

/** From a limit switch towards its hard stop; over the stop where the run-on is longer than the way there is. */
function RunOn({
  mark,
  from,
  placed,
  x,
  runOn,
}: {
  mark: Mark;
  from: number;
  placed: readonly Placed[];
  x: (n: number) => number;
  runOn: number | undefined;
}) {
  if (!mark.id.startsWith('limit') || runOn === undefined || mark.at === undefined) return null;
  const low = mark.id === 'limit-low';
  const end = low ? x(0) : x(placed.length - 1);
  const way = low ? mark.at : placed.at(-1)!.at - mark.at;
  const share = way > 0 ? Math.min(runOn / way, 1) : 1;
  const over = runOn > way ? EDGE - 6 : 0;
  const to = from + (end - from) * share + (low ? -over : over);
  return (
    <rect
      x={Math.min(from, to)}
      width={Math.abs(to - from)}
      y={WAY - 9}
      height={18}
      className={over > 0 ? 'run-on over' : 'run-on'}
    />
  );
}
