import { type Draft, known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice, mostly } from '../setting.ts';
import { yes, yesNo } from './io.ts';
import { CHARGES, HEATS, LEAKS, SHAPES } from './mains-side.ts';

const some = (value: number | undefined, unit: string) =>
  value === undefined ? undefined : `${value} ${unit}`;

const earth: Draft = {
  mark: 'PE',
  name: 'protective earth',
  nature: { kind: 'earth', role: 'device' },
  needed: true,
};

/** A box that makes a steady d.c. voltage from the mains: 24 V, 5 V, or the bus of the drives. */
export const supply = wiringKind({
  id: 'supply',
  name: 'DC supply',
  says: 'Makes a steady d.c. voltage from the mains: 24 V, 5 V, or the power of the drives.',
  letter: 'G',
  exposed: true,
  settings: {
    volts: amount('voltage it gives', 'V', '24 V'),
    tolerance: amount('how far that may stray', '%', '5 %'),
    current: mostly(amount('current it can give for good', 'A'), '0.1 A', '100 A'),
    earthed: yesNo('its minus is joined to earth inside'),
    'mains-volts': mostly(amount('mains voltage it is set for', 'V'), '90 V', '690 V'),
    'mains-current': mostly(amount('current it takes from the mains', 'A'), '0.1 A', '100 A'),
    ...SHAPES,
    ...LEAKS,
    ...CHARGES,
    ...HEATS,
  },
  fromPart: (part) => {
    const tolerance = part.value('ratedTolerance');
    return {
      volts: some(part.value('ratedVoltage'), 'V'),
      tolerance: tolerance === undefined ? undefined : `${tolerance * 100} %`,
      current: some(part.value('ratedCurrent'), 'A'),
    };
  },
  terminals: (s) => {
    const pole = (which: 'plus' | 'minus') => ({
      kind: 'supply' as const,
      pole: which,
      regulated: true,
      earthed: yes(s, 'earthed'),
      ...known({
        volts: numberOf(s, 'volts'),
        tolerance: numberOf(s, 'tolerance'),
        amps: numberOf(s, 'current'),
      }),
    });
    const mains = (which: 'L1' | 'N') => ({
      kind: 'mains' as const,
      side: 'takes' as const,
      pole: which,
      ...known({ volts: numberOf(s, 'mains-volts'), amps: numberOf(s, 'mains-current') }),
    });
    return [
      {
        mark: 'plus',
        name: 'plus',
        nature: pole('plus'),
        with: 'minus',
        common: 'minus',
        group: 'out',
        holds: 4,
      },
      { mark: 'minus', name: 'minus', nature: pole('minus'), with: 'plus', group: 'out', holds: 4 },
      { mark: 'L', name: 'mains, phase', nature: mains('L1'), group: 'mains', needed: true },
      { mark: 'N', name: 'mains, neutral', nature: mains('N'), group: 'mains', needed: true },
      earth,
    ];
  },
  joins: (s) => (yes(s, 'earthed') ? [['minus', 'PE']] : []),
});

/** The old way: what stands behind a transformer. */
export const bus = wiringKind({
  id: 'bus',
  name: 'rectifier with capacitors',
  says: 'Makes d.c. for the drives from a transformer. Its capacitors stay charged after the power is off.',
  letter: 'G',
  exposed: false,
  settings: {
    volts: mostly(amount('d.c. voltage it gives without load', 'V'), '10 V', '900 V'),
    current: mostly(amount('d.c. current it can give', 'A'), '0.5 A', '200 A'),
    capacitance: mostly(amount('capacitance', 'F'), '10 µF', '0.5 F'),
    bleeder: mostly(amount('bleeder resistor across it', 'Ω'), '10 Ω', '1 MΩ'),
    'inrush-resistor': CHARGES['inrush-resistor']!,
    ...HEATS,
  },
  fromPart: (part) => {
    const secondary = part.value('secondary');
    const regulation = part.value('regulation');
    return {
      // Peak of the unloaded secondary, less two diodes.
      volts:
        secondary === undefined ? undefined : some(secondary * (1 + (regulation ?? 0)) * Math.SQRT2 - 2, 'V'),
      current: some(part.value('ratedCurrent'), 'A'),
      capacitance: some(part.value('capacitance'), 'F'),
      bleeder: some(part.value('bleeder'), 'Ω'),
    };
  },
  terminals: (s) => {
    const pole = (which: 'plus' | 'minus') => ({
      kind: 'supply' as const,
      pole: which,
      regulated: false,
      ...known({ volts: numberOf(s, 'volts'), amps: numberOf(s, 'current') }),
    });
    const ac = {
      kind: 'rectifier' as const,
      leg: 'ac' as const,
      ...known({ amps: numberOf(s, 'current'), farads: numberOf(s, 'capacitance') }),
    };
    return [
      {
        mark: 'plus',
        name: 'plus',
        nature: pole('plus'),
        with: 'minus',
        common: 'minus',
        group: 'dc',
        holds: 4,
      },
      { mark: 'minus', name: 'minus', nature: pole('minus'), with: 'plus', group: 'dc', holds: 4 },
      { mark: 'AC1', name: 'a.c. in', nature: ac, with: 'AC2', group: 'dc', needed: true },
      { mark: 'AC2', name: 'a.c. in', nature: ac, with: 'AC1', group: 'dc', needed: true },
    ];
  },
});

export const transformer = wiringKind({
  id: 'transformer',
  name: 'transformer',
  says: 'Two windings that are not joined: mains on one side, a lower voltage on the other.',
  letter: 'T',
  exposed: true,
  settings: {
    primary: mostly(amount('voltage of the primary', 'V'), '90 V', '690 V'),
    secondary: mostly(amount('voltage of the secondary', 'V'), '6 V', '400 V'),
    power: mostly(amount('rated power', 'VA'), '10 VA', '20 kVA'),
    regulation: mostly(amount('rise of the secondary without load', '%'), '1 %', '25 %'),
    ...HEATS,
  },
  fromPart: (part) => {
    const regulation = part.value('regulation');
    return {
      secondary: some(part.value('secondary'), 'V'),
      // A winding without resistance is not known of, rather than known to be none.
      regulation: regulation ? `${regulation * 100} %` : undefined,
    };
  },
  terminals: (s) => {
    const power = numberOf(s, 'power');
    const winding = (side: 'primary' | 'secondary') => {
      const volts = numberOf(s, side);
      const amps = power !== undefined && volts !== undefined ? power / volts : undefined;
      return { kind: 'winding' as const, side, ...known({ volts, power, amps }) };
    };
    return [
      { mark: '1', name: 'primary', nature: winding('primary'), with: '2', group: 'primary', needed: true },
      { mark: '2', name: 'primary', nature: winding('primary'), with: '1', group: 'primary', needed: true },
      {
        mark: '3',
        name: 'secondary',
        nature: winding('secondary'),
        with: '4',
        group: 'secondary',
        needed: true,
      },
      {
        mark: '4',
        name: 'secondary',
        nature: winding('secondary'),
        with: '3',
        group: 'secondary',
        needed: true,
      },
      earth,
    ];
  },
});

export const mainsInlet = wiringKind({
  id: 'mains-inlet',
  name: 'mains inlet',
  says: 'Where the mains come in. Wiring up to here is work for a licensed electrician.',
  letter: 'X',
  settings: {
    volts: mostly(amount('mains voltage, phase to neutral', 'V'), '90 V', '400 V'),
    hertz: mostly(amount('mains frequency', 'Hz'), '50 Hz', '60 Hz'),
    phases: choice('phases', ['one', 'three'], 'one'),
    neutral: yesNo('has a neutral', 'yes'),
    current: mostly(amount('current of the socket or breaker before it', 'A'), '6 A', '125 A'),
  },
  fromPart: (part) => ({
    volts: some(part.value('mains'), 'V'),
    hertz: some(part.value('frequency'), 'Hz'),
    phases:
      part.choice('phases') === undefined ? undefined : part.choice('phases') === 'single' ? 'one' : 'three',
  }),
  terminals: (s) => {
    const gives = (pole: 'L1' | 'L2' | 'L3' | 'N'): Draft => ({
      mark: pole,
      name: pole === 'N' ? 'neutral' : `phase ${pole}`,
      nature: {
        kind: 'mains',
        side: 'gives',
        pole,
        ...known({
          volts: numberOf(s, 'volts'),
          hertz: numberOf(s, 'hertz'),
          amps: numberOf(s, 'current'),
        }),
      },
      holds: 1,
    });
    return [
      gives('L1'),
      ...(textOf(s, 'phases') === 'three' ? [gives('L2'), gives('L3')] : []),
      ...(yes(s, 'neutral') ? [gives('N')] : []),
      {
        mark: 'PE',
        name: 'protective earth',
        nature: { kind: 'earth', role: 'source' },
        holds: 1,
        needed: true,
      },
    ];
  },
});
