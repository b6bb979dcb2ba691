import { money } from './money.ts';
import { partKind, type QuantityFact } from './types.ts';

const ORDER = ['first', 'second', 'third', 'fourth'] as const;

const wheel = (range: number, on: 'motor' | 'spindle'): QuantityFact => ({
  kind: 'quantity',
  name: `wheel on the ${on} side in the ${ORDER[range]} range`,
  unit: 'mm',
  of: 'diameter',
  domain: 'positive',
  plausible: ['15 mm', '800 mm'],
  chosen: true,
  trouble: 1,
  findOut:
    'Measure where the belt runs: for a V-belt a little inside the rim. Toothed pulleys: teeth × pitch ÷ 3.14. With an intermediate shaft or gears give the ratio instead.',
});

const ratio = (range: number): QuantityFact => ({
  kind: 'quantity',
  name: `motor turns for one spindle turn in the ${ORDER[range]} range`,
  unit: '1',
  domain: 'positive',
  plausible: ['0.1', '40'],
  chosen: true,
  trouble: 2,
  findOut:
    'Chalk both, turn the spindle ten times by hand and count the turns of the motor. Or work it from the wheels.',
});

export const belts = partKind({
  id: 'belts',
  name: 'belts and gears',
  about:
    'What stands between motor and spindle, in up to four ranges. “Nothing here” is not an answer: a plain coupling is one range of ratio 1.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind',
      trouble: 1,
      options: {
        direct: 'coupling, or motor built round the spindle',
        'v-belt': 'V-belts or a ribbed belt',
        toothed: 'toothed belt',
        gears: 'gears, with or without a belt before them',
      },
      findOut: 'Open the cover and look.',
      caution: 'Lock off first: a finger between belt and wheel is lost.',
    },
    ranges: {
      kind: 'choice',
      name: 'number of ranges',
      trouble: 1,
      options: { one: 'one', two: 'two', three: 'three', four: 'four' },
      findOut: 'Steps of the pulleys times positions of the gear lever. Count those you will use.',
    },
    motorWheel1: wheel(0, 'motor'),
    spindleWheel1: wheel(0, 'spindle'),
    ratio1: ratio(0),
    motorWheel2: wheel(1, 'motor'),
    spindleWheel2: wheel(1, 'spindle'),
    ratio2: ratio(1),
    motorWheel3: wheel(2, 'motor'),
    spindleWheel3: wheel(2, 'spindle'),
    ratio3: ratio(2),
    motorWheel4: wheel(3, 'motor'),
    spindleWheel4: wheel(3, 'spindle'),
    ratio4: ratio(3),
    efficiency: {
      kind: 'quantity',
      name: 'efficiency',
      unit: '%',
      domain: 'fraction',
      plausible: ['60 %', '100 %'],
      trouble: 2,
      findOut:
        'Leave it unknown to have the usual taken: V-belt 94 %, toothed belt 97 %, gears 94 %, coupling 100 %.',
    },
    pulleySpeed: {
      kind: 'quantity',
      name: 'highest speed of the wheel on the spindle',
      unit: 'r/min',
      domain: 'positive',
      plausible: ['300 r/min', '20000 r/min'],
      trouble: 2,
      findOut:
        'Maker’s sheet of the pulley or gear. Without it Fettle works it from its material and its largest diameter.',
    },
    pulleyMaterial: {
      kind: 'choice',
      name: 'material of the wheel on the spindle',
      trouble: 1,
      options: { 'cast-iron': 'cast iron', steel: 'steel', aluminium: 'aluminium', unknown: 'not known' },
      findOut:
        'A magnet does not hold: aluminium. Grey, rough and with casting marks: cast iron. Turned bright all over: steel.',
    },
    largestWheel: {
      kind: 'quantity',
      name: 'largest diameter of the wheel on the spindle',
      unit: 'mm',
      of: 'diameter',
      domain: 'positive',
      plausible: ['20 mm', '800 mm'],
      trouble: 1,
      findOut: 'Over its largest step, with a calliper or a tape.',
    },
    motorSideInertia: {
      kind: 'quantity',
      name: 'inertia on the motor side',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['1e-6 kg·m²', '1 kg·m²'],
      trouble: 2,
      findOut: 'Pulley: half its mass times its radius squared for a plain disc.',
    },
    spindleSideInertia: {
      kind: 'quantity',
      name: 'inertia on the spindle side',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['1e-6 kg·m²', '5 kg·m²'],
      trouble: 2,
      findOut: 'As for the motor side: half its mass times its radius squared for a plain disc.',
    },
    ...money,
  },
});
