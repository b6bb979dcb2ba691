import { BUS, symptom } from './types.ts';

export const alarmStays = symptom({
  id: 'alarm-stays',
  title: 'An alarm will not clear',
  about: 'Reset does nothing, or the alarm comes straight back.',
  words: 'alarms error errors fault message reset lamp code',
  ask: 'somebody with the list of alarms and inputs of this control',
  causes: {
    still: {
      says: 'What it complains of is still so: pressure, level, door, overload',
      is: 'asleep',
      often: 7,
      mend: 'Cure that: oil, air, coolant, door, overload relay; then reset.',
    },
    switch: {
      says: 'The switch or sensor that reports it is stuck or dead',
      is: 'dead',
      often: 4,
      mend: 'Clean or replace it. Never bridge one that guards people.',
    },
    wire: {
      says: 'Its wire is broken or its 24 V fuse is out',
      is: 'asleep',
      often: 3,
      mend: 'Fuse of the inputs first, since it takes several with it; then the wire.',
    },
    order: {
      says: 'It wants its own way of clearing: drives on first, another key, power off',
      is: 'asleep',
      often: 4,
      mend: 'Off for a minute; then clear from the oldest alarm.',
    },
    battery: {
      says: 'The memory battery is empty: settings or positions are lost',
      is: 'asleep',
      often: 4,
      mend: 'Replace the battery with the control on; load the saved settings; reference run.',
    },
    drive: {
      says: 'A drive holds its own fault and passes it on',
      is: 'asleep',
      often: 4,
      mend: 'Read the drive’s lamps; it has a symptom of its own here: one axis dead.',
    },
    board: {
      says: 'The control’s input board is dead',
      is: 'dead',
      often: 1,
      mend: 'A spare input, or the board.',
    },
  },
  tests: {
    text: {
      question: 'What is it about?',
      how: 'The oldest alarm on the list, in its own words.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        medium: {
          says: 'Pressure, level, temperature, door, overload',
          fits: ['still', 'switch', 'wire', 'board', 'order'],
        },
        memory: { says: 'Battery, memory, settings, absolute position', fits: ['battery', 'order'] },
        drive: { says: 'A drive or servo', fits: ['drive', 'order', 'wire'] },
        several: { says: 'Many at once', fits: ['wire', 'battery', 'board', 'order'] },
      },
    },
    cycle: {
      question: 'Does it clear after a minute off?',
      how: 'Main switch off, count sixty, on; then reset once the control is ready.',
      tool: 'a watch',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['order'] },
        no: { says: 'No', fits: ['still', 'switch', 'wire', 'battery', 'drive', 'board'] },
      },
    },
    real: {
      question: 'Is what it says really so?',
      how: 'Look at the gauge, the tank, the door, the relay it names.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        yes: { says: 'Yes, or it cannot be told', fits: ['still', 'drive', 'battery', 'order'] },
        no: { says: 'No, all is well there', fits: ['switch', 'wire', 'board', 'drive', 'order', 'battery'] },
      },
    },
    input: {
      question: 'Does its input change when the switch is worked by hand?',
      how: 'Input page of the control, somebody at the switch.',
      tool: 'input page',
      caution: 'Never put a hand where the machine may move: drives off.',
      trouble: 2,
      answers: {
        changes: { says: 'It changes', fits: ['still', 'order', 'drive', 'battery'] },
        no: { says: 'It does not', fits: ['switch', 'wire', 'board'] },
      },
    },
    bridge: {
      question: 'Does the input change when the switch’s two wires are joined at the switch?',
      how: 'Drives off and locked: join them for a moment with a test lead, then take it off again. Never leave it.',
      tool: 'test lead',
      caution: BUS,
      trouble: 2,
      answers: {
        changes: { says: 'It changes', fits: ['switch'] },
        no: { says: 'It does not', fits: ['wire', 'board'] },
      },
    },
    'volts-24': {
      question: 'Are 24 V there on the common of the inputs, and does the wire measure through?',
      how: 'Meter at the terminal strip: fuse, common, then the wire end to end with the power off.',
      tool: 'meter',
      trouble: 3,
      answers: {
        no: { says: 'No', fits: ['wire'] },
        yes: { says: 'Yes, both', fits: ['board', 'switch', 'still', 'order', 'battery', 'drive'] },
      },
    },
    'battery-volts': {
      question: 'What does the memory battery measure?',
      how: 'Control left on, so that nothing more is lost; meter at the battery: within a tenth of what is printed.',
      tool: 'meter',
      trouble: 2,
      answers: {
        low: { says: 'Low', fits: ['battery'] },
        good: { says: 'Good', fits: ['still', 'switch', 'wire', 'order', 'drive', 'board'] },
      },
    },
    'drive-lamp': {
      question: 'Does a drive show a fault lamp or code?',
      how: 'Look at each drive without touching.',
      tool: 'eyes',
      caution: BUS,
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['drive'] },
        no: { says: 'No', fits: ['still', 'switch', 'wire', 'order', 'battery', 'board'] },
      },
    },
  },
});
