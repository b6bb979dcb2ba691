import { expect, test } from 'vitest';
import { CHECKS, WORKINGS } from '../checks/index.ts';
import { POLICY } from '../checks/policies.ts';
import type { Ref } from '../checks/refs.ts';
import { axisWorking } from '../checks/working.ts';
import { screwLead } from '../handbook/screw-lead.ts';
import { type FactSpec, factSpec, PLACES } from '../parts/index.ts';
import { parseQuantity } from '../quantity/index.ts';
import { parseUnit } from '../quantity/unit.ts';
import { HABITS } from '../work/habits.ts';
import { bindings, orderWorkings, WORKING } from './plan.ts';
import { HABIT_OF } from './resolve.ts';

/** Every reference of every working and check, with where it stands. */
function everyRef(): [where: string, ref: Ref, unit: string | undefined][] {
  const all: [string, Ref, string | undefined][] = [];
  const add = (where: string, ref: Ref, unit?: string): void => {
    all.push([where, ref, unit]);
    if (ref.kind === 'first') for (const each of ref.of) add(where, each, unit);
    if (ref.kind === 'when') for (const each of Object.values(ref.cases)) add(where, each, unit);
    if (ref.kind === 'fitted') for (const each of [ref.yes, ref.no]) add(where, each, unit);
    if (ref.kind === 'axes' || ref.kind === 'exact') add(where, ref.of, unit);
  };
  for (const working of WORKINGS) {
    for (const [symbol, ref] of bindings(working))
      add(`${working.id}.${symbol}`, ref, working.sheet.symbols[symbol]!.unit);
  }
  for (const check of CHECKS) {
    if (check.form === 'ratio')
      for (const ref of [check.demand, check.capacity]) add(check.id, ref, check.unit);
    if (check.form === 'band')
      for (const ref of [check.value, check.low, check.high]) add(check.id, ref, check.unit);
    if (check.form === 'fact') for (const ref of Object.values(check.reads ?? {})) add(check.id, ref);
  }
  return all;
}

const plainDimension = (unit: string) => {
  const parsed = parseUnit(unit);
  if (!parsed.ok) throw new Error(`${unit}: ${parsed.problem.message}`);
  const { m, kg, s, A, K } = parsed.value.dimension;
  return { m, kg, s, A, K };
};

test('every reference names a fact, a result, a policy that exists, in the dimension its reader wants', () => {
  const wrong: string[] = [];
  for (const [where, ref, unit] of everyRef()) {
    let own: string | undefined;
    if (ref.kind === 'fact') {
      const spec = factSpec(ref.place, ref.fact);
      if (!spec) wrong.push(`${where}: no fact ${ref.place}.${ref.fact}`);
      else if (spec.kind === 'quantity' || spec.kind === 'curve') own = spec.unit;
      else wrong.push(`${where}: ${ref.fact} is a ${spec.kind}`);
    } else if (ref.kind === 'result') {
      own = WORKING.get(ref.working)?.sheet.symbols[ref.symbol]?.unit;
      if (own === undefined) wrong.push(`${where}: no result ${ref.working}.${ref.symbol}`);
    } else if (ref.kind === 'policy') {
      own = POLICY.get(ref.policy)?.unit;
      if (own === undefined) wrong.push(`${where}: no policy ${ref.policy}`);
    } else if (ref.kind === 'table') {
      own = ref.unit;
      const spec = factSpec(ref.place, ref.fact);
      if (spec?.kind !== 'choice')
        wrong.push(`${where}: table on ${ref.place}.${ref.fact}, which is no choice`);
      else
        for (const row of Object.keys(ref.rows))
          if (!(row in spec.options)) wrong.push(`${where}: row ${row}`);
      for (const text of Object.values(ref.rows))
        if (!parseQuantity(text, ref.unit).ok) wrong.push(`${where}: ${text}`);
    } else if (ref.kind === 'stated') {
      own = ref.unit;
      if (!parseQuantity(ref.text, ref.unit).ok) wrong.push(`${where}: ${ref.text}`);
    } else if (ref.kind === 'when') {
      const spec = factSpec(ref.place, ref.fact);
      if (spec?.kind !== 'choice') wrong.push(`${where}: ${ref.place}.${ref.fact} is no choice`);
      else {
        for (const option of Object.keys(ref.cases))
          if (!(option in spec.options)) wrong.push(`${where}: case ${option}`);
        for (const option of Object.keys(spec.options)) {
          if (!(option in ref.cases) && !ref.otherwise)
            wrong.push(`${where}: nothing for ${ref.fact} = ${option}`);
        }
      }
    }
    if (own !== undefined && unit !== undefined) {
      const [a, b] = [plainDimension(own), plainDimension(unit)];
      if (JSON.stringify(a) !== JSON.stringify(b)) wrong.push(`${where}: ${own} where ${unit} is read`);
    }
  }
  expect(wrong).toEqual([]);
});

test('every policy is used by a check, a working or advice', () => {
  const used = new Set(everyRef().flatMap(([, ref]) => (ref.kind === 'policy' ? [ref.policy] : [])));
  for (const check of CHECKS) if (check.form !== 'fact') used.add(check.tight);
  for (const habit of Object.values(HABIT_OF)) used.add(habit);
  for (const kind of Object.values(PLACES))
    for (const spec of Object.values<FactSpec>(kind.facts))
      if (spec.kind === 'quantity' && spec.tolerance) used.add(spec.tolerance);
  // Read by engine/advice/worth.ts, a room below.
  used.add('contingency');
  // Read by engine/control, a room below.
  for (const id of ['control-spares', 'axis-inputs']) used.add(id);
  // Read by engine/work, a room below.
  for (const id of Object.values(HABITS)) used.add(id);
  expect([...POLICY.keys()].filter((id) => !used.has(id))).toEqual([]);
});

test('ids of workings and checks are unique', () => {
  for (const ids of [WORKINGS.map((w) => w.id), CHECKS.map((c) => c.id)])
    expect(new Set(ids).size).toBe(ids.length);
});

test('a ring of workings is refused by name', () => {
  const a = axisWorking('a', 'A', screwLead, { P: { kind: 'result', working: 'b', symbol: 'Ph' } });
  const b = axisWorking('b', 'B', screwLead, { P: { kind: 'result', working: 'a', symbol: 'Ph' } });
  expect(() => orderWorkings([a, b])).toThrow('a → b → a');
  expect(() =>
    orderWorkings([
      axisWorking('c', 'C', screwLead, { P: { kind: 'result', working: 'gone', symbol: 'Ph' } }),
    ]),
  ).toThrow('gone');
});
