/** The steps of an auxiliary as a chart: what is asked first, what switches, what is waited for, and what if it does not come. */
import { formatQuantity } from '../../quantity/index.ts';
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

const WIDTH = 720;
const PAD = 14;
const LEFT = 70;
const LINE = 18;
const RIGHT = 560;

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

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

interface Line {
  readonly text: string;
  readonly kind: 'says' | 'on' | 'off' | 'waits';
}

/**
 * The chart as an SVG that scales to its box: a path runs down from stop to stop; at each stand what switches on (filled
 * square), what switches off (empty square) and what is waited for (hourglass); time-outs stand at the right, where the path
 * leaves when nothing comes. Colours come from the page: currentColor and the classes chart-*.
 */
export function chartSvg(chart: Chart): string {
  const parts: string[] = [];
  const text = (x: number, y: number, words: string, kind: string, end = false): void => {
    parts.push(
      `<text x="${x}" y="${y}" class="chart-${kind}"${end ? ' text-anchor="end"' : ''}>${escaped(words)}</text>`,
    );
  };
  const first = [chart.first, chart.meanwhile].filter(Boolean).flatMap((each) => wrap(each, 76));
  let y = PAD + LINE;
  for (const line of first) {
    text(LEFT, y, line, 'note');
    y += LINE;
  }
  const top = y - LINE * first.length - 4;
  parts.push(`<circle cx="36" cy="${top}" r="7" class="chart-start"/>`);
  const stops: number[] = [];
  for (const row of chart.rows) {
    y += 14;
    const lines: Line[] = [
      ...wrap(row.says, 52).map((each): Line => ({ text: each, kind: 'says' })),
      ...row.on.map((each): Line => ({ text: each, kind: 'on' })),
      ...row.off.map((each): Line => ({ text: each, kind: 'off' })),
      ...wrap(row.waits, 54).map((each): Line => ({ text: each, kind: 'waits' })),
    ];
    const height = lines.length * LINE + 12;
    const middle = y + 16;
    stops.push(middle);
    parts.push(
      `<rect x="${LEFT}" y="${y}" width="${RIGHT - LEFT - 20}" height="${height}" rx="3" class="chart-step${row.open ? ' chart-open' : ''}"/>`,
    );
    parts.push(
      `<circle cx="36" cy="${middle}" r="13" class="chart-stop"/><text x="36" y="${middle + 5}" text-anchor="middle" class="chart-number">${row.n}</text>`,
    );
    let at = y + 20;
    let hourglass = true;
    for (const { text: words, kind } of lines) {
      if (kind === 'on' || kind === 'off')
        parts.push(`<rect x="${LEFT + 12}" y="${at - 10}" width="10" height="10" class="chart-${kind}"/>`);
      if (kind === 'waits' && hourglass) {
        parts.push(`<path d="M${LEFT + 12} ${at - 11}h10l-10 12h10z" class="chart-wait"/>`);
        hourglass = false;
      }
      text(
        kind === 'says' ? LEFT + 12 : LEFT + 30,
        at,
        kind === 'on' ? `on: ${words}` : kind === 'off' ? `off: ${words}` : words,
        kind,
      );
      at += LINE;
    }
    const side = y + height - 16;
    parts.push(
      `<path d="M${RIGHT - 20} ${side - 5}h16" class="chart-leave${row.open ? ' chart-open' : ''}"/>`,
    );
    text(RIGHT + 2, side, row.most, row.open ? 'missing' : 'time');
    if (row.late)
      for (const [n, each] of wrap(row.late, 18).entries())
        text(RIGHT + 2, side - LINE * (2 - n) + (row.late.length > 18 ? 0 : LINE), each, 'note');
    y += height;
  }
  y += 30;
  const end = wrap(chart.end, 76);
  parts.push(
    `<circle cx="36" cy="${y - 5}" r="7" class="chart-end"/><circle cx="36" cy="${y - 5}" r="3" class="chart-start"/>`,
  );
  for (const line of end) {
    text(LEFT, y, line, 'note');
    y += LINE;
  }
  const spine = `<path d="M36 ${top + 7}V${y - LINE * end.length - 12}" class="chart-spine"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${y + PAD - LINE}" role="img" aria-label="${escaped(`Steps: ${chart.title}`)}">${spine}${parts.join('')}</svg>`;
}
