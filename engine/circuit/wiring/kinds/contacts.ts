/** Contacts, coils and their ratings, as several kinds have them. */
import { type Draft, known, numberOf, textOf } from '../kind.ts';
import { amount, choice, mostly, type SettingSpecs, type Settings } from '../setting.ts';
import type { Contact, ContactRating, Load, Suppressor } from '../types.ts';

/** What the contacts of a kind may switch; the plate or the maker's sheet says it. */
export const RATING: SettingSpecs = {
  'ac-volts': mostly(amount('a.c. voltage of the contacts', 'V'), '12 V', '690 V'),
  'ac-amps': mostly(amount('a.c. current of the contacts', 'A'), '0.1 A', '500 A'),
  'ac-coil-amps': mostly(amount('a.c. current into coils (AC-15)', 'A'), '0.05 A', '50 A'),
  'dc-volts': mostly(amount('d.c. voltage of the contacts', 'V'), '5 V', '800 V'),
  'dc-amps': mostly(amount('d.c. current of the contacts at that voltage', 'A'), '0.01 A', '200 A'),
  'dc-coil-amps': mostly(amount('d.c. current into coils (DC-13)', 'A'), '0.01 A', '20 A'),
};

function rating(settings: Settings, of: 'ac' | 'dc', main: boolean): ContactRating | undefined {
  const prefix = main ? `main-${of}` : of;
  const volts = numberOf(settings, `${prefix}-volts`);
  if (volts === undefined) return undefined;
  return {
    volts,
    ...known({
      amps: numberOf(settings, `${prefix}-amps`),
      coilAmps: numberOf(settings, `${prefix}-coil-amps`),
    }),
  };
}

/** Both ends of one contact. */
export function contact(
  a: string,
  b: string,
  nature: Omit<Contact, 'kind' | 'ac' | 'dc'>,
  settings: Settings,
): readonly Draft[] {
  const main = nature.role === 'main';
  const full: Contact = {
    kind: 'contact',
    ...nature,
    ...known({ ac: rating(settings, 'ac', main), dc: rating(settings, 'dc', main) }),
  };
  const name = main
    ? 'main contact'
    : nature.closes === 'when-on'
      ? 'contact that closes'
      : 'contact that opens';
  return [
    { mark: a, name, nature: full, with: b, group: `${a}-${b}` },
    { mark: b, name, nature: full, with: a, group: `${a}-${b}` },
  ];
}

/** Contacts that close as 13-14, 23-24 …; contacts that open as 11-12 … or, beside a coil, 51-52 … */
export function contacts(
  settings: Settings,
  moved: Contact['moved'],
  openFrom: number,
  role: Contact['role'] = 'signal',
): readonly Draft[] {
  const made: Draft[] = [];
  for (let n = 1; n <= (numberOf(settings, 'no') ?? 0); n++)
    made.push(...contact(`${n}3`, `${n}4`, { closes: 'when-on', role, moved }, settings));
  for (let n = 0; n < (numberOf(settings, 'nc') ?? 0); n++)
    made.push(
      ...contact(`${openFrom + n}1`, `${openFrom + n}2`, { closes: 'when-off', role, moved }, settings),
    );
  return made;
}

export const SUPPRESSORS = ['none', 'diode', 'clamp', 'resistor-capacitor', 'varistor'] as const;

export const COIL: SettingSpecs = {
  'coil-volts': mostly(amount('voltage of the coil', 'V'), '5 V', '400 V'),
  'coil-supply': choice('current of the coil', ['dc', 'ac', 'either']),
  'coil-current': mostly(amount('current of the coil', 'A'), '1 mA', '5 A'),
  'coil-resistance': mostly(amount('resistance of the coil', 'Ω'), '1 Ω', '100 kΩ'),
  'coil-inductance': mostly(amount('inductance of the coil', 'H'), '1 mH', '100 H'),
  suppressor: choice('what swallows the spike of the coil', SUPPRESSORS),
  'clamp-volts': amount('voltage of the clamp', 'V'),
};

export const coilSettings = (volts: string): SettingSpecs => ({
  ...COIL,
  'coil-volts': mostly(amount('voltage of the coil', 'V', volts), '5 V', '400 V'),
  'coil-supply': choice('current of the coil', ['dc', 'ac', 'either'], 'dc'),
});

/** Current of a load in A from what is known of it. */
export function coilAmps(settings: Settings): number | undefined {
  const volts = numberOf(settings, 'coil-volts');
  const ohms = numberOf(settings, 'coil-resistance');
  return (
    numberOf(settings, 'coil-current') ??
    (volts !== undefined && ohms !== undefined ? volts / ohms : undefined)
  );
}

export function coil(settings: Settings, what: Load['what'] = 'coil', a = 'A1', b = 'A2'): readonly Draft[] {
  const volts = numberOf(settings, 'coil-volts');
  const amps = coilAmps(settings);
  const suppressor = textOf(settings, 'suppressor') as Suppressor | '';
  const supply = (textOf(settings, 'coil-supply') || 'dc') as Load['supply'];
  const load = (leg: Load['leg']): Load => ({
    kind: 'load',
    what,
    supply,
    leg: supply === 'dc' ? leg : 'either',
    inductive: what !== 'lamp' && what !== 'other',
    ...known({
      volts,
      amps,
      ohms:
        numberOf(settings, 'coil-resistance') ??
        (supply === 'dc' && volts !== undefined && amps !== undefined ? volts / amps : undefined),
      watts: volts !== undefined && amps !== undefined ? volts * amps : undefined,
      henries: numberOf(settings, 'coil-inductance'),
      suppressor: suppressor === '' ? undefined : suppressor,
      clamp: numberOf(settings, 'clamp-volts'),
      release: numberOf(settings, 'drop-out'),
    }),
  });
  const name = what === 'coil' ? 'coil' : what;
  return [
    { mark: a, name: `${name}, plus`, nature: load('plus'), with: b, group: 'coil', needed: true },
    { mark: b, name: `${name}, minus`, nature: load('minus'), with: a, group: 'coil', needed: true },
  ];
}
