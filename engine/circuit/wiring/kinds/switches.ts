import { numberOf, type WiringKind, wiringKind } from '../kind.ts';
import { count, type SettingSpecs } from '../setting.ts';
import type { Contact } from '../types.ts';
import { COIL, coil, coilSettings, contact, contacts, RATING } from './contacts.ts';
import { yes, yesNo } from './io.ts';

const hand = (
  id: string,
  name: string,
  says: string,
  usual: { readonly no: string; readonly nc: string },
  moved: Contact['moved'] = 'hand',
  extra: SettingSpecs = {},
): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter: 'S',
    settings: {
      no: count('contacts that close', usual.no, 4),
      nc: count('contacts that open', usual.nc, 4),
      ...RATING,
      ...extra,
    },
    terminals: (s) => contacts(s, moved, 1),
  });

export const button = hand('button', 'push button', 'Springs back when let go.', { no: '1', nc: '0' });
export const mushroom = hand(
  'mushroom',
  'emergency stop button',
  'A red mushroom head that stays in until it is turned or pulled out.',
  { no: '0', nc: '2' },
);
export const key = hand('key', 'key switch', 'Turned on and off with a key.', { no: '1', nc: '0' });
export const door = hand(
  'door',
  'door switch',
  'Its contacts open when the door is opened.',
  { no: '0', nc: '2' },
  'machine',
);
export const limit = hand(
  'limit',
  'limit switch',
  'Its contacts open when the slide runs onto it.',
  { no: '0', nc: '1' },
  'machine',
);
export const home = hand(
  'home',
  'home switch',
  'Tells the control where zero is.',
  { no: '1', nc: '0' },
  'machine',
);
export const mechanical = hand(
  'switch',
  'mechanical switch',
  'A contact that something moves: a pressure switch, a float, a switch on a lever.',
  { no: '1', nc: '0' },
  'machine',
);

const locked = coilSettings('24 V');
export const lockedDoor: WiringKind = wiringKind({
  ...hand(
    'locked-door',
    'door switch with lock',
    'A spring locks the door; current in its coil lets it be opened.',
    { no: '0', nc: '2' },
    'machine',
    locked,
  ),
  terminals: (s) => [...coil(s, 'valve'), ...contacts(s, 'machine', 1)],
});

const MAIN: SettingSpecs = {
  'main-ac-volts': RATING['ac-volts']!,
  'main-ac-amps': RATING['ac-amps']!,
  'main-dc-volts': RATING['dc-volts']!,
  'main-dc-amps': RATING['dc-amps']!,
};

export const contactor: WiringKind = wiringKind({
  id: 'contactor',
  name: 'contactor',
  says: 'A heavy switch pulled in by a coil.',
  letter: 'K',
  settings: {
    main: count('main contacts', '3', 8, 1),
    no: count('auxiliary contacts that close', '1', 4),
    nc: count('auxiliary contacts that open', '1', 4),
    reverses: yesNo('turns a motor the other way, beside another contactor'),
    ...coilSettings('24 V'),
    ...MAIN,
    ...RATING,
  },
  terminals: (s) => [
    ...coil(s),
    ...[
      ...Array.from({ length: numberOf(s, 'main') ?? 0 }, (_, n) =>
        contact(`${2 * n + 1}`, `${2 * n + 2}`, { closes: 'when-on', role: 'main', moved: 'coil' }, s),
      ).flat(),
      ...contacts(s, 'coil', 5, 'auxiliary'),
    ].map((each) =>
      yes(s, 'reverses') ? { ...each, nature: { ...each.nature, rests: true } as Contact } : each,
    ),
  ],
});

const relayKind = (id: string, name: string, says: string, no: string, nc: string): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter: 'K',
    settings: {
      no: count('contacts that close', no, 6),
      nc: count('contacts that open', nc, 4),
      ...coilSettings('24 V'),
      ...RATING,
    },
    terminals: (s) => [...coil(s), ...contacts(s, 'coil', 5)],
  });

export const relay = relayKind('relay', 'relay', 'A small switch pulled in by a coil.', '2', '1');
export const delayedRelay = relayKind(
  'delayed-relay',
  'relay that lets go late',
  'Pulls in at once and lets go some time after its coil lost current.',
  '1',
  '0',
);

export const safetyRelay: WiringKind = wiringKind({
  id: 'safety-relay',
  name: 'safety relay',
  says: 'A bought unit that watches one or two channels and the contactors behind it.',
  letter: 'U',
  settings: {
    channels: count('channels', '2', 2, 1),
    outputs: count('outputs that open at once', '2', 4, 1),
    delayed: count('outputs that open late', '0', 2),
    volts: COIL['coil-volts']!,
    current: COIL['coil-current']!,
    ...RATING,
  },
  terminals: (s) => {
    const feed = (pole: 'plus' | 'minus') => ({
      kind: 'feed' as const,
      pole,
      role: 'logic' as const,
      volts: numberOf(s, 'volts') ?? 24,
      ...(numberOf(s, 'current') === undefined ? {} : { amps: numberOf(s, 'current')! }),
    });
    const loop = (mark: string, name: string, other: string) => ({
      mark,
      name,
      // Its own test signals run here; it is no logic that others may drive.
      nature: { kind: 'sensor' as const, side: mark.endsWith('b') ? ('takes' as const) : ('gives' as const) },
      with: other,
      group: 'loops',
      needed: true,
    });
    return [
      { mark: 'A1', name: 'supply, plus', nature: feed('plus'), with: 'A2', needed: true },
      { mark: 'A2', name: 'supply, 0 V', nature: feed('minus'), with: 'A1', needed: true },
      ...Array.from({ length: numberOf(s, 'channels') ?? 0 }, (_, n) => [
        loop(`C${n + 1}a`, `channel ${n + 1}, out`, `C${n + 1}b`),
        loop(`C${n + 1}b`, `channel ${n + 1}, back`, `C${n + 1}a`),
      ]).flat(),
      loop('Ra', 'start loop, out', 'Rb'),
      loop('Rb', 'start loop, back', 'Ra'),
      ...Array.from({ length: numberOf(s, 'outputs') ?? 0 }, (_, n) =>
        contact(`${n + 1}3`, `${n + 1}4`, { closes: 'when-on', role: 'auxiliary', moved: 'logic' }, s),
      ).flat(),
      ...Array.from({ length: numberOf(s, 'delayed') ?? 0 }, (_, n) =>
        contact(`${n + 4}7`, `${n + 4}8`, { closes: 'when-on', role: 'auxiliary', moved: 'logic' }, s),
      ).flat(),
    ];
  },
});
