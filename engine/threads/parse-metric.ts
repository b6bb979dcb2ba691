/** Metric and trapezoidal threads, and threads described by diameter and pitch. */
import type { Result } from '../quantity/index.ts';
import { METRIC_SIZES, type MetricSize } from '../tables/thread-metric.ts';
import { TRAPEZOIDAL_SIZES } from '../tables/thread-trapezoidal.ts';
import type { Common } from './parse.ts';
import { DEGREE, MM, NUMBER, number, orList, plainNumber, problem } from './text.ts';
import type { Family, Thread } from './types.ts';

/** Sizes between which the formulas of the standards hold, mm. */
const SMALLEST = 1;
const LARGEST = 355;
const COARSEST = 8;

const CLASS = String.raw`(?:[ -]*((?:[3-9][a-h]){1,2}(?:\/(?:[3-9][a-h]){1,2})?))?`;
const M = new RegExp(
  `^m ?(${NUMBER})(?: ?(?:mm)? ?[x-] ?(?:ph ?(${NUMBER}) ?p ?)?(${NUMBER})(?! ?[a-h]\\b)(?: ?mm)?)?${CLASS}$`,
  'i',
);
const TR = new RegExp(
  `^tr ?(${NUMBER})(?: ?x ?(${NUMBER})(?: ?mm)?(?: ?\\(? ?p ?(${NUMBER}) ?\\)?)?)?${CLASS}$`,
  'i',
);

interface Made {
  readonly family: Family;
  readonly d: number;
  readonly P: number;
  readonly angle: number;
  readonly series?: string;
  readonly className?: string | undefined;
  readonly notes: readonly string[];
  readonly common: Common;
}

/** Starts and lead must agree with the pitch; d and P in mm. */
function make({ family, d, P, angle, series, className, notes, common }: Made): Result<Thread> {
  const fromLead = common.lead === undefined ? undefined : common.lead / (P * MM);
  const starts = common.starts ?? (fromLead === undefined ? 1 : Math.round(fromLead));
  const name = family === 'trapezoidal' ? `Tr ${plainNumber(d)}` : `M${plainNumber(d)}`;
  if (fromLead !== undefined && (starts < 1 || starts > 24 || Math.abs(fromLead - starts) > 1e-6))
    return problem(
      'out-of-domain',
      `The lead must be the pitch times the starts: ${plainNumber(P)} mm, ${plainNumber(2 * P)} mm, ${plainNumber(3 * P)} mm …, not ${plainNumber(common.lead! / MM)} mm${common.starts === undefined ? '' : ` with ${common.starts} starts`}.`,
    );
  const lead = starts * P;
  const designation =
    family === 'trapezoidal'
      ? `${name}x${plainNumber(lead)}${starts > 1 ? ` (P${plainNumber(P)})` : ''}`
      : starts > 1
        ? `${name}xPh${plainNumber(lead)}P${plainNumber(P)}`
        : series === 'coarse'
          ? name
          : `${name}x${plainNumber(P)}`;
  return {
    ok: true,
    value: {
      designation: `${designation}${common.hand === 'left' ? ' LH' : ''}`,
      family,
      ...(series === undefined ? {} : { series }),
      diameter: d * MM,
      pitch: P * MM,
      starts,
      lead: lead * MM,
      hand: common.hand,
      flankAngle: angle * DEGREE,
      taper: 0,
      ...(className === undefined ? {} : { className }),
      notes,
    },
  };
}

const pitchesOf = ({ coarse, fine }: MetricSize): number[] => [
  ...(coarse === undefined ? [] : [coarse]),
  ...fine,
];

function sizeFault(d: number | undefined): ReturnType<typeof problem> | undefined {
  if (d === undefined)
    return problem(
      'not-a-number',
      'The diameter can be read two ways; write it with a point, such as M10x1.25.',
    );
  if (d < SMALLEST || d > LARGEST)
    return problem('out-of-domain', `The diameter must be from ${SMALLEST} to ${LARGEST} mm, such as M10.`);
  return undefined;
}

export function parseMetric(text: string, common: Common): Result<Thread> {
  const found = M.exec(text);
  if (!found)
    return problem(
      'malformed',
      'That is not how a metric thread is written; write M10, M10x1.25 or M10x1.25-6g.',
      ['M10x1.25'],
    );
  const [, dText, phText, pText, className] = found;
  const d = number(dText!);
  const fault = sizeFault(d);
  if (fault || d === undefined) return fault!;
  const size = METRIC_SIZES.find((each) => Math.abs(each.d - d) < 1e-9);
  if (pText === undefined) {
    if (size?.coarse !== undefined)
      return make({
        family: 'metric',
        d,
        P: size.coarse,
        angle: 60,
        series: 'coarse',
        className,
        common,
        notes: [`Without a pitch it is the coarse thread, ${plainNumber(size.coarse)} mm.`],
      });
    const readings = size ? size.fine.map((P) => `M${plainNumber(d)}x${plainNumber(P)}`) : [];
    return problem(
      readings.length > 0 ? 'ambiguous' : 'out-of-domain',
      size
        ? `M${plainNumber(d)} has no coarse pitch; say which: ${orList(readings)}.`
        : `M${plainNumber(d)} is not a size of the standard, so its pitch must be said: M${plainNumber(d)}x1.`,
      readings,
    );
  }
  const P = number(pText);
  const known = size ? pitchesOf(size) : [];
  const would = known.map((each) => `M${plainNumber(d)}x${plainNumber(each)}`);
  if (P === undefined)
    return problem(
      'not-a-number',
      `The pitch “${pText}” can be read two ways; write it with a point, such as M10x1.25.`,
    );
  if (P <= 0)
    return problem(
      'out-of-domain',
      `The pitch must be above zero${would.length > 0 ? `; M${plainNumber(d)} has ${orList(would)}` : ''}.`,
      would,
    );
  if (P > COARSEST || P < 0.2 || 1.5 * P > d) {
    const length =
      P > COARSEST || P > 2 * (size?.coarse ?? d) ? ` If ${plainNumber(P)} is the length, leave it out.` : '';
    return problem(
      'out-of-domain',
      `A pitch of ${plainNumber(P)} mm does not go with M${plainNumber(d)}${would.length > 0 ? `; it has ${orList(would)}` : ''}.${length}`,
      would,
    );
  }
  const inPlan = known.some((each) => Math.abs(each - P) < 1e-9);
  const lead = phText === undefined ? common.lead : (number(phText) ?? Number.NaN) * MM;
  return make({
    family: 'metric',
    d,
    P,
    angle: 60,
    className,
    ...(inPlan ? { series: size?.coarse === P ? 'coarse' : 'fine' } : {}),
    common: lead === undefined ? common : { ...common, lead },
    notes: inPlan
      ? []
      : [
          `This pitch is not in the general plan for that diameter${would.length > 0 ? ` (${orList(would)})` : ''}; taps and gauges for it are special.`,
        ],
  });
}

export function parseTrapezoidal(text: string, common: Common): Result<Thread> {
  const found = TR.exec(text);
  if (!found)
    return problem(
      'malformed',
      'That is not how a trapezoidal thread is written; write Tr 40x7, or Tr 40x14 (P7) for two starts.',
      ['Tr 40x7'],
    );
  const [, dText, xText, pText, className] = found;
  const d = number(dText!);
  const fault = sizeFault(d);
  if (fault || d === undefined) return fault!;
  const size = TRAPEZOIDAL_SIZES.find((each) => Math.abs(each.d - d) < 1e-9);
  if (!size)
    return problem(
      'out-of-domain',
      `Tr ${plainNumber(d)} is not a size of the standard; near it are ${orList(nearest(d).map((each) => `Tr ${each}`))}.`,
    );
  const would = size.pitches.map((P) => `Tr ${plainNumber(d)}x${plainNumber(P)}`);
  if (xText === undefined)
    return size.pitches.length === 1
      ? make({ family: 'trapezoidal', d, P: size.pitches[0]!, angle: 30, className, common, notes: [] })
      : problem('ambiguous', `Tr ${plainNumber(d)} has several pitches; say which: ${orList(would)}.`, would);
  const x = number(xText);
  const P = pText === undefined ? x : number(pText);
  if (x === undefined || P === undefined)
    return problem(
      'not-a-number',
      `A number in “${text}” can be read two ways; write it with a point, such as Tr 40x7.`,
    );
  const series = size.pitches.some((each) => Math.abs(each - P) < 1e-9);
  if (P <= 0 || !series) {
    const twice = size.pitches.find((each) => P > 0 && Math.abs((P / each) % 1) < 1e-9);
    return problem(
      'out-of-domain',
      `A pitch of ${plainNumber(P)} mm does not go with Tr ${plainNumber(d)}; it has ${orList(would)}.${twice === undefined || twice === P ? '' : ` If ${plainNumber(P)} mm is the lead, write Tr ${plainNumber(d)}x${plainNumber(P)} (P${plainNumber(twice)}).`}`,
      twice === undefined
        ? would
        : [`Tr ${plainNumber(d)}x${plainNumber(P)} (P${plainNumber(twice)})`, ...would],
    );
  }
  const lead = pText === undefined ? common.lead : x * MM;
  return make({
    family: 'trapezoidal',
    d,
    P,
    angle: 30,
    className,
    notes: [],
    common: lead === undefined ? common : { ...common, lead },
  });
}

const nearest = (d: number): string[] =>
  [...TRAPEZOIDAL_SIZES]
    .sort((a, b) => Math.abs(a.d - d) - Math.abs(b.d - d))
    .slice(0, 2)
    .map((each) => plainNumber(each.d));

/** '3-start pitch 2 mm ø20': no profile is named, so it is taken as metric, and says so. */
export function parseBare(text: string, common: Common): Result<Thread> {
  const pitch = new RegExp(`\\b(?:pitch|p)(?: of| =|=|:)? ?(${NUMBER}) ?(mm|in|")?`, 'i').exec(text);
  const size = new RegExp(`(?:ø|\\bdia(?:meter)?\\.?) ?(${NUMBER}) ?(mm|in|")?`, 'i').exec(text);
  const scale = (unit: string | undefined): number =>
    unit === undefined || unit.toLowerCase() === 'mm' ? 1 : 25.4;
  if (!size)
    return problem(
      'malformed',
      'The diameter is missing; write it such as 3-start pitch 2 mm ø20, or M20xPh6P2.',
      ['M20xPh6P2'],
    );
  const dRaw = number(size[1]!);
  const d = dRaw === undefined ? undefined : dRaw * scale(size[2]);
  const fault = sizeFault(d);
  if (fault || d === undefined) return fault!;
  let P: number | undefined;
  if (pitch) P = (number(pitch[1]!) ?? Number.NaN) * scale(pitch[2]);
  else if (common.lead !== undefined && common.starts !== undefined) P = common.lead / MM / common.starts;
  else if (common.lead !== undefined)
    return problem(
      'ambiguous',
      'A lead alone does not say how many starts there are. Write the starts, or the pitch.',
      [
        `1-start pitch ${plainNumber(common.lead / MM)} mm ø${plainNumber(d)}`,
        `2-start pitch ${plainNumber(common.lead / MM / 2)} mm ø${plainNumber(d)}`,
      ],
    );
  if (P === undefined)
    return problem('malformed', `The pitch is missing; write it such as pitch 2 mm ø${plainNumber(d)}.`);
  if (!(P >= 0.2 && P <= 24 && 1.5 * P <= d))
    return problem(
      'out-of-domain',
      `That pitch does not go with a diameter of ${plainNumber(d)} mm: it must be from 0.2 mm to two thirds of the diameter.`,
    );
  const left = text
    .replace(pitch?.[0] ?? '', '')
    .replace(size[0], '')
    .replace(/[ ,;]|thread|metric/gi, '');
  if (left !== '')
    return problem('malformed', `“${left}” was not understood; write it such as 3-start pitch 2 mm ø20.`);
  return make({
    family: 'metric',
    d,
    P,
    angle: 60,
    common,
    notes: [
      'No profile was named, so it is read as a metric 60° thread. For a lead screw write Tr before it.',
    ],
  });
}
