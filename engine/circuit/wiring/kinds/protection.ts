import { type Draft, known, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import { amount, choice, count, mostly, type SettingSpecs, type Settings } from '../setting.ts';
import type { Protection } from '../types.ts';

const SHARED: SettingSpecs = {
  poles: count('poles', '1', 4, 1),
  amps: mostly(amount('rated current', 'A'), '0.05 A', '250 A'),
  'ac-volts': mostly(amount('a.c. voltage it breaks', 'V'), '24 V', '690 V'),
  'dc-volts': mostly(amount('d.c. voltage it breaks', 'V'), '12 V', '1000 V'),
  breaks: mostly(amount('largest current it can break', 'A'), '10 A', '100 kA'),
};

const protection = (
  id: string,
  name: string,
  says: string,
  form: Protection['form'],
  letter: string,
  extra: SettingSpecs = {},
  poles = '1',
): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter,
    settings: { ...SHARED, poles: count('poles', poles, 4, 1), ...extra },
    terminals: (s) => ends(s, form),
  });

function ends(s: Settings, form: Protection['form']): readonly Draft[] {
  const curve = textOf(s, 'curve');
  const type = textOf(s, 'type');
  const nature: Protection = {
    kind: 'protection',
    form,
    ...known({
      amps: numberOf(s, 'amps'),
      acVolts: numberOf(s, 'ac-volts'),
      dcVolts: numberOf(s, 'dc-volts'),
      breaks: numberOf(s, 'breaks'),
      residual: numberOf(s, 'residual'),
      curve: curve === '' ? undefined : (curve as NonNullable<Protection['curve']>),
      type: type === '' ? undefined : (type as NonNullable<Protection['type']>),
    }),
  };
  return Array.from({ length: numberOf(s, 'poles') ?? 0 }, (_, n): readonly Draft[] => {
    const [a, b] = [`${2 * n + 1}`, `${2 * n + 2}`];
    return [
      { mark: a, name: 'in', nature, with: b, group: `pole ${n + 1}` },
      { mark: b, name: 'out', nature, with: a, group: `pole ${n + 1}` },
    ];
  }).flat();
}

export const fuse = protection('fuse', 'fuse', 'Melts when too much current flows.', 'fuse', 'F', {
  curve: choice('how fast it melts', ['fast', 'slow']),
  melting: amount('I²t (current squared times time) at which it melts, from its sheet', 'A²·s'),
});
export const breaker = protection(
  'breaker',
  'circuit breaker',
  'Switches off when too much current flows. One for a.c. does not break d.c. unless it says so.',
  'breaker',
  'F',
  { curve: choice('its curve', ['B', 'C', 'D']) },
);
export const residual = protection(
  'residual',
  'residual current device',
  'Switches off when current leaks to earth.',
  'residual',
  'F',
  {
    residual: amount('leakage at which it trips', 'A', '30 mA'),
    type: choice('its type', ['AC', 'A', 'F', 'B']),
  },
  '2',
);
export const mainSwitch = protection(
  'main-switch',
  'main switch',
  'Cuts the whole machine off the mains, and can be locked off.',
  'switch',
  'Q',
  {},
  '2',
);
