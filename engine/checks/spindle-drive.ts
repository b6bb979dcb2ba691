/** Drive, motor and mains of the spindle: do they suit each other, and is there current enough. */
import { driveInput } from '../handbook/drive-input.ts';
import { voltsBand } from '../handbook/volts-band.ts';
import { type Check, type Facts, ifChoice, ifKnown } from './check.ts';
import { fact, policy, stated, table, when } from './refs.ts';
import {
  BELT_EFFICIENCY,
  bestCool,
  bestForHours,
  cut,
  DRIVE_VOLTS,
  MOTOR_CURRENT,
  MOTOR_EFFICIENCY,
  MOTOR_VOLTS,
} from './spindle-chain.ts';
import { spindleWorking } from './working.ts';

const LIVE =
  'Mains and the capacitors of a drive can kill, minutes after the plug is out. Wait as long as the manual says and measure before you touch. Fixed mains wiring, and the choice of breaker and residual-current device, is for a licensed electrician under your local code.';

const motorBand = spindleWorking('motor-band', 'Volts that will do for the motor', voltsBand, {
  U: MOTOR_VOLTS,
  k: policy('motor-volts'),
});

const inputBand = spindleWorking('input-band', 'Mains that will do for the drive', voltsBand, {
  U: fact('spindle-drive', 'inputVoltage'),
  k: policy('motor-volts'),
});

const inputFactor = table(
  'spindle-drive',
  'inputPhases',
  '1',
  { single: '0.65 ± 0.08', three: '0.75 ± 0.1' },
  'from memory: a rectifier with capacitors behind it, without a choke',
);

const intake = spindleWorking('drive-input', 'Current from the mains at the heaviest cut', driveInput, {
  P: fact('spindle-duty', 'cutPower'),
  eta_g: BELT_EFFICIENCY,
  eta_m: MOTOR_EFFICIENCY,
  eta_d: table(
    'spindle-drive',
    'type',
    '%',
    { inverter: '95 ± 2 %', dc: '95 ± 2 %', servo: '93 ± 3 %', line: '100 %' },
    'from memory: usual values of the trade',
  ),
  k: when('spindle-drive', 'type', {
    inverter: inputFactor,
    servo: inputFactor,
    dc: stated('0.6', '1', 'from memory: thyristors at part voltage'),
    line: fact('spindle-motor', 'powerFactor'),
  }),
  U: when('spindle-drive', 'type', {
    inverter: fact('spindle-drive', 'inputVoltage'),
    dc: fact('spindle-drive', 'inputVoltage'),
    servo: fact('spindle-drive', 'inputVoltage'),
    line: fact('site', 'lineVoltage'),
  }),
});

const MADE_FOR: Readonly<Record<string, string>> = {
  inverter: 'induction',
  dc: 'dc',
  servo: 'servo',
  line: 'induction',
};

const suits = (facts: Facts) => {
  const drive = facts.choice('spindle-drive', 'type');
  const motor = facts.choice('spindle-motor', 'type');
  if (drive === undefined || motor === undefined) return undefined;
  const words = `${facts.say('spindle-motor', 'type', motor)}`;
  if (MADE_FOR[drive] === motor)
    return { answer: 'yes' as const, sentence: `What feeds it is made for a ${words}.` };
  return {
    answer: 'no' as const,
    sentence:
      drive === 'line'
        ? `Straight across the mains runs only a three-phase induction motor, and this is a ${words}.`
        : `The motor is a ${words}, but the ${facts.say('spindle-drive', 'type', drive)} is made for a ${facts.say('spindle-motor', 'type', MADE_FOR[drive]!)}.`,
  };
};

const phases = (facts: Facts) => {
  const wants = facts.choice('spindle-drive', 'inputPhases');
  if (wants === 'single')
    return { answer: 'yes' as const, sentence: 'The drive works on one phase, which every workshop has.' };
  const has = facts.choice('site', 'phases');
  if (wants === undefined || has === undefined) return undefined;
  if (has === 'three')
    return { answer: 'yes' as const, sentence: 'The drive wants three phases, and they are there.' };
  return has === 'converter'
    ? {
        answer: 'tight' as const,
        sentence:
          'The drive wants three phases and gets them from a converter: the third is weaker than the others, and some drives trip on that. Ask for an inverter that works on one phase instead.',
      }
    : {
        answer: 'no' as const,
        sentence:
          'The drive wants three phases, and the workshop has one. An inverter for one phase makes three for the motor by itself; or this drive may do it at half its current: ask its maker.',
      };
};

const field = (facts: Facts) => {
  const guard = facts.choice('spindle-drive', 'fieldGuard');
  if (guard === undefined) return undefined;
  if (guard === 'none')
    return {
      answer: 'no' as const,
      sentence:
        'Nothing watches the field. A shunt motor that loses its field runs away until it flies apart: a field-loss relay in the stop circuit is not a luxury.',
    };
  return {
    answer: 'yes' as const,
    sentence:
      guard === 'relay'
        ? 'The armature is cut off when the field is lost. Try it once at low speed, chuck off.'
        : 'With permanent magnets there is no field to lose.',
  };
};

const checks: readonly Check[] = [
  {
    form: 'fact',
    id: 'spindle-suits',
    scope: 'spindle',
    title: 'Spindle drive and motor',
    place: 'spindle-drive',
    judge: suits,
    why: 'Inverters feed induction motors, DC drives feed armature and field, servo drives need magnets and an encoder. The wrong one does not turn the motor, and may burn it.',
  },
  {
    form: 'fact',
    id: 'spindle-phases',
    scope: 'spindle',
    title: 'Phases of the mains',
    place: 'spindle-drive',
    judge: phases,
    caution: LIVE,
    why: 'Many old machines want three phases and many workshops have one. It is the first thing to know before a drive is bought.',
  },
  {
    form: 'band',
    id: 'spindle-mains',
    scope: 'spindle',
    title: 'Mains volts of the spindle drive',
    place: 'spindle-drive',
    caution: LIVE,
    onlyIf: [ifChoice('spindle-drive', 'type', 'inverter', 'dc', 'servo')],
    value: when('spindle-drive', 'inputPhases', {
      single: fact('site', 'mains'),
      three: fact('site', 'lineVoltage'),
    }),
    low: inputBand.get('U_low'),
    high: inputBand.get('U_high'),
    unit: 'V',
    tight: 'exact',
    why: 'Too little and it trips as soon as it must work; too much and its input burns the moment it is switched on.',
    saysLow: {
      fits: 'The mains have {there}; the drive wants {asked} or more.',
      tight: 'The mains have {there}; the drive wants {asked} or more.',
      fails: 'The mains have only {there}; the drive wants at least {asked}.',
    },
    saysHigh: {
      fits: 'The mains have {asked}; the drive stands {there}.',
      tight: 'The mains have {asked}; the drive stands {there}.',
      fails: 'The mains have {asked}, but the drive stands only {there}: do not connect it.',
    },
  },
  {
    form: 'band',
    id: 'winding-volts',
    scope: 'spindle',
    title: 'Star or delta: volts of the winding',
    place: 'spindle-motor',
    caution: LIVE,
    value: DRIVE_VOLTS,
    low: motorBand.get('U_low'),
    high: motorBand.get('U_high'),
    unit: 'V',
    tight: 'exact',
    why: 'A motor for 230/400 V is connected in delta for 230 V and in star for 400 V. In star on 230 V its largest torque is a third, and above 29 Hz it runs out of volts; in delta on 400 V it burns in minutes. Old 230 V windings do not bear a 400 V drive.',
    saysLow: {
      fits: 'As it is connected the motor wants {asked} or more; it gets {there}.',
      tight: 'As it is connected the motor wants {asked} or more; it gets {there}.',
      fails:
        'As it is connected the motor wants at least {asked} and gets only {there}: its largest torque falls with the square, to a third for star where delta would be right. Change the bridges in its terminal box, or the drive.',
    },
    saysHigh: {
      fits: 'The motor gets {asked}; as it is connected it bears {there}.',
      tight: 'The motor gets {asked}; as it is connected it bears {there}.',
      fails:
        'The motor gets {asked}, but as it is connected it bears only {there}: the winding burns. Do not switch on before its bridges are changed.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-current',
    scope: 'spindle',
    title: 'Current of the drive for the motor',
    place: 'spindle-drive',
    onlyIf: [ifChoice('spindle-drive', 'type', 'inverter', 'dc', 'servo')],
    demand: MOTOR_CURRENT,
    capacity: fact('spindle-drive', 'continuousCurrent'),
    unit: 'A',
    tight: 'exact',
    why: 'A drive is bought by its amperes, not by the kilowatts on its front: old motors and motors in delta take more than the new one the maker had in mind.',
    says: {
      fits: 'As it is connected the motor takes {asked}; the drive gives {there} for hours.',
      tight: 'As it is connected the motor takes {asked}; the drive gives {there} for hours.',
      fails:
        'As it is connected the motor takes {asked}, but the drive gives only {there} for hours: the motor never gives its power.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-breaker',
    scope: 'spindle',
    title: 'Current from the mains',
    place: 'spindle-drive',
    caution: LIVE,
    demand: when('spindle-drive', 'inputPhases', { single: intake.get('I_1'), three: intake.get('I_3') }),
    capacity: fact('site', 'breaker'),
    unit: 'A',
    tight: 'margin',
    why: 'On one phase a drive takes about twice the amperes its power would need, in gulps. The axes and the coolant pump hang on the same breaker.',
    says: {
      fits: 'At the heaviest cut the drive takes about {asked} from the mains; the breaker is {there}.',
      tight:
        'At the heaviest cut the drive takes about {asked} from the mains; the breaker is {there}, and the rest of the machine hangs on it as well.',
      fails:
        'At the heaviest cut the drive takes about {asked} from the mains, more than the {there} of the breaker: it trips in the middle of the cut.',
    },
  },
  {
    form: 'fact',
    id: 'field-loss',
    scope: 'spindle',
    title: 'Loss of the field',
    place: 'spindle-drive',
    judge: field,
    onlyIf: [ifChoice('spindle-motor', 'type', 'dc')],
    caution: 'Never open the field circuit of a running motor.',
    why: 'The weaker the field of a DC motor, the faster it must turn. With no field at all there is no end to it.',
  },
  {
    form: 'ratio',
    id: 'spindle-torque',
    scope: 'spindle',
    title: 'Torque for the heaviest cut',
    place: 'spindle-motor',
    demand: cut.get('T'),
    capacity: bestCool.get('T'),
    unit: 'N·m',
    tight: 'margin',
    why: 'The kilowatts of the plate are there only near the motor’s rated speed. At a low speed in a fast range there is next to nothing: that is what belts and gears are for.',
    says: {
      fits: 'The heaviest cut asks {asked} at the spindle; in its best range there are {there}, drag taken off.',
      tight:
        'The heaviest cut asks {asked} at the spindle; in its best range there are {there}, drag taken off.',
      fails:
        'The heaviest cut asks {asked} at the spindle, but in its best range there are only {there}: the spindle stalls.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-cooling',
    scope: 'spindle',
    title: 'Cooling of the motor at that speed',
    place: 'spindle-motor',
    demand: cut.get('T'),
    capacity: bestForHours.get('T'),
    unit: 'N·m',
    tight: 'margin',
    why: 'A fan on the motor’s own shaft hardly blows when the motor turns slowly. Heavy cuts at low speed in a fast range cook the winding without tripping anything.',
    says: {
      fits: 'The heaviest cut asks {asked}; with the air the motor gets at that speed it bears {there} for hours.',
      tight:
        'The heaviest cut asks {asked}; with the air the motor gets at that speed it bears {there} for hours.',
      fails:
        'The heaviest cut asks {asked}, but with the air the motor gets at that speed it bears only {there} for hours: short cuts only, a slower range, or a fan of its own.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-insulation',
    scope: 'spindle',
    title: 'Insulation of the spindle motor',
    place: 'spindle-motor',
    caution: LIVE,
    onlyIf: [
      ifKnown(
        'spindle-motor',
        'insulation',
        'Nobody has measured it yet. Do it before an old motor goes on a new drive.',
      ),
    ],
    demand: stated('1 MΩ', 'MΩ', 'IEC 60204-1, test at 500 V d.c.: not below 1 MΩ'),
    capacity: fact('spindle-motor', 'insulation'),
    unit: 'MΩ',
    tight: 'margin',
    why: 'An inverter hits the winding with steep edges thousands of times a second. A damp or charred winding that still ran on the mains dies of it, and takes the inverter along.',
    says: {
      fits: 'The winding has {there} to the frame; {asked} is the least.',
      tight: 'The winding has {there} to the frame; {asked} is the least. Dry it and measure again.',
      fails:
        'The winding has only {there} to the frame; {asked} is the least. Dry it for a day at 80 °C and measure again, before any drive is connected.',
    },
  },
];

export const spindleDrives = { workings: [motorBand, inputBand, intake], checks };
