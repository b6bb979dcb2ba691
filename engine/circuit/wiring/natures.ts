/**
 * Natures of terminals as people may state them: what `terminals` of a device says of one of its terminals, or of one
 * its kind does not have. What is stated replaces that field of the kind's own; the rest stays.
 */
import {
  amount,
  choice,
  count,
  level,
  type SettingSpec,
  type SettingSpecs,
  type Settings,
  text,
} from './setting.ts';
import type { Nature } from './types.ts';

interface NatureSpec {
  readonly name: string;
  /** By setting: the field it fills. */
  readonly fields: Readonly<Record<string, readonly [field: string, spec: SettingSpec]>>;
  /** Fields a new terminal of this nature has before anything is stated. */
  readonly start: Nature;
}

const volts = (name: string): SettingSpec => amount(name, 'V');
const amps = (name: string): SettingSpec => amount(name, 'A');
const hertz: SettingSpec = amount('highest frequency', 'Hz');
const half = ['half', choice('half of the pair', ['plus', 'minus'])] as const;
const pole = ['pole', choice('pole', ['plus', 'minus'])] as const;
const flag = (name: string) => choice(name, ['yes', 'no']);

export const NATURES: Readonly<Record<string, NatureSpec>> = {
  output: {
    name: 'digital output',
    start: { kind: 'output', stage: 'push-pull' },
    fields: {
      stage: ['stage', choice('what it does', ['push-pull', 'sinking', 'sourcing'])],
      high: ['high', volts('lowest voltage when high')],
      low: ['low', level('highest voltage when low', 'V')],
      top: ['top', volts('highest voltage it can give')],
      gives: ['gives', amps('current it can give')],
      swallows: ['swallows', amps('current it can swallow')],
      leaks: ['leaks', level('current that leaks while off', 'A')],
      withstands: ['withstands', volts('voltage it stands while off')],
      frequency: ['frequency', hertz],
    },
  },
  input: {
    name: 'digital input',
    start: { kind: 'input', form: 'logic', leg: 'only' },
    fields: {
      form: ['form', choice('how it is made', ['opto', 'sinking', 'sourcing', 'logic'])],
      leg: ['leg', choice('which end it is', ['plus', 'minus', 'only'])],
      'on-level': ['on', volts('voltage from which it is on')],
      'off-level': ['off', level('voltage up to which it is off', 'V')],
      most: ['most', volts('voltage it survives')],
      rated: ['rated', volts('voltage it is made for')],
      current: ['current', amps('current at that voltage')],
      'on-current': ['onCurrent', amps('current from which it is on')],
      'off-current': ['offCurrent', level('current up to which it is off', 'A')],
      forward: ['forward', level('voltage of its LED', 'V')],
      series: ['series', amount('resistor inside', 'Ω')],
      frequency: ['frequency', hertz],
    },
  },
  'differential-output': {
    name: 'half of a differential output',
    start: { kind: 'differential-output', half: 'plus' },
    fields: {
      half,
      least: ['least', volts('least difference')],
      frequency: ['frequency', hertz],
    },
  },
  'differential-input': {
    name: 'half of a differential input',
    start: { kind: 'differential-input', half: 'plus' },
    fields: {
      half,
      threshold: ['threshold', volts('difference it needs')],
      termination: ['termination', amount('resistor across the pair inside', 'Ω')],
      most: ['most', volts('voltage it survives')],
      frequency: ['frequency', hertz],
    },
  },
  'analogue-output': {
    name: 'analogue output',
    start: { kind: 'analogue-output' },
    fields: {
      low: ['low', level('lowest voltage', 'V', '', -1000)],
      high: ['high', level('highest voltage', 'V', '', -1000)],
      gives: ['gives', amps('current it can give')],
    },
  },
  'analogue-input': {
    name: 'analogue input',
    start: { kind: 'analogue-input', leg: 'only' },
    fields: {
      leg: ['leg', choice('which end it is', ['plus', 'minus', 'only'])],
      low: ['low', level('lowest voltage', 'V', '', -1000)],
      high: ['high', level('highest voltage', 'V', '', -1000)],
      most: ['most', volts('voltage it survives')],
      ohms: ['ohms', amount('resistance', 'Ω')],
    },
  },
  supply: {
    name: 'pole of a d.c. source',
    start: { kind: 'supply', pole: 'plus' },
    fields: { pole, volts: ['volts', volts('voltage')], current: ['amps', amps('current it can give')] },
  },
  feed: {
    name: 'd.c. supply terminal of a device',
    start: { kind: 'feed', pole: 'plus', role: 'logic' },
    fields: {
      pole,
      role: ['role', choice('feeds', ['logic', 'power'])],
      volts: ['volts', volts('voltage')],
      least: ['least', volts('lowest voltage')],
      most: ['most', volts('highest voltage')],
      current: ['amps', amps('current it takes')],
    },
  },
  common: {
    name: 'common or signal ground',
    start: { kind: 'common', of: 'signals' },
    fields: { of: ['of', choice('common of', ['inputs', 'outputs', 'signals'])] },
  },
  load: {
    name: 'coil, lamp or valve',
    start: { kind: 'load', what: 'other', supply: 'dc', leg: 'either', inductive: false },
    fields: {
      what: ['what', choice('what it is', ['coil', 'valve', 'brake', 'lamp', 'fan', 'other'])],
      supply: ['supply', choice('current', ['dc', 'ac', 'either'])],
      leg: ['leg', choice('which end it is', ['plus', 'minus', 'either'])],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
      resistance: ['ohms', amount('resistance', 'Ω')],
      inductance: ['henries', amount('inductance', 'H')],
      suppressor: [
        'suppressor',
        choice('what swallows its spike', ['none', 'diode', 'clamp', 'resistor-capacitor', 'varistor']),
      ],
    },
  },
  contact: {
    name: 'end of a contact',
    start: { kind: 'contact', closes: 'when-on', role: 'signal', moved: 'machine' },
    fields: {
      closes: ['closes', choice('it is closed', ['when-on', 'when-off'])],
      moved: ['moved', choice('moved by', ['coil', 'hand', 'machine', 'logic'])],
    },
  },
  'motor-phase': {
    name: 'motor lead',
    start: { kind: 'motor-phase', side: 'takes', of: 'brushless' },
    fields: {
      side: ['side', choice('side', ['gives', 'takes'])],
      of: ['of', choice('kind of motor', ['brushed', 'brushless', 'stepper', 'induction'])],
      current: ['amps', amps('current')],
    },
  },
  mains: {
    name: 'mains terminal',
    start: { kind: 'mains', side: 'takes', pole: 'L1' },
    fields: {
      side: ['side', choice('side', ['gives', 'takes', 'passes'])],
      pole: ['pole', choice('pole', ['L1', 'L2', 'L3', 'N'])],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
    },
  },
  earth: {
    name: 'protective earth',
    start: { kind: 'earth', role: 'device' },
    fields: { role: ['role', choice('what it is', ['source', 'bar', 'device', 'metal', 'passes'])] },
  },
  shield: {
    name: 'shield',
    start: { kind: 'shield', earthed: false },
    fields: { earthed: ['earthed', flag('its metal is earthed here')] },
  },
  joint: { name: 'joint', start: { kind: 'joint' }, fields: {} },
  protection: {
    name: 'end of a fuse or breaker',
    start: { kind: 'protection', form: 'fuse' },
    fields: {
      form: ['form', choice('what it is', ['fuse', 'breaker', 'residual', 'switch'])],
      current: ['amps', amps('rated current')],
    },
  },
  winding: {
    name: 'end of a transformer winding',
    start: { kind: 'winding', side: 'secondary' },
    fields: {
      side: ['side', choice('side', ['primary', 'secondary'])],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
    },
  },
  rectifier: {
    name: 'terminal of a rectifier',
    start: { kind: 'rectifier', leg: 'ac' },
    fields: { leg: ['leg', choice('which', ['ac', 'plus', 'minus'])] },
  },
  resistor: {
    name: 'end of a resistor',
    start: { kind: 'resistor' },
    fields: { resistance: ['ohms', amount('resistance', 'Ω')], power: ['watts', amount('rated power', 'W')] },
  },
  diode: {
    name: 'end of a diode',
    start: { kind: 'diode', leg: 'anode' },
    fields: { leg: ['leg', choice('which', ['anode', 'cathode'])] },
  },
  sensor: {
    name: 'small a.c. or test signal',
    start: { kind: 'sensor', side: 'gives' },
    fields: { side: ['side', choice('side', ['gives', 'takes'])] },
  },
  unclear: { name: 'not known what', start: { kind: 'unclear' }, fields: {} },
};

/** Settings every terminal may have, whatever its nature. */
const ANY: SettingSpecs = {
  common: text('mark its volts are measured against'),
  'other-end': text('mark of its other end'),
  group: text('group that is isolated from the others'),
  signal: text('name of its signal'),
  holds: count('conductors it holds', '', 200, 1),
};

export const natureSettings = (kind: string): SettingSpecs => ({
  ...ANY,
  ...(Object.hasOwn(NATURES, kind)
    ? Object.fromEntries(Object.entries(NATURES[kind]!.fields).map(([name, [, spec]]) => [name, spec]))
    : {}),
});

/** A nature with what was stated put in place. */
export function stateNature(kind: string, own: Nature | undefined, settings: Settings): Nature {
  const { start, fields } = NATURES[kind]!;
  const stated: Record<string, unknown> = {};
  for (const [name, [field]] of Object.entries(fields)) {
    const value = settings[name];
    if (value !== undefined) stated[field] = name === 'earthed' ? value === 'yes' : value;
  }
  return { ...(own?.kind === kind ? own : start), ...stated } as Nature;
}
