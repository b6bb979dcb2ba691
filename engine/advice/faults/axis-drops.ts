import { symptom } from './types.ts';

const PROP =
  'It can fall at any moment: a solid block or stand under the slide that carries its whole weight, nobody beneath, no hand in the gap.';
const PROP_LIVE = `${PROP} Drives on only with the block in place and a hand on the emergency stop.`;

export const axisDrops = symptom({
  id: 'axis-drops',
  title: 'An axis drops, sags or creeps down',
  about:
    'A vertical or sloping axis falls or sinks. Before anything else prop it: a solid block or stand under the slide that carries its whole weight, and nobody beneath it. Use the machine no more until the cause is found.',
  words: 'falls fell sinks slips down comes lets go vertical head quill knee brake balance counterweight',
  ask: 'somebody who repairs brakes and drives of vertical axes, before it is used again',
  causes: {
    worn: {
      says: 'The brake’s lining is worn, oily or set with too wide a gap: it slips',
      is: 'dead',
      often: 6,
      mend: 'Clean and set it by its sheet, else a new brake. It should hold at least twice the weight; prove it with the slide propped just below.',
    },
    'kept-open': {
      says: 'The brake is kept open: its relay sticks, or its supply stays on when the drives go off',
      is: 'dead',
      often: 3,
      mend: 'Replace the relay, or let the stop circuit itself take the supply away from the brake.',
    },
    late: {
      says: 'The brake closes too late: the drive lets go while the brake is still open',
      is: 'asleep',
      often: 5,
      mend: 'Let the drive hold until the brake has closed (its brake delay). A plain diode across the coil keeps it open for long; a diode with a Zener diode, or a varistor, lets go sooner.',
    },
    enable: {
      says: 'The brake opens before the drive holds, or the drive loses its enable while the brake is open',
      is: 'asleep',
      often: 4,
      mend: 'Open the brake only by the drive’s own “I hold” output, and shut it with the same; then look for the broken core or contact of the enable.',
    },
    weak: {
      says: 'Drive or motor hold too little: current limit too low, drive trips, magnets weak',
      is: 'dead',
      often: 3,
      mend: 'Set the current limit for the weight plus friction; bench tests of motor constant and drive after that.',
    },
    balance: {
      says: 'The balance is gone: cylinder without pressure, or chain or weight off',
      is: 'asleep',
      often: 5,
      mend: 'Pressure by the plate, then the seals and the accumulator; look at every link of the chain. Gas under pressure is for somebody who knows it.',
    },
    link: {
      says: 'What joins motor and screw slips: belt, coupling, key or clamp',
      is: 'dead',
      often: 4,
      mend: 'Replace belt or coupling, clamp and key anew. A brake on the motor cannot hold what the belt lets go.',
    },
    'no-brake': {
      says: 'Nothing holds it without power: no brake is fitted, and the lead of the screw is steep enough to run back (any ball screw does)',
      is: 'asleep',
      often: 3,
      mend: 'Fit a brake that closes without power, on the screw rather than before a belt.',
    },
    nut: {
      says: 'Nut or thrust bearing of the screw has play or is worn through',
      is: 'dead',
      often: 2,
      mend: 'Do not move it again: a worn nut can strip. New nut or bearing first.',
    },
  },
  tests: {
    when: {
      question: 'When does it drop?',
      how: 'From what you saw. Do not try it again for this.',
      tool: 'memory',
      caution: PROP,
      trouble: 1,
      answers: {
        off: {
          says: 'When the drives go off, at the emergency stop, or while it stands without power',
          fits: ['worn', 'kept-open', 'late', 'link', 'no-brake'],
        },
        on: { says: 'At the moment the drives come on', fits: ['enable', 'weak', 'balance', 'link'] },
        held: {
          says: 'While the drive holds or moves it',
          fits: ['weak', 'balance', 'link', 'nut', 'enable'],
        },
      },
    },
    far: {
      question: 'How far and how fast?',
      how: 'From what you saw, or from the mark it left. Do not try it again for this.',
      tool: 'memory',
      caution: PROP,
      trouble: 1,
      answers: {
        jolt: { says: 'A jolt of some millimetres, then it holds', fits: ['late', 'enable', 'nut'] },
        falls: {
          says: 'It falls until something stops it',
          fits: ['kept-open', 'no-brake', 'link', 'enable', 'worn'],
        },
        sinks: { says: 'It sinks slowly', fits: ['worn', 'weak', 'balance', 'no-brake'] },
      },
    },
    fitted: {
      question: 'Is there a brake on this axis?',
      how: 'Look at plate and cable of the motor (two more cores, “brake” and volts on the plate), and at the far end of the screw.',
      tool: 'eyes, a lamp',
      caution: PROP,
      trouble: 1,
      answers: {
        no: { says: 'No', fits: ['no-brake', 'weak', 'balance', 'link', 'nut'] },
        yes: {
          says: 'Yes',
          fits: ['worn', 'kept-open', 'late', 'enable', 'weak', 'balance', 'link', 'nut'],
        },
      },
    },
    'coil-off': {
      question: 'Are there volts on the brake’s coil while the drives are off?',
      how: 'Slide propped, control on, drives off: a meter across the two brake cores.',
      tool: 'meter',
      caution: PROP_LIVE,
      trouble: 2,
      answers: {
        volts: { says: 'Yes, the volts on its plate or near them', fits: ['kept-open'] },
        none: {
          says: 'No, or there is no brake',
          fits: ['worn', 'late', 'enable', 'weak', 'balance', 'link', 'nut', 'no-brake'],
        },
      },
    },
    'shaft-moves': {
      question: 'When the slide sinks, does the motor’s shaft turn with it?',
      how: 'Chalk across motor, coupling or belt, and screw. Lower the slide by its jack or block some millimetres and look which mark has moved.',
      tool: 'chalk, a jack',
      caution: PROP,
      trouble: 3,
      answers: {
        apart: { says: 'The screw turned and the motor did not', fits: ['link'] },
        still: { says: 'Nothing turned, the slide came down by itself', fits: ['nut'] },
        together: {
          says: 'All turned together, or it stayed up',
          fits: ['worn', 'kept-open', 'late', 'enable', 'weak', 'balance', 'no-brake'],
        },
      },
    },
    'balance-there': {
      question: 'Is the balance as it should be?',
      how: 'Read the pressure against the plate; look at chain, rope and weight from the side, never from below.',
      tool: 'eyes, the plate',
      caution: PROP,
      trouble: 1,
      answers: {
        gone: { says: 'Pressure low, or chain or weight off', fits: ['balance'] },
        right: {
          says: 'It is right, or the machine never had one',
          fits: ['worn', 'kept-open', 'late', 'enable', 'weak', 'link', 'nut', 'no-brake'],
        },
      },
    },
    play: {
      question: 'Can the slide be lifted without the screw turning?',
      how: 'Drives off: a dial indicator on the slide, lift it a little with a bar against the block and let it down again.',
      tool: 'dial indicator, bar',
      caution: PROP,
      trouble: 2,
      answers: {
        play: { says: 'Yes, by more than a tenth of a millimetre', fits: ['nut'] },
        none: {
          says: 'No',
          fits: ['worn', 'kept-open', 'late', 'enable', 'weak', 'balance', 'link', 'no-brake'],
        },
      },
    },
    'which-first': {
      question: 'When the drives come on, does the brake open before the drive holds?',
      how: 'On the block: one person listens at the brake for its click, one watches the drive’s lamp. Twice or three times.',
      tool: 'ears, the drive’s lamp',
      caution: PROP_LIVE,
      trouble: 2,
      answers: {
        brake: { says: 'The brake is first, or the lamp goes out in between', fits: ['enable'] },
        drive: {
          says: 'The drive is first, or there is no brake',
          fits: ['worn', 'kept-open', 'late', 'weak', 'balance', 'link', 'nut', 'no-brake'],
        },
      },
    },
    'closes-last': {
      question: 'When the drives go off, does the drive let go before the brake clicks shut?',
      how: 'On the block, the same two people: look which is first, lamp out or click.',
      tool: 'ears, the drive’s lamp',
      caution: PROP_LIVE,
      trouble: 2,
      answers: {
        late: { says: 'The lamp is out first, then the click', fits: ['late'] },
        sound: {
          says: 'The click is first, or there is none',
          fits: ['worn', 'kept-open', 'enable', 'weak', 'balance', 'link', 'nut', 'no-brake'],
        },
      },
    },
    alarm: {
      question: 'Does the drive show an alarm or its current limit while it holds?',
      how: 'Its lamps or display against its manual, slide just above the block.',
      tool: 'the drive’s manual',
      caution: PROP_LIVE,
      trouble: 2,
      answers: {
        limit: { says: 'Yes', fits: ['weak'] },
        calm: {
          says: 'No',
          fits: ['worn', 'kept-open', 'late', 'enable', 'balance', 'link', 'nut', 'no-brake'],
        },
      },
    },
    holds: {
      question: 'Does the closed brake hold the shaft it sits on?',
      how: 'Locked off, weight on the block: a torque wrench on shaft or screw, up to the torque on the brake’s plate.',
      tool: 'torque wrench',
      caution: PROP,
      trouble: 3,
      answers: {
        slips: { says: 'It slips before that', fits: ['worn'] },
        holds: {
          says: 'It holds, or there is no brake',
          fits: ['kept-open', 'late', 'enable', 'weak', 'balance', 'link', 'nut', 'no-brake'],
        },
      },
    },
  },
});
