/** Limits of size of any thread, for the usual classes or for one that was asked for. */
import type { Result } from '../quantity/index.ts';
import { ISO_7, PIPE_SIZES } from '../tables/thread-pipe.ts';
import { pipeLimits, unifiedLimits, whitworthLimits } from './limits-inch.ts';
import { metricLimits, trapezoidalLimits } from './limits-metric.ts';
import { MM, problem } from './text.ts';
import type { LimitRow, Limits, Side, Thread } from './types.ts';

const BOTH: readonly Side[] = ['external', 'internal'];

/**
 * The limits of the thread: of the class in `className` (several with a blank or slash between), else of the class
 * written with the thread, else of the everyday classes of both sides. Taper threads are held by their gauge plane.
 */
export function limitsOf(thread: Thread, className?: string): Result<readonly Limits[]> {
  const asked = (className ?? thread.className)?.trim();
  if (asked !== undefined && asked.length > 40)
    return problem('too-long', 'That is too long to be a tolerance class, such as 6g.');
  const names = asked === undefined || asked === '' ? undefined : asked.split(/[ /,]+/);
  switch (thread.family) {
    case 'metric':
      return all((names ?? ['6g', '6H']).map((name) => metricLimits(thread, name)));
    case 'trapezoidal':
      return all((names ?? ['7e', '7H']).map((name) => trapezoidalLimits(thread, name)));
    case 'unified':
      return all((names ?? ['2A', '2B']).map((name) => unifiedLimits(thread, name)));
    case 'whitworth':
      return names
        ? all(
            names.map((name) =>
              whitworthLimits(thread, name, name.toLowerCase() === 'normal' ? 'internal' : 'external'),
            ),
          )
        : all(BOTH.map((side) => whitworthLimits(thread, 'medium', side)));
    case 'pipe-parallel':
      if (thread.series === 'Rp')
        return names
          ? problem('unknown-name', 'Rp threads have no classes.')
          : all([pipeLimits(thread, 'A', 'internal')]);
      return names
        ? all(names.map((name) => pipeLimits(thread, name, 'external')))
        : all(BOTH.map((side) => pipeLimits(thread, 'A', side)));
    default:
      return names
        ? problem(
            'unknown-name',
            'Taper threads have no classes; a gauge screwed on by hand shows whether they are right.',
          )
        : all([{ ok: true, value: taperLimits(thread) }]);
  }
}

function all(results: readonly Result<Limits>[]): Result<readonly Limits[]> {
  const values: Limits[] = [];
  for (const result of results) {
    if (!result.ok) return result;
    values.push(result.value);
  }
  return { ok: true, value: values };
}

const TURNS: Readonly<Record<number, string>> = {
  1: 'one turn',
  1.25: 'one and a quarter turns',
  1.5: 'one and a half turns',
};

/** Where the gauge plane may lie, some turns either way. */
function taperLimits(thread: Thread): Limits {
  const side = thread.side ?? 'external';
  const isNpt = thread.family === 'npt';
  const turns = isNpt ? 1 : PIPE_SIZES.find(({ size }) => size === thread.size)!.taper!.gaugeTurns[side];
  const off = turns * thread.pitch;
  const rows: LimitRow[] = [
    { key: 'turns', name: 'gauge plane off its place by at most', low: -off, high: off },
  ];
  return {
    side,
    className: TURNS[turns]!,
    rows,
    source: isNpt ? 'ASME B1.20.1: one turn either way' : ISO_7,
    status: isNpt ? 'from memory' : 'published',
    note: `A ring or plug gauge screwed on by hand should stop within ${TURNS[turns]} (${(off / MM).toFixed(2)} mm) of its mark.`,
  };
}
