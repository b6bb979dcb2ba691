/** Pipe threads: G, R, Rc, Rp and NPT. */
import type { Result } from '../quantity/index.ts';
import { NPT_SIZES } from '../tables/thread-npt.ts';
import { PIPE_SIZES } from '../tables/thread-pipe.ts';
import type { Common } from './parse.ts';
import { DEGREE, INCH, inches, MM, NUMBER, number, orList, plainNumber, problem, SIZE } from './text.ts';
import type { Side, Thread } from './types.ts';

const oneStart = (common: Common): ReturnType<typeof problem> | undefined =>
  (common.starts ?? 1) > 1 || common.lead !== undefined
    ? problem(
        'out-of-domain',
        'Pipe threads have one start; for several starts write a metric or trapezoidal thread.',
      )
    : undefined;

/** 'G 1/2', 'G1/2A', '1/2 BSPP', 'R 1/2', 'Rc 3/4', 'Rp 1'. */
export function parsePipe(text: string, common: Common): Result<Thread> {
  const fault = oneStart(common);
  if (fault) return fault;
  const classed = /(?<=\d)[ -]?([ab])$/i.exec(text);
  const rest0 = classed ? text.slice(0, classed.index) : text;
  const kindText = /^(rc|rp|r1|r2|r|g)(?= ?[\d.])|bspp|bspt|bsp\b/i.exec(rest0);
  const word = kindText?.[0].toLowerCase();
  const sizeText = rest0
    .replace(kindText?.[0] ?? '', ' ')
    .replace(/\b(?:parallel|tapered|taper|thread)\b/gi, ' ')
    .replace(new RegExp(`(?: ?"| ?in\\b)?(?: ?[x-] ?(${NUMBER})(?: ?tpi)?)?$`, 'i'), '')
    .replace(/^[ -]+|[ "-]+$/g, '');
  const tpiText = new RegExp(`[x-] ?(${NUMBER})(?: ?tpi)?$`, 'i').exec(rest0.trim())?.[1];
  const value = new RegExp(`^${SIZE}$`, 'i').test(sizeText)
    ? inches(sizeText.replace(/^(\d+)-/, '$1 '))
    : undefined;
  const size = PIPE_SIZES.find((each) => value !== undefined && Math.abs(inches(each.size)! - value) < 1e-6);
  if (!size)
    return problem(
      'out-of-domain',
      `“${sizeText}” is not a size of pipe thread. Sizes are ${orList(['1/8', '1/4', '3/8', '1/2', '3/4', '1', '1 1/4'])}, such as G 1/2.`,
    );
  if (tpiText !== undefined && number(tpiText) !== size.tpi && inches(sizeText) !== number(tpiText))
    return problem(
      'out-of-domain',
      `G and R ${size.size} have ${size.tpi} threads per inch, not ${tpiText}.`,
      [`G ${size.size}`],
    );
  const says = /taper/i.test(rest0) ? 'taper' : /parallel/i.test(rest0) ? 'parallel' : undefined;
  if (word === 'bsp' && says === undefined)
    return problem(
      'ambiguous',
      `BSP can be parallel or taper: G ${size.size} seals on a washer, R ${size.size} on the thread. Say which.`,
      [`G ${size.size}`, `R ${size.size}`, `Rc ${size.size}`],
    );
  const taper =
    word === 'r' ||
    word === 'r1' ||
    word === 'r2' ||
    word === 'rc' ||
    word === 'bspt' ||
    (word === 'bsp' && says === 'taper');
  const needsTaper = taper || word === 'rp';
  if (needsTaper && !size.taper)
    return problem(
      'out-of-domain',
      `There is no taper thread of size ${size.size}; there is G ${size.size}.`,
      [`G ${size.size}`],
    );
  if (classed && needsTaper)
    return problem('malformed', 'Classes A and B belong to G threads; R threads have none.', [
      `R ${size.size}`,
    ]);
  const side: Side | undefined =
    word === 'rc' || word === 'rp' ? 'internal' : word?.startsWith('r') ? 'external' : undefined;
  const symbol = taper ? (word === 'rc' ? 'Rc' : 'R') : word === 'rp' ? 'Rp' : 'G';
  return {
    ok: true,
    value: {
      designation: `${symbol} ${size.size}${classed ? ` ${classed[1]!.toUpperCase()}` : ''}${common.hand === 'left' ? ' LH' : ''}`,
      family: taper ? 'pipe-taper' : 'pipe-parallel',
      series: symbol,
      size: size.size,
      diameter: size.d * MM,
      pitch: INCH / size.tpi,
      starts: 1,
      lead: INCH / size.tpi,
      hand: common.hand,
      flankAngle: 55 * DEGREE,
      taper: taper ? 1 / 16 : 0,
      threadsPerInch: size.tpi,
      ...(side ? { side } : {}),
      ...(classed ? { className: classed[1]!.toUpperCase() } : {}),
      notes: [
        `${size.size} is the name of a pipe, not a diameter: the thread is ${plainNumber(size.d)} mm across.`,
      ],
    },
  };
}

/** '1/2-14 NPT', 'NPT 1/2'. */
export function parseNpt(text: string, common: Common): Result<Thread> {
  const fault = oneStart(common);
  if (fault) return fault;
  if (/nptf|nps/i.test(text))
    return problem(
      'unknown-name',
      'Of the American pipe threads the book has NPT, such as 1/2-14 NPT; NPTF and NPS have tolerances of their own.',
      ['1/2-14 NPT'],
    );
  const rest = text.replace(/npt/i, ' ').replace(/^[ ,-]+|[ ,-]+$/g, '');
  const found = new RegExp(`^(${SIZE})(?: ?(?:"|in))?(?:(?: ?[x-] ?| )(${NUMBER})(?: ?tpi)?)?$`, 'i').exec(
    rest,
  );
  const value = found ? inches(found[1]!.replace(/^(\d+)-(?=\d+\/)/, '$1 ')) : undefined;
  const size = NPT_SIZES.find((each) => value !== undefined && Math.abs(inches(each.size)! - value) < 1e-6);
  if (!size)
    return problem(
      'out-of-domain',
      `That is not a size of NPT. Sizes are ${orList(['1/8', '1/4', '3/8', '1/2', '3/4', '1'])} and larger, such as 1/2-14 NPT.`,
      ['1/2-14 NPT'],
    );
  const tpi = found![2] === undefined ? size.tpi : number(found![2]);
  if (tpi !== size.tpi)
    return problem(
      'out-of-domain',
      `NPT ${size.size} has ${plainNumber(size.tpi)} threads per inch, not ${found![2]}.`,
      [`${size.size}-${plainNumber(size.tpi)} NPT`],
    );
  return {
    ok: true,
    value: {
      designation: `${size.size}-${plainNumber(size.tpi)} NPT${common.hand === 'left' ? ' LH' : ''}`,
      family: 'npt',
      series: 'NPT',
      size: size.size,
      diameter: size.D * INCH,
      pitch: INCH / size.tpi,
      starts: 1,
      lead: INCH / size.tpi,
      hand: common.hand,
      flankAngle: 60 * DEGREE,
      taper: 1 / 16,
      threadsPerInch: size.tpi,
      notes: [
        `${size.size} is the name of a pipe, not a diameter: the pipe is ${plainNumber(size.D)} in across. NPT does not fit R or G.`,
      ],
    },
  };
}
