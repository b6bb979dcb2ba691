import { BUS, MOVES, symptom } from './types.ts';

export const losesPosition = symptom({
  id: 'loses-position',
  title: 'It loses its position',
  about: 'Parts come out wrong by more and more, or the reference is elsewhere each day.',
  words: 'drifts size wrong taper inaccurate backlash lost steps home reference offset',
  ask: 'somebody with an oscilloscope, or with a laser or a long gauge to measure an axis along its travel',
  causes: {
    coupling: {
      says: 'A coupling, pulley or belt slips',
      is: 'asleep',
      often: 6,
      mend: 'Mark shafts and hubs with paint, find which moves, clean and tighten, key or taper-lock it.',
    },
    steps: {
      says: 'A stepping motor loses steps: too fast, too heavy, too little current',
      is: 'asleep',
      often: 5,
      mend: 'Slower rapid and acceleration; look at the findings of this axis.',
    },
    noise: {
      says: 'Counts are lost or added by interference',
      is: 'asleep',
      often: 4,
      mend: 'Shields, earth, leads apart, differential lines.',
    },
    rate: {
      says: 'Counts come faster than drive or control can follow',
      is: 'asleep',
      often: 3,
      mend: 'Slower rapid, fewer lines, or a faster input: the finding on the count rate tells.',
    },
    encoder: {
      says: 'The encoder is dirty or its coupling slips',
      is: 'dead',
      often: 4,
      mend: 'Count index to index; clean or replace.',
    },
    switch: {
      says: 'The reference switch wanders',
      is: 'dead',
      often: 4,
      mend: 'Clean or replace it; let the index pulse decide, with the switch half a turn away from it.',
    },
    heat: {
      says: 'It grows warm: screw and head stretch',
      is: 'asleep',
      often: 3,
      mend: 'Warm up first; measure how much, then allow for it.',
    },
    play: {
      says: 'Play in screw, nut or thrust bearings',
      is: 'dead',
      often: 4,
      mend: 'Split the backlash by a bench test: bearing, nut or coupling.',
    },
    battery: {
      says: 'The battery of absolute encoders or memory is empty',
      is: 'asleep',
      often: 2,
      mend: 'New battery with the control on, then the reference again.',
    },
  },
  tests: {
    how: {
      question: 'How does it lose it?',
      how: 'Gauge on the slide at one place; come back to it after some moves, after a reference run, after a night.',
      tool: 'dial gauge',
      caution: MOVES,
      trouble: 2,
      answers: {
        grows: { says: 'More with every move', fits: ['coupling', 'steps', 'noise', 'rate', 'encoder'] },
        reversal: { says: 'By the same amount on reversing', fits: ['play'] },
        reference: { says: 'Only by the reference run', fits: ['switch'] },
        night: { says: 'Only by switching off', fits: ['battery', 'switch'] },
        warm: { says: 'Slowly over an hour, and it settles', fits: ['heat'] },
      },
    },
    motor: {
      question: 'Is it a stepping motor without feedback?',
      how: 'Four or more leads, no feedback plug.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        stepper: { says: 'Yes', fits: ['coupling', 'steps', 'noise', 'switch', 'heat', 'play', 'battery'] },
        servo: {
          says: 'No, it has feedback',
          fits: ['coupling', 'noise', 'rate', 'encoder', 'switch', 'heat', 'play', 'battery'],
        },
      },
    },
    paint: {
      question: 'Do paint marks over motor shaft, hubs and screw stay in line?',
      how: 'A dab across each joint, run fifty rapid moves, look again with the power locked off.',
      tool: 'paint',
      caution: MOVES,
      trouble: 2,
      answers: {
        apart: { says: 'One has moved', fits: ['coupling'] },
        line: {
          says: 'All in line',
          fits: ['steps', 'noise', 'rate', 'encoder', 'switch', 'heat', 'play', 'battery'],
        },
      },
    },
    slow: {
      question: 'Does it stay right at a quarter of the speed and acceleration?',
      how: 'Override or settings down, the same fifty moves.',
      tool: 'settings page, gauge',
      caution: MOVES,
      trouble: 2,
      answers: {
        right: { says: 'It stays right', fits: ['steps', 'rate'] },
        wrong: {
          says: 'Still wrong',
          fits: ['coupling', 'noise', 'encoder', 'switch', 'heat', 'play', 'battery'],
        },
      },
    },
    still: {
      question: 'Does the position change while the axis stands and spindle or pumps run?',
      how: 'Drives on, axis still: watch the last digit for five minutes while other things switch.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        changes: { says: 'It changes', fits: ['noise'] },
        stands: {
          says: 'It stands',
          fits: ['coupling', 'steps', 'noise', 'rate', 'encoder', 'switch', 'heat', 'play', 'battery'],
        },
      },
    },
    index: {
      question: 'Is the count from index to index always the same?',
      how: 'Turn slowly and read the position at each index; ten turns.',
      tool: 'diagnosis page of the control or drive',
      trouble: 3,
      answers: {
        same: {
          says: 'Always the same',
          fits: ['coupling', 'steps', 'rate', 'switch', 'heat', 'play', 'battery'],
        },
        varies: { says: 'It varies', fits: ['encoder', 'noise'] },
      },
    },
    shields: {
      question: 'Does it stop when the feedback cable is led apart and its shield is on?',
      how: 'A length of good shielded cable laid away from motor leads, shield on where the manual says.',
      tool: 'shielded cable',
      caution: BUS,
      trouble: 3,
      answers: {
        stops: { says: 'It stops', fits: ['noise'] },
        no: {
          says: 'No',
          fits: ['encoder', 'coupling', 'steps', 'rate', 'switch', 'heat', 'play', 'battery'],
        },
      },
    },
    'reference-again': {
      question: 'Do ten reference runs in a row agree?',
      how: 'Gauge on the slide; reference ten times, write the readings down.',
      tool: 'dial gauge',
      caution: MOVES,
      trouble: 2,
      answers: {
        scatter: { says: 'They scatter, or differ by a whole turn of the screw', fits: ['switch'] },
        agree: {
          says: 'They agree',
          fits: ['coupling', 'steps', 'noise', 'rate', 'encoder', 'heat', 'play', 'battery'],
        },
      },
    },
  },
});
