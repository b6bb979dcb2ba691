/** What an edit brings in is read before it is kept: facts by their kind, policies, and which part fits which place. */

import { policyFault } from '../engine/assess/set-policy.ts';
import { POLICY } from '../engine/checks/policies.ts';
import { compileStop } from '../engine/circuit/stop/index.ts';
import { PARTS, PLACES, type PlaceId } from '../engine/parts/index.ts';
import { parseQuantity } from '../engine/quantity/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import { own } from '../engine/quantity/own.ts';
import type { Problem, Result } from '../engine/quantity/types.ts';
import type { Change, Evidence, Fact, Part, Place, Refit, StopCircuit } from '../engine/refit/index.ts';
import { itemProblem } from '../engine/refit/read-answer.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import { same } from '../engine/refit/same.ts';

/**
 * The first thing in these changes that cannot be, with its path within the edit; undefined where all can.
 * What stood there before is not held against them, so that a refit with something unreadable can still be worked on.
 */
export function changesProblem(refit: Refit, changes: readonly Change[]): Problem | undefined {
  const parts = new Map(Object.entries(refit.parts));
  for (const change of changes) if (change.do === 'part' && change.new) parts.set(change.id, change.new);
  for (const [index, change] of changes.entries()) {
    const problem = changeProblem(parts, change);
    if (problem)
      return { ...problem, where: `changes[${index}].new${problem.where ? `.${problem.where}` : ''}` };
  }
  return undefined;
}

type Parts = ReadonlyMap<string, Part>;

function changeProblem(parts: Parts, change: Change): Problem | undefined {
  switch (change.do) {
    case 'fact': {
      const part = parts.get(change.part);
      // A part that is not there is the store's to refuse.
      return part && change.new ? factProblem(part.kind, change.fact, change.new) : undefined;
    }
    case 'part':
      return change.new ? partProblem(change.new, change.old) : undefined;
    case 'place':
      return change.new ? placeProblem(parts, change.place, change.new) : undefined;
    case 'chain':
      for (const [name, place] of Object.entries(change.new?.places ?? {})) {
        const problem = placeProblem(parts, name, place);
        if (problem) return { ...problem, where: `places.${name}` };
      }
      return undefined;
    case 'policy':
      return change.new === null ? undefined : policyProblem(change.policy, change.new);
    case 'evidence':
      return change.new ? evidenceProblem(parts, change.new, change.old) : undefined;
    case 'survey':
      return change.new ? itemProblem(change.new, change.old) : undefined;
    case 'stop':
      return change.new ? stopProblem(change.new) : undefined;
    case 'work':
    case 'auxiliary':
    case 'device':
    case 'wire':
    case 'cable':
    case 'wiring-setting':
    case 'tag':
    case 'keep':
    case 'machine':
    case 'title':
      return undefined;
  }
}

function factProblem(kindId: string, fact: string, { value }: Fact): Problem | undefined {
  const kind = own(PARTS, kindId);
  if (!kind) return noSuch('kind of part', kindId, Object.keys(PARTS));
  const spec = own(kind.facts, fact);
  if (!spec) return noSuch(`fact of the ${kind.name}`, fact, Object.keys(kind.facts));
  return problemOf(readFact(spec, value), 'value');
}

function partProblem(part: Part, before: Part | null): Problem | undefined {
  if (!Object.hasOwn(PARTS, part.kind))
    return { ...noSuch('kind of part', part.kind, Object.keys(PARTS)), where: 'kind' };
  for (const [name, fact] of Object.entries(part.facts)) {
    if (before && before.kind === part.kind && same(before.facts[name], fact)) continue;
    const problem = factProblem(part.kind, name, fact);
    if (problem) return { ...problem, where: `facts.${name}${problem.where ? `.${problem.where}` : ''}` };
  }
  return undefined;
}

function stopProblem(circuit: StopCircuit): Problem | undefined {
  const made = compileStop(circuit);
  return made.ok ? undefined : { ...made.problem, where: made.problem.where?.replace(/^stop\./, '') ?? '' };
}

/** What was measured stays when its part goes, but nothing new is measured on a part that is not there. */
function evidenceProblem(parts: Parts, { part }: Evidence, old: Evidence | null): Problem | undefined {
  return part === null || part === old?.part || parts.has(part)
    ? undefined
    : { ...noSuch('part', part, [...parts.keys()]), where: 'part' };
}

function placeProblem(parts: Parts, name: string, place: Place): Problem | undefined {
  const kind = Object.hasOwn(PLACES, name) ? PLACES[name as PlaceId] : undefined;
  if (!kind) return noSuch('place', name, Object.keys(PLACES));
  for (const [index, id] of place.options.entries()) {
    const part = parts.get(id);
    if (part && part.kind !== kind.id)
      return {
        code: 'out-of-domain',
        message: `“${part.name}” is a ${part.kind}, so it cannot fill a place for a ${kind.id}.`,
        where: `options[${index}]`,
      };
  }
  return undefined;
}

function policyProblem(id: string, text: string): Problem | undefined {
  const policy = POLICY.get(id);
  if (!policy) return noSuch('policy', id, [...POLICY.keys()]);
  const read = parseQuantity(text, policy.unit);
  if (!read.ok) return problemOf(read);
  const message = policyFault(policy, read.value.value);
  return message === undefined ? undefined : { code: 'out-of-domain', message };
}

function problemOf(result: Result<unknown>, where?: string): Problem | undefined {
  if (result.ok) return undefined;
  const { where: _own, ...problem } = result.problem;
  return where === undefined ? problem : { ...problem, where };
}

function noSuch(what: string, name: string, names: readonly string[]): Problem {
  const near = nearest(name.slice(0, 60), names);
  return {
    code: 'unknown-name',
    message: `There is no ${what} called “${name.slice(0, 60)}”. ${near ? `Did you mean “${near}”?` : `There are: ${names.join(', ')}.`}`,
    ...(near ? { suggestion: near } : {}),
  };
}
