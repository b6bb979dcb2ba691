import { type Draft, known, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import { amount, choice, level, type Settings } from '../setting.ts';
import type { Mains } from '../types.ts';
import { yesNo } from './io.ts';

/** Marks of the load side are those of the line side with this behind them. */
export const LOAD_SIDE = '-load';

/** A box of coils and capacitors in the mains of a drive: what the drive chops does not get out that way. */
export const mainsFilter: WiringKind = wiringKind({
  id: 'mains-filter',
  name: 'mains filter',
  says: 'Keeps what a drive radiates off the mains. It lets some milliamperes pass to earth all the time.',
  letter: 'Z',
  exposed: true,
  settings: {
    phases: choice('phases of its mains', ['one', 'three'], 'one'),
    neutral: yesNo('of three phases, has a neutral too'),
    volts: amount('highest mains voltage it is made for', 'V'),
    current: amount('rated current', 'A'),
    leakage: level('leakage to earth, from its label or sheet', 'mA'),
    'leakage-volts': amount('mains voltage that leakage is stated for, phase to neutral', 'V'),
  },
  terminals: (s) => [
    ...polesOf(s).flatMap((pole) => both(pole, s)),
    {
      mark: 'PE',
      name: 'protective earth',
      nature: { kind: 'earth', role: 'device' },
      needed: true,
      holds: 2,
    },
  ],
});

function polesOf(s: Settings): readonly Mains['pole'][] {
  if (textOf(s, 'phases') !== 'three') return ['L1', 'N'];
  return textOf(s, 'neutral') === 'yes' ? ['L1', 'L2', 'L3', 'N'] : ['L1', 'L2', 'L3'];
}

function both(pole: Mains['pole'], s: Settings): readonly Draft[] {
  const nature: Mains = {
    kind: 'mains',
    side: 'passes',
    pole,
    ...known({ volts: numberOf(s, 'volts'), amps: numberOf(s, 'current') }),
  };
  const name = pole === 'N' ? 'neutral' : pole;
  const load = `${pole}${LOAD_SIDE}`;
  return [
    { mark: pole, name: `line side, ${name}`, nature, with: load, group: pole, needed: true },
    { mark: load, name: `load side, ${name}`, nature, with: pole, group: pole, needed: true },
  ];
}

/**
 * Leakage in A at the mains there are: through capacitors it grows with the voltage. Undefined where it has not been
 * said. Where the sheet names no voltage it counts as stated for these mains.
 *
 * @param mains volts from phase to neutral
 */
export function filterLeakage(s: Settings, mains: number | undefined): number | undefined {
  const stated = numberOf(s, 'leakage');
  const at = numberOf(s, 'leakage-volts');
  return stated === undefined || at === undefined || mains === undefined ? stated : (stated * mains) / at;
}
