import { BUS, FALLS, MAINS, symptom } from './types.ts';

export const noAxisMoves = symptom({
  id: 'no-axis-moves',
  title: 'The screen is on, but no axis moves',
  about: 'The control lives and takes keys; not one axis answers a jog.',
  words: 'stuck frozen jog nothing axes still drives servo ready enable',
  ask: 'somebody with the machine’s wiring drawing who has traced a stop circuit before',
  causes: {
    stop: {
      says: 'An emergency stop button is in, or a door or chuck interlock is open',
      is: 'asleep',
      often: 8,
      mend: 'Pull every red button out and turn it; shut doors and guards; then reset.',
    },
    limit: {
      says: 'An axis stands on its end switch',
      is: 'asleep',
      often: 5,
      mend: 'Locked off, wind it off the switch by hand; look whether the switch itself is stuck.',
    },
    hold: {
      says: 'Feed override at nothing, feed hold on, or the wrong mode',
      is: 'asleep',
      often: 6,
      mend: 'Mode to jog, override up, feed hold off, no single-block.',
    },
    reference: {
      says: 'It wants a reference run first',
      is: 'asleep',
      often: 4,
      mend: 'Do the reference run; some controls allow no more than a slow jog before it.',
    },
    alarm: {
      says: 'An alarm is standing and locks the drives',
      is: 'asleep',
      often: 5,
      mend: 'Read the alarm list, cure the oldest alarm, then reset.',
    },
    bus: {
      says: 'The drives have no power: contactor, fuse or transformer of their supply',
      is: 'asleep',
      often: 4,
      mend: 'Find why the contactor stays out, or replace the fuse once.',
    },
    enable: {
      says: 'The enable signal does not reach the drives',
      is: 'asleep',
      often: 3,
      mend: 'Follow the enable wire from control to drives: relay contact, plug, broken core.',
    },
    output: {
      says: 'The control’s axis outputs are dead',
      is: 'dead',
      often: 1,
      mend: 'Axis board or a new control.',
    },
  },
  tests: {
    buttons: {
      question: 'Is every red button out, every door shut, and does the stop lamp go out?',
      how: 'Walk round the machine: pull and turn each button, open and shut each door, then reset.',
      tool: 'hands',
      trouble: 1,
      answers: {
        moves: { says: 'Now it moves', fits: ['stop'] },
        still: {
          says: 'All out and shut, still nothing',
          fits: ['stop', 'limit', 'hold', 'reference', 'alarm', 'bus', 'enable', 'output'],
        },
      },
    },
    message: {
      question: 'What does the screen say when you jog?',
      how: 'Open the alarm page, then press a jog key and look at position and messages.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        stop: { says: 'Emergency stop or not ready', fits: ['stop', 'bus', 'enable', 'limit'] },
        limit: { says: 'An end switch or overtravel', fits: ['limit'] },
        alarm: { says: 'Another alarm', fits: ['alarm', 'bus'] },
        reference: { says: 'Reference first', fits: ['reference'] },
        nothing: { says: 'Nothing at all', fits: ['hold', 'enable', 'output'] },
      },
    },
    override: {
      question: 'Does it move with override at 100 %, feed hold off, mode jog?',
      how: 'Turn the override knob fully through its range once: old ones lose contact.',
      tool: 'hands',
      trouble: 1,
      answers: {
        moves: { says: 'Now it moves', fits: ['hold'] },
        still: {
          says: 'Still nothing',
          fits: ['stop', 'limit', 'reference', 'alarm', 'bus', 'enable', 'output'],
        },
      },
    },
    contactor: {
      question: 'Do you hear a big contactor pull in when you reset?',
      how: 'Ear at the shut cabinet door, press reset or drives-on.',
      tool: 'ears',
      trouble: 1,
      answers: {
        yes: { says: 'Yes, it stays in', fits: ['hold', 'reference', 'enable', 'output', 'alarm'] },
        out: { says: 'It falls out again', fits: ['alarm', 'stop', 'limit'] },
        no: { says: 'No', fits: ['stop', 'limit', 'bus', 'alarm'] },
      },
    },
    stiff: {
      question: 'Are the motors stiff with the drives on?',
      how: 'Try to turn a belt or handwheel by hand, gently, with the drives on and nobody at the panel.',
      tool: 'hand on a belt, through an open guard only where the machine allows it',
      caution: FALLS,
      trouble: 2,
      answers: {
        stiff: { says: 'Stiff', fits: ['hold', 'reference', 'output'] },
        loose: { says: 'Loose', fits: ['stop', 'limit', 'alarm', 'bus', 'enable'] },
      },
    },
    'stop-chain': {
      question: 'Is the stop chain closed from end to end?',
      how: 'Locked off, meter on ohms from the first to the last terminal of the chain on the drawing; then halve it until the open piece is found.',
      tool: 'meter, wiring drawing',
      caution: MAINS,
      trouble: 3,
      answers: {
        stop: { says: 'Open at a button, door or interlock', fits: ['stop'] },
        limit: { says: 'Open at an end switch', fits: ['limit'] },
        closed: { says: 'Closed', fits: ['hold', 'reference', 'alarm', 'bus', 'enable', 'output'] },
      },
    },
    'bus-volts': {
      question: 'Is the bus of the drives charged?',
      how: 'Look at the bus lamp of the drives; where there is none, have the volts measured with the cabinet on.',
      tool: 'eyes, or an electrician with a meter',
      caution: BUS,
      trouble: 3,
      answers: {
        yes: { says: 'Charged', fits: ['hold', 'reference', 'alarm', 'enable', 'output'] },
        no: { says: 'Empty', fits: ['stop', 'limit', 'bus', 'alarm'] },
      },
    },
    'enable-volts': {
      question: 'Does the enable input of a drive change when you reset?',
      how: 'Meter on DC between enable and its common at the drive’s plug: 0 to 24 V, or a lamp on the drive.',
      tool: 'meter',
      caution: BUS,
      trouble: 3,
      answers: {
        yes: { says: 'It changes', fits: ['hold', 'reference', 'output', 'bus'] },
        no: { says: 'It does not', fits: ['enable', 'stop', 'limit', 'alarm'] },
      },
    },
  },
});
