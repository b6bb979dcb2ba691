/** Which live terminals of the mains each terminal hangs on, everything switched on. */
import type { ReadWiring } from '../wiring/types.ts';
import { guardsOf } from './guards.ts';
import type { Source } from './sources.ts';

const KEPT = new WeakMap<readonly Source[], ReadonlyMap<string, readonly string[]>>();

/**
 * By terminal: 'X0.L1', 'X0.L2' …; one that hangs on no phase is absent. Worked out once for each list of sources,
 * which belongs to one reading of a wiring.
 */
export function phasesOf(
  wiring: ReadWiring,
  sources: readonly Source[],
): ReadonlyMap<string, readonly string[]> {
  const phases = KEPT.get(sources) ?? follow(wiring, sources);
  KEPT.set(sources, phases);
  return phases;
}

function follow(wiring: ReadWiring, sources: readonly Source[]): ReadonlyMap<string, readonly string[]> {
  const phases = new Map<string, string[]>();
  for (const source of sources.filter(({ kind }) => kind === 'mains'))
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
