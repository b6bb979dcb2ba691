/** A thread or a tap in time: spindle and axis in step, the error against where the tool is, and what it means. */
import { scaleLinear } from 'd3-scale';
import { type InStepAnswer, inStepHeads, inStepRows, inStepWords } from '../../../engine/work/index.ts';
import { Scroll } from '../../parts/scroll.tsx';
import { Mark } from '../../parts/verdict.tsx';
import { baseAtZero, Levels, pathThrough } from '../../pictures/axes.tsx';
import { useWidth } from '../../pictures/use-width.ts';
import type { WorkView } from './use-work.ts';

interface Props {
  readonly id: string;
  readonly kind: 'thread' | 'tap';
  readonly state: WorkView;
}

const LEVELS = { bad: 'fails', mind: 'tight', good: 'fits' } as const;

export function InStep({ id, kind, state }: Props) {
  const { runs, running, run, stop } = state;
  const answer = runs[id];
  return (
    <div>
      <div className="row spread">
        <h3>In time, spindle and axis together</h3>
        {running === id ? (
          <button type="button" onClick={stop}>
            Stop
          </button>
        ) : (
          <button type="button" onClick={() => run(id)} disabled={running !== undefined}>
            {answer ? 'Run it again' : kind === 'tap' ? 'Run the stroke' : 'Run a pass'}
          </button>
        )}
      </div>
      <p role="status" className="small soft">
        {running === id ? 'Running …' : answer && 'says' in answer ? answer.says : ''}
      </p>
      {answer !== undefined && !('says' in answer) && <Shown answer={answer} />}
    </div>
  );
}

function Shown({ answer }: { readonly answer: InStepAnswer }) {
  const [ref, width] = useWidth<HTMLDivElement>();
  return (
    <div className="stack">
      <ul className="work-sayings">
        {answer.sentences.map(({ level, says }) => (
          <li key={says}>
            <Mark verdict={LEVELS[level]} />
            <span>{says}</span>
          </li>
        ))}
      </ul>
      <div ref={ref} style={{ minHeight: 2 * HEIGHT }}>
        {width > 0 && <Drawn answer={answer} width={width} />}
      </div>
      <Table answer={answer} />
      <details>
        <summary>What was taken as usual</summary>
        <ul className="small">
          {answer.assumed.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ul>
      </details>
    </div>
  );
}

const HEIGHT = 190;
const LEFT = 56;
const RIGHT = 10;
const TOP = 26;
const FOOT = 34;
/** µm. */
const LEAST_ERROR = 20;

/** Spindle speed in time, and the error against the place of the tool. */
function Drawn({ answer, width }: { readonly answer: InStepAnswer; readonly width: number }) {
  const { of } = answer;
  const { time, speed, place, ideal } = of.run.trace;
  const isTap = of.kind === 'tap';
  const rpm = Array.from(speed, (w) => (w * 30) / Math.PI);
  const error = Array.from(place, (z, at) => (z - ideal[at]!) * 1e6);
  const shift = of.kind === 'thread' ? of.run.trail * 1e6 : 0;
  const off = error.map((each) => each + shift);
  const mm = Array.from(place, (z) => z * 1e3);
  const from = of.kind === 'thread' ? mm.findIndex((z) => z > 1e-6) : 0;
  const to = of.kind === 'thread' ? lastBefore(mm, (of.runIn + lengthOf(answer)) * 1e3) : mm.length;
  const along = mm.slice(Math.max(0, from), to);
  const offAlong = off.slice(Math.max(0, from), to);
  return (
    <div className="in-step">
      <Graph
        name="spindle speed, r/min, against time, s"
        xs={Array.from(time)}
        ys={rpm}
        width={width}
        marks={[]}
        floating={!isTap}
        least={isTap ? 0 : 0.1 * (rpm[0] ?? 0)}
      />
      <Graph
        name={
          isTap
            ? 'axis ahead of the spindle, µm, against depth, mm'
            : 'tool off its groove, µm, against its place, mm'
        }
        xs={along}
        ys={offAlong}
        width={width}
        marks={
          of.kind === 'thread'
            ? [{ at: of.runIn * 1e3, name: 'thread begins' }]
            : [
                { at: 0, name: 'face' },
                { at: of.depth * 1e3, name: 'full thread' },
              ]
        }
        clip={of.kind === 'thread'}
        least={LEAST_ERROR}
      />
    </div>
  );
}

const lengthOf = (answer: InStepAnswer): number =>
  answer.of.kind === 'thread'
    ? (answer.of.run.trace.place.at(-1) ?? 0) - answer.of.runIn - answer.of.run.runOut
    : 0;

function lastBefore(values: readonly number[], end: number): number {
  const at = values.findIndex((each) => each > end);
  return at < 0 ? values.length : at;
}

interface GraphProps {
  readonly name: string;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly width: number;
  readonly marks: readonly { readonly at: number; readonly name: string }[];
  /** Show the later part in full and cut off what the start costs. */
  readonly clip?: boolean;
  /** The scale need not begin at zero. */
  readonly floating?: boolean;
  /** The scale spans at least this much, so that a trifle does not look like a fault. */
  readonly least: number;
}

function Graph({ name, xs, ys, width, marks, clip = false, floating = false, least: span }: GraphProps) {
  const from = floating ? (ys[0] ?? 0) : 0;
  const least = (values: readonly number[], start = 0): number =>
    values.reduce((a, b) => Math.min(a, b), start);
  const most = (values: readonly number[], start = 0): number =>
    values.reduce((a, b) => Math.max(a, b), start);
  // What the start costs is far greater than what follows; it may run off the top.
  const seen = clip ? ys.slice(Math.floor(ys.length / 12)) : ys;
  const [lowest, highest] = [least(seen, from), most(seen, from)];
  const wider = Math.max(0, span - (highest - lowest)) / 2;
  const [low, high] = [lowest - wider, highest + wider];
  const room = (high - low || 1) * 0.08;
  const x = scaleLinear([Math.min(...xs.slice(0, 1), least(xs)), most(xs)], [LEFT, width - RIGHT]);
  const y = scaleLinear([low - room, high + room], [HEIGHT - FOOT, TOP]).clamp(true);
  const d = pathThrough(
    xs.length,
    (at) => x(xs[at]!),
    (at) => y(ys[at]!),
  );
  const round = (value: number): string => String(Number(value.toPrecision(4)));
  return (
    <svg
      className="chart"
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={`${name}; the numbers stand in the table below.`}
    >
      <g className="axes">
        <Levels
          ticks={y.ticks(4).map((tick) => ({ at: y(tick), text: round(tick) }))}
          left={LEFT}
          right={width - RIGHT}
          look={baseAtZero}
        />
        {x.ticks(Math.max(3, Math.floor(width / 110))).map((tick) => (
          <g key={tick}>
            <line x1={x(tick)} x2={x(tick)} y1={TOP} y2={HEIGHT - FOOT} />
            <text x={x(tick)} y={HEIGHT - FOOT + 16} textAnchor="middle">
              {round(tick)}
            </text>
          </g>
        ))}
        {marks.map((mark) => (
          <g key={mark.name}>
            <line className="limit" x1={x(mark.at)} x2={x(mark.at)} y1={TOP} y2={HEIGHT - FOOT} />
            <text className="name" x={x(mark.at) + 4} y={TOP + 12}>
              {mark.name}
            </text>
          </g>
        ))}
        <path className="trace main" d={d} fill="none" />
        <text className="title" x={LEFT} y={16}>
          {name}
        </text>
      </g>
    </svg>
  );
}

const ROWS = 24;

function Table({ answer }: { readonly answer: InStepAnswer }) {
  const all = inStepRows(answer);
  const rows = Array.from(
    { length: ROWS + 1 },
    (_, row) => all[Math.round((row * (all.length - 1)) / ROWS)]!,
  );
  return (
    <details>
      <summary>The same as a table</summary>
      <Scroll label="The stroke as a table">
        <table>
          <thead>
            <tr>
              {inStepHeads(answer).map((each) => (
                <th key={each} scope="col" className="number">
                  {each}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ time, turns, speed, place, off }) => (
              <tr key={time}>
                <td className="number">{time.toFixed(3)}</td>
                <td className="number">{turns.toFixed(2)}</td>
                <td className="number">{((speed * 30) / Math.PI).toFixed(0)}</td>
                <td className="number">{(place * 1e3).toFixed(3)}</td>
                <td className="number">{off === null ? 'not in the cut' : (off * 1e6).toFixed(1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {inStepWords(answer).map((each) => (
        <p key={each} className="small">
          {each}
        </p>
      ))}
    </details>
  );
}
