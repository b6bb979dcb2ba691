import { TORQUE_OFF_CHANNELS } from '../../../parts/torque-off.ts';
import { own } from '../../../quantity/own.ts';
import { type Draft, known, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import type { PartFacts } from '../part-facts.ts';
import { amount, choice, count, mostly, type SettingSpecs, type Settings } from '../setting.ts';
import type { MotorPhase, Nature } from '../types.ts';
import { contact, RATING } from './contacts.ts';
import { encoderInputs } from './encoder-lines.ts';
import {
  differentialInput,
  INPUT_LEVELS,
  logicInput,
  OPTO_SETTINGS,
  optoInput,
  plcInput,
  yes,
  yesNo,
} from './io.ts';
import { CHARGES, HEATS, LEAKS, SHAPES } from './mains-side.ts';
import { MOTORS, phaseMarks } from './motor-leads.ts';
import { READS, readerTerminals } from './speed-and-angle.ts';

const BASE: SettingSpecs = {
  feed: choice('what feeds it', ['dc bus', 'mains'], 'dc bus'),
  volts: mostly(amount('voltage it is fed with', 'V'), '10 V', '700 V'),
  'least-volts': mostly(amount('lowest supply voltage', 'V'), '10 V', '600 V'),
  'most-volts': mostly(amount('highest supply voltage', 'V'), '12 V', '900 V'),
  'supply-current': mostly(amount('current it takes from its supply', 'A'), '0.1 A', '200 A'),
  phases: choice('phases of its mains', ['one', 'three'], 'one'),
  command: choice('how it is commanded', ['pulses', 'volts', '0 to 10 V', 'none'], 'none'),
  'input-level': choice('level of its command inputs', INPUT_LEVELS),
  ...OPTO_SETTINGS,
  'pulse-rate': mostly(amount('highest pulse rate it takes', 'Hz'), '10 kHz', '20 MHz'),
  motor: choice('motor it feeds', MOTORS),
  'motor-current': mostly(amount('continuous current to the motor', 'A'), '0.1 A', '200 A'),
  feedback: choice('encoder it reads', ['none', 'differential', 'single-ended', 'open collector'], 'none'),
  'encoder-volts': amount('voltage it feeds the encoder with', 'V', '5 V'),
  'encoder-current': amount('current it gives the encoder', 'A'),
  'encoder-rate': mostly(amount('highest line rate it reads', 'Hz'), '10 kHz', '50 MHz'),
  termination: amount('resistor across each encoder pair inside', 'Ω'),
  ...READS,
  enable: yesNo('has an enable input that is used', 'yes'),
  'enable-type': choice('type of its enable input', ['type 1', 'type 2', 'type 3'], 'type 1'),
  'enable-current': amount('current of its enable input', 'A'),
  sto: count('channels of safe torque off', '0', 2),
  'brake-output': yesNo('has a contact for the brake'),
  'ready-output': yesNo('has a contact that tells it is ready'),
  'at-speed-output': yesNo('has a contact that closes once the set speed is reached'),
  direction: yesNo('has inputs for forward and reverse'),
  dump: yesNo('has terminals for a brake resistor'),
  ...RATING,
  ...SHAPES,
  ...LEAKS,
  ...CHARGES,
  ...HEATS,
};

/** Channels of safe torque off, as the drive itself is known to have them. */
const torqueOffOf = (part: PartFacts): string | undefined => {
  const channels = own(TORQUE_OFF_CHANNELS, part.choice('torqueOff') ?? '');
  return channels === undefined ? undefined : String(channels);
};

const some = (value: number | undefined, unit: string) =>
  value === undefined ? undefined : `${value} ${unit}`;

export const drive: WiringKind = wiringKind({
  id: 'drive',
  name: 'drive',
  says: 'Feeds a servo or stepper motor, and obeys pulses or ±10 V.',
  letter: 'T',
  exposed: true,
  settings: BASE,
  fromPart: (part) => {
    const feedbacks = part.choices('feedbacks');
    const motors = part.choices('motors');
    const rate = part.value('highestEdgeRate');
    const hasEncoder = feedbacks.some((each) => each.startsWith('encoder'));
    return {
      command: part.choice('command'),
      'input-level': part.choice('inputLevel'),
      'pulse-rate': some(part.value('highestPulseRate'), 'Hz'),
      'least-volts': some(part.value('lowestVoltage'), 'V'),
      'most-volts': some(part.value('highestVoltage'), 'V'),
      'motor-current': some(part.value('continuousCurrent'), 'A'),
      motor: motors.length === 1 ? motors[0] : undefined,
      'encoder-volts': some(part.value('feedbackSupply'), 'V'),
      resolver: feedbacks.includes('resolver') && !hasEncoder ? 'yes' : undefined,
      tacho: feedbacks.includes('tacho') && !hasEncoder ? 'yes' : undefined,
      sto: torqueOffOf(part),
      'encoder-rate': some(rate === undefined ? undefined : rate / 4, 'Hz'),
      feedback: feedbacks.includes('encoder-differential')
        ? 'differential'
        : feedbacks.includes('encoder-single')
          ? 'single-ended'
          : 'none',
    };
  },
  terminals: (s) => driveTerminals(s),
});

export const inverter: WiringKind = wiringKind({
  ...drive,
  id: 'inverter',
  name: 'inverter',
  says: 'Makes three phases of changing frequency for the spindle motor.',
  settings: {
    ...BASE,
    feed: choice('what feeds it', ['mains', 'dc bus'], 'mains'),
    command: choice('how it is commanded', ['0 to 10 V', 'volts', 'pulses', 'none'], '0 to 10 V'),
    motor: choice('motor it feeds', MOTORS, 'induction'),
    direction: yesNo('has inputs for forward and reverse', 'yes'),
  },
  fromPart: (part) => {
    const type = part.choice('type');
    const command = part.choice('command');
    return {
      volts: some(part.value('inputVoltage'), 'V'),
      phases: part.choice('inputPhases') === 'three' ? 'three' : part.choice('inputPhases') && 'one',
      'motor-current': some(part.value('continuousCurrent'), 'A'),
      motor: type === 'dc' ? 'brushed' : type === 'servo' ? 'brushless' : undefined,
      command: command === 'both-volts' ? 'volts' : command === 'volts' ? '0 to 10 V' : command && 'none',
      direction: command === 'volts' ? 'yes' : command && 'no',
      sto: torqueOffOf(part),
    };
  },
});

function driveTerminals(s: Settings): readonly Draft[] {
  const made: Draft[] = [...power(s)];
  const plc = (mark: string, name: string, signal = '') =>
    made.push({
      mark,
      name,
      nature: plcInput('sinking', textOf(s, 'enable-type'), numberOf(s, 'enable-current')),
      common: 'COM',
      group: 'io',
      signal,
      needed: mark === 'EN' || mark.startsWith('STO'),
    });
  if (yes(s, 'enable')) plc('EN', 'enable, 24 V', 'enable');
  for (let n = 1; n <= (numberOf(s, 'sto') ?? 0); n++) plc(`STO${n}`, `safe torque off ${n}, 24 V`);
  if (yes(s, 'direction')) {
    plc('FWD', 'forward, 24 V', 'forward');
    plc('REV', 'reverse, 24 V', 'reverse');
  }
  if (made.some(({ group }) => group === 'io'))
    made.push({
      mark: 'COM',
      name: 'common of its inputs',
      nature: { kind: 'common', of: 'inputs' },
      group: 'io',
    });
  if (yes(s, 'brake-output'))
    made.push(...contact('33', '34', { closes: 'when-on', role: 'signal', moved: 'logic' }, s));
  if (yes(s, 'ready-output'))
    made.push(...contact('43', '44', { closes: 'when-on', role: 'signal', moved: 'logic' }, s));
  if (yes(s, 'at-speed-output'))
    made.push(...contact('53', '54', { closes: 'when-on', role: 'signal', moved: 'logic' }, s));
  made.push(...command(s), ...motor(s));
  if (yes(s, 'dump'))
    for (const [mark, other] of [
      ['R1', 'R2'],
      ['R2', 'R1'],
    ] as const)
      made.push({ mark, name: 'brake resistor', nature: { kind: 'resistor' }, with: other, group: 'power' });
  const feedback = textOf(s, 'feedback');
  if (feedback !== 'none' && feedback !== '')
    made.push(
      ...encoderInputs(
        'E-',
        feedback,
        known({
          volts: numberOf(s, 'encoder-volts'),
          amps: numberOf(s, 'encoder-current'),
          frequency: numberOf(s, 'encoder-rate'),
          termination: numberOf(s, 'termination'),
        }),
      ),
    );
  made.push(...readerTerminals(s));
  return made;
}

function power(s: Settings): readonly Draft[] {
  const earth: Draft = {
    mark: 'PE',
    name: 'protective earth',
    nature: { kind: 'earth', role: 'device' },
    needed: true,
  };
  const amps = numberOf(s, 'supply-current');
  if (textOf(s, 'feed') === 'mains') {
    const volts = numberOf(s, 'volts');
    const takes = (mark: string, pole: 'L1' | 'L2' | 'L3' | 'N', name: string): Draft => ({
      mark,
      name,
      nature: { kind: 'mains', side: 'takes', pole, ...known({ volts, amps }) },
      group: 'power',
      needed: true,
    });
    return textOf(s, 'phases') === 'three'
      ? [
          takes('L1', 'L1', 'mains, L1'),
          takes('L2', 'L2', 'mains, L2'),
          takes('L3', 'L3', 'mains, L3'),
          earth,
        ]
      : [takes('L', 'L1', 'mains, phase'), takes('N', 'N', 'mains, neutral'), earth];
  }
  const feed = (pole: 'plus' | 'minus'): Nature => ({
    kind: 'feed',
    pole,
    role: 'power',
    ...known({
      volts: numberOf(s, 'volts'),
      least: numberOf(s, 'least-volts'),
      most: numberOf(s, 'most-volts'),
      amps,
    }),
  });
  return [
    { mark: 'DC+', name: 'power, plus', nature: feed('plus'), with: 'DC-', group: 'power', needed: true },
    { mark: 'DC-', name: 'power, minus', nature: feed('minus'), with: 'DC+', group: 'power', needed: true },
    earth,
  ];
}

function command(s: Settings): readonly Draft[] {
  const level = textOf(s, 'input-level');
  switch (textOf(s, 'command')) {
    case 'pulses':
      return (['step', 'dir'] as const)
        .flatMap((what) => pulseInput(what, level, s))
        .concat(
          level === 'ttl-5v' || level === 'logic-3v3'
            ? [
                {
                  mark: 'GND',
                  name: '0 V of the pulse inputs',
                  nature: { kind: 'common', of: 'inputs' },
                  group: 'pulse',
                },
              ]
            : [],
        );
    case 'volts':
    case '0 to 10 V': {
      const low = textOf(s, 'command') === 'volts' ? -10 : 0;
      const nature = (leg: 'plus' | 'minus'): Nature => ({
        kind: 'analogue-input',
        leg,
        low,
        high: 10,
        most: 15,
        ohms: 20000,
      });
      return [
        {
          mark: 'CMD+',
          name: 'command, plus',
          nature: nature('plus'),
          with: 'CMD-',
          group: 'command',
          signal: 'command+',
          needed: true,
        },
        {
          mark: 'CMD-',
          name: 'command, minus',
          nature: nature('minus'),
          with: 'CMD+',
          group: 'command',
          signal: 'command-',
          needed: true,
        },
        {
          mark: 'CMD-SH',
          name: 'command, shield',
          nature: { kind: 'shield', earthed: true },
          group: 'command',
          signal: 'shield',
        },
      ];
    }
    default:
      return [];
  }
}

function pulseInput(what: 'step' | 'dir', level: string, s: Settings): readonly Draft[] {
  const mark = what.toUpperCase();
  const name = what === 'step' ? 'pulses' : 'direction';
  const rate = what === 'step' ? numberOf(s, 'pulse-rate') : undefined;
  if (level === 'ttl-5v' || level === 'logic-3v3')
    return [
      {
        mark,
        name,
        nature: logicInput(level, rate),
        common: 'GND',
        group: 'pulse',
        signal: what,
        needed: true,
      },
    ];
  return (['plus', 'minus'] as const).map((half) => ({
    mark: `${mark}${half === 'plus' ? '+' : '-'}`,
    name: `${name}, ${half}`,
    nature:
      level === 'differential'
        ? differentialInput(half, numberOf(s, 'termination'), rate)
        : level === 'opto-5v' || level === 'opto-24v'
          ? optoInput(s, level === 'opto-5v' ? 5 : 24, half, rate)
          : { kind: 'unclear' as const },
    with: `${mark}${half === 'plus' ? '-' : '+'}`,
    group: what,
    signal: `${what}${half === 'plus' ? '+' : '-'}`,
    needed: true,
  }));
}

function motor(s: Settings): readonly Draft[] {
  const of = textOf(s, 'motor') as MotorPhase['of'] | '';
  if (of === '') return [];
  return [
    ...phaseMarks(of).map(
      (mark): Draft => ({
        mark,
        name: `motor, ${mark}`,
        nature: { kind: 'motor-phase', side: 'gives', of, ...known({ amps: numberOf(s, 'motor-current') }) },
        group: 'power',
        signal: `motor-${mark}`,
        needed: true,
      }),
    ),
    {
      mark: 'M-SH',
      name: 'motor cable, shield',
      nature: { kind: 'shield', earthed: true },
      group: 'power',
      signal: 'motor-shield',
    },
  ];
}
