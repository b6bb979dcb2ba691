/** Samples read from disk, and ways to change one fact of them, for tests. */
import { readFileSync } from 'node:fs';
import { factSpec } from '../engine/parts/index.ts';
import { convert } from '../engine/quantity/index.ts';
import { type Fact, type Refit, readRefit } from '../engine/refit/index.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import { SAMPLES } from './index.ts';

export function sample(id: string): Refit {
  const { file } = SAMPLES.find((each) => each.id === id)!;
  const read = readRefit(readFileSync(new URL(file, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`${file}: ${read.problem.message}`);
  return read.value;
}

export interface Entry {
  /** 'X.motor.emf', 'supply.secondary'. */
  readonly path: string;
  readonly place: string;
  readonly part: string;
  readonly name: string;
  readonly fact: Fact;
}

/** Every fact of every part that fills a place. */
export function entries(refit: Refit): Entry[] {
  const all: Entry[] = [];
  for (const [chain, places] of [
    ['', refit.places] as const,
    ...refit.chains.map((each) => [`${each.id}.`, each.places] as const),
  ]) {
    for (const [place, { chosen }] of Object.entries(places)) {
      if (chosen === null || chosen === 'none') continue;
      for (const [name, fact] of Object.entries(refit.parts[chosen]!.facts))
        all.push({ path: `${chain}${place}.${name}`, place, part: chosen, name, fact });
    }
  }
  return all;
}

export function without(refit: Refit, { part, name }: Entry): Refit {
  const { [name]: _gone, ...facts } = refit.parts[part]!.facts;
  return { ...refit, parts: { ...refit.parts, [part]: { ...refit.parts[part]!, facts } } };
}

/** The same refit with this fact three in a hundred smaller, or undefined where it is no number. */
export function smaller(refit: Refit, { part, place, name, fact }: Entry): Refit | undefined {
  const spec = factSpec(place, name)!;
  const read = readFact(spec, fact.value);
  if (spec.kind !== 'quantity' || !read.ok || read.value.kind !== 'quantity') return undefined;
  const text = `${convert(read.value.value * 0.97, spec.unit)} ${spec.unit === '1' ? '' : spec.unit}`.trim();
  const now: Fact = { ...fact, value: { kind: 'quantity', text } };
  const facts = { ...refit.parts[part]!.facts, [name]: now };
  return { ...refit, parts: { ...refit.parts, [part]: { ...refit.parts[part]!, facts } } };
}
