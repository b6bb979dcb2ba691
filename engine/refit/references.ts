/** What a schema cannot see: that names within a refit lead somewhere, and only one way. */
import type { Problem } from '../quantity/types.ts';
import { pathText } from './shape.ts';
import type { Place, Refit, StopCircuit } from './types.ts';

/** The first reference that leads nowhere or clashes; `knownKinds` are the kinds of part there are, if given. */
export function referenceProblem(refit: Refit, knownKinds?: readonly string[]): Problem | undefined {
  return (
    recordsProblem(refit) ??
    stopProblem(refit.stop) ??
    partsProblem(refit, knownKinds) ??
    chainsProblem(refit) ??
    placesProblem(refit)
  );
}

const problem = (path: readonly (string | number)[], words: string): Problem => {
  const where = pathText(path);
  return { code: 'unknown-name', message: `${where} ${words}.`, where };
};

/** Evidence may name a part that was taken out since: what was measured stays measured. */
function recordsProblem(refit: Refit): Problem | undefined {
  for (const field of ['evidence', 'tags', 'keeps', 'survey', 'work', 'auxiliaries'] as const)
    for (const [key, { id }] of Object.entries(refit[field]))
      if (id !== key) return problem([field, key, 'id'], `must be '${key}', the name it stands under`);
  // Wires may lead to a device that was taken out: that is a finding, not a broken file.
  for (const field of ['devices', 'wires', 'cables'] as const)
    for (const [key, { id }] of Object.entries(refit.wiring[field]))
      if (id !== key)
        return problem(['wiring', field, key, 'id'], `must be '${key}', the name it stands under`);
  return undefined;
}

/** Wires run between elements that are there, and what moves has a drive. Terminals are read with the circuit. */
function stopProblem(stop: StopCircuit | null): Problem | undefined {
  if (stop === null) return undefined;
  for (const field of ['elements', 'wires', 'motions'] as const)
    for (const [key, { id }] of Object.entries(stop[field]))
      if (id !== key)
        return problem(['stop', field, key, 'id'], `must be '${key}', the name it stands under`);
  const is = (element: string) => Object.hasOwn(stop.elements, element);
  for (const [key, wire] of Object.entries(stop.wires))
    for (const end of ['from', 'to'] as const) {
      const element = wire[end].split('.')[0]!;
      if (!is(element))
        return problem(
          ['stop', 'wires', key, end],
          `must begin with an element of the circuit; '${element}' is none`,
        );
    }
  for (const [key, motion] of Object.entries(stop.motions))
    for (const field of ['drive', 'brake'] as const) {
      const element = motion[field];
      if (element !== null && !is(element))
        return problem(
          ['stop', 'motions', key, field],
          `must be an element of the circuit; '${element}' is none`,
        );
    }
  return undefined;
}

function partsProblem(refit: Refit, knownKinds?: readonly string[]): Problem | undefined {
  const kinds = knownKinds && new Set(knownKinds);
  for (const [key, part] of Object.entries(refit.parts)) {
    if (part.id !== key) return problem(['parts', key, 'id'], `must be '${key}', the name it stands under`);
    if (kinds && !kinds.has(part.kind))
      return problem(['parts', key, 'kind'], `must be a known kind of part: ${[...kinds].join(', ')}`);
    for (const [name, { evidence }] of Object.entries(part.facts))
      if (evidence !== undefined && !Object.hasOwn(refit.evidence, evidence))
        return problem(
          ['parts', key, 'facts', name, 'evidence'],
          `must name a measurement of this refit; '${evidence}' is none`,
        );
  }
  return undefined;
}

function chainsProblem(refit: Refit): Problem | undefined {
  const seen = new Set<string>();
  for (const [index, chain] of refit.chains.entries()) {
    if (seen.has(chain.id))
      return problem(['chains', index, 'id'], `must not be '${chain.id}' again; another chain has that name`);
    seen.add(chain.id);
  }
  return undefined;
}

function placesProblem(refit: Refit): Problem | undefined {
  const usedAt = new Map<string, string>();
  for (const [path, place] of everyPlace(refit)) {
    for (const [index, id] of place.options.entries()) {
      const at = [...path, 'options', index];
      if (!Object.hasOwn(refit.parts, id))
        return problem(at, `must name a part of this refit; '${id}' is none`);
      const before = usedAt.get(id);
      if (before !== undefined)
        return problem(
          at,
          `must not be '${id}', which is already an option at ${before}; a part belongs to one place`,
        );
      usedAt.set(id, pathText(at));
    }
    if (place.chosen !== null && place.chosen !== 'none' && !place.options.includes(place.chosen))
      return problem(
        [...path, 'chosen'],
        `must be one of the place's options, 'none' or null; '${place.chosen}' is not`,
      );
  }
  return undefined;
}

function* everyPlace(refit: Refit): Generator<[path: (string | number)[], place: Place]> {
  for (const [name, place] of Object.entries(refit.places)) yield [['places', name], place];
  for (const [index, chain] of refit.chains.entries())
    for (const [name, place] of Object.entries(chain.places))
      yield [['chains', index, 'places', name], place];
}
