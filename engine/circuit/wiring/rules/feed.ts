import { type Drive, drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { amps, metres, terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { conductorDrop } from '../drop.ts';
import type { Feed, WiringFinding } from '../types.ts';

/** A device fed with d.c., asked at its plus. */
export const feed: Rule = {
  id: 'feed',
  title: 'Is the device fed with the right voltage?',
  of: ['feed'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as Feed;
    const back = terminal.with;
    if (nature.pole !== 'plus' || back === null || view.wiresAt(id).length === 0) return [];
    const name = `${terminal.device} (${terminal.name})`;
    const plus = drivesOf(view, id);
    const minus = drivesOf(view, back);
    const ac = [...plus, ...minus].find(({ how }) => how === 'ac');
    if (ac)
      return [
        found(
          feed,
          [id, ac.path.source],
          'fails',
          `${name} wants d.c., and mains or a.c. reach it from ${terminalName(view, ac.path.source)}.`,
          {
            remedy: 'A d.c. supply belongs between.',
          },
        ),
      ];
    const up = plus.find(isHeld);
    const down = minus.find(isHeld);
    if (!up || !down) {
      const dead = !up ? id : back;
      return [
        found(feed, [id, back], 'fails', `${name} gets no current: from ${dead} no supply is reached.`, {
          remedy: `Connect ${dead} to ${dead === id ? 'plus' : '0 V'} of its supply.`,
        }),
      ];
    }
    for (const path of [up.path, down.path])
      for (const contact of path.contacts) view.give({ to: `contact:${contact}`, amps: nature.amps });
    if (nature.role === 'logic') view.give({ to: `supply:${up.path.source}`, amps: nature.amps });
    if ((up.high ?? 1) === 0 && (down.high ?? 0) > 0)
      return [
        found(
          feed,
          [id, back, up.path.source],
          'fails',
          `${name} is fed the wrong way round: its plus is at minus. Many devices die of that at once.`,
          {
            remedy: `Exchange ${id} and ${back}.`,
          },
        ),
      ];
    if (up.against === undefined || up.against !== down.against)
      return [
        found(
          feed,
          [id, back, up.path.source, down.path.source],
          'fails',
          `Plus of ${name} comes from ${up.path.source} and its minus goes to ${down.path.source}, and these two supplies have no 0 V in common: no current flows.`,
          {
            remedy: 'Take both poles of the same supply.',
          },
        ),
      ];
    return [...voltage(id, nature, name, up), ...drop(view, id, nature, name, up)];
  },
};

const isHeld = (drive: Drive): boolean => drive.how === 'fixed';

function voltage(id: string, nature: Feed, name: string, up: Drive): readonly WiringFinding[] {
  const { volts: wanted } = nature;
  const least = nature.least ?? (wanted === undefined ? undefined : wanted * 0.9);
  const most = nature.most ?? (wanted === undefined ? undefined : wanted * 1.1);
  const about = [id, up.path.source, ...up.path.contacts];
  if (up.high === undefined || up.least === undefined || up.top === undefined)
    return [
      found(feed, about, 'unknown', `${name} is fed from ${up.path.source}, whose voltage is not known.`, {
        needs: [`${up.path.source}.volts`],
      }),
    ];
  if (least === undefined && most === undefined)
    return [
      found(feed, about, 'unknown', `${name} gets ${volts(up.high)}; what it wants is not known.`, {
        needs: [`${id}.volts`],
      }),
    ];
  const figures = [
    figure('it gets at least', up.least, 'V'),
    figure('it gets at most', up.top, 'V'),
    ...(least === undefined ? [] : [figure('it needs at least', least, 'V')]),
    ...(most === undefined ? [] : [figure('it stands at most', most, 'V')]),
  ];
  const over = most === undefined ? Number.POSITIVE_INFINITY : most / up.top;
  const under = least === undefined || least === 0 ? Number.POSITIVE_INFINITY : up.least / least;
  const margin = Math.min(over, under);
  const range =
    least === undefined
      ? `at most ${volts(most!)}`
      : most === undefined
        ? `at least ${volts(least)}`
        : `${volts(least)} to ${volts(most)}`;
  return [
    found(
      feed,
      about,
      verdictOf(margin, 1),
      margin >= 1
        ? `${name} is fed with ${volts(up.high)} from ${up.path.source}; it takes ${range}.`
        : over < 1
          ? `${name} gets up to ${volts(up.top)} from ${up.path.source} and stands ${volts(most!)}.`
          : `${name} gets ${volts(up.least)} from ${up.path.source} at worst and needs ${volts(least!)}.`,
      {
        margin,
        figures,
        source: 'rating of the device',
        remedy: margin >= 1 ? undefined : 'Feed it from a supply of its voltage.',
      },
    ),
  ];
}

/** Copper between supply and device, where the way is short and its wires are known. */
function drop(view: View, id: string, nature: Feed, name: string, up: Drive): readonly WiringFinding[] {
  if (nature.role !== 'logic' || nature.least === undefined || up.high === undefined) return [];
  const way = cableTo(view, id, up.path.source);
  if (!way) return [];
  const needs = [
    ...(nature.amps === undefined ? [`${id}.current`] : []),
    ...way.flatMap(({ wire, length, section }) => [
      ...(length === undefined ? [`${wire}.length`] : []),
      ...(section === undefined ? [`${wire}.section`] : []),
    ]),
  ];
  const about = [id, up.path.source, ...way.map(({ wire }) => wire)];
  if (needs.length > 0)
    return [
      found(
        feed,
        about,
        'unknown',
        `How much voltage ${name} loses on its cable cannot be said: ${needs.slice(0, 3).join(', ')} not known.`,
        { part: 'drop', needs },
      ),
    ];
  const lost = way.reduce(
    (sum, { length, section }) => sum + conductorDrop(length!, section!, nature.amps!),
    0,
  );
  const left = up.high - lost;
  const long = way.reduce((sum, { length }) => sum + length!, 0);
  const margin = left / nature.least;
  return [
    found(
      feed,
      about,
      verdictOf(margin, 1),
      `${name} takes ${amps(nature.amps!)} through ${metres(long)} of cable; ${volts(lost)} are lost there and back, ${volts(left)} arrive, and it needs ${volts(nature.least)}.`,
      {
        part: 'drop',
        margin,
        figures: [
          figure('lost', lost, 'V'),
          figure('arrives', left, 'V'),
          figure('needed', nature.least, 'V'),
        ],
        source: 'IEC 60028, copper at 20 °C',
        remedy:
          margin >= 1
            ? undefined
            : 'Put spare cores in parallel with the two of the supply, or take a thicker cable.',
      },
    ),
  ];
}

interface Piece {
  readonly wire: string;
  readonly length: number | undefined;
  readonly section: number | undefined;
}

/** A way has at most this many terminals: an encoder's cable has a plug or two; beyond, it is a rail. */
const FAR = 24;

/** Wires from a terminal to its source through one net, or undefined where the way is long or leaves the cable. */
function cableTo(view: View, from: string, to: string): readonly Piece[] | undefined {
  // Only what hangs on a cable loses anything worth telling.
  if (!view.wiresAt(from).some((wire) => view.wire(wire)?.cable != null)) return undefined;
  if (view.net(from) !== view.net(to)) return undefined;
  const seen = new Map<string, readonly Piece[]>([[from, []]]);
  for (const [terminal, way] of seen) {
    if (terminal === to) return way;
    if (seen.size > FAR) return undefined;
    for (const { to: next, wire } of view.neighbours(terminal)) {
      if (seen.has(next)) continue;
      if (wire === null) {
        seen.set(next, way);
        continue;
      }
      const read = view.wire(wire)!;
      // Loose wires inside the cabinet are short.
      seen.set(
        next,
        read.cable === null && read.length === undefined
          ? way
          : [...way, { wire, length: read.length, section: read.section }],
      );
    }
  }
  return undefined;
}
