import { known, numberOf, wiringKind } from '../kind.ts';
import { amount, count } from '../setting.ts';
import type { Protection } from '../types.ts';
import { contacts, RATING } from './contacts.ts';

/** A motor starter's breaker with a thermal and a magnetic release, in the terms of IEC 60947-4-1. */
export const motorBreaker = wiringKind({
  id: 'motor-breaker',
  name: 'motor circuit breaker',
  says: 'Switches off when its motor takes more than it is set to for some time, and at once at a short circuit. It is set to the current on the plate of the motor. On one phase the current runs through all three poles in turn.',
  letter: 'Q',
  settings: {
    poles: count('poles', '3', 3, 1),
    amps: amount('current it is set to', 'A'),
    least: amount('lowest current on its dial', 'A'),
    most: amount('highest current on its dial', 'A'),
    instant: amount('current at which it trips at once, from its sheet', 'A'),
    'ac-volts': { ...RATING['ac-volts']!, name: 'a.c. voltage it breaks' },
    'ac-amps': { ...RATING['ac-amps']!, name: 'a.c. current of its auxiliary contacts' },
    'dc-volts': amount('d.c. voltage it breaks', 'V'),
    breaks: amount('largest current it can break', 'A'),
    no: count('auxiliary contacts that close with it', '0', 4),
    nc: count('auxiliary contacts that open with it', '0', 4),
  },
  terminals: (s) => {
    const nature: Protection = {
      kind: 'protection',
      form: 'breaker',
      release: 'thermal',
      ...known({
        amps: numberOf(s, 'amps'),
        least: numberOf(s, 'least'),
        most: numberOf(s, 'most'),
        instant: numberOf(s, 'instant'),
        acVolts: numberOf(s, 'ac-volts'),
        dcVolts: numberOf(s, 'dc-volts'),
        breaks: numberOf(s, 'breaks'),
      }),
    };
    return [
      ...Array.from({ length: numberOf(s, 'poles') ?? 0 }, (_, n) => {
        const [a, b] = [`${2 * n + 1}`, `${2 * n + 2}`];
        const group = `pole ${n + 1}`;
        return [
          { mark: a, name: 'in', nature, with: b, group },
          { mark: b, name: 'out', nature, with: a, group },
        ];
      }).flat(),
      ...contacts(s, 'logic', 2, 'auxiliary'),
    ];
  },
});
