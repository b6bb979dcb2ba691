import { money } from './money.ts';
import { partKind } from './types.ts';

export const feedback = partKind({
  id: 'feedback',
  name: 'feedback',
  about: 'What reports the position (or speed) back.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind of feedback',
      trouble: 2,
      options: {
        encoder: 'incremental encoder',
        resolver: 'resolver',
        tacho: 'tachogenerator only',
        scale: 'linear scale',
      },
      findOut:
        'Encoder: glass or metal disc, 5 V supply. Resolver: three pairs of leads, a few tens of ohms each, no electronics. Tacho: a small DC generator with two leads.',
    },
    lines: {
      kind: 'quantity',
      name: 'lines a turn',
      unit: 'lines',
      domain: 'positive',
      plausible: ['50 lines', '20000 lines'],
      trouble: 2,
      findOut:
        'Plate: “PPR”, “lines” or “pulses”. Counts are four times as many. If the plate is gone, count edges over one turn.',
    },
    on: {
      kind: 'choice',
      name: 'where it sits',
      trouble: 1,
      options: { motor: 'on the motor', screw: 'on the screw' },
      findOut: 'Look which shaft turns it.',
    },
    output: {
      kind: 'choice',
      name: 'its output lines',
      trouble: 2,
      options: {
        differential: 'differential pairs (A, A̅ …)',
        single: 'single-ended 5 V',
        'open-collector': 'open collector',
      },
      findOut: 'Plate or plug: eight wires or more with A and A̅ is differential; five is single-ended.',
    },
    highestRate: {
      kind: 'quantity',
      name: 'highest line rate of the encoder',
      unit: 'kHz',
      domain: 'positive',
      plausible: ['10 kHz', '5 MHz'],
      trouble: 2,
      findOut: 'Maker’s sheet: maximum frequency of one channel.',
    },
    commutation: {
      kind: 'choice',
      name: 'rotor position for a brushless motor',
      trouble: 2,
      options: {
        none: 'none',
        halls: 'Hall sensors or U V W tracks',
        resolver: 'resolver',
        absolute: 'absolute encoder',
      },
      findOut: 'Leads marked U V W beside A and B, three extra Hall leads, or a resolver.',
    },
    supplyVoltage: {
      kind: 'quantity',
      name: 'voltage it is fed with',
      unit: 'V',
      domain: 'positive',
      plausible: ['4.5 V', '30 V'],
      trouble: 2,
      findOut: 'Plate: “5 V”, “10–30 V”. Write the lowest that will do.',
    },
    ...money,
  },
});
