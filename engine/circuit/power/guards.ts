/**
 * Which fuse or breaker stands before which wire, of a wiring looked at once: the metal followed from each live terminal of
 * a source.
 */
import type { Contact, ReadWiring, Terminal } from '../wiring/types.ts';
import { closedRunning } from './conductors.ts';
import type { Source } from './sources.ts';

export interface Guard {
  readonly source: Source;
  /** Terminals (the side towards the source) of fuses and breakers passed on the way, nearest to the source first. */
  readonly passed: readonly string[];
}

export interface Guards {
  /** By wire; a wire that hangs on no live terminal is absent. */
  readonly wires: ReadonlyMap<string, Guard>;
  /** By terminal. */
  readonly terminals: ReadonlyMap<string, Guard>;
}

type Step = { readonly to: string; readonly wire?: string; readonly guard?: string };

/**
 * Follows wires, joints, closed contacts and fuses, never a load; what is nearest to a source by fuses comes first.
 *
 * @param from the terminals of a source to start at: its live ones, or those the current comes back to
 */
export function guardsOf(
  wiring: ReadWiring,
  sources: readonly Source[],
  from: (source: Source) => readonly string[] = ({ live }) => live,
): Guards {
  const steps = new Map<string, Step[]>();
  const add = (a: string, b: string, more: { wire?: string; guarded?: boolean }): void => {
    const { wire, guarded } = more;
    for (const [here, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = steps.get(here) ?? [];
      steps.set(here, list);
      list.push({ to, ...(wire === undefined ? {} : { wire }), ...(guarded ? { guard: here } : {}) });
    }
  };
  for (const wire of wiring.wires.values())
    if (wiring.terminals.has(wire.from) && wiring.terminals.has(wire.to))
      add(wire.from, wire.to, { wire: wire.id });
  for (const device of wiring.devices.values()) for (const { a, b } of device.joins) add(a, b, {});
  const seen = new Set<string>();
  for (const terminal of wiring.terminals.values()) {
    const other = terminal.with;
    if (other === null || seen.has(terminal.id) || !passes(terminal)) continue;
    seen.add(other);
    const { nature } = terminal;
    add(terminal.id, other, {
      guarded: nature.kind === 'protection' && nature.form !== 'residual' && nature.form !== 'switch',
    });
  }
  const terminals = new Map<string, Guard>();
  const wires = new Map<string, Guard>();
  for (const source of sources) {
    // Ring by ring: first what is reached without a fuse, then behind one fuse, and so on.
    let ring: (readonly [string, Guard])[] = from(source).map((live) => [live, { source, passed: [] }]);
    while (ring.length > 0) {
      const behind: (readonly [string, Guard])[] = [];
      const stack = [...ring];
      while (stack.length > 0) {
        const [at, guard] = stack.pop()!;
        if (terminals.has(at)) continue;
        terminals.set(at, guard);
        for (const step of steps.get(at) ?? []) {
          if (step.wire !== undefined && !wires.has(step.wire)) wires.set(step.wire, guard);
          if (terminals.has(step.to)) continue;
          if (step.guard === undefined) stack.push([step.to, guard]);
          else behind.push([step.to, { source, passed: [...guard.passed, step.guard] }]);
        }
      }
      ring = behind;
    }
  }
  return { terminals, wires };
}

function passes({ nature }: Terminal): boolean {
  if (nature.kind === 'protection') return true;
  if (nature.kind === 'mains') return nature.side === 'passes';
  return nature.kind === 'contact' && closedRunning(nature as Contact);
}
