/** What kind of feedback device this is, from leads and ohms. */
import { summarise } from '../../metrology/index.ts';
import { formatQuantity } from '../../quantity/index.ts';
import { UNPLUG } from '../common.ts';
import { box, circle, draw, line, wire, words } from '../drawing.ts';
import { choiceOf, doubtful, good, note } from '../outcome.ts';
import { asSentence, decidingSign, type Kinds, rankKinds, withArticle } from '../rank.ts';
import { meter } from '../symbols.ts';
import { method, type Reading, Senseless, type Verdict } from '../types.ts';

type Kind = 'encoder' | 'resolver' | 'tacho' | 'synchro' | 'scale';
const of = (
  encoder: number,
  resolver: number,
  tacho: number,
  synchro: number,
  scale: number,
): Record<Kind, number> => ({ encoder, resolver, tacho, synchro, scale });

const KINDS: Kinds<Kind> = {
  names: {
    encoder: 'incremental encoder',
    resolver: 'resolver',
    tacho: 'tachogenerator',
    synchro: 'synchro (three windings in a star)',
    scale: 'linear scale',
  },
  common: of(0.45, 0.22, 0.22, 0.03, 0.08),
  signs: {
    leads: {
      '2': of(0.002, 0.005, 0.93, 0.005, 0.01),
      '4': of(0.1, 0.1, 0.05, 0.01, 0.15),
      '5': of(0.2, 0.01, 0.003, 0.6, 0.15),
      '6': of(0.12, 0.8, 0.005, 0.2, 0.12),
      '8': of(0.28, 0.06, 0.003, 0.02, 0.25),
      more: of(0.3, 0.02, 0.003, 0.02, 0.32),
    },
    ohms: {
      'three-pairs': of(0.01, 0.93, 0.01, 0.05, 0.01),
      'one-pair': of(0.02, 0.02, 0.95, 0.02, 0.02),
      star: of(0.01, 0.02, 0.005, 0.9, 0.01),
      unsteady: of(0.96, 0.03, 0.035, 0.03, 0.96),
    },
    marks: {
      supply: of(0.92, 0.02, 0.01, 0.02, 0.9),
      excitation: of(0.01, 0.9, 0.02, 0.9, 0.01),
      volts: of(0.01, 0.02, 0.95, 0.02, 0.01),
      none: of(0.06, 0.06, 0.02, 0.06, 0.08),
    },
    turning: {
      volts: of(0.01, 0.03, 0.95, 0.03, 0.01),
      nothing: of(0.98, 0.96, 0.05, 0.96, 0.98),
    },
    moves: { round: of(0.99, 0.99, 0.99, 0.99, 0.01), straight: of(0.01, 0.01, 0.01, 0.01, 0.99) },
  },
};

const ASK: Readonly<Record<string, string>> = {
  leads: 'count its leads, screen left out',
  ohms: 'read ohms between every two leads, and list each pair that belongs together',
  marks: 'look on plate and plug for “+5 V, A, B, Z”, for “R1 R2 S1 S3 S2 S4”, or for “V/1000”',
  turning: 'turn its shaft by hand, meter on d.c. volts between two leads: does it give volts?',
  moves: 'look what it measures: a shaft, or a length along the slide',
};

/** Two windings are alike within this: bench policy, no source. */
const ALIKE = 0.05;
const SURE = 0.9;
const TYPES: Partial<Record<Kind, string>> = {
  encoder: 'encoder',
  resolver: 'resolver',
  tacho: 'tacho',
  scale: 'scale',
};

export const whichFeedback = method({
  id: 'which-feedback',
  title: 'What kind of feedback is this?',
  purpose:
    'Tells whether the sensor on an old motor can speak to a new control, and what it needs, before it is wired and burnt.',
  hazards: [
    UNPLUG,
    'An ohm meter harms nothing; an insulation tester or a guessed supply does. Put no voltage on it before you know what it is.',
  ],
  tools: ['ohm meter', 'magnifying glass for the marks'],
  steps: [
    `Leads: ${ASK.leads}.`,
    `Ohms: ${ASK.ohms}. Write each pair’s ohms in a row.`,
    `Marks: ${ASK.marks}.`,
    `Turning: ${ASK.turning}`,
    'A resolver has three pairs of some tens of ohms: two alike are sine and cosine, the odd one takes the excitation.',
  ],
  drawing: draw(
    'A feedback device at a motor’s tail with its leads fanned out and an ohm meter on a pair.',
    box(30, 60, 70, 80),
    circle(65, 100, 22),
    line([65, 100], [80, 88]),
    ...[76, 86, 96, 106, 116, 126].map((y) => wire([100, y], [150, y - 14])),
    words(158, 84, '6 leads', 'start'),
    meter(230, 60, '38 Ω'),
    wire([240, 122], [240, 150], [170, 150], [150, 102]),
    wire([266, 122], [266, 164], [160, 164], [150, 112]),
    words(65, 160, 'tail of the motor'),
  ),
  given: [
    {
      key: 'leads',
      kind: 'choice',
      name: 'leads',
      optional: true,
      options: { '2': 'two', '4': 'four', '5': 'five', '6': 'six', '8': 'eight', more: 'more than eight' },
      help: asSentence(ASK.leads!),
    },
    {
      key: 'marks',
      kind: 'choice',
      name: 'marks',
      optional: true,
      options: {
        supply: '+5 V, A, B, Z or the like',
        excitation: 'R1 R2 S1 S3 S2 S4, or sin, cos, ref',
        volts: 'volts for 1000 turns',
        none: 'none',
      },
      help: asSentence(ASK.marks!),
    },
    {
      key: 'turning',
      kind: 'choice',
      name: 'turned by hand',
      optional: true,
      options: { volts: 'it gives d.c. volts', nothing: 'it gives nothing' },
      help: asSentence(ASK.turning!),
    },
    {
      key: 'moves',
      kind: 'choice',
      name: 'what it follows',
      optional: true,
      options: { round: 'a shaft', straight: 'a length' },
      help: asSentence(ASK.moves!),
    },
    {
      key: 'steady',
      kind: 'choice',
      name: 'are the ohms steady',
      optional: true,
      options: {
        yes: 'the same with the probes swapped',
        no: 'unsteady, or another reading with the probes swapped',
      },
      help: 'Electronics inside give unsteady readings.',
    },
  ],
  columns: [
    {
      key: 'ohms',
      kind: 'quantity',
      name: 'ohms of a pair',
      unit: 'Ω',
      domain: 'positive',
      help: 'Each pair of leads that belongs together once.',
    },
  ],
  least: 0,
  settles: [{ place: 'feedback', fact: 'type' }],
  sheets: [],
  run: (read) => {
    const seen: Record<string, string> = {};
    for (const sign of ['leads', 'marks', 'turning', 'moves'] as const) {
      const option = read.choice(sign);
      if (option !== undefined) seen[sign] = option;
    }
    const pairs = read.column('ohms');
    const pattern = read.choice('steady') === 'no' ? 'unsteady' : patternOf(pairs);
    if (pattern) seen.ohms = pattern;
    if (Object.keys(seen).length === 0)
      throw new Senseless(
        'leads',
        'Nothing was looked at yet: give at least one of leads, marks, turning, moves, or the ohms of its pairs.',
      );
    const ranked = rankKinds(KINDS, seen);
    const first = ranked[0]!;
    const sure = first.likely >= SURE;
    const deciding = decidingSign(KINDS, ranked, seen);
    const type = TYPES[first.kind];
    const verdicts: Verdict[] = [
      sure
        ? good(`It is most likely ${withArticle(first.name)}.`)
        : doubtful(
            `It could be ${withArticle(first.name)} or ${withArticle(ranked[1]!.name)}.${deciding ? ` What would decide: ${asSentence(ASK[deciding]!)}` : ''}`,
          ),
    ];
    if (first.kind === 'resolver' && pairs.length === 3) verdicts.push(...judgeWindings(pairs));
    if (first.kind === 'encoder' && sure)
      verdicts.push(
        note(
          'Before it gets its 5 V: find the supply leads by their marks, and limit the current to 200 mA. Reversed, it is gone.',
        ),
      );
    verdicts.push(
      note('The shares are a judgement of how often each kind shows each sign, not a measurement.'),
    );
    return {
      results:
        sure && type !== undefined
          ? [
              choiceOf(
                { key: 'type', name: 'kind of feedback', fact: { place: 'feedback', fact: 'type' } },
                type,
                first.name,
              ),
            ]
          : [],
      verdicts,
      candidates: ranked.map(({ name, likely, why }) => ({ name, likely, why })),
    };
  },
});

const near = (a: number, b: number): boolean => Math.abs(a - b) <= ALIKE * Math.max(a, b);

function patternOf(pairs: readonly Reading[]): string | undefined {
  const ohms = pairs.map(({ value }) => value);
  if (ohms.length === 0) return undefined;
  if (ohms.length === 1) return 'one-pair';
  if (ohms.length !== 3) return undefined;
  // Three readings all alike are the three pairs of a star.
  return ohms.every((each) => near(each, summarise(ohms).mean)) ? 'star' : 'three-pairs';
}

/** Sine and cosine of a resolver have to be alike. */
function judgeWindings(pairs: readonly Reading[]): Verdict[] {
  const [a, b, c] = pairs as [Reading, Reading, Reading];
  const choices = [
    [a, b, c],
    [a, c, b],
    [b, c, a],
  ] as const;
  const [one, two, odd] = [...choices].sort(
    (x, y) => Math.abs(x[0].value - x[1].value) - Math.abs(y[0].value - y[1].value),
  )[0]!;
  const said = (each: Reading): string => `row ${each.row} (${formatQuantity(each.value, 'Ω')})`;
  return near(one.value, two.value)
    ? [good(`Sine and cosine are ${said(one)} and ${said(two)}, alike; the excitation is ${said(odd)}.`)]
    : [
        doubtful(
          `No two pairs are alike within 5 %, though sine and cosine should be: ${said(one)} and ${said(two)} come nearest. A damaged winding, or pairs wrongly joined.`,
        ),
      ];
}
