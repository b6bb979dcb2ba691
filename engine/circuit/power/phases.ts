/** Which live terminals of the mains each terminal hangs on, everything switched on. */
import type { ReadWiring } from '../wiring/types.ts';
import { guardsOf } from './guards.ts';
import type { Source } from './sources.ts';

/** By terminal: 'X0.L1', 'X0.L2' …; one that hangs on no phase is absent. */
export function phasesOf(
  wiring: ReadWiring,
  mains: readonly Source[],
): ReadonlyMap<string, readonly string[]> {
  const phases = new Map<string, string[]>();
  for (const source of mains)
    for (const live of source.live)
      for (const id of guardsOf(wiring, [source], () => [live]).terminals.keys()) {
        const known = phases.get(id);
        if (known) known.push(live);
        else phases.set(id, [live]);
      }
  return phases;
}

/** Terminals that lose the mains when a device is taken out. */
export function behind(
  wiring: ReadWiring,
  mains: readonly Source[],
  device: string,
): (terminal: string) => boolean {
  const reached = guardsOf(wiring, mains).terminals;
  const rest: ReadWiring = {
    ...wiring,
    terminals: new Map([...wiring.terminals].filter(([, terminal]) => terminal.device !== device)),
  };
  const without = guardsOf(rest, mains).terminals;
  return (terminal) => reached.has(terminal) && !without.has(terminal);
}
