/** Reads a refit's places and facts for one chain, and keeps what it read for as long as the fact stays the same. */

import { factSpec, MACHINE_PLACES } from '../parts/index.ts';
import { own } from '../quantity/own.ts';
import type { Problem } from '../quantity/types.ts';
import { type ReadFact, readFact } from '../refit/read-fact.ts';
import type { Chain, Fact, Part, Place, Refit } from '../refit/types.ts';
import type { Missing, Value } from './value.ts';

export interface Context {
  readonly refit: Refit;
  readonly chain: Chain | null;
  /** Facts that were read before, by identity of the fact. */
  readonly memo: FactMemo;
}

export type Reading =
  | { readonly state: 'read'; readonly fact: Fact; readonly read: ReadFact; readonly path: string }
  | { readonly state: 'bad'; readonly path: string; readonly problem: Problem }
  | Missing
  | Extract<Value, { state: 'inapplicable' }>;

/** Facts are immutable objects, so an unchanged fact need not be read twice. */
export type FactMemo = WeakMap<Fact, Map<string, Reading>>;

/** 'X.screw.root' or 'supply.secondary'. */
export function pathOf(chain: Chain | null, place: string, fact?: string): string {
  const where = Object.hasOwn(MACHINE_PLACES, place) || !chain ? place : `${chain.id}.${place}`;
  return fact === undefined ? where : `${where}.${fact}`;
}

export function placeOf(context: Pick<Context, 'refit' | 'chain'>, place: string): Place | undefined {
  const places = Object.hasOwn(MACHINE_PLACES, place) ? context.refit.places : context.chain?.places;
  return places && own(places, place);
}

/** The part in a place, 'none', or null while it is not known. */
export function partIn(context: Pick<Context, 'refit' | 'chain'>, place: string): Part | 'none' | null {
  const chosen = placeOf(context, place)?.chosen ?? null;
  if (chosen === null || chosen === 'none') return chosen;
  return context.refit.parts[chosen] ?? null;
}

const missing = (path: string): Missing => ({ state: 'missing', facts: new Set([path]) });

/** Reads one fact of one place. */
export function readPath(context: Context, place: string, name: string): Reading {
  const path = pathOf(context.chain, place, name);
  const spec = factSpec(place, name);
  if (!spec) throw new Error(`no fact ${place}.${name} is described`);
  const part = partIn(context, place);
  if (part === 'none') {
    return { state: 'inapplicable', reason: `There is no ${pathOf(context.chain, place)} on this machine.` };
  }
  if (part === null) return missing(path);
  const fact = own(part.facts, name);
  if (!fact) return missing(path);
  let known = context.memo.get(fact);
  if (!known) {
    known = new Map();
    context.memo.set(fact, known);
  }
  let reading = known.get(path);
  if (!reading) {
    const read = readFact(spec, fact.value);
    reading = read.ok
      ? { state: 'read', fact, read: read.value, path }
      : { state: 'bad', path, problem: { ...read.problem, where: path } };
    known.set(path, reading);
  }
  return reading;
}
