/** Sources that drive current with no load on: a short circuit, or supplies of different volts joined. */
import { andList } from '../../../quantity/words.ts';
import type { Trouble } from '../../network/index.ts';
import { type Source, sourceElement } from '../sources.ts';
import type { Solved } from './loops.ts';

/** More than this with no load on is a short circuit. */
const SHORT_AMPS = 1;
/** Rank of a link that is a contact. Two of them in parallel share the current, so that a quarter of it counts as much. */
const CONTACT = 1;

/** @param sources in the order they are named */
export function shortOf(sources: readonly Source[], loops: ReadonlySet<Solved>): Trouble | undefined {
  const broken = [...loops].find(({ trouble }) => trouble !== undefined);
  if (broken) return broken.trouble;
  const idle = new Map<string, number>();
  const wires: { readonly id: string; readonly amps: number }[] = [];
  const contacts: { readonly end: string; readonly amps: number }[] = [];
  for (const loop of loops)
    for (const [{ link }, amps] of loop.idle) {
      idle.set(link.id, Math.abs(amps));
      if (link.wire !== undefined) wires.push({ id: link.wire, amps: Math.abs(amps) });
      if (link.rank === CONTACT) contacts.push({ end: link.a, amps: Math.abs(amps) });
    }
  const hot = sources
    .map((source) => ({
      source,
      amps: Math.max(0, ...source.live.map((live) => idle.get(sourceElement(live)) ?? 0)),
    }))
    .filter(({ amps }) => amps > SHORT_AMPS);
  if (hot.length === 0) return undefined;
  const most = Math.max(...hot.map(({ amps }) => amps));
  const by = wires
    .filter(({ amps }) => amps > most / 2)
    .map(({ id }) => id)
    .sort();
  const devices = [...new Set(hot.map(({ source }) => source.device))];
  const named = andList(by.slice(0, 6).map((id) => `wire ${id}`));
  const way = by.length === 0 ? '' : ` by way of ${named}${by.length > 6 ? ' and others' : ''}`;
  return {
    kind: 'source-loop',
    nodes: hot.flatMap(({ source }) => source.live),
    elements: devices,
    contacts: contacts
      .filter(({ amps }) => amps > most / 4)
      .map(({ end }) => end)
      .sort(),
    sentence: `With nothing on, ${andList(devices)} ${devices.length === 1 ? 'is short-circuited' : 'drive current through each other, or are short-circuited'}${way}.`,
  };
}
