/** Goes through every state an auxiliary can come into, breadth first, and finds where it hangs or does harm. */
import type { Compiled, Guard, Model } from './compile.ts';
import { RESTS } from './machine.ts';

export interface Explored {
  readonly states: number;
  /** False where there were more states than are looked at. */
  readonly whole: boolean;
  /** The way to the first state in which each hazard holds: what happens, in order. */
  readonly hazards: ReadonlyMap<string, readonly string[]>;
  /** Steps in which it can stay for good, with the way there; `round` names the steps it can go round in without end. */
  readonly hangs: ReadonlyMap<string, readonly string[]>;
  readonly round: { readonly steps: readonly string[]; readonly way: readonly string[] } | null;
}

const MOST_STATES = 200_000;

/** Three answers: an input that is off, may be either, is on. */
const OFF = 0;
const EITHER = 1;
const ON = 2;

export function explore(model: Model, most: number = MOST_STATES): Explored {
  const { values, rules, inputs, broken, faultAt } = model;
  const width = values.length;
  const weight: number[] = [];
  let size = 1;
  for (const each of values) {
    weight.push(size);
    size *= each.length;
  }
  if (size > Number.MAX_SAFE_INTEGER)
    return { states: 0, whole: false, hazards: new Map(), hangs: new Map(), round: null };

  const byStep: Compiled[][] = values[model.step]!.map((_, step) =>
    rules.filter(({ guards }) =>
      guards.every(({ variable, allowed }) => variable !== model.step || allowed[step]),
    ),
  );
  const states: Int8Array[] = [];
  const ids = new Map<number, number>();
  const parent: number[] = [];
  const through: (Compiled | null)[] = [];
  const from: number[] = [];
  const to: number[] = [];
  const hazards = new Map<string, number>();
  let whole = true;

  const keyOf = (state: Int8Array): number => {
    let key = 0;
    for (let n = 0; n < width; n++) key += state[n]! * weight[n]!;
    return key;
  };
  const find = (state: Int8Array, by: number, rule: Compiled | null): number => {
    const key = keyOf(state);
    const known = ids.get(key);
    if (known !== undefined) return known;
    if (states.length >= most) {
      whole = false;
      return -1;
    }
    const id = states.length;
    ids.set(key, id);
    states.push(state.slice());
    parent.push(by);
    through.push(rule);
    return id;
  };
  const holds = (guards: readonly Guard[], state: Int8Array): boolean => {
    for (const { variable, allowed } of guards) if (!allowed[state[variable]!]) return false;
    return true;
  };
  const read = new Uint8Array(inputs.length);
  const UNREAD = 3;
  let faulty = false;
  const holdsOne = (lists: readonly (readonly Guard[])[], state: Int8Array): boolean => {
    for (const guards of lists) if (holds(guards, state)) return true;
    return false;
  };
  const readInput = (n: number): number => {
    if (read[n] !== UNREAD) return read[n]!;
    const { on, maybe, stuck } = inputs[n]!;
    const now =
      faulty && stuck !== undefined
        ? stuck * ON
        : holdsOne(maybe, felt)
          ? EITHER
          : holdsOne(on, felt)
            ? ON
            : OFF;
    read[n] = now;
    return now;
  };
  /** Whether one of the lists is seen: surely, or possibly. */
  const isSeen = (lists: Compiled['seen'], surely: boolean): boolean => {
    if (lists.length === 0) return true;
    for (const list of lists) {
      let all = true;
      for (const [input, on] of list) {
        const now = readInput(input);
        if (now === (on ? ON : OFF) || (now === EITHER && !surely)) continue;
        all = false;
        break;
      }
      if (all) return true;
    }
    return false;
  };

  /** The state as the mechanism feels it: a broken output does not do what the control set. */
  const felt = new Int8Array(width);
  const next = new Int8Array(width);
  find(Int8Array.from(model.start), -1, null);

  const enter = (rule: Compiled, id: number, state: Int8Array, at: number): void => {
    for (let n = at; n < rule.sets.length; n++) {
      const [variable, value, by] = rule.sets[n]!;
      const count = values[variable]!.length;
      if (value === 'any') {
        for (let each = 0; each < count; each++) {
          next[variable] = each;
          enter(rule, id, state, n + 1);
        }
        return;
      }
      next[variable] = value < 0 ? (state[variable]! + by + count) % count : value;
    }
    const found = find(next, id, rule);
    if (found >= 0 && found !== id && rule.who !== 'mishap') {
      from.push(id);
      to.push(found);
    }
  };

  for (let id = 0; id < states.length; id++) {
    const state = states[id]!;
    faulty = faultAt >= 0 && state[faultAt] === 1;
    felt.set(state);
    if (broken && faulty) felt[broken.variable] = broken.value;
    read.fill(UNREAD);
    for (const { id: hazard, when } of model.hazards)
      if (!hazards.has(hazard) && holdsOne(when, felt)) hazards.set(hazard, id);

    const own = byStep[state[model.step]!]!;
    const able = (rule: Compiled): boolean =>
      (rule.fault === 'any' || (rule.fault === 'with') === faulty) &&
      holds(rule.guards, rule.who === 'control' ? state : felt);
    let settled = true;
    for (const rule of own) if (rule.settles && able(rule)) settled = false;
    for (const rule of own) {
      if ((rule.settled && !settled) || !able(rule)) continue;
      if (rule.unless ? isSeen(rule.seen, true) : !isSeen(rule.seen, false)) continue;
      next.set(state);
      enter(rule, id, state, 0);
    }
  }

  const way = (id: number): string[] => {
    const told: string[] = [];
    for (let at = id; at > 0; at = parent[at]!) told.push(through[at]!.says);
    return told.reverse();
  };
  const stepOf = (id: number): number => states[id]![model.step]!;
  const stuck = cannotReach(states.length, from, to, (id) => stepOf(id) < RESTS.length);
  const hangs = new Map<string, readonly string[]>();
  let round: Explored['round'] = null;
  // A search that was cut short cannot tell that there is no way out.
  if (whole && stuck.some(Boolean)) {
    const changes = new Uint8Array(states.length);
    for (let edge = 0; edge < from.length; edge++)
      if (stepOf(from[edge]!) !== stepOf(to[edge]!)) changes[from[edge]!] = 1;
    const stays = cannotReach(states.length, from, to, (id) => changes[id] === 1 || !stuck[id]);
    const rounds = new Set<string>();
    let first = -1;
    for (let id = 0; id < states.length; id++) {
      if (!stuck[id]) continue;
      const step = values[model.step]![stepOf(id)]!;
      if (stays[id]) {
        if (!hangs.has(step)) hangs.set(step, way(id));
      } else {
        if (first < 0) first = id;
        rounds.add(step);
      }
    }
    if (hangs.size === 0 && first >= 0) round = { steps: [...rounds], way: way(first) };
  }
  return {
    states: states.length,
    whole,
    hazards: new Map([...hazards].map(([id, at]) => [id, way(at)])),
    hangs,
    round,
  };
}

/** Which states have no way to one that is wanted. */
function cannotReach(
  count: number,
  from: readonly number[],
  to: readonly number[],
  wanted: (id: number) => boolean,
): Uint8Array {
  const first = new Int32Array(count + 1);
  for (const each of to) first[each + 1]!++;
  for (let n = 0; n < count; n++) first[n + 1]! += first[n]!;
  const fill = first.slice();
  const before = new Int32Array(to.length);
  to.forEach((each, edge) => {
    before[fill[each]!++] = from[edge]!;
  });
  const no = new Uint8Array(count).fill(1);
  const open: number[] = [];
  for (let id = 0; id < count; id++)
    if (wanted(id)) {
      no[id] = 0;
      open.push(id);
    }
  while (open.length > 0) {
    const id = open.pop()!;
    for (let edge = first[id]!; edge < first[id + 1]!; edge++) {
      const each = before[edge]!;
      if (no[each]) {
        no[each] = 0;
        open.push(each);
      }
    }
  }
  return no;
}
