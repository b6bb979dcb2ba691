import { money } from './money.ts';
import { partKind } from './types.ts';

export const spindleFeedback = partKind({
  id: 'spindle-feedback',
  name: 'spindle feedback',
  about: 'What tells the control how fast the spindle turns, and at which angle it stands.',
  facts: {
    type: {
      kind: 'choice',
      name: 'kind of feedback',
      trouble: 1,
      options: {
        encoder: 'incremental encoder',
        pulse: 'one pulse a turn (a magnet, a slot)',
        tacho: 'tachogenerator, speed only',
      },
      findOut:
        'An encoder has a disc with many lines and five wires or more; a magnet and a sensor on the spindle give one pulse a turn.',
    },
    lines: {
      kind: 'quantity',
      name: 'lines a turn',
      unit: 'lines',
      domain: 'positive',
      plausible: ['1 lines', '10000 lines'],
      trouble: 2,
      findOut:
        'Plate: “PPR”, “lines” or “pulses”. Counts are four times as many. One pulse a turn is 1 line.',
    },
    driven: {
      kind: 'choice',
      name: 'how it is driven',
      trouble: 1,
      options: {
        spindle: 'straight on the spindle',
        toothed: 'from the spindle by toothed belt or gears',
        'v-belt': 'from the spindle by a V-belt or round belt',
        motor: 'on the motor, before the belts',
      },
      findOut: 'Look which shaft turns it, and by what.',
    },
    spindleTeeth: {
      kind: 'quantity',
      name: 'teeth on the spindle',
      unit: 'teeth',
      domain: 'positive',
      plausible: ['8 teeth', '250 teeth'],
      chosen: true,
      trouble: 1,
      findOut: 'Count the teeth of the wheel on the spindle that drives the encoder.',
    },
    encoderTeeth: {
      kind: 'quantity',
      name: 'teeth on the encoder',
      unit: 'teeth',
      domain: 'positive',
      plausible: ['8 teeth', '250 teeth'],
      chosen: true,
      trouble: 1,
      findOut: 'Count the teeth of the wheel on the encoder.',
    },
    index: {
      kind: 'choice',
      name: 'index (one mark a turn)',
      trouble: 2,
      options: { yes: 'there is one', no: 'there is none' },
      findOut: 'Wires marked Z, I or N beside A and B. A scope shows one short pulse a turn.',
    },
    output: {
      kind: 'choice',
      name: 'its output lines',
      trouble: 2,
      options: {
        differential: 'differential pairs (A, A̅ …)',
        single: 'single-ended 5 V',
        'open-collector': 'open collector',
        '24v': '24 V outputs',
      },
      findOut: 'Plate or plug: eight wires or more with A and A̅ is differential; five is single-ended.',
    },
    highestRate: {
      kind: 'quantity',
      name: 'highest line rate of the encoder',
      unit: 'kHz',
      domain: 'positive',
      plausible: ['0.1 kHz', '5 MHz'],
      trouble: 2,
      findOut: 'Maker’s sheet: maximum frequency of one channel. Many optical ones do 100 kHz.',
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
