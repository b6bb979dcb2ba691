/** A stop circuit and its changes in words. */
import { brief } from './brief.ts';
import { same } from './same.ts';
import type { StopCircuit } from './types.ts';

const count = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`;

/** '9 elements, 24 wires', or that there is none. */
export function sayStopNow(stop: StopCircuit | null): string {
  return stop === null
    ? 'not drawn'
    : `${count(Object.keys(stop.elements).length, 'element')}, ${count(Object.keys(stop.wires).length, 'wire')}`;
}

/** What an edit changed: 'K1 changed, wire w3 added'. */
export function sayStop(before: StopCircuit | null, after: StopCircuit | null): string {
  if (after === null) return 'taken out';
  if (before === null) return `${after.pattern ?? 'drawn by hand'}, ${sayStopNow(after)}`;
  const said = [
    ...sayRecord('', before.elements, after.elements),
    ...sayRecord('wire ', before.wires, after.wires),
    ...sayRecord('motion ', before.motions, after.motions),
  ];
  if (before.pattern !== after.pattern) said.unshift(`laid out as ${after.pattern ?? 'drawn by hand'}`);
  if (!same(before.settings, after.settings)) said.push('answers changed');
  if (before.note !== after.note) said.push('note changed');
  return said.length === 0 ? 'unchanged' : brief(said.join(', '));
}

function* sayRecord<T>(
  what: string,
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): Generator<string> {
  for (const id of Object.keys(before)) if (!Object.hasOwn(after, id)) yield `${what}${id} taken out`;
  for (const [id, now] of Object.entries(after))
    if (!Object.hasOwn(before, id)) yield `${what}${id} added`;
    else if (!same(before[id], now)) yield `${what}${id} changed`;
}
