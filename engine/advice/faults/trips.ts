import { BUS, MAINS, symptom } from './types.ts';

export const trips = symptom({
  id: 'trips',
  title: 'It trips the breaker',
  about: 'The breaker or the residual-current device goes when the machine is switched on or does something.',
  words: 'fuse fuses rcd blows smoke burns burnt smell hot sparks bang short earth leakage power',
  ask: 'an electrician with an insulation tester and a leakage clamp',
  causes: {
    inrush: {
      says: 'Inrush of a big transformer or of empty capacitors',
      is: 'asleep',
      often: 5,
      mend: 'A breaker of a slower curve, or a soft start; for an electrician to choose.',
    },
    filter: {
      says: 'Leakage of mains filters and drives trips a sensitive residual-current device',
      is: 'asleep',
      often: 4,
      mend: 'A circuit of its own with the device the drives’ manual asks for; for an electrician under the local code.',
    },
    small: {
      says: 'The breaker is too small for what the machine draws',
      is: 'asleep',
      often: 2,
      mend: 'A stronger circuit, by an electrician.',
    },
    earth: {
      says: 'Something live touches the frame: wet motor, chafed lead, heater',
      is: 'dead',
      often: 4,
      mend: 'Find it with the insulation tester, part by part; it must not be run before.',
    },
    rectifier: {
      says: 'A shorted rectifier, capacitor or drive',
      is: 'dead',
      often: 4,
      mend: 'Measure bridge and drive inputs; replace what is shorted.',
    },
    motor: {
      says: 'A motor or its cable is shorted',
      is: 'dead',
      often: 2,
      mend: 'Ohms and insulation of each motor; replace cable or motor.',
    },
    wiring: {
      says: 'A lead is landed wrong, after work in the cabinet',
      is: 'asleep',
      often: 3,
      mend: 'Compare with the drawing before anything is switched on again.',
    },
  },
  tests: {
    which: {
      question: 'Which trips: the overcurrent breaker or the residual-current device?',
      how: 'Look which lever is down; the one with a test button is the residual-current device.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        over: { says: 'The breaker', fits: ['inrush', 'small', 'rectifier', 'motor', 'wiring', 'earth'] },
        residual: { says: 'The one with the test button', fits: ['filter', 'earth', 'wiring', 'motor'] },
      },
    },
    when: {
      question: 'When does it trip?',
      how: 'From what was seen; do not switch on again and again.',
      tool: 'memory',
      trouble: 1,
      answers: {
        sometimes: { says: 'At switch-on, not every time', fits: ['inrush', 'filter'] },
        always: {
          says: 'At switch-on, every time',
          fits: ['rectifier', 'wiring', 'earth', 'filter', 'inrush'],
        },
        work: { says: 'Under load, after a while', fits: ['small', 'motor', 'earth', 'filter'] },
        motion: { says: 'When one motor starts', fits: ['motor', 'earth', 'small'] },
      },
    },
    worked: {
      question: 'Was anything wired since it last held?',
      how: 'Ask everybody who had the cabinet open.',
      tool: 'a question',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['wiring', 'inrush', 'filter', 'small', 'earth', 'rectifier', 'motor'] },
        no: { says: 'No', fits: ['inrush', 'filter', 'small', 'earth', 'rectifier', 'motor'] },
      },
    },
    'wet-weather': {
      question: 'Is it worse in damp weather, or after the coolant ran?',
      how: 'Think back; look for coolant at motors, plugs and heaters.',
      tool: 'eyes',
      trouble: 1,
      answers: {
        yes: { says: 'Yes', fits: ['earth'] },
        no: { says: 'No', fits: ['inrush', 'filter', 'small', 'earth', 'rectifier', 'motor', 'wiring'] },
      },
    },
    insulation: {
      question: 'What does an insulation test of the whole machine to its frame say?',
      how: 'Machine off the mains, electronics unplugged as its manual says; 500 V d.c. from all poles together to the frame, at least 1 MΩ (IEC 60204-1, 18.3).',
      tool: 'electrician with an insulation tester',
      caution: `${MAINS} The test itself puts 500 V on the leads.`,
      trouble: 4,
      answers: {
        bad: { says: 'Below 1 MΩ', fits: ['earth', 'motor', 'wiring'] },
        good: { says: 'Above', fits: ['inrush', 'filter', 'small', 'rectifier', 'motor', 'wiring'] },
      },
    },
    drawing: {
      question: 'Is every lead where the drawing says?',
      how: 'Locked off, lead by lead with the drawing; tick each one.',
      tool: 'drawing, pencil',
      caution: MAINS,
      trouble: 3,
      answers: {
        wrong: { says: 'One is not', fits: ['wiring'] },
        right: { says: 'All are', fits: ['inrush', 'filter', 'small', 'earth', 'rectifier', 'motor'] },
      },
    },
    unplug: {
      question: 'Does it hold with the supply of the drives unplugged?',
      how: 'Locked off, bus empty: take the leads to transformer or rectifier of the drives off and insulate them; then switch on once.',
      tool: 'screwdriver, insulating caps',
      caution: `${MAINS} ${BUS}`,
      trouble: 3,
      answers: {
        holds: { says: 'It holds', fits: ['inrush', 'rectifier', 'filter', 'small', 'motor'] },
        trips: { says: 'It still trips', fits: ['earth', 'wiring', 'filter', 'small'] },
      },
    },
    shorted: {
      question: 'Is the rectifier or the bus shorted?',
      how: 'Locked off, bus empty: diode range of the meter across each leg of the bridge, ohms across the bus (it rises while the meter charges it).',
      tool: 'meter',
      caution: BUS,
      trouble: 2,
      answers: {
        shorted: { says: 'Shorted', fits: ['rectifier'] },
        sound: { says: 'Sound', fits: ['inrush', 'filter', 'small', 'earth', 'motor', 'wiring'] },
      },
    },
    'one-motor': {
      question: 'Does it hold with that motor’s leads off its drive?',
      how: 'Bus empty: leads off and insulated, then the same again.',
      tool: 'screwdriver',
      caution: BUS,
      trouble: 3,
      answers: {
        holds: { says: 'It holds', fits: ['motor'] },
        trips: {
          says: 'It trips all the same',
          fits: ['inrush', 'filter', 'small', 'earth', 'rectifier', 'wiring'],
        },
      },
    },
    draw: {
      question: 'How does the current drawn compare with the breaker?',
      how: 'Clamp meter on each lead while it works.',
      tool: 'electrician with a clamp meter',
      caution: MAINS,
      trouble: 4,
      answers: {
        above: { says: 'At or above it', fits: ['small', 'motor'] },
        below: { says: 'Well below', fits: ['inrush', 'filter', 'earth', 'rectifier', 'wiring'] },
      },
    },
  },
});
