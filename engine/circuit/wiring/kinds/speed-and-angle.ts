/** Resolvers, tachogenerators and Hall sensors: as they give, and as a drive reads them. */
import { type Draft, known, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import { amount, choice, type SettingSpecs, type Settings } from '../setting.ts';
import type { AnalogueInput, Nature, Sensor } from '../types.ts';
import { levelOutput, logicInput, yes, yesNo } from './io.ts';

/** Marks of a resolver by the signal at them; sine and cosine after common usage, from memory. */
const COILS = [
  ['R1', 'exc+', 'excitation, plus', 'R2'],
  ['R2', 'exc-', 'excitation, minus', 'R1'],
  ['S1', 'cos+', 'cosine, plus', 'S3'],
  ['S3', 'cos-', 'cosine, minus', 'S1'],
  ['S2', 'sin+', 'sine, plus', 'S4'],
  ['S4', 'sin-', 'sine, minus', 'S2'],
] as const;

function resolverEnds(
  prefix: string,
  end: 'sends' | 'reads',
  rated: Pick<Sensor, 'volts' | 'hertz'>,
): readonly Draft[] {
  return COILS.map(([mark, signal, name, other]): Draft => {
    const excites = signal.startsWith('exc');
    return {
      mark: `${prefix}${mark}`,
      name: `resolver, ${name}`,
      nature: {
        kind: 'sensor',
        side: excites === (end === 'reads') ? 'gives' : 'takes',
        ...(excites ? rated : {}),
      },
      with: `${prefix}${other}`,
      group: `${prefix}resolver`,
      signal,
      needed: end === 'sends',
    };
  });
}

const shield = (mark: string, earthed: boolean, group: string): Draft => ({
  mark,
  name: 'shield',
  nature: { kind: 'shield', earthed },
  group,
  signal: 'shield',
});

export const resolver: WiringKind = wiringKind({
  id: 'resolver',
  name: 'resolver',
  says: 'A small transformer on the shaft: fed with some volts of a.c., it gives sine and cosine of the angle.',
  letter: 'B',
  settings: {
    volts: amount('excitation it is made for, effective', 'V'),
    hertz: amount('frequency of its excitation', 'Hz'),
  },
  terminals: (s) => [
    ...resolverEnds('', 'sends', known({ volts: numberOf(s, 'volts'), hertz: numberOf(s, 'hertz') })),
    shield('SH', false, 'resolver'),
  ],
});

export const tacho: WiringKind = wiringKind({
  id: 'tacho',
  name: 'tachogenerator',
  says: 'A small d.c. generator: its voltage is the speed, its sign the direction.',
  letter: 'B',
  settings: { volts: amount('voltage at the highest speed it turns', 'V') },
  terminals: (s) => {
    const most = numberOf(s, 'volts');
    return [
      {
        mark: 'T+',
        name: 'tacho, plus',
        nature: {
          kind: 'analogue-output',
          ...known({ low: most === undefined ? undefined : -most, high: most }),
        },
        common: 'T-',
        with: 'T-',
        group: 'tacho',
        signal: 'tacho+',
        needed: true,
      },
      {
        mark: 'T-',
        name: 'tacho, minus',
        nature: { kind: 'common', of: 'signals' },
        with: 'T+',
        group: 'tacho',
        signal: 'tacho-',
        needed: true,
      },
      shield('SH', false, 'tacho'),
    ];
  },
});

export const halls: WiringKind = wiringKind({
  id: 'halls',
  name: 'Hall sensors',
  says: 'Three sensors in a brushless motor that tell the drive which winding to feed.',
  letter: 'B',
  settings: {
    lines: choice('their output lines', ['open collector', 'single-ended'], 'open collector'),
    volts: amount('voltage they are fed with', 'V', '5 V'),
    'least-volts': amount('lowest voltage they work with', 'V', '4.5 V'),
    'most-volts': amount('highest voltage they stand', 'V', '24 V'),
    current: amount('current the three take', 'A'),
  },
  terminals: (s) => {
    const feed = (pole: 'plus' | 'minus'): Nature => ({
      kind: 'feed',
      pole,
      role: 'logic',
      ...known({
        volts: numberOf(s, 'volts'),
        least: numberOf(s, 'least-volts'),
        most: numberOf(s, 'most-volts'),
        amps: numberOf(s, 'current'),
      }),
    });
    const level = textOf(s, 'lines') === 'single-ended' ? 'ttl-5v' : 'open-collector';
    // Such outputs sink some milliamperes: common practice, no source.
    const own = { 'output-current': 0.02, 'output-withstands': numberOf(s, 'most-volts') };
    return [
      { mark: '5V', name: 'supply', nature: feed('plus'), with: '0V', signal: 'supply', needed: true },
      { mark: '0V', name: '0 V', nature: feed('minus'), with: '5V', signal: 'zero', needed: true },
      ...[1, 2, 3].map(
        (n): Draft => ({
          mark: `H${n}`,
          name: `Hall sensor ${n}`,
          nature: levelOutput(level, own, 5),
          common: '0V',
          signal: `hall-${n}`,
          needed: true,
        }),
      ),
      shield('SH', false, 'halls'),
    ];
  },
});

/** What a drive has of them. */
export const READS: SettingSpecs = {
  resolver: yesNo('reads a resolver'),
  'excitation-volts': amount('excitation it gives a resolver, effective', 'V'),
  'excitation-hertz': amount('frequency of that excitation', 'Hz'),
  tacho: yesNo('reads a tachogenerator'),
  'tacho-volts': amount('highest voltage its tacho input takes', 'V'),
  halls: yesNo('reads Hall sensors'),
  'hall-pull-up': choice('its Hall inputs are pulled up to 5 V inside', ['yes', 'no']),
};

/** The resistor such inputs usually have inside: common practice, no source. */
const PULL_UP = 1000;

export function readerTerminals(s: Settings): readonly Draft[] {
  const made: Draft[] = [];
  if (yes(s, 'resolver'))
    made.push(
      ...resolverEnds(
        'RS-',
        'reads',
        known({ volts: numberOf(s, 'excitation-volts'), hertz: numberOf(s, 'excitation-hertz') }),
      ),
      shield('RS-SH', true, 'RS-resolver'),
    );
  if (yes(s, 'tacho')) {
    const most = numberOf(s, 'tacho-volts');
    const nature = (leg: 'plus' | 'minus'): AnalogueInput => ({
      kind: 'analogue-input',
      leg,
      scaled: true,
      ...known({ low: most === undefined ? undefined : -most, high: most, most }),
    });
    made.push(
      {
        mark: 'TA+',
        name: 'tacho, plus',
        nature: nature('plus'),
        with: 'TA-',
        group: 'tacho',
        signal: 'tacho+',
      },
      {
        mark: 'TA-',
        name: 'tacho, minus',
        nature: nature('minus'),
        with: 'TA+',
        group: 'tacho',
        signal: 'tacho-',
      },
      shield('TA-SH', true, 'tacho'),
    );
  }
  if (yes(s, 'halls')) {
    const supply = (pole: 'plus' | 'minus'): Nature => ({
      kind: 'supply',
      pole,
      regulated: true,
      ...known({ volts: numberOf(s, 'encoder-volts') ?? 5, amps: numberOf(s, 'encoder-current') }),
    });
    made.push(
      {
        mark: 'HA-5V',
        name: 'Hall sensors, supply',
        nature: supply('plus'),
        with: 'HA-0V',
        common: 'HA-0V',
        group: 'halls',
        signal: 'supply',
        holds: 4,
      },
      {
        mark: 'HA-0V',
        name: 'Hall sensors, 0 V',
        nature: supply('minus'),
        with: 'HA-5V',
        group: 'halls',
        signal: 'zero',
      },
      ...[1, 2, 3].map(
        (n): Draft => ({
          mark: `HA-${n}`,
          name: `Hall sensor ${n}`,
          nature: {
            ...logicInput('ttl-5v'),
            ...(textOf(s, 'hall-pull-up') === 'yes' ? { pull: { ohms: PULL_UP, to: 5 } } : {}),
          },
          common: 'HA-0V',
          group: 'halls',
          signal: `hall-${n}`,
        }),
      ),
      shield('HA-SH', true, 'halls'),
    );
  }
  return made;
}
