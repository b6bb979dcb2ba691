import { money } from './money.ts';
import { partKind } from './types.ts';

export const reduction = partKind({
  id: 'reduction',
  name: 'reduction',
  about:
    'Belt, gears or coupling between motor and screw. “Nothing here” is not an answer: a plain coupling is a reduction of 1.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind',
      trouble: 1,
      options: { coupling: 'coupling, motor straight on the screw', belt: 'toothed belt', gears: 'gears' },
      findOut: 'Look between motor and screw.',
    },
    motorTeeth: {
      kind: 'quantity',
      name: 'teeth on the motor',
      unit: 'teeth',
      domain: 'positive',
      plausible: ['8 teeth', '120 teeth'],
      chosen: true,
      trouble: 1,
      findOut: 'Count the teeth of the pulley or gear on the motor shaft.',
    },
    screwTeeth: {
      kind: 'quantity',
      name: 'teeth on the screw',
      unit: 'teeth',
      domain: 'positive',
      plausible: ['8 teeth', '250 teeth'],
      chosen: true,
      trouble: 1,
      findOut: 'Count the teeth of the pulley or gear on the screw.',
    },
    efficiency: {
      kind: 'quantity',
      name: 'efficiency',
      unit: '%',
      domain: 'fraction',
      plausible: ['60 %', '100 %'],
      trouble: 2,
      findOut:
        'Handbook: toothed belt about 97 %, one pair of gears about 97 %, a coupling 100 %. Leave it unknown to use that.',
    },
    motorSideInertia: {
      kind: 'quantity',
      name: 'inertia on the motor shaft (pulley or coupling half)',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['1e-8 kg·m²', '0.05 kg·m²'],
      trouble: 2,
      findOut:
        'Weigh the pulley: a plain disc has half its mass times its radius squared; steel weighs 7.85 g per cm³, aluminium 2.7.',
    },
    screwSideInertia: {
      kind: 'quantity',
      name: 'inertia on the screw (pulley or coupling half)',
      unit: 'kg·m²',
      domain: 'not negative',
      plausible: ['1e-8 kg·m²', '0.5 kg·m²'],
      trouble: 2,
      findOut: 'As for the motor side: half its mass times its radius squared for a plain disc.',
    },
    ...money,
  },
});
