/** What a program has to compute, in which stage, and what stays the same over the lanes. */

import { symbolsOf } from '../expression.ts';
import { treesOf } from '../trees.ts';
import type { ProcedureSymbol, Sheet } from '../types.ts';

export interface Stage {
  /** Formulas computed in one fused loop, in working order. */
  readonly formulas: readonly string[];
  /** Procedures run after it. */
  readonly procedures: readonly string[];
}

export interface Plan {
  readonly stages: readonly Stage[];
  /** Symbols that differ from lane to lane. */
  readonly varies: ReadonlySet<string>;
  /** Inputs and derived symbols whose value has a place in memory. */
  readonly kept: readonly string[];
  /** Stage in which each derived symbol is computed. */
  readonly stageOf: ReadonlyMap<string, number>;
}

export function readsOf(sheet: Sheet, key: string): readonly string[] {
  const spec = sheet.symbols[key]!;
  if (spec.kind === 'procedure') return spec.reads;
  const tree = treesOf(sheet).expressions.get(key);
  return tree ? [...symbolsOf(tree)] : [];
}

export const procedureOf = (sheet: Sheet, key: string): ProcedureSymbol =>
  sheet.symbols[key] as ProcedureSymbol;

/** `varying`: inputs given as lanes. `wanted`: derived symbols asked for; what they need is planned too. */
export function makePlan(sheet: Sheet, varying: ReadonlySet<string>, wanted: ReadonlySet<string>): Plan {
  const needed = closure(sheet, wanted);
  const varies = new Set(varying);
  const stageOf = new Map<string, number>();
  const formulas: string[][] = [];
  const procedures: string[][] = [];
  const kept = new Set<string>(wanted);
  for (const key of sheet.derived) {
    if (!needed.has(key)) continue;
    const reads = readsOf(sheet, key);
    const isProcedure = sheet.symbols[key]!.kind === 'procedure';
    if (reads.some((read) => varies.has(read))) varies.add(key);
    const stage = Math.max(0, ...reads.map((read) => readyAt(sheet, stageOf, read)));
    stageOf.set(key, stage);
    for (let at = formulas.length; at <= stage; at++) {
      formulas.push([]);
      procedures.push([]);
    }
    (isProcedure ? procedures : formulas)[stage]!.push(key);
    if (isProcedure) kept.add(key);
    for (const read of reads) {
      const { kind } = sheet.symbols[read]!;
      const crosses = isProcedure || (stageOf.get(read) ?? stage) < stage;
      if (kind === 'input' || (crosses && kind !== 'constant' && kind !== 'curve')) kept.add(read);
    }
  }
  return {
    stages: formulas.map((each, at) => ({ formulas: each, procedures: procedures[at]! })),
    varies,
    kept: sheet.order.filter((key) => kept.has(key)),
    stageOf,
  };
}

/** First stage in which a symbol can be read by a formula: a procedure's value is there one stage after it ran. */
function readyAt(sheet: Sheet, stageOf: ReadonlyMap<string, number>, key: string): number {
  const stage = stageOf.get(key);
  if (stage === undefined) return 0;
  return sheet.symbols[key]!.kind === 'procedure' ? stage + 1 : stage;
}

function closure(sheet: Sheet, wanted: ReadonlySet<string>): ReadonlySet<string> {
  const needed = new Set<string>();
  const visit = (key: string): void => {
    if (needed.has(key)) return;
    needed.add(key);
    for (const read of readsOf(sheet, key)) visit(read);
  };
  for (const key of wanted) visit(key);
  return needed;
}
