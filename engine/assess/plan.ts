/** Workings in the order in which each finds what it needs. Made once. */
import type { Check } from '../checks/check.ts';
import { CHECKS, WORKINGS } from '../checks/index.ts';
import type { Ref } from '../checks/refs.ts';
import type { Working } from '../checks/working.ts';

/** The workings a reference reads. */
export function workingsOf(ref: Ref): string[] {
  switch (ref.kind) {
    case 'result':
      return [ref.working];
    case 'first':
      return ref.of.flatMap(workingsOf);
    case 'when':
      return [...Object.values(ref.cases), ...(ref.otherwise ? [ref.otherwise] : [])].flatMap(workingsOf);
    case 'fitted':
      return [...workingsOf(ref.yes), ...workingsOf(ref.no)];
    case 'axes':
    case 'exact':
      return workingsOf(ref.of);
    default:
      return [];
  }
}

type Binding = readonly [symbol: string, ref: Ref];
const BINDINGS = new WeakMap<Working, readonly Binding[]>();

/** What a working's inputs come from. */
export function bindings(working: Working): readonly Binding[] {
  let found = BINDINGS.get(working);
  if (!found) {
    found = Object.entries(working.bind).filter((entry): entry is [string, Ref] => entry[1] !== undefined);
    BINDINGS.set(working, found);
  }
  return found;
}

/** Throws, naming the ring or the unknown name: a mistake in our own lists. */
export function orderWorkings(workings: readonly Working[]): Working[] {
  const byId = new Map(workings.map((working) => [working.id, working]));
  if (byId.size !== workings.length) throw new Error('two workings have the same id');
  const ordered: Working[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (id: string, trail: readonly string[]): void => {
    if (state.get(id) === 'done') return;
    if (state.get(id) === 'open')
      throw new Error(`workings go round in a ring: ${[...trail, id].join(' → ')}`);
    const working = byId.get(id);
    if (!working) throw new Error(`${trail.at(-1)} reads the unknown working ${id}`);
    state.set(id, 'open');
    for (const [, ref] of bindings(working))
      for (const needed of workingsOf(ref)) visit(needed, [...trail, id]);
    state.set(id, 'done');
    ordered.push(working);
  };
  for (const working of workings) visit(working.id, []);
  return ordered;
}

export const PLAN: readonly Working[] = orderWorkings(WORKINGS);
export const WORKING: ReadonlyMap<string, Working> = new Map(PLAN.map((working) => [working.id, working]));
export const CHECK = new Map(CHECKS.map((check) => [check.id, check]));

/** The references a check reads. */
function refsOf(check: Check): Ref[] {
  const conditions = (check.onlyIf ?? []).flatMap((each) => ('above' in each ? [each.above] : []));
  if (check.form === 'ratio') return [...conditions, check.demand, check.capacity];
  if (check.form === 'band') return [...conditions, check.value, check.low, check.high];
  return [...conditions, ...Object.values(check.reads ?? {})];
}

const plans = new Map<string, readonly Working[]>();

/** The workings that one check needs, in order. */
export function planFor(id: string): readonly Working[] {
  let plan = plans.get(id);
  if (!plan) {
    const needed = new Set<string>();
    const add = (ref: Ref): void => {
      for (const working of workingsOf(ref)) {
        if (needed.has(working)) continue;
        needed.add(working);
        for (const [, each] of bindings(WORKING.get(working)!)) add(each);
      }
    };
    for (const ref of refsOf(CHECK.get(id)!)) add(ref);
    plan = PLAN.filter((working) => needed.has(working.id));
    plans.set(id, plan);
  }
  return plan;
}
