import { BUS, MAINS, symptom, TURNS } from './types.ts';

export const spindleSilent = symptom({
  id: 'spindle-silent',
  title: 'The spindle does not turn',
  about: 'The axes move, the spindle stays still.',
  words: 'chuck still stands stopped motor drive inverter',
  ask: 'an electrician used to spindle drives, or who repairs them',
  causes: {
    interlock: {
      says: 'Chuck, door, tool clamp or gear switch says no',
      is: 'asleep',
      often: 7,
      mend: 'Clamp, shut, put the gear in; watch the input page while you work each switch.',
    },
    zero: {
      says: 'Speed asked for is nothing: override, gear range, no speed in the program',
      is: 'asleep',
      often: 4,
      mend: 'Give a speed within the gear’s range, override at 100 %.',
    },
    tripped: {
      says: 'The spindle drive has tripped',
      is: 'asleep',
      often: 5,
      mend: 'Read its code, cure that, reset or switch off for ten minutes.',
    },
    overload: {
      says: 'The motor’s overload relay or thermostat is open',
      is: 'asleep',
      often: 3,
      mend: 'Let it cool, look why it was hot (fan, filter), press the relay’s reset.',
    },
    mains: {
      says: 'A fuse or phase of the spindle drive is missing',
      is: 'asleep',
      often: 3,
      mend: 'An electrician replaces the fuse once.',
    },
    belt: {
      says: 'The motor turns, the spindle does not: belt, clutch or gear between',
      is: 'dead',
      often: 2,
      mend: 'Belt, clutch, shift fork.',
    },
    command: {
      says: 'Start or speed command does not reach the drive',
      is: 'asleep',
      often: 3,
      mend: 'Follow start contact and 0 to 10 V from control to drive.',
    },
    drive: {
      says: 'The spindle drive is dead',
      is: 'dead',
      often: 3,
      mend: 'Price a repair and a frequency converter that suits the motor.',
    },
    motor: {
      says: 'The spindle motor is dead',
      is: 'dead',
      often: 1,
      mend: 'Insulation and ohms; then a rewind or another motor.',
    },
  },
  tests: {
    'motor-turns': {
      question: 'Does the motor turn or hum while the spindle stands?',
      how: 'Listen and look at the motor’s fan.',
      tool: 'ears',
      caution: TURNS,
      trouble: 1,
      answers: {
        turns: { says: 'It turns', fits: ['belt'] },
        hums: { says: 'It hums and stands', fits: ['mains', 'motor', 'belt', 'drive'] },
        silent: {
          says: 'Silent',
          fits: ['interlock', 'zero', 'tripped', 'overload', 'mains', 'command', 'drive', 'motor'],
        },
      },
    },
    message: {
      question: 'What does the control say?',
      how: 'Alarm page, and the input page for chuck, door, tool and gear.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        interlock: {
          says: 'Chuck, door, tool, gear, or an input that is not as it should be',
          fits: ['interlock'],
        },
        drive: { says: 'Spindle drive alarm', fits: ['tripped', 'overload', 'mains', 'drive', 'motor'] },
        nothing: {
          says: 'Nothing',
          fits: ['zero', 'command', 'belt', 'mains', 'drive', 'interlock', 'overload', 'motor'],
        },
      },
    },
    speed: {
      question: 'Does it turn with 100 r/min given by hand, lowest gear, override 100 %?',
      how: 'In manual input: speed, then start.',
      tool: 'keys',
      caution: TURNS,
      trouble: 1,
      answers: {
        turns: { says: 'Now it turns', fits: ['zero'] },
        still: {
          says: 'Still nothing',
          fits: ['interlock', 'tripped', 'overload', 'mains', 'belt', 'command', 'drive', 'motor'],
        },
      },
    },
    'drive-lamps': {
      question: 'What does the spindle drive’s own display show?',
      how: 'Cabinet window or door open, hands behind your back.',
      tool: 'eyes, its manual',
      caution: BUS,
      trouble: 1,
      answers: {
        ready: { says: 'Ready, or a speed', fits: ['interlock', 'zero', 'command', 'belt', 'motor'] },
        code: { says: 'An alarm code', fits: ['tripped', 'overload', 'motor', 'drive', 'mains'] },
        dark: { says: 'Dark', fits: ['mains', 'drive'] },
      },
    },
    reset: {
      question: 'Does it run after ten minutes off and the overload relay pressed in?',
      how: 'Off, wait, feel the motor’s heat without touching terminals, press the relay’s button, on.',
      tool: 'hand',
      caution: TURNS,
      trouble: 2,
      answers: {
        drive: { says: 'Yes; the relay was in', fits: ['tripped'] },
        relay: { says: 'Yes; the relay was out, or the motor was hot', fits: ['overload'] },
        no: { says: 'No', fits: ['interlock', 'zero', 'mains', 'belt', 'command', 'drive', 'motor'] },
      },
    },
    phases: {
      question: 'Are all fuses of the spindle drive whole?',
      how: 'Locked off, bus empty: each fuse out and measured.',
      tool: 'meter',
      caution: `${MAINS} ${BUS}`,
      trouble: 2,
      answers: {
        blown: { says: 'One is blown', fits: ['mains', 'drive', 'motor'] },
        whole: {
          says: 'All whole',
          fits: ['interlock', 'zero', 'tripped', 'overload', 'belt', 'command', 'drive', 'motor'],
        },
      },
    },
    'fuse-holds': {
      question: 'Does a new fuse hold, first with the motor leads off?',
      how: 'An electrician, with fuses of the same kind: motor off, then motor on.',
      tool: 'electrician, fuses',
      caution: MAINS,
      trouble: 4,
      answers: {
        holds: { says: 'Holds both times', fits: ['mains'] },
        motor: { says: 'Blows with the motor only', fits: ['motor'] },
        both: { says: 'Blows without the motor', fits: ['drive'] },
        whole: {
          says: 'No fuse was blown',
          fits: ['interlock', 'zero', 'tripped', 'overload', 'belt', 'command', 'drive', 'motor'],
        },
      },
    },
    'local-start': {
      question: 'Does it run from the drive’s own keys?',
      how: 'Many spindle drives can be started at their panel: set local, 5 Hz or 100 r/min, start.',
      tool: 'the drive’s manual',
      caution: TURNS,
      trouble: 2,
      answers: {
        runs: { says: 'It runs', fits: ['command', 'interlock', 'zero'] },
        no: { says: 'It does not', fits: ['tripped', 'overload', 'mains', 'drive', 'motor', 'belt'] },
        cannot: {
          says: 'It has no keys',
          fits: ['interlock', 'zero', 'tripped', 'overload', 'mains', 'belt', 'command', 'drive', 'motor'],
        },
      },
    },
    'command-there': {
      question: 'Do start contact and speed volts arrive at the drive?',
      how: 'Meter at the drive’s terminals: the start contact closes, and 0 to 10 V follows the speed.',
      tool: 'meter',
      caution: BUS,
      trouble: 3,
      answers: {
        no: { says: 'No', fits: ['command', 'interlock', 'zero'] },
        yes: { says: 'Yes', fits: ['tripped', 'overload', 'mains', 'belt', 'drive', 'motor'] },
      },
    },
    'inputs-work': {
      question: 'Does each interlock input change when you work its switch?',
      how: 'Input page of the control; clamp and unclamp the chuck, open and shut the door, shift the gear.',
      tool: 'input page',
      trouble: 2,
      answers: {
        stuck: { says: 'One does not change', fits: ['interlock'] },
        change: {
          says: 'All change',
          fits: ['zero', 'tripped', 'overload', 'mains', 'belt', 'command', 'drive', 'motor'],
        },
      },
    },
    'motor-ohms': {
      question: 'Is the motor even in its three windings and clear of the frame?',
      how: 'Bus empty, motor leads off the drive: three equal ohms, and an insulation test of the motor alone.',
      tool: 'meter, insulation tester',
      caution: BUS,
      trouble: 3,
      answers: {
        sound: {
          says: 'Sound',
          fits: ['interlock', 'zero', 'tripped', 'overload', 'mains', 'belt', 'command', 'drive'],
        },
        bad: { says: 'Uneven, or to the frame', fits: ['motor'] },
      },
    },
  },
});
