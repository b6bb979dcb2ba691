import { BUS, FALLS, MOVES, symptom } from './types.ts';

export const oneAxisDead = symptom({
  id: 'one-axis-dead',
  title: 'One axis is dead, the others move',
  about: 'Stop circuit and bus are proven by the other axes; look at this axis alone.',
  words: 'stuck jammed jog single stopped still',
  ask: 'somebody with a known good drive of the same kind, or who repairs drives',
  causes: {
    limit: {
      says: 'It stands on its end switch, or that switch is stuck',
      is: 'asleep',
      often: 4,
      mend: 'Wind it off by hand, locked off; clean or replace the switch.',
    },
    fuse: {
      says: 'The drive’s own fuse has blown',
      is: 'asleep',
      often: 4,
      mend: 'Replace it once with the same value; if it blows again the drive or the motor is shorted.',
    },
    plug: {
      says: 'A plug has worked loose, or a core in the moving cable has broken',
      is: 'asleep',
      often: 5,
      mend: 'Push every plug home; measure each core while you bend the cable.',
    },
    brake: {
      says: 'Its brake does not let go',
      is: 'asleep',
      often: 3,
      mend: 'Volts at the brake coil; then the brake itself.',
    },
    jammed: {
      says: 'It is mechanically jammed: chips, a dry screw, a gib too tight',
      is: 'asleep',
      often: 3,
      mend: 'Clean, oil, loosen the gib; turn the screw by hand.',
    },
    tripped: {
      says: 'The drive has tripped on its own alarm',
      is: 'asleep',
      often: 4,
      mend: 'Read its lamps against its manual; off for a minute resets most.',
    },
    drive: {
      says: 'The drive is dead',
      is: 'dead',
      often: 4,
      mend: 'Repair or replace it; look first at the motor, which may have killed it.',
    },
    motor: {
      says: 'The motor is dead: brushes, winding, insulation',
      is: 'dead',
      often: 3,
      mend: 'Brushes first. Then the bench tests of resistance and insulation.',
    },
    feedback: {
      says: 'The feedback of this axis is dead or its cable is broken',
      is: 'dead',
      often: 3,
      mend: 'Cable first; then encoder, resolver or tacho on the bench.',
    },
    output: {
      says: 'The control’s output of this axis is dead',
      is: 'dead',
      often: 1,
      mend: 'Axis board, or a spare axis of the same control.',
    },
  },
  tests: {
    lamps: {
      question: 'What do the lamps of its drive show, beside those of its neighbour?',
      how: 'Look through the cabinet window or with the door open and your hands behind your back.',
      tool: 'eyes, the drive’s manual',
      caution: BUS,
      trouble: 1,
      answers: {
        same: {
          says: 'The same as its neighbour',
          fits: ['limit', 'plug', 'brake', 'jammed', 'motor', 'output', 'feedback'],
        },
        dark: { says: 'Dark', fits: ['fuse', 'drive'] },
        alarm: {
          says: 'An alarm',
          fits: ['tripped', 'jammed', 'brake', 'motor', 'feedback', 'drive', 'plug'],
        },
      },
    },
    'end-switch': {
      question: 'Does it stand at the end of its travel?',
      how: 'Look at the slide and at the switch’s roller; work the switch by hand and watch the input page of the control.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        yes: { says: 'Yes, or the input does not change', fits: ['limit'] },
        no: {
          says: 'No, and the input changes',
          fits: ['fuse', 'plug', 'brake', 'jammed', 'tripped', 'drive', 'motor', 'feedback', 'output'],
        },
      },
    },
    'by-hand': {
      question: 'Does the screw turn by hand with the drive off?',
      how: 'Locked off, axis propped: turn pulley or coupling with a strap wrench. With a brake, feed its coil from a bench supply first.',
      tool: 'strap wrench, bench supply for a brake',
      caution: FALLS,
      trouble: 2,
      answers: {
        free: {
          says: 'It turns',
          fits: ['limit', 'fuse', 'plug', 'tripped', 'drive', 'motor', 'feedback', 'output', 'brake'],
        },
        brake: { says: 'Only when the brake is fed', fits: ['brake'] },
        stuck: { says: 'It is stuck, with the brake fed or without one', fits: ['jammed'] },
      },
    },
    'power-cycle': {
      question: 'Does it come back after ten minutes off?',
      how: 'Main switch off, wait until all lamps are out, on again; try at once and watch when it trips.',
      tool: 'a watch',
      trouble: 1,
      answers: {
        back: { says: 'It comes back and stays', fits: ['tripped'] },
        trips: {
          says: 'It comes back and trips when it moves',
          fits: ['jammed', 'brake', 'motor', 'feedback', 'plug'],
        },
        dead: {
          says: 'It does not come back',
          fits: ['limit', 'fuse', 'plug', 'brake', 'jammed', 'drive', 'motor', 'feedback', 'output'],
        },
      },
    },
    'drive-fuse': {
      question: 'Is its fuse whole?',
      how: 'Locked off and the bus empty: take the fuse out and measure it.',
      tool: 'meter',
      caution: BUS,
      trouble: 2,
      answers: {
        blown: { says: 'Blown', fits: ['fuse', 'drive', 'motor'] },
        whole: {
          says: 'Whole',
          fits: ['limit', 'plug', 'brake', 'jammed', 'tripped', 'drive', 'motor', 'feedback', 'output'],
        },
      },
    },
    'new-fuse': {
      question: 'Does a new fuse hold with the motor unplugged, and then with it plugged in?',
      how: 'Once with the motor leads off and insulated; if it holds, once with them on.',
      tool: 'two fuses of the same value',
      caution: BUS,
      trouble: 3,
      answers: {
        holds: { says: 'It holds both times', fits: ['fuse'] },
        motor: { says: 'It blows only with the motor', fits: ['motor'] },
        both: { says: 'It blows without the motor', fits: ['drive'] },
        notblown: {
          says: 'The fuse was never blown',
          fits: ['limit', 'plug', 'brake', 'jammed', 'tripped', 'feedback', 'output', 'drive', 'motor'],
        },
      },
    },
    ohms: {
      question: 'Do motor and cable measure right at the drive’s end?',
      how: 'Bus empty, motor plug off the drive: ohms between the leads as on the plate or its sister axis, none to the frame; bend the cable meanwhile.',
      tool: 'meter',
      caution: BUS,
      trouble: 2,
      answers: {
        right: {
          says: 'Right, and steady while bent',
          fits: ['limit', 'fuse', 'brake', 'jammed', 'tripped', 'drive', 'feedback', 'output', 'plug'],
        },
        jumps: { says: 'Jumps while bent', fits: ['plug'] },
        wrong: { says: 'Open, uneven, or to the frame', fits: ['motor', 'plug'] },
      },
    },
    'at-motor': {
      question: 'And at the motor’s own terminals?',
      how: 'The same measurement at the motor, cable off.',
      tool: 'meter',
      caution: BUS,
      trouble: 3,
      answers: {
        right: { says: 'Right there', fits: ['plug'] },
        wrong: { says: 'Wrong there too', fits: ['motor'] },
      },
    },
    'position-counts': {
      question: 'Does the position on the screen count when the screw is turned by hand?',
      how: 'Control on, drive off: turn the screw one turn and watch the axis on the screen.',
      tool: 'hand',
      caution: FALLS,
      trouble: 2,
      answers: {
        counts: {
          says: 'It counts',
          fits: ['limit', 'fuse', 'brake', 'jammed', 'tripped', 'drive', 'motor', 'output', 'plug'],
        },
        no: { says: 'It does not, or jumps', fits: ['feedback', 'plug'] },
      },
    },
    'feedback-cable': {
      question: 'Does each core of its feedback cable measure through, bent or not?',
      how: 'Both plugs off; ohms from pin to pin, moving the cable where it flexes.',
      tool: 'meter, a helper',
      trouble: 3,
      answers: {
        broken: { says: 'One does not', fits: ['plug'] },
        whole: {
          says: 'All do',
          fits: ['feedback', 'limit', 'fuse', 'brake', 'jammed', 'tripped', 'drive', 'motor', 'output'],
        },
      },
    },
    'swap-command': {
      question: 'Does the dead axis move on its neighbour’s command?',
      how: 'Both drives off: swap the command plugs of two like drives at the control’s end. Jog the neighbour a little.',
      tool: 'labels for the plugs',
      caution: MOVES,
      trouble: 3,
      answers: {
        moves: { says: 'It moves', fits: ['output'] },
        still: {
          says: 'It does not, and the neighbour does on its command',
          fits: ['limit', 'fuse', 'plug', 'brake', 'jammed', 'tripped', 'drive', 'motor', 'feedback'],
        },
      },
    },
    'swap-motor': {
      question: 'Does its drive turn the neighbour’s motor?',
      how: 'Only where drives and motors are alike: swap motor and feedback plugs together, current limit low.',
      tool: 'labels, the drives’ manuals',
      caution: MOVES,
      trouble: 4,
      answers: {
        turns: { says: 'It turns', fits: ['motor', 'feedback', 'plug', 'brake', 'jammed', 'limit'] },
        no: { says: 'It does not', fits: ['drive', 'fuse', 'tripped', 'output'] },
      },
    },
  },
});
