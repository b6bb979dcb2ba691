import { BUS, MOVES, symptom } from './types.ts';

export const runsAway = symptom({
  id: 'runs-away',
  title: 'An axis runs away',
  about: 'It goes off at full speed the moment the drives come on, or after a jog, until something stops it.',
  words: 'runaway bolts fast wild speed creeps drifts uncontrolled',
  ask: 'somebody with an oscilloscope who has tuned servo axes',
  causes: {
    sign: {
      says: 'Motor or feedback is connected the wrong way round (after somebody worked on it)',
      is: 'asleep',
      often: 6,
      mend: 'Brushed: swap the two motor leads, once. Brushless: put the leads back in the maker’s order; turn the command or the feedback direction round instead.',
    },
    lost: {
      says: 'The feedback is not there: plug off, broken core, dead encoder or tacho',
      is: 'dead',
      often: 7,
      mend: 'Cable first, then the encoder or tacho itself.',
    },
    coupling: {
      says: 'The encoder’s or tacho’s coupling slips',
      is: 'asleep',
      often: 4,
      mend: 'Tighten or replace the coupling, and line up the index again.',
    },
    offset: {
      says: 'The drive’s zero has drifted: it creeps rather than runs',
      is: 'asleep',
      often: 3,
      mend: 'Balance the drive’s zero by its manual.',
    },
    drive: {
      says: 'The drive’s output stage or input is dead',
      is: 'dead',
      often: 3,
      mend: 'Repair or replace it.',
    },
    command: {
      says: 'The control sends full command by itself',
      is: 'dead',
      often: 1,
      mend: 'Axis board or a new control.',
    },
    commutation: {
      says: 'A brushless motor has lost its rotor angle',
      is: 'asleep',
      often: 2,
      mend: 'Set the commutation angle again by the drive’s manual.',
    },
  },
  tests: {
    creeps: {
      question: 'Does it creep slowly, or go at full speed?',
      how: 'From what you saw. Do not try it again for this.',
      tool: 'memory',
      trouble: 1,
      answers: {
        creeps: { says: 'It creeps', fits: ['offset'] },
        fast: { says: 'Full speed', fits: ['sign', 'lost', 'coupling', 'drive', 'command', 'commutation'] },
      },
    },
    'work-done': {
      question: 'Was anything unplugged or swapped at motor, encoder or drive since it last ran?',
      how: 'Ask everybody who had the covers off.',
      tool: 'a question',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['sign', 'lost', 'coupling', 'commutation', 'drive', 'command', 'offset'] },
        no: {
          says: 'No, it ran before',
          fits: ['lost', 'coupling', 'drive', 'command', 'commutation', 'offset'],
        },
      },
    },
    counts: {
      question: 'Does the position count when the motor is turned by hand, drives off?',
      how: 'Turn the motor shaft itself one turn each way and watch the screen.',
      tool: 'hand',
      caution: 'Drives off and locked; prop a vertical axis.',
      trouble: 2,
      answers: {
        right: {
          says: 'The right amount both ways',
          fits: ['sign', 'drive', 'command', 'commutation', 'offset'],
        },
        less: { says: 'Too little, or only sometimes', fits: ['coupling', 'lost'] },
        none: { says: 'Not at all', fits: ['lost', 'coupling'] },
      },
    },
    grip: {
      question: 'Does the encoder’s shaft turn when the motor’s does?',
      how: 'Cover off: a dab of paint over coupling and shaft, turn the motor and look.',
      tool: 'screwdriver, paint',
      caution: BUS,
      trouble: 3,
      answers: {
        slips: { says: 'It slips', fits: ['coupling'] },
        turns: { says: 'It turns', fits: ['lost', 'sign', 'drive', 'command', 'commutation', 'offset'] },
      },
    },
    direction: {
      question: 'Does the position count up when the slide moves the way the plus key should send it?',
      how: 'Drives off: turn by hand and watch the sign. Then, current limit at its least, touch plus and watch which way the motor pulls.',
      tool: 'hand',
      caution: MOVES,
      trouble: 3,
      answers: {
        against: { says: 'One of the two is the wrong way', fits: ['sign'] },
        agree: {
          says: 'Both agree',
          fits: ['lost', 'coupling', 'drive', 'command', 'commutation', 'offset'],
        },
      },
    },
    'command-off': {
      question: 'Does it still run away with the command plug off the drive?',
      how: 'Command plug off, its input shorted as the manual says, current limit low, drive on.',
      tool: 'the drive’s manual',
      caution: MOVES,
      trouble: 3,
      answers: {
        runs: { says: 'It still runs', fits: ['drive', 'sign', 'lost', 'coupling', 'commutation'] },
        stands: { says: 'It stands', fits: ['command', 'offset'] },
      },
    },
    brushless: {
      question:
        'Is the motor brushless, and does it jerk to a place and stick, or run, depending on where it stood?',
      how: 'Three power leads: brushless. Try from several shaft positions, belt off, current limit low.',
      tool: 'hand',
      caution: MOVES,
      trouble: 3,
      answers: {
        depends: { says: 'Yes, it depends on where it stood', fits: ['commutation'] },
        no: {
          says: 'No, or it has brushes',
          fits: ['drive', 'sign', 'lost', 'coupling', 'command', 'offset'],
        },
      },
    },
  },
});
