/** What auxiliaries ask of each other before they move, and whether they can wait for each other for ever. */

import { nearest } from '../../quantity/nearest.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';
import type { AuxiliaryFinding } from './check.ts';
import type { Operation } from './machine.ts';
import type { Opened } from './open.ts';

/** 'jaws may open only while the tailstock is back'. */
export interface Ask {
  readonly operation: string;
  /** Id of the other auxiliary, and the state it must be in. */
  readonly other: string;
  readonly state: string;
}

/** Most combinations that are gone through. */
const MOST = 300_000;

/** Reads 'open: tailstock back; close: door locked, turret clamped'. */
export function readAsks(self: Opened, all: readonly Opened[], text: string): Result<readonly Ask[]> {
  const asks: Ask[] = [];
  const wrong = (message: string): Result<never> =>
    refuse({ code: 'malformed', where: `${self.auxiliary.id}.only-when`, message });
  const operations = self.machine.operations.map(({ id }) => id);
  for (const part of text.split(';').map((each) => each.trim())) {
    if (part === '') continue;
    const colon = part.indexOf(':');
    const operation = colon < 0 ? '' : part.slice(0, colon).trim().toLowerCase();
    if (!operations.includes(operation))
      return wrong(
        `“${part.slice(0, 60)}” must begin with one of its moves and a colon: ${operations.map((each) => `${each}:`).join(', ')}`,
      );
    for (const wish of part
      .slice(colon + 1)
      .split(',')
      .map((each) => each.trim().toLowerCase())) {
      if (wish === '') continue;
      const found = all
        .filter(({ auxiliary: { id, name } }) =>
          [id, name].some((each) => wish.startsWith(`${each.toLowerCase()} `)),
        )
        .map((each) => ({ each, state: stateOf(each, wish) }))[0];
      if (!found) {
        const names = all.filter((each) => each !== self).map(({ auxiliary }) => auxiliary.id);
        const near = nearest(wish.split(' ')[0] ?? '', names);
        return wrong(
          `“${wish.slice(0, 60)}” names no auxiliary of this machine. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ') || 'no others'}.`,
        );
      }
      if (found.each === self) return wrong('It cannot wait for itself.');
      if (!found.each.kind.states.includes(found.state))
        return wrong(
          `${found.each.auxiliary.name} is never “${found.state.slice(0, 40)}”; it can be ${found.each.kind.states.join(', ')}.`,
        );
      asks.push({ operation, other: found.each.auxiliary.id, state: found.state });
    }
  }
  return ok(asks);
}

const stateOf = ({ auxiliary: { id, name } }: Opened, wish: string): string => {
  const named = [name, id].map((each) => each.toLowerCase()).find((each) => wish.startsWith(`${each} `))!;
  return wish.slice(named.length).trim();
};

export interface Interlocked {
  readonly opened: Opened;
  readonly asks: readonly Ask[];
}

/** Goes through every order of commands: which moves can wait for ever, and which can never be made. */
export function interlockFindings(all: readonly Interlocked[]): readonly AuxiliaryFinding[] {
  const concerned = all.filter(
    ({ asks, opened }) =>
      asks.length > 0 || all.some((each) => each.asks.some(({ other }) => other === opened.auxiliary.id)),
  );
  if (concerned.length === 0) return [];
  const parts = concerned.map(({ opened, asks }) => {
    const { states } = opened.kind;
    const { operations } = opened.machine;
    return {
      opened,
      states,
      operations,
      waits: opened.read.choice('otherwise') === 'waits',
      limit: opened.read.limit('wait-limit'),
      /** By operation, for each ask: which part, which of its states. */
      asks: operations.map((operation) =>
        asks
          .filter((ask) => ask.operation === operation.id)
          .map(({ other, state }): readonly [number, number] => {
            const at = concerned.findIndex((each) => each.opened.auxiliary.id === other);
            return [at, concerned[at]!.opened.kind.states.indexOf(state)];
          }),
      ),
      shows: operations.map(({ shows }) => states.indexOf(shows)),
    };
  });
  const size = parts.reduce(
    (product, { states, operations }) => product * states.length * (operations.length + 1),
    1,
  );
  if (size > MOST)
    return [
      finding(
        'interlocks cut-short',
        'unknown',
        'Waiting for each other was not gone through',
        `${parts.length} auxiliaries that ask each other have ${size} combinations, more than are looked at.`,
        'Let fewer of them ask each other.',
      ),
    ];

  type State = readonly (readonly [shown: number, pending: number])[];
  const key = (state: State): number =>
    state.reduce(
      (sum, [shown, pending], n) =>
        (sum * parts[n]!.states.length + shown) * (parts[n]!.operations.length + 1) + pending + 1,
      0,
    );
  const so = (state: State, part: number, operation: number): boolean =>
    parts[part]!.asks[operation]!.every(([other, wanted]) => state[other]![0] === wanted);
  const seen = new Map<number, number>();
  const states: State[] = [];
  const before: number[][] = [];
  const done = new Set<string>();
  const find = (state: State): number => {
    const known = seen.get(key(state));
    if (known !== undefined) return known;
    seen.set(key(state), states.length);
    states.push(state);
    before.push([]);
    return states.length - 1;
  };
  find(parts.map(() => [0, -1] as const));
  for (let id = 0; id < states.length; id++) {
    const state = states[id]!;
    const go = (part: number, now: readonly [number, number]): void => {
      before[find(state.map((each, n) => (n === part ? now : each)))]!.push(id);
    };
    parts.forEach(({ operations, shows, waits }, part) => {
      const [shown, pending] = state[part]!;
      if (pending >= 0) {
        if (so(state, part, pending)) {
          done.add(`${part} ${pending}`);
          go(part, [shows[pending]!, -1]);
        }
        return;
      }
      operations.forEach((_, operation) => {
        if (so(state, part, operation)) {
          done.add(`${part} ${operation}`);
          go(part, [shows[operation]!, -1]);
        } else if (waits) go(part, [shown, operation]);
      });
    });
  }

  const findings: AuxiliaryFinding[] = [];
  const nameOf = (part: number): string => parts[part]!.opened.auxiliary.name;
  const moveOf = (part: number, operation: Operation): string => `${nameOf(part)}: ${operation.name}`;
  parts.forEach(({ operations, waits, limit, asks }, part) => {
    operations.forEach((operation, at) => {
      const wishes = asks[at]!.map(
        ([other, state]) => `${nameOf(other)} ${parts[other]!.states[state]}`,
      ).join(' and ');
      const id = `${parts[part]!.opened.auxiliary.id} ${operation.id}`;
      if (!done.has(`${part} ${at}`)) {
        findings.push(
          finding(
            `never ${id}`,
            'fails',
            `“${moveOf(part, operation)}” can never be done`,
            `It asks for ${wishes}, and no order of commands brings that about: the others ask back.`,
            'Take one of the conditions away, after thinking which of the two may really move first.',
            ['only-when'],
          ),
        );
        return;
      }
      if (!waits || limit !== null || asks[at]!.length === 0) return;
      // Which states still lead to its end; those that do not, with it waiting, are deadlocks.
      const leads = new Uint8Array(states.length);
      const open: number[] = [];
      states.forEach((state, n) => {
        if (state[part]![1] !== at) {
          leads[n] = 1;
          open.push(n);
        }
      });
      while (open.length > 0)
        for (const each of before[open.pop()!]!)
          if (!leads[each]) {
            leads[each] = 1;
            open.push(each);
          }
      // Of the states without a way out, the one that tells most: where most of them wait.
      const waiting = (n: number): number => states[n]!.filter(([, pending]) => pending >= 0).length;
      let stuck = -1;
      for (let n = 0; n < states.length; n++)
        if (!leads[n] && (stuck < 0 || waiting(n) > waiting(stuck))) stuck = n;
      if (stuck < 0) return;
      const also = states[stuck]!.flatMap(([, pending], n) =>
        n !== part && pending >= 0 ? [moveOf(n, parts[n]!.operations[pending]!)] : [],
      );
      findings.push(
        finding(
          `deadlock ${id}`,
          'fails',
          `“${moveOf(part, operation)}” can wait for ever`,
          `It waits for ${wishes}, without a time-out${also.length > 0 ? `, while “${also.join('” and “')}” waits in turn` : ''}: neither ever moves.`,
          'Give the waiting a time-out, let it refuse instead of waiting, or give up one of the two conditions.',
          ['otherwise', 'wait-limit', 'only-when'],
        ),
      );
    });
  });
  return findings;
}

const finding = (
  id: string,
  verdict: AuxiliaryFinding['verdict'],
  title: string,
  sentence: string,
  cure: string,
  settings: readonly string[] = [],
): AuxiliaryFinding => ({ id, verdict, title, sentence, cure, faults: [], way: [], settings });
