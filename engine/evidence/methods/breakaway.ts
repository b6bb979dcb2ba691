/** Torque or force that starts or keeps moving: by weight on a string or by spring scale. */
import { benchPull } from '../../handbook/bench-pull.ts';
import { benchWeight } from '../../handbook/bench-weight.ts';
import { accuracy, PROP } from '../common.ts';
import { circle, draw, line, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { groupBy } from '../group.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { ground, springScale, weight } from '../symbols.ts';
import {
  type Estimate,
  type FactPath,
  method,
  type QuantityResult,
  type Question,
  Senseless,
  type Verdict,
} from '../types.ts';

const WHAT = {
  motor: 'motor shaft',
  screw: 'screw, its motor uncoupled',
  slide: 'slide, its screw uncoupled',
} as const;

export const breakaway = method({
  id: 'breakaway',
  title: 'Friction by weight or spring scale',
  purpose:
    'Tells what a motor, screw or slide resists before it moves or while it crawls, so that the motor is not chosen by hope.',
  hazards: [
    PROP,
    'A weight that falls finds a foot: hang it low over a box of sand.',
    'Drives unplugged; nothing may start by itself while hands are at the shaft.',
  ],
  tools: [
    'spring scale; or weights, string and a drum or pulley of known radius',
    'kitchen scales for the weights',
  ],
  steps: [
    'Motor or screw: wind a string round the pulley, two turns side by side, not one over the other. Slide: hook the scale to the slide, in line with its ways.',
    'Breakaway: pull more and more, or add weight, until it just starts. Steady crawl: pull so that it just keeps moving slowly.',
    'Read the pull, or weigh what hangs there.',
    'Repeat the other way and at several places of the turn or travel, five rows a way.',
  ],
  drawing: draw(
    'A string round a pulley: a weight hangs from it over an edge, or a spring scale pulls it.',
    ground(20, 172, 130),
    circle(84, 92, 34),
    circle(84, 92, 5),
    line([84, 92], [112, 73]),
    words(98, 88, 'r'),
    line([50, 92], [50, 126]),
    weight(50, 132),
    springScale([118, 92], [118, 188]),
    words(140, 150, 'or scale', 'start'),
    [
      {
        kind: 'line',
        style: 'closed',
        points: [
          [210, 60],
          [290, 60],
          [290, 86],
          [210, 86],
        ],
      },
      words(250, 77, 'slide'),
    ],
    springScale([210, 73], [150, 73]),
    line([200, 88], [310, 88]),
  ),
  given: [
    {
      key: 'what',
      kind: 'choice',
      name: 'what was moved',
      options: WHAT,
      help: 'Alone, uncoupled from the rest.',
    },
    {
      key: 'moment',
      kind: 'choice',
      name: 'when it was read',
      options: { start: 'as it just started', crawl: 'while it crawled steadily' },
      help: 'Starting takes more than keeping on.',
    },
    {
      key: 'radius',
      kind: 'quantity',
      name: 'radius',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'Of drum or pulley plus half the string; motor and screw need it.',
    },
    {
      key: 'mass',
      kind: 'quantity',
      name: 'mass of the slide',
      unit: 'kg',
      domain: 'positive',
      optional: true,
      help: 'Level slides: gives the friction coefficient.',
    },
    accuracy('scale', 'accuracy of the spring scale', 'N', ['pull']),
    accuracy('scales', 'accuracy of the weights', 'kg', ['weight']),
  ],
  columns: [
    {
      key: 'pull',
      kind: 'quantity',
      name: 'pull on the scale',
      unit: 'N',
      domain: 'any',
      optional: true,
      help: 'In newton or kgf; negative when it has to be held back. Else give a weight.',
    },
    {
      key: 'weight',
      kind: 'quantity',
      name: 'weight hung',
      unit: 'kg',
      domain: 'positive',
      optional: true,
      help: 'With its hook and string.',
    },
    {
      key: 'way',
      kind: 'choice',
      name: 'which way',
      optional: true,
      options: { one: 'one way, or upwards', other: 'the other way, or downwards' },
      help: 'Both ways part friction from weight or imbalance.',
    },
  ],
  least: 2,
  settles: [
    { place: 'motor', fact: 'friction' },
    { place: 'screw', fact: 'dragTorque' },
    { place: 'slide', fact: 'friction' },
  ],
  sheets: [benchPull.id, benchWeight.id],
  run: (read) => {
    const what = read.choice('what') as keyof typeof WHAT;
    const crawls = read.choice('moment') === 'crawl';
    const rows = read.rows.map((row) => ({
      row,
      way: read.picked('way', row) ?? 'one',
      load: loadOf(read, row, what),
    }));
    const ways = groupBy(rows, ({ way }) => way);
    const means = new Map(
      [...ways].map(([way, each]) => [
        way,
        meanOf(
          each.map(({ load }) => load),
          `scatter ${way === 'one' ? 'one way' : 'the other way'}`,
        ),
      ]),
    );
    const [one, other] = [means.get('one'), means.get('other')];
    const verdicts: Verdict[] = [];
    let friction = one ?? other!;
    const results: QuantityResult[] = [];
    const unit = what === 'slide' ? 'N' : 'N·m';
    if (one && other) {
      const [half, bias] =
        what === 'slide'
          ? [
              read.through(benchPull, 'F_friction', { F_up: one, F_down: other }),
              read.through(benchPull, 'F_weight', { F_up: one, F_down: other }),
            ]
          : [
              read.through(benchWeight, 'T_friction', { T_one: one, T_other: other }),
              read.through(benchWeight, 'T_bias', { T_one: one, T_other: other }),
            ];
      friction = half;
      results.push(
        resultOf(
          {
            key: 'bias',
            name: what === 'slide' ? 'weight, or what helps one way' : 'torque that helps one way',
            unit,
          },
          bias,
        ),
      );
      const helps = results[0]!;
      verdicts.push(
        Math.abs(helps.value) <= helps.expanded
          ? good('Both ways resist alike.')
          : note(
              what === 'slide'
                ? 'One way is easier: the slide is not level, or something helps it.'
                : 'One way is easier: an imbalance, or a thread that resists one way.',
            ),
      );
    } else
      verdicts.push(
        note(
          'Measured one way only: weight or imbalance, which help one way and hinder the other, are counted as friction.',
        ),
      );
    if (friction.value <= 0)
      verdicts.push(doubtful('The friction comes out below zero, which cannot be. Were the ways mixed up?'));
    results.unshift(...frictionResults(read, what, friction, crawls));
    if (!crawls)
      verdicts.push(
        note(
          'This is what it takes to start. Running friction is usually lower; it is recorded as a fact only from a steady crawl.',
        ),
      );
    const values = rows.map(({ load }) => load.value);
    const uneven = one && !other ? (Math.max(...values) - Math.min(...values)) / Math.abs(friction.value) : 0;
    if (uneven > 0.5)
      verdicts.push(
        doubtful(
          `From place to place it changes by ${percent(uneven)}: a bent screw, a tight gib or a bad bearing.`,
        ),
      );
    const questions: Question[] = [...ways.values()].flatMap((each) =>
      oddRows(
        each.map(({ row, load }) => ({ row, value: load.value })),
        what === 'slide' ? 'pull' : 'torque',
      ),
    );
    return { results, verdicts, questions };
  },
});

type Reads = Parameters<typeof breakaway.run>[0];

/** Force on a slide, torque on a shaft. */
function loadOf(read: Reads, row: number, what: keyof typeof WHAT): Estimate {
  const [F, m] = [read.cell('pull', row), read.cell('weight', row)];
  if (Boolean(F) === Boolean(m))
    throw new Senseless(
      `row ${row}`,
      `Row ${row} needs either the pull on the scale or the weight hung, and not both.`,
    );
  if (what === 'slide') {
    if (!F)
      throw new Senseless(
        `row ${row}`,
        `Row ${row}: a slide is pulled with the scale; give the pull instead of a weight.`,
      );
    return F;
  }
  const r = read.maybe('radius');
  if (!r) throw new Senseless('radius', 'A motor or a screw needs the radius at which it is pulled.');
  if (F && F.value < 0)
    throw new Senseless(`row ${row}`, `Row ${row}: the pull that turns a shaft cannot be below zero.`);
  return F ? read.through(benchPull, 'T', { F, r }) : read.through(benchWeight, 'T', { m: m!, r });
}

function frictionResults(
  read: Reads,
  what: keyof typeof WHAT,
  friction: Estimate,
  crawls: boolean,
): QuantityResult[] {
  const settles = (place: string, fact: string): { fact?: FactPath } =>
    crawls && friction.value > 0 ? { fact: { place, fact } } : {};
  if (what !== 'slide') {
    const fact = what === 'motor' ? settles('motor', 'friction') : settles('screw', 'dragTorque');
    return [
      resultOf(
        { key: 'friction', name: crawls ? 'running friction' : 'breakaway torque', unit: 'N·m', ...fact },
        friction,
      ),
    ];
  }
  const force = resultOf(
    {
      key: 'friction',
      name: crawls ? 'running friction of the slide' : 'breakaway force of the slide',
      unit: 'N',
    },
    friction,
  );
  const m = read.maybe('mass');
  if (!m) return [force];
  // F_friction is half the sum of the two ways, so that both at this value give it back.
  const mu = read.through(benchPull, 'mu', { F_up: friction, F_down: friction, m });
  return [
    force,
    resultOf(
      { key: 'coefficient', name: 'friction coefficient', unit: '1', ...settles('slide', 'friction') },
      mu,
    ),
  ];
}
