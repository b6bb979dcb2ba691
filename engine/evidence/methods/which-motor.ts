/** What kind of motor this is, from leads, ohms, cogging and what it gives when spun. */
import { SPIN, UNPLUG } from '../common.ts';
import { circle, draw, turning, wire, words } from '../drawing.ts';
import { choiceOf, doubtful, good, note } from '../outcome.ts';
import { asSentence, decidingSign, type Kinds, rankKinds, withArticle } from '../rank.ts';
import { meter, motorEnd } from '../symbols.ts';
import { method, Senseless } from '../types.ts';

type Kind = 'brushed' | 'field' | 'brushless' | 'stepper' | 'induction';

const of = (
  brushed: number,
  field: number,
  brushless: number,
  stepper: number,
  induction: number,
): Record<Kind, number> => ({ brushed, field, brushless, stepper, induction });

const KINDS: Kinds<Kind> = {
  names: {
    brushed: 'd.c. motor with brushes and magnets',
    field: 'd.c. motor with brushes and a field winding',
    brushless: 'brushless servo motor (magnets on the rotor)',
    stepper: 'stepping motor',
    induction: 'induction motor (three-phase)',
  },
  common: of(0.35, 0.05, 0.25, 0.2, 0.15),
  signs: {
    leads: {
      '2': of(0.9, 0.02, 0.001, 0.001, 0.001),
      '3': of(0.02, 0.02, 0.75, 0.02, 0.3),
      '4': of(0.06, 0.8, 0.2, 0.35, 0.15),
      '5': of(0.005, 0.08, 0.01, 0.1, 0.02),
      '6': of(0.005, 0.06, 0.02, 0.3, 0.4),
      '8': of(0.001, 0.01, 0.01, 0.22, 0.02),
      '9': of(0.001, 0.01, 0.01, 0.001, 0.1),
    },
    brushes: { yes: of(0.97, 0.97, 0.005, 0.005, 0.005), no: of(0.03, 0.03, 0.995, 0.995, 0.995) },
    ohms: {
      jumps: of(0.8, 0.4, 0.01, 0.01, 0.01),
      three: of(0.005, 0.02, 0.9, 0.05, 0.7),
      pairs: of(0.01, 0.05, 0.02, 0.9, 0.25),
      unlike: of(0.02, 0.5, 0.01, 0.02, 0.03),
      one: of(0.5, 0.1, 0.01, 0.01, 0.01),
    },
    cogging: {
      many: of(0.02, 0.01, 0.03, 0.9, 0.005),
      few: of(0.35, 0.02, 0.7, 0.08, 0.005),
      smooth: of(0.63, 0.97, 0.27, 0.02, 0.99),
    },
    spun: {
      dc: of(0.95, 0.1, 0.005, 0.005, 0.005),
      ac: of(0.01, 0.02, 0.98, 0.95, 0.02),
      nothing: of(0.04, 0.88, 0.015, 0.045, 0.975),
    },
    shorted: {
      harder: of(0.95, 0.1, 0.95, 0.95, 0.02),
      same: of(0.05, 0.9, 0.05, 0.05, 0.98),
    },
  },
};

const ASK: Readonly<Record<string, string>> = {
  leads: 'count the thick power leads, the earth lead and thin ones left out',
  brushes: 'look for two or four screw caps on its sides with springs behind them',
  ohms: 'read ohms between every two power leads, and again after turning the shaft a little',
  cogging: 'turn the shaft slowly by hand, all leads open, and feel',
  spun: 'spin the shaft and read volts between two leads, first for direct, then for alternating volts',
  shorted: 'twist two or three power leads together and turn the shaft again: is it much harder?',
};

/** Options of motor.type in a refit. */
const TYPES: Partial<Record<Kind, string>> = {
  brushed: 'brushed',
  brushless: 'brushless',
  stepper: 'stepper',
};
const SURE = 0.9;

export const whichMotor = method({
  id: 'which-motor',
  title: 'What kind of motor is this?',
  purpose: 'Tells which kind of drive the motor needs, before one is bought that cannot turn it.',
  hazards: [UNPLUG, SPIN],
  tools: ['ohm meter', 'your hands', 'a drill to spin it, if at hand'],
  steps: [
    `Power leads: ${ASK.leads}.`,
    `Brushes: ${ASK.brushes}.`,
    `Ohms: ${ASK.ohms}.`,
    `Cogging: ${ASK.cogging}.`,
    `Spun: ${ASK.spun}.`,
    `Shorted: ${ASK.shorted}`,
    'Leave out what you cannot do; the answer says what would decide.',
  ],
  drawing: draw(
    'A motor seen on its shaft, an ohm meter on two of its leads, a hand turning the shaft.',
    motorEnd(110, 100, 50),
    turning(110, 100, 66, -120, -50),
    words(110, 26, 'by hand: how does it feel?'),
    wire([150, 128], [190, 140]),
    wire([148, 134], [188, 152]),
    wire([144, 140], [184, 164]),
    words(196, 178, 'how many?', 'start'),
    meter(250, 60, '1.3 Ω'),
    wire([260, 122], [260, 140], [190, 140]),
    wire([286, 122], [286, 152], [188, 152]),
    circle(56, 100, 7),
    circle(164, 100, 7),
    words(56, 168, 'brush caps?'),
  ),
  given: [
    {
      key: 'leads',
      kind: 'choice',
      name: 'power leads',
      optional: true,
      options: {
        '2': 'two',
        '3': 'three',
        '4': 'four',
        '5': 'five',
        '6': 'six',
        '8': 'eight',
        '9': 'nine or twelve',
      },
      help: asSentence(ASK.leads!),
    },
    {
      key: 'brushes',
      kind: 'choice',
      name: 'brush caps',
      optional: true,
      options: { yes: 'it has them', no: 'none' },
      help: asSentence(ASK.brushes!),
    },
    {
      key: 'ohms',
      kind: 'choice',
      name: 'ohms between power leads',
      optional: true,
      options: {
        jumps: 'one reading, and it jumps as the shaft turns',
        one: 'one steady reading',
        three: 'three leads, the same between every two',
        pairs: 'two or more separate windings alike',
        unlike: 'two separate windings very unlike',
      },
      help: asSentence(ASK.ohms!),
    },
    {
      key: 'cogging',
      kind: 'choice',
      name: 'how the shaft feels, leads open',
      optional: true,
      options: {
        many: 'many small even steps (50 or more a turn)',
        few: 'a few soft lumps in a turn',
        smooth: 'smooth',
      },
      help: asSentence(ASK.cogging!),
    },
    {
      key: 'spun',
      kind: 'choice',
      name: 'what it gives when spun',
      optional: true,
      options: { dc: 'd.c. volts', ac: 'a.c. volts', nothing: 'next to nothing' },
      help: asSentence(ASK.spun!),
    },
    {
      key: 'shorted',
      kind: 'choice',
      name: 'with its leads twisted together',
      optional: true,
      options: { harder: 'much harder to turn', same: 'no difference' },
      help: asSentence(ASK.shorted!),
    },
  ],
  columns: [],
  least: 0,
  settles: [{ place: 'motor', fact: 'type' }],
  sheets: [],
  run: (read) => {
    const seen: Record<string, string> = {};
    for (const sign of ['leads', 'brushes', 'ohms', 'cogging', 'spun', 'shorted'] as const) {
      const option = read.choice(sign);
      if (option !== undefined) seen[sign] = option;
    }
    if (Object.keys(seen).length === 0)
      throw new Senseless(
        'leads',
        'Nothing was looked at yet: give at least one of leads, brushes, ohms, cogging, spun, shorted.',
      );
    const ranked = rankKinds(KINDS, seen);
    const first = ranked[0]!;
    const sure = first.likely >= SURE;
    const type = TYPES[first.kind];
    const deciding = decidingSign(KINDS, ranked, seen);
    const next = deciding === undefined ? '' : ` What would decide: ${asSentence(ASK[deciding]!)}`;
    return {
      results:
        sure && type !== undefined
          ? [
              choiceOf(
                { key: 'type', name: 'kind of motor', fact: { place: 'motor', fact: 'type' } },
                type,
                first.name,
              ),
            ]
          : [],
      verdicts: [
        sure
          ? good(`It is most likely ${withArticle(first.name)}.`)
          : doubtful(`It could be ${withArticle(first.name)} or ${withArticle(ranked[1]!.name)}.${next}`),
        ...(sure && type === undefined
          ? [note('This kind cannot be recorded as an axis motor yet: a drive for it is chosen otherwise.')]
          : []),
        note('The shares are a judgement of how often each kind shows each sign, not a measurement.'),
      ],
      candidates: ranked.map(({ name, likely, why }) => ({ name, likely, why })),
    };
  },
});
