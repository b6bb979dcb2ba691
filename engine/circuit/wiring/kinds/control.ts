import { type Draft, known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice, count, mostly, type Settings, text } from '../setting.ts';
import type { Nature } from '../types.ts';
import { contact, RATING } from './contacts.ts';
import { encoderInputs } from './encoder-lines.ts';
import {
  differentialOutput,
  levelOutput,
  logicInput,
  OUTPUT_LEVELS,
  PLC_TYPES,
  plcInput,
  yes,
  yesNo,
} from './io.ts';
import { HEATS } from './mains-side.ts';

/** 'X Z' → ['X', 'Z'] */
export const namesOf = (settings: Settings, name: string): readonly string[] => [
  ...new Set(
    textOf(settings, name)
      .split(/[\s,;]+/)
      .filter((each) => /^[A-Za-z0-9]{1,12}$/.test(each)),
  ),
];

export const control = wiringKind({
  id: 'control',
  name: 'control',
  says: 'Reads the program; tells the drives where to go, and reads and switches what else is on the machine.',
  letter: 'A',
  exposed: true,
  settings: {
    volts: amount('voltage it is fed with', 'V', '24 V'),
    current: amount('current it takes', 'A'),
    'pulse-axes': text('axes it sends pulses to'),
    'volts-axes': text('axes it commands with ±10 V'),
    'output-level': choice('level of its pulse outputs', OUTPUT_LEVELS),
    'output-current': amount('current of one pulse output', 'A'),
    'output-low': amount('voltage left when a pulse output pulls down', 'V'),
    'output-withstands': amount('voltage an open collector stands', 'V'),
    'pulse-rate': mostly(amount('highest pulse rate', 'Hz'), '10 kHz', '20 MHz'),
    'five-volts': yesNo('gives 5 V out'),
    'five-volt-current': amount('current of its 5 V', 'A'),
    encoders: text('encoders it reads'),
    'encoder-lines': choice(
      'lines of its encoder inputs',
      ['differential', 'single-ended', 'open collector'],
      'differential',
    ),
    'encoder-volts': amount('voltage it feeds encoders with', 'V', '5 V'),
    'encoder-current': amount('current it gives one encoder', 'A'),
    'encoder-rate': mostly(amount('highest line rate it reads', 'Hz'), '10 kHz', '50 MHz'),
    termination: amount('resistor across each encoder pair inside', 'Ω'),
    inputs: count('inputs for 24 V', '8', 256),
    'input-form': choice('its 24 V inputs', ['sinking', 'sourcing', 'either way'], 'either way'),
    'input-type': choice('type of its 24 V inputs', PLC_TYPES, 'type 1'),
    'input-current': amount('current one 24 V input takes', 'A'),
    'inputs-5v': count('inputs for 5 V', '0', 64),
    outputs: count('outputs for 24 V', '4', 256),
    'output-form': choice('its 24 V outputs', ['sourcing', 'sinking'], 'sourcing'),
    relays: count('outputs that are free contacts', '0', 64),
    'switch-current': amount('current of one 24 V output', 'A'),
    'spindle-analogue': choice('analogue output for the spindle', ['none', '0 to 10 V', '±10 V'], 'none'),
    'stop-input': yesNo('has a stop input', 'yes'),
    'enable-output': yesNo('has an output that enables the drives', 'yes'),
    homes: count('inputs for home switches', '0', 6),
    ...RATING,
    ...HEATS,
  },
  fromPart: (part) => ({
    'output-level': part.choice('outputLevel'),
    'pulse-rate': hertz(part.value('highestPulseRate')),
    'encoder-rate': hertz(quarter(part.value('highestEdgeRate'))),
    inputs: whole(part.value('inputs-24v')),
    'inputs-5v': small(part.value('inputs-5v')),
    outputs: whole(part.value('outputs-24v')),
    relays: whole(part.value('outputs-relay')),
    'switch-current': amps(part.value('output-current')),
    'input-form': (
      { pnp: 'sinking', npn: 'sourcing', either: 'either way' } as Record<string, string | undefined>
    )[part.choice('inputs-take') ?? ''],
    'output-form': (
      { plus: 'sourcing', either: 'sourcing', minus: 'sinking' } as Record<string, string | undefined>
    )[part.choice('outputs-give') ?? ''],
  }),
  terminals: (s) => {
    const volts = numberOf(s, 'volts');
    const feed = (pole: 'plus' | 'minus'): Nature => ({
      kind: 'feed',
      pole,
      role: 'logic',
      ...known({ volts, amps: numberOf(s, 'current') }),
    });
    const made: Draft[] = [
      {
        mark: 'plus',
        name: 'supply, plus',
        nature: feed('plus'),
        with: 'minus',
        group: 'io',
        needed: true,
        holds: 4,
      },
      {
        mark: 'minus',
        name: 'supply, 0 V',
        nature: feed('minus'),
        with: 'plus',
        group: 'io',
        needed: true,
        holds: 4,
      },
      { mark: 'PE', name: 'protective earth', nature: { kind: 'earth', role: 'device' }, needed: true },
    ];
    const input = (mark: string, name: string, against: string, form: 'opto' | 'sinking' | 'sourcing') =>
      made.push({
        mark,
        name,
        nature: plcInput(form, textOf(s, 'input-type'), numberOf(s, 'input-current')),
        common: against,
        group: 'in',
        signal: mark,
      });
    if (yes(s, 'stop-input')) input('stop', 'stop input, 24 V', 'minus', 'sinking');
    for (let n = 1; n <= (numberOf(s, 'homes') ?? 0); n++)
      input(`home${n}`, `home switch ${n}`, 'minus', 'sinking');
    const output = (mark: string, name: string) => {
      const sinking = mark !== 'enable' && textOf(s, 'output-form') === 'sinking';
      const current = { ...s, 'output-current': numberOf(s, 'switch-current'), 'output-low': 1 };
      const nature = sinking
        ? { ...levelOutput('open-collector', current, volts), ...known({ withstands: volts }) }
        : levelOutput('24v', current, volts);
      made.push({ mark, name, nature, common: 'minus', group: 'io', signal: mark });
    };
    if (yes(s, 'enable-output')) output('enable', 'enables the drives, 24 V');
    const inputs = numberOf(s, 'inputs') ?? 0;
    const form = textOf(s, 'input-form');
    for (let n = 1; n <= inputs; n++)
      input(
        `in${n}`,
        `input ${n}, 24 V`,
        'in-com',
        form === 'sinking' ? 'sinking' : form === 'sourcing' ? 'sourcing' : 'opto',
      );
    if (inputs > 0)
      made.push({
        mark: 'in-com',
        name: 'common of the inputs',
        nature: { kind: 'common', of: 'inputs' },
        group: 'in',
      });
    for (let n = 1; n <= (numberOf(s, 'outputs') ?? 0); n++) output(`out${n}`, `output ${n}, 24 V`);
    for (let n = 1; n <= (numberOf(s, 'relays') ?? 0); n++)
      made.push(
        ...contact(`r${n}a`, `r${n}b`, { closes: 'when-on', role: 'signal', moved: 'logic' }, s).map(
          (each) => ({
            ...each,
            name: `free contact ${n}`,
          }),
        ),
      );
    const pulses = namesOf(s, 'pulse-axes');
    const analogue = namesOf(s, 'volts-axes');
    const fives = numberOf(s, 'inputs-5v') ?? 0;
    for (let n = 1; n <= fives; n++)
      made.push({
        mark: `p${n}`,
        name: `input ${n}, 5 V`,
        // A contact to its 0 V suffices: such inputs have a resistor of some kilohms up to 5 V.
        nature: { ...logicInput('ttl-5v'), pull: { ohms: 4700, to: 5 } },
        common: 'GND',
        group: 'pulse',
        signal: `p${n}`,
      });
    for (const axis of pulses) made.push(...pulseOutputs(axis, s));
    if (pulses.length > 0 || fives > 0)
      made.push({
        mark: 'GND',
        name: '0 V of the pulse outputs',
        nature: { kind: 'common', of: 'outputs' },
        group: 'pulse',
        holds: Math.max(2, 2 * pulses.length),
      });
    if (pulses.length > 0 && yes(s, 'five-volts'))
      made.push({
        mark: '5V',
        name: '5 V out',
        nature: {
          kind: 'supply',
          pole: 'plus',
          volts: 5,
          ...known({ amps: numberOf(s, 'five-volt-current') }),
        },
        common: 'GND',
        with: 'GND',
        group: 'pulse',
        holds: Math.max(2, 2 * pulses.length),
      });
    for (const axis of analogue) made.push(...analogueOutput(`${axis}-cmd`, `command of ${axis}`, -10));
    const spindle = textOf(s, 'spindle-analogue');
    if (spindle !== 'none' && spindle !== '')
      made.push(...analogueOutput('S-cmd', 'speed of the spindle', spindle === '±10 V' ? -10 : 0));
    for (const axis of namesOf(s, 'encoders'))
      made.push(
        ...encoderInputs(`${axis}-`, textOf(s, 'encoder-lines'), {
          ...known({
            volts: numberOf(s, 'encoder-volts'),
            amps: numberOf(s, 'encoder-current'),
            frequency: numberOf(s, 'encoder-rate'),
            termination: numberOf(s, 'termination'),
          }),
        }),
      );
    return made;
  },
});

const hertz = (value: number | undefined) => (value === undefined ? undefined : `${value} Hz`);
const quarter = (value: number | undefined) => (value === undefined ? undefined : value / 4);
const whole = (value: number | undefined) =>
  value === undefined ? undefined : String(Math.min(256, Math.max(0, Math.round(value))));
const small = (value: number | undefined) => (value === undefined ? undefined : whole(Math.min(64, value)));
const amps = (value: number | undefined) => (value === undefined ? undefined : `${value} A`);

function pulseOutputs(axis: string, s: Settings): readonly Draft[] {
  const level = textOf(s, 'output-level');
  const frequency = numberOf(s, 'pulse-rate');
  return (['step', 'dir'] as const).flatMap((what): readonly Draft[] => {
    const name = `${what === 'step' ? 'pulses' : 'direction'} of ${axis}`;
    const mark = `${axis}-${what}`;
    // The direction changes far more slowly than the pulses come.
    const rate = what === 'step' ? frequency : undefined;
    if (level !== 'differential')
      return [
        {
          mark,
          name,
          nature: level === '' ? { kind: 'unclear' } : levelOutput(level, s, numberOf(s, 'volts'), rate),
          common: 'GND',
          group: 'pulse',
          signal: what,
        },
      ];
    return (['plus', 'minus'] as const).map((half) => ({
      mark: `${mark}${half === 'plus' ? '+' : '-'}`,
      name: `${name}, ${half}`,
      nature: differentialOutput(half, rate),
      common: 'GND',
      with: `${mark}${half === 'plus' ? '-' : '+'}`,
      group: 'pulse',
      signal: `${what}${half === 'plus' ? '+' : '-'}`,
    }));
  });
}

const analogueOutput = (mark: string, name: string, low: number): readonly Draft[] => [
  {
    mark: `${mark}+`,
    name,
    nature: { kind: 'analogue-output', low, high: 10, gives: 0.005 },
    common: `${mark}0`,
    with: `${mark}0`,
    group: mark,
    signal: 'command+',
  },
  {
    mark: `${mark}0`,
    name: `${name}, its 0 V`,
    nature: { kind: 'common', of: 'outputs' },
    group: mark,
    signal: 'command-',
  },
];
