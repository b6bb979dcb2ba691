/** An empty refit with all its places: everything is still unknown. */
import { CHAIN_PLACES, MACHINE_PLACES } from '../parts/index.ts';
import { ok, type Result, refuse } from '../quantity/types.ts';
import { LIMITS } from './limits.ts';
import { newRefit } from './new.ts';
import type { Chain, Change, Part, Place, Refit } from './types.ts';

/** Places of which it is not even known whether the machine has one. */
const MAYBE = new Set(['brake', 'spindle-feedback']);

const CHAIN_NAME = /^[A-Z][0-9]?$/;

/** What a machine’s spindle is called, after the letter of its speed in programs (ISO 6983-1). */
export const SPINDLE = 'S';

/** One axis or spindle with a part, without facts, in every place. */
export function blankChain(kind: Chain['kind'], id: string): { chain: Chain; parts: Part[] } {
  const parts: Part[] = [];
  const places: Record<string, Place> = {};
  for (const [place, partKind] of Object.entries(CHAIN_PLACES[kind])) {
    if (MAYBE.has(place)) {
      places[place] = { options: [], chosen: null };
      continue;
    }
    const part = `${id.toLowerCase()}-${place}`;
    // A machine has several motors, but mostly one spindle: its parts need no letter to tell them apart.
    const name = id === SPINDLE ? partKind.name : `${id} ${partKind.name}`;
    parts.push({ id: part, kind: partKind.id, name, facts: {} });
    places[place] = { options: [part], chosen: part };
  }
  return { chain: { id, kind, places }, parts };
}

/** A name for a chain as typed, in capitals, or why it cannot be one. */
function chainName(text: string, kind: Chain['kind'], taken: readonly string[]): Result<string> {
  const id = text.trim().toUpperCase();
  if (!CHAIN_NAME.test(id))
    return refuse({
      code: 'malformed',
      message: `“${text.trim().slice(0, 20)}” is no ${kind === 'axis' ? 'axis' : 'spindle'} name; write a letter, such as ${kind === 'axis' ? 'X or Z' : 'S'}, with a digit where there are two (${kind === 'axis' ? 'X2' : 'S2'}).`,
    });
  if (kind === 'axis' && id === SPINDLE)
    return refuse({
      code: 'malformed',
      message:
        'S is kept for the spindle, which is no axis: ask for a spindle instead, or call the axis otherwise.',
    });
  if (taken.includes(id))
    return refuse({
      code: 'malformed',
      message: `The name ${id} is there twice; each axis and spindle needs its own.`,
    });
  return ok(id);
}

/** The changes that give a refit one more axis or spindle, with nothing known of it yet. */
export function addChain(refit: Refit, kind: Chain['kind'], name: string): Result<Change[]> {
  const id = chainName(
    name,
    kind,
    refit.chains.map((chain) => chain.id),
  );
  if (!id.ok) return id;
  if (refit.chains.length >= LIMITS.chains)
    return refuse({
      code: 'too-long',
      message: `A refit may have at most ${LIMITS.chains} axes and spindles together.`,
    });
  const { chain, parts } = blankChain(kind, id.value);
  const clash = parts.find((part) => Object.hasOwn(refit.parts, part.id));
  if (clash)
    return refuse({
      code: 'malformed',
      message: `A part called ${clash.id} is there already, left from an earlier ${kind}; give this one another name.`,
    });
  return ok([
    ...parts.map((part): Change => ({ do: 'part', id: part.id, old: null, new: part })),
    { do: 'chain', id: id.value, old: null, new: chain },
  ]);
}

/** Names are one capital, with a digit where needed: X, Z, A1. With `spindle` the refit has a spindle S as well. */
export function blankRefit(start: {
  readonly id: string;
  readonly name: string;
  readonly about?: string;
  readonly machine: Refit['machine'];
  readonly axes: readonly string[];
  readonly spindle?: boolean;
}): Result<Refit> {
  if (start.axes.length === 0)
    return refuse({ code: 'empty', message: 'Name at least one axis, such as X and Z.' });
  if (start.axes.length + (start.spindle ? 1 : 0) > LIMITS.chains)
    return refuse({
      code: 'too-long',
      message: `A refit may have at most ${LIMITS.chains} axes and spindles together.`,
    });
  const made: ReturnType<typeof blankChain>[] = [];
  for (const axis of start.axes) {
    const id = chainName(
      axis,
      'axis',
      made.map(({ chain }) => chain.id),
    );
    if (!id.ok) return id;
    made.push(blankChain('axis', id.value));
  }
  if (start.spindle) made.push(blankChain('spindle', SPINDLE));
  const parts: Record<string, Part> = {};
  const places: Record<string, Place> = {};
  for (const [place, kind] of Object.entries(MACHINE_PLACES)) {
    parts[place] = { id: place, kind: kind.id, name: kind.name, facts: {} };
    places[place] = { options: [place], chosen: place };
  }
  for (const part of made.flatMap((each) => each.parts)) parts[part.id] = part;
  const { spindle: _, ...named } = start;
  return ok({
    ...newRefit({ ...named, about: start.about ?? '' }),
    places,
    chains: made.map(({ chain }) => chain),
    parts,
  });
}
