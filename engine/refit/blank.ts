/** An empty refit with all its places: everything is still unknown. */
import { AXIS_PLACES, MACHINE_PLACES } from '../parts/index.ts';
import { ok, type Result, refuse } from '../quantity/types.ts';
import { newRefit } from './new.ts';
import type { Chain, Part, Place, Refit } from './types.ts';

/** Places of which it is not even known whether the machine has one. */
const MAYBE = new Set(['brake']);

const AXIS_NAME = /^[A-Z][0-9]?$/;

/** One axis with a part, without facts, in every place. */
export function blankAxis(axis: string): { chain: Chain; parts: Part[] } {
  const parts: Part[] = [];
  const places: Record<string, Place> = {};
  for (const [place, kind] of Object.entries(AXIS_PLACES)) {
    if (MAYBE.has(place)) {
      places[place] = { options: [], chosen: null };
      continue;
    }
    const id = `${axis.toLowerCase()}-${place}`;
    parts.push({ id, kind: kind.id, name: `${axis} ${kind.name}`, facts: {} });
    places[place] = { options: [id], chosen: id };
  }
  return { chain: { id: axis, kind: 'axis', places }, parts };
}

/** Axis names are one capital, with a digit where needed: X, Z, A1. */
export function blankRefit(start: {
  readonly id: string;
  readonly name: string;
  readonly about?: string;
  readonly machine: Refit['machine'];
  readonly axes: readonly string[];
}): Result<Refit> {
  const axes = start.axes.map((axis) => axis.trim().toUpperCase());
  const wrong = axes.find((axis) => !AXIS_NAME.test(axis));
  if (wrong !== undefined) {
    return refuse({
      code: 'malformed',
      message: `“${wrong.slice(0, 20)}” is no axis name; write a letter, such as X or Z, with a digit where there are two (X2).`,
    });
  }
  if (axes.length === 0)
    return refuse({ code: 'empty', message: 'Name at least one axis, such as X and Z.' });
  if (axes.length > 12) return refuse({ code: 'too-long', message: 'A refit may have at most 12 axes.' });
  const twice = axes.find((axis, i) => axes.indexOf(axis) !== i);
  if (twice)
    return refuse({
      code: 'malformed',
      message: `The axis ${twice} is named twice; each needs its own name.`,
    });
  const parts: Record<string, Part> = {};
  const places: Record<string, Place> = {};
  for (const [place, kind] of Object.entries(MACHINE_PLACES)) {
    parts[place] = { id: place, kind: kind.id, name: kind.name, facts: {} };
    places[place] = { options: [place], chosen: place };
  }
  const chains: Chain[] = [];
  for (const axis of axes) {
    const made = blankAxis(axis);
    chains.push(made.chain);
    for (const part of made.parts) parts[part.id] = part;
  }
  return ok({ ...newRefit({ ...start, about: start.about ?? '' }), places, chains, parts });
}
