/**
 * Natures of terminals as people may state them: what `terminals` of a device says of one of its terminals, or of one
 * its kind does not have. What is stated replaces that field of the kind's own; the rest stays.
 */
import {
  amount,
  choice,
  count,
  level,
  type Setting,
  type SettingSpec,
  type SettingSpecs,
  type Settings,
  text,
} from './setting.ts';
import type { Nature } from './types.ts';

interface NatureSpec {
  readonly name: string;
  /** By setting: the field it fills; 'dc.volts' is a field within a field. */
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
const isFlag = (spec: SettingSpec): boolean =>
  spec.kind === 'choice' && spec.options.length === 2 && spec.options[0] === 'yes';
/** One of some words, none of them usual, each with what it means. */
const worded = (name: string, words: Readonly<Record<string, string>>): SettingSpec => ({
  ...choice(name, Object.keys(words)),
  words,
});
const end = [
  'leg',
  worded('which end it is', { plus: 'plus', minus: 'minus', only: 'the only one' }),
] as const;

export const NATURES: Readonly<Record<string, NatureSpec>> = {
  output: {
    name: 'digital output',
    start: { kind: 'output', stage: 'push-pull' },
    fields: {
      stage: [
        'stage',
        worded('what it does', {
          'push-pull': 'drives high and low',
          sinking: 'sinks: pulls to 0 V (NPN)',
          sourcing: 'sources: gives plus (PNP)',
        }),
      ],
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
      form: [
        'form',
        worded('how it is made', {
          opto: 'kept apart by light (opto)',
          sinking: 'sinks: wants plus (PNP)',
          sourcing: 'sources: wants 0 V (NPN)',
          logic: 'reads a voltage',
        }),
      ],
      leg: end,
      'on-level': ['on', volts('voltage from which it is on')],
      'off-level': ['off', level('voltage up to which it is off', 'V')],
      most: ['most', volts('voltage it survives')],
      rated: ['rated', volts('voltage it is made for')],
      current: ['current', amps('current at that voltage')],
      'on-current': ['onCurrent', amps('current from which it is on')],
      'off-current': ['offCurrent', level('current up to which it is off', 'A')],
      forward: ['forward', level('voltage of its LED', 'V')],
      series: ['series', amount('resistor inside', 'Ω')],
      'pull-resistor': ['pull.ohms', amount('resistor inside that pulls it while nothing is on it', 'Ω')],
      'pull-to': ['pull.to', level('voltage it is pulled to', 'V')],
      frequency: ['frequency', hertz],
    },
  },
  'differential-output': {
    name: 'half of a differential output',
    start: { kind: 'differential-output', half: 'plus' },
    fields: {
      half,
      least: ['least', volts('least difference')],
      high: ['high', volts('voltage of one wire when high')],
      low: ['low', level('voltage of one wire when low', 'V')],
      top: ['top', volts('highest voltage it can give')],
      gives: ['gives', amps('current it can give')],
      frequency: ['frequency', hertz],
    },
  },
  'differential-input': {
    name: 'half of a differential input',
    start: { kind: 'differential-input', half: 'plus' },
    fields: {
      half,
      threshold: ['threshold', volts('difference it needs')],
      'common-mode': ['commonMode', volts('voltage both wires may be away from its 0 V')],
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
      leg: end,
      low: ['low', level('lowest voltage', 'V', '', -1000)],
      high: ['high', level('highest voltage', 'V', '', -1000)],
      most: ['most', volts('voltage it survives')],
      ohms: ['ohms', amount('resistance', 'Ω')],
    },
  },
  supply: {
    name: 'pole of a d.c. source',
    start: { kind: 'supply', pole: 'plus' },
    fields: {
      pole,
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current it can give')],
      tolerance: ['tolerance', level('how far its voltage may stray', '%')],
      regulated: ['regulated', flag('its voltage is regulated')],
      earthed: ['earthed', flag('its minus is joined to earth inside')],
    },
  },
  feed: {
    name: 'd.c. supply terminal of a device',
    start: { kind: 'feed', pole: 'plus', role: 'logic' },
    fields: {
      pole,
      role: ['role', worded('feeds', { logic: 'logic and sensors', power: 'the power of a motor' })],
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
      supply: ['supply', worded('kind of current', { dc: 'd.c.', ac: 'a.c.', either: 'd.c. or a.c.' })],
      leg: ['leg', worded('which end it is', { plus: 'plus', minus: 'minus', either: 'either' })],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
      power: ['watts', amount('power', 'W')],
      resistance: ['ohms', amount('resistance', 'Ω')],
      inductive: ['inductive', flag('it is a coil, with a spike when switched off')],
      inductance: ['henries', amount('inductance', 'H')],
      suppressor: [
        'suppressor',
        choice('what swallows its spike', ['none', 'diode', 'clamp', 'resistor-capacitor', 'varistor']),
      ],
      clamp: ['clamp', volts('voltage of its clamp')],
      release: ['release', amount('time it may take to let go', 's')],
    },
  },
  contact: {
    name: 'end of a contact',
    start: { kind: 'contact', closes: 'when-on', role: 'signal', moved: 'machine' },
    fields: {
      closes: [
        'closes',
        worded('it is closed', { 'when-on': 'while its mover is on', 'when-off': 'while its mover is off' }),
      ],
      moved: [
        'moved',
        worded('moved by', {
          coil: 'a coil',
          hand: 'a hand',
          machine: 'the machine',
          logic: 'the logic of the device',
        }),
      ],
      'dc-volts': ['dc.volts', volts('d.c. voltage it may switch')],
      'dc-amps': ['dc.amps', amps('d.c. current it may switch at that voltage')],
      'ac-volts': ['ac.volts', volts('a.c. voltage it may switch')],
      'ac-amps': ['ac.amps', amps('a.c. current it may switch at that voltage')],
    },
  },
  'motor-phase': {
    name: 'motor lead',
    start: { kind: 'motor-phase', side: 'takes', of: 'brushless' },
    fields: {
      side: ['side', choice('side', ['gives', 'takes'])],
      of: ['of', choice('kind of motor', ['brushed', 'brushless', 'stepper', 'induction'])],
      volts: ['volts', volts('voltage')],
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
      frequency: ['hertz', amount('frequency', 'Hz')],
      current: ['amps', amps('current')],
    },
  },
  earth: {
    name: 'protective earth',
    start: { kind: 'earth', role: 'device' },
    fields: {
      role: [
        'role',
        worded('what it is', {
          source: 'the earth that comes with the mains',
          bar: 'the bar all come together on',
          device: 'the earth screw of a device',
          metal: 'metal that can be touched',
          passes: 'it goes through',
        }),
      ],
    },
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
      curve: ['curve', choice('its curve', ['B', 'C', 'D', 'fast', 'slow'])],
      'ac-volts': ['acVolts', volts('a.c. voltage it may break')],
      'dc-volts': ['dcVolts', volts('d.c. voltage it may break')],
      breaks: ['breaks', amps('current it can break')],
      release: ['release', worded('what guards a motor', { thermal: 'a dial set to its current' })],
      least: ['least', amps('lowest current on its dial')],
      most: ['most', amps('highest current on its dial')],
      instant: ['instant', amps('current at which it trips at once')],
      residual: ['residual', amount('difference at which it trips', 'mA')],
      type: ['type', choice('its type', ['AC', 'A', 'F', 'B'])],
    },
  },
  winding: {
    name: 'end of a transformer winding',
    start: { kind: 'winding', side: 'secondary' },
    fields: {
      side: ['side', choice('side', ['primary', 'secondary'])],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
      power: ['power', amount('apparent power', 'VA')],
    },
  },
  rectifier: {
    name: 'terminal of a rectifier',
    start: { kind: 'rectifier', leg: 'ac' },
    fields: {
      leg: ['leg', worded('which', { ac: 'a.c.', plus: 'plus', minus: 'minus' })],
      volts: ['volts', volts('voltage')],
      current: ['amps', amps('current')],
    },
  },
  resistor: {
    name: 'end of a resistor',
    start: { kind: 'resistor' },
    fields: { resistance: ['ohms', amount('resistance', 'Ω')], power: ['watts', amount('rated power', 'W')] },
  },
  diode: {
    name: 'end of a diode',
    start: { kind: 'diode', leg: 'anode' },
    fields: {
      leg: [
        'leg',
        worded('which', { anode: 'anode, towards plus', cathode: 'cathode, the end with the ring' }),
      ],
      volts: ['volts', volts('voltage it stands')],
      current: ['amps', amps('current')],
    },
  },
  sensor: {
    name: 'small a.c. or test signal',
    start: { kind: 'sensor', side: 'gives' },
    fields: {
      side: ['side', choice('side', ['gives', 'takes'])],
      volts: ['volts', volts('excitation of a resolver, effective')],
      hertz: ['hertz', amount('frequency of that excitation', 'Hz')],
    },
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

/** What a field within a field cannot be without. */
const WHOLE: Readonly<Record<string, readonly string[]>> = {
  ac: ['volts'],
  dc: ['volts'],
  pull: ['ohms', 'to'],
};

/** A nature with what was stated put in place. */
export function stateNature(kind: string, own: Nature | undefined, settings: Settings): Nature {
  const { start, fields } = NATURES[kind]!;
  const before = { ...(own?.kind === kind ? own : start) } as Record<string, unknown>;
  const stated: Record<string, unknown> = {};
  for (const [name, [field, spec]] of Object.entries(fields)) {
    const value = settings[name];
    if (value === undefined) continue;
    const said = isFlag(spec) ? value === 'yes' : value;
    const [outer = '', inner] = field.split('.');
    if (inner === undefined) stated[field] = said;
    else stated[outer] = { ...((stated[outer] ?? before[outer]) as object | undefined), [inner]: said };
  }
  for (const [outer, needed] of Object.entries(WHOLE)) {
    const inside = stated[outer] as Record<string, unknown> | undefined;
    if (inside && needed.some((each) => inside[each] === undefined)) delete stated[outer];
  }
  return { ...before, ...stated } as unknown as Nature;
}

/** What a nature says in a setting's field: SI, or the word of a choice; undefined where it is not known. */
export function fieldOf(nature: Nature, setting: string): Setting {
  const fields = NATURES[nature.kind]?.fields ?? {};
  if (!Object.hasOwn(fields, setting)) return undefined;
  const at = fields[setting]!;
  const value = at[0]
    .split('.')
    .reduce<unknown>((inside, key) => (inside as Record<string, unknown> | undefined)?.[key], nature);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' || typeof value === 'string' ? value : undefined;
}
