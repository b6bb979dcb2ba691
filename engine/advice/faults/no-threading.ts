import { BUS, symptom, TURNS } from './types.ts';

export const noThreading = symptom({
  id: 'no-threading',
  title: 'The spindle runs, but no speed is shown and threads will not cut',
  about: 'Feed per turn and threading wait for ever, or alarm.',
  words: 'threading encoder tacho pitch feed revolution speed display',
  ask: 'somebody with an oscilloscope to look at the encoder’s lines',
  causes: {
    belt: {
      says: 'The encoder’s belt or coupling is off or broken',
      is: 'asleep',
      often: 5,
      mend: 'A new belt of the same tooth count; line up nothing but the index if threads were to be picked up.',
    },
    plug: {
      says: 'Its plug is off or a core is broken',
      is: 'asleep',
      often: 4,
      mend: 'Push home, measure through, replace the cable.',
    },
    supply: {
      says: 'The encoder gets no volts',
      is: 'asleep',
      often: 3,
      mend: 'Fuse or regulator of the encoder’s supply.',
    },
    index: {
      says: 'The index (one a turn) is missing while the counts are there',
      is: 'dead',
      often: 3,
      mend: 'Its two cores first; then clean or replace the encoder.',
    },
    encoder: {
      says: 'The encoder is dead: oil inside, lamp or disc gone',
      is: 'dead',
      often: 4,
      mend: 'One of the same lines a turn and volts, any make.',
    },
    setting: {
      says: 'The control is set for other lines or no encoder (settings lost)',
      is: 'asleep',
      often: 3,
      mend: 'Set lines a turn and gear again, from the sheet you saved.',
    },
    input: {
      says: 'The control’s encoder input is dead',
      is: 'dead',
      often: 1,
      mend: 'Another input, or its board.',
    },
  },
  tests: {
    shown: {
      question: 'What speed does the screen show while the spindle runs?',
      how: 'Run it at 300 r/min and read the actual speed.',
      tool: 'eyes',
      caution: TURNS,
      trouble: 1,
      answers: {
        none: { says: 'None', fits: ['belt', 'plug', 'supply', 'encoder', 'setting', 'input'] },
        wrong: { says: 'A wrong one, by a steady factor', fits: ['setting'] },
        jumps: { says: 'It jumps about', fits: ['belt', 'plug', 'encoder'] },
        right: { says: 'The right one', fits: ['index'] },
      },
    },
    lost: {
      question: 'Did the control lose settings lately: battery, clear memory, other oddities?',
      how: 'Look at the battery lamp and at settings you know.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['setting', 'belt', 'plug', 'supply', 'encoder', 'input', 'index'] },
        no: {
          says: 'No, settings are as saved',
          fits: ['belt', 'plug', 'supply', 'encoder', 'input', 'index'],
        },
      },
    },
    turns: {
      question: 'Does the encoder’s shaft turn with the spindle?',
      how: 'Guard off, locked off: turn the spindle by hand and look at belt and pulley.',
      tool: 'spanner for the guard',
      caution: TURNS,
      trouble: 2,
      answers: {
        no: { says: 'No, or it slips', fits: ['belt'] },
        yes: { says: 'Yes', fits: ['plug', 'supply', 'encoder', 'setting', 'input', 'index'] },
      },
    },
    'encoder-volts': {
      question: 'Are its volts there at the encoder’s own plug?',
      how: 'Meter on DC at the plug: 5 V within a twentieth, or what its plate says.',
      tool: 'meter',
      caution: BUS,
      trouble: 2,
      answers: {
        none: { says: 'No', fits: ['plug', 'supply'] },
        right: { says: 'Yes', fits: ['encoder', 'setting', 'input', 'index', 'belt', 'plug'] },
      },
    },
    'control-volts': {
      question: 'And at the control’s end of the cable?',
      how: 'The same at the control’s plug, cable off.',
      tool: 'meter',
      caution: BUS,
      trouble: 2,
      answers: {
        none: { says: 'Not there either', fits: ['supply'] },
        right: { says: 'There', fits: ['plug', 'encoder', 'setting', 'input', 'index', 'belt'] },
      },
    },
    toggles: {
      question: 'Do its lines change when the spindle is turned slowly by hand?',
      how: 'Meter on DC from A to 0 V at the control’s end, plug on: it must step between low and high.',
      tool: 'meter with thin probes',
      caution: TURNS,
      trouble: 3,
      answers: {
        yes: { says: 'They step', fits: ['setting', 'input', 'index'] },
        no: { says: 'They do not', fits: ['plug', 'supply', 'encoder', 'belt'] },
      },
    },
    through: {
      question: 'Does each core of the cable measure through?',
      how: 'Both plugs off, ohms pin to pin, bent and straight.',
      tool: 'meter',
      trouble: 3,
      answers: {
        broken: { says: 'One does not', fits: ['plug'] },
        whole: { says: 'All do', fits: ['belt', 'supply', 'encoder', 'setting', 'input', 'index'] },
      },
    },
    another: {
      question: 'Does another encoder, turned by hand on the same plug, show a speed?',
      how: 'Any encoder of the same volts and output; spin it with your fingers.',
      tool: 'another encoder',
      trouble: 4,
      answers: {
        shows: { says: 'Yes', fits: ['encoder', 'belt', 'index'] },
        no: { says: 'No', fits: ['input', 'setting', 'plug', 'supply'] },
      },
    },
  },
});
