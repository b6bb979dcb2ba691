import { type Draft, numberOf, textOf, type WiringKind, wiringKind } from '../kind.ts';
import { choice, count, type Settings } from '../setting.ts';

/** Which terminals of a strip are bridged: '1-4 5,6' joins 1 to 4, and 5 with 6. */
export function bridges(settings: Settings): readonly (readonly [string, string])[] {
  const joined: [string, string][] = [];
  const most = numberOf(settings, 'ways') ?? 0;
  for (const each of textOf(settings, 'bridges').split(/\s+/)) {
    const range = /^(\d{1,3})-(\d{1,3})$/.exec(each);
    const marks = range
      ? Array.from(
          { length: Math.max(0, Number(range[2]) - Number(range[1]) + 1) },
          (_, n) => Number(range[1]) + n,
        )
      : each.split(',').map(Number);
    const there = marks.filter((n) => Number.isInteger(n) && n >= 1 && n <= most);
    for (let at = 1; at < there.length; at++) joined.push([String(there[at - 1]), String(there[at])]);
  }
  return joined;
}

const strip = (id: string, name: string, says: string, holds: number, ways: string): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter: 'X',
    settings: {
      ways: count('terminals', ways, 200, 1),
      bridges: { kind: 'text', name: 'terminals bridged, as 1-4 5,6', usual: '' },
    },
    terminals: (s) =>
      Array.from(
        { length: numberOf(s, 'ways') ?? 0 },
        (_, n): Draft => ({ mark: `${n + 1}`, name: `terminal ${n + 1}`, nature: { kind: 'joint' }, holds }),
      ),
    joins: bridges,
  });

export const terminalStrip = strip(
  'strip',
  'terminal strip',
  'Where wires meet. Each terminal joins the two wires in it; bridges join neighbours.',
  2,
  '10',
);
export const connector = strip(
  'connector',
  'connector',
  'A plug and its socket: each pin joins the wire on one side to that on the other.',
  2,
  '4',
);

export const earthBar: WiringKind = wiringKind({
  id: 'earth-bar',
  name: 'earth bar',
  says: 'Where every protective conductor comes together, each under a screw of its own.',
  letter: 'X',
  settings: { ways: count('screws', '12', 200, 2) },
  terminals: (s) =>
    Array.from(
      { length: numberOf(s, 'ways') ?? 0 },
      (_, n): Draft => ({
        mark: `${n + 1}`,
        name: `screw ${n + 1}`,
        nature: { kind: 'earth', role: 'bar' },
        holds: 1,
      }),
    ),
  joins: (s) =>
    Array.from(
      { length: Math.max(0, (numberOf(s, 'ways') ?? 0) - 1) },
      (_, n) => [`${n + 1}`, `${n + 2}`] as const,
    ),
});

export const metal: WiringKind = wiringKind({
  id: 'metal',
  name: 'metal part',
  says: 'A bed, a door, a cabinet: metal that a hand can touch and that must be bonded to earth.',
  letter: 'H',
  exposed: true,
  settings: { hinged: choice('it is hinged', ['no', 'yes'], 'no') },
  terminals: () => [
    { mark: 'PE', name: 'bonding screw', nature: { kind: 'earth', role: 'metal' }, needed: true, holds: 1 },
  ],
});
