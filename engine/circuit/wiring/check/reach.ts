/** From a pole to what it must not reach: through wires, fuses and switches, and through contacts once they close. */
import type { Terminal } from '../types.ts';
import type { Component } from './components.ts';
import type { View } from './view.ts';

export interface Reached {
  readonly terminal: Terminal;
  /** First ends of the contacts that have to close; empty where it is joined for good. */
  readonly contacts: readonly string[];
}

/** More rails than this are no way of one conductor. */
const MOST = 48;

interface Stop {
  readonly rail: Component;
  readonly contacts: readonly string[];
  /** The contact it was entered through: a changeover contact never lies on both its sides at once. */
  readonly by: Terminal | undefined;
}

/**
 * The nearest first.
 *
 * @param kinds natures of terminals that are looked at
 * @param isWrong whether the pole must not reach it
 */
export function reachedFrom(
  view: View,
  from: string,
  kinds: readonly string[],
  isWrong: (terminal: Terminal, through: readonly string[]) => boolean,
): readonly Reached[] {
  const first = view.rail(from);
  if (!first) return [];
  const seen = new Set([first]);
  const queue: Stop[] = [{ rail: first, contacts: [], by: undefined }];
  const made: Reached[] = [];
  for (let at = 0; at < queue.length && at < MOST; at++) {
    const { rail, contacts, by } = queue[at]!;
    for (const kind of kinds)
      for (const id of view.inRail(rail, kind)) {
        const terminal = view.terminal(id)!;
        if (id !== from && isWrong(terminal, contacts)) made.push({ terminal, contacts });
      }
    for (const end of view.inRail(rail, 'contact')) {
      const near = view.terminal(end)!;
      const far = near.with;
      const next = far === null ? undefined : view.rail(far);
      if (!next || seen.has(next) || isOtherSide(by, near)) continue;
      seen.add(next);
      queue.push({ rail: next, contacts: [...contacts, [end, far!].toSorted()[0]!], by: near });
    }
  }
  return made;
}

function isOtherSide(by: Terminal | undefined, near: Terminal): boolean {
  if (!by || by.device !== near.device) return false;
  const [one, other] = [by.nature, near.nature];
  return one.kind === 'contact' && other.kind === 'contact' && one.closes !== other.closes;
}
