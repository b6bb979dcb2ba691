/** The steps of an auxiliary as a chart: what is asked first, what switches, what is waited for, and what if it does not come. */

import { formatQuantity } from '../../quantity/index.ts';
import { escaped } from '../../refit/sheets/node.ts';
import { waitsFor } from './check.ts';
import type { Machine, Operation } from './machine.ts';

export interface ChartRow {
  readonly n: number;
  readonly says: string;
  readonly on: readonly string[];
  readonly off: readonly string[];
  readonly waits: string;
  /** '3 s', 'no time-out', or the time that simply passes. */
  readonly most: string;
  /** What happens when the time is over. */
  readonly late: string;
  /** It can stand here for ever. */
  readonly open: boolean;
}

export interface Chart {
  readonly operation: string;
  readonly title: string;
  readonly first: string;
  readonly meanwhile: string;
  readonly rows: readonly ChartRow[];
  readonly end: string;
}

export const chartsOf = (machine: Machine): readonly Chart[] =>
  machine.operations.map((operation) => chartOf(machine, operation));

function chartOf(machine: Machine, operation: Operation): Chart {
  const name = (id: string): string => machine.outputs.find((each) => each.id === id)?.name ?? id;
  const { id, needsSays, keepsSays, steps, ends } = operation;
  return {
    operation: id,
    title: operation.name,
    first: needsSays ? `Begins only when ${needsSays}.` : 'Begins whenever it is asked to.',
    meanwhile: keepsSays ? `All the while: ${keepsSays}; otherwise it is given up.` : '',
    rows: steps.map(({ says, on, off, until, dwell, limit, late, ...step }, n) => ({
      n: n + 1,
      says,
      on: (on ?? []).map(name),
      off: (off ?? []).map(name),
      waits: until ? waitsFor(machine, { says, until, ...step }) : 'nothing tells that it is done',
      most: until
        ? limit === null || limit === undefined
          ? 'no time-out'
          : formatQuantity(limit, 's')
        : `goes on after ${formatQuantity(dwell ?? 0, 's')}`,
      late:
        !until || limit === null || limit === undefined
          ? ''
          : late === 'go on'
            ? 'goes on all the same'
            : 'gives up and says so',
      open: until !== undefined && (limit === null || limit === undefined),
    })),
    end:
      ends === 'ready'
        ? 'Done: spindle and axes may move.'
        : 'Done: it stays so, and spindle and axes may not move.',
  };
}

const PAD = 14;
const LEFT = 70;
const LINE = 18;
/** Room that a sign takes, in the same units. */
const SIGN = 7.4;

/** Text in lines of at most so many signs. */
function wrap(text: string, most: number): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of text.split(' ')) {
    if (now !== '' && now.length + word.length + 1 > most) {
      lines.push(now);
      now = word;
    } else now = now === '' ? word : `${now} ${word}`;
  }
  return [...lines, now];
}

type Kind = 'says' | 'on' | 'off' | 'waits' | 'time' | 'missing' | 'note';
interface Line {
  readonly text: string;
  readonly kind: Kind;
  /** Begins with its sign. */
  readonly sign: boolean;
}

/**
 * The chart as an SVG that scales to its box: a path runs down from stop to stop; at each stand what switches on (filled
 * square), what switches off (empty square) and what is waited for (hourglass); time-outs stand at the right, where the path
 * leaves when nothing comes, or on a narrow chart below. `width` in pixels. Colours come from the page by the classes chart-*.
 */
export function chartSvg(chart: Chart, width = 720): string {
  const narrow = width < 560;
  const left = narrow ? 46 : LEFT;
  const spine = narrow ? 20 : 36;
  const right = narrow ? width - 6 : width - 170;
  const signs = (room: number): number => Math.max(12, Math.floor(room / SIGN));
  const parts: string[] = [];
  const text = (x: number, y: number, words: string, kind: Kind): void => {
    parts.push(`<text x="${x}" y="${y}" class="chart-${kind}">${escaped(words)}</text>`);
  };
  const lines = (words: string, room: number, kind: Kind): Line[] =>
    wrap(words, signs(room)).map((each, n) => ({ text: each, kind, sign: n === 0 }));
  let y = PAD + LINE - 6;
  const top = y - 5;
  for (const { text: words } of [chart.first, chart.meanwhile]
    .filter(Boolean)
    .flatMap((each) => lines(each, width - left, 'note'))) {
    text(left, y, words, 'note');
    y += LINE;
  }
  parts.push(`<circle cx="${spine}" cy="${top}" r="7" class="chart-start"/>`);
  for (const row of chart.rows) {
    y += 6;
    const room = right - left - 44;
    const late = row.late ? `then it ${row.late}` : '';
    const own: Line[] = [
      ...lines(row.says, room + 18, 'says'),
      ...row.on.flatMap((each) => lines(`on: ${each}`, room, 'on')),
      ...row.off.flatMap((each) => lines(`off: ${each}`, room, 'off')),
      ...lines(row.waits, room, 'waits'),
      ...(narrow
        ? lines([row.most, late].filter(Boolean).join(', '), room, row.open ? 'missing' : 'time')
        : []),
    ];
    const side: Line[] = narrow
      ? []
      : [
          ...lines(row.most, width - right - 20, row.open ? 'missing' : 'time'),
          ...(late ? lines(late, width - right - 20, 'note') : []),
        ];
    const height = Math.max(own.length, side.length) * LINE + 12;
    parts.push(
      `<rect x="${left}" y="${y}" width="${right - left - 10}" height="${height}" rx="3" class="chart-step${row.open ? ' chart-open' : ''}"/>`,
      `<circle cx="${spine}" cy="${y + 18}" r="13" class="chart-stop"/>`,
      `<text x="${spine}" y="${y + 23}" text-anchor="middle" class="chart-number">${row.n}</text>`,
    );
    own.forEach(({ text: words, kind, sign }, n) => {
      const at = y + 20 + n * LINE;
      const x = left + 12;
      if (sign && (kind === 'on' || kind === 'off'))
        parts.push(`<rect x="${x}" y="${at - 10}" width="10" height="10" class="chart-${kind}"/>`);
      if (sign && kind === 'waits')
        parts.push(`<path d="M${x} ${at - 11}h10l-10 12h10z" class="chart-wait"/>`);
      text(kind === 'says' ? x : x + 18, at, words, kind);
    });
    side.forEach(({ text: words, kind }, n) => {
      text(right + 14, y + height - 12 - (side.length - 1 - n) * LINE, words, kind);
    });
    if (!narrow)
      parts.push(
        `<path d="M${right - 10} ${y + height - 17 - (side.length - 1) * LINE}h18" class="chart-leave${row.open ? ' chart-open' : ''}"/>`,
      );
    y += height + 8;
  }
  y += 16;
  const end = lines(chart.end, width - left, 'note');
  parts.push(
    `<circle cx="${spine}" cy="${y - 5}" r="8" class="chart-end"/><circle cx="${spine}" cy="${y - 5}" r="3" class="chart-start"/>`,
  );
  const line = `<path d="M${spine} ${top + 7}V${y - 13}" class="chart-spine"/>`;
  for (const { text: words } of end) {
    text(left, y, words, 'note');
    y += LINE;
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${y}" role="img" aria-label="${escaped(`Steps: ${chart.title}`)}">${line}${parts.join('')}</svg>`;
}
