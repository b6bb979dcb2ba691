/** All workings of a refit as one sheet, from facts, tables and policies to what each check compares. */
import type { Check } from '../checks/check.ts';
import type { Ref } from '../checks/refs.ts';
import type { Chain } from '../refit/types.ts';
import { joinSheets, type Piece } from '../sheet/join.ts';
import type { Argument, CurveSymbol, InputSymbol, Sheet } from '../sheet/types.ts';
import { type Assessment, scopesOf, workedKey } from './assess.ts';
import { bindings, CHECK, WORKING } from './plan.ts';
import type { Scope } from './resolve.ts';
import { type Source, type Tracing, trace } from './trace.ts';

/** The keys a number check compares; for a band both sides. */
export interface Compares {
  readonly demand: string;
  readonly capacity: string;
  /** A band also holds `capacity` (its value) against this highest value. */
  readonly most?: string;
}

export interface Joined {
  readonly sheet: Sheet;
  /** What is given from outside, by key: facts by their path, table rows, policies, stated numbers. */
  readonly sources: ReadonlyMap<string, Source>;
  readonly given: Readonly<Record<string, Argument>>;
  /** By finding. */
  readonly compares: ReadonlyMap<string, Compares>;
  /** Keys of the references that were asked for instead of the findings. */
  readonly also: readonly string[];
}

/** A reference of a chain (null: of the machine) to be worked out in every draw. */
export interface Wanted {
  readonly chain: Chain | null;
  readonly ref: Ref;
}

const refsOf = (
  check: Check,
): Readonly<Record<'demand' | 'capacity' | 'most', Ref | undefined>> | undefined =>
  check.form === 'ratio'
    ? { demand: check.demand, capacity: check.capacity, most: undefined }
    : check.form === 'band'
      ? { demand: check.low, capacity: check.value, most: check.high }
      : undefined;

const curveInput: CurveSymbol = { kind: 'curve', name: 'curve', unit: '1', xName: 'x', xUnit: '1' };
const numberInput = (name: string): InputSymbol => ({ kind: 'input', name, unit: '1' });

/** Sheets of this shape that were joined before, newest last: an edit mostly changes numbers, not which leads where. */
const SHEETS = new Map<string, Sheet>();
const MOST_SHEETS = 8;

function sheetOf(sources: ReadonlyMap<string, Source>, pieces: readonly Piece[]): Sheet {
  const inputs = [...sources].map(([key, { value }]) => [key, value.state === 'curve'] as const);
  const shape = JSON.stringify([
    inputs,
    pieces.map((piece) => ('sheet' in piece ? [piece.name, piece.sheet.id, piece.bind] : piece)),
  ]);
  const found = SHEETS.get(shape);
  if (found) {
    SHEETS.delete(shape);
    SHEETS.set(shape, found);
    return found;
  }
  const specs = inputs.map(([key, isCurve]) => [key, isCurve ? curveInput : numberInput(key)] as const);
  const made = joinSheets('all sheets', Object.fromEntries(specs), pieces);
  if (SHEETS.size >= MOST_SHEETS) SHEETS.delete(SHEETS.keys().next().value!);
  SHEETS.set(shape, made);
  return made;
}

/** Joins every working that a finding with numbers rests on; with `only`, those that lead to these references instead. */
export function join(assessment: Assessment, only?: readonly Wanted[]): Joined {
  const scopeFor = scopesOf(assessment);
  const sources = new Map<string, Source>();
  const pieces: Piece[] = [];
  const done = new Map<string, boolean>();
  const totals = new Set<string>();

  const lay = (scope: Scope, id: string): boolean => {
    const name = workedKey(scope.context.chain, id);
    const known = done.get(name);
    if (known !== undefined) return known;
    const worked = assessment.worked.get(name);
    done.set(name, worked !== undefined);
    if (!worked) return false;
    const bind: Record<string, string> = {};
    for (const [symbol, ref] of bindings(worked.working)) {
      const key = trace(tracing, scope, ref);
      if (key !== undefined) bind[symbol] = key;
    }
    pieces.push({ name, sheet: worked.working.sheet, bind });
    return true;
  };

  const tracing: Tracing = {
    sources,
    result(scope, id, symbol) {
      const own = WORKING.get(id)?.scope === 'machine' ? scopeFor(null) : scope;
      const name = workedKey(own.context.chain, id);
      if (assessment.worked.get(name)?.results.get(symbol)?.state !== 'known') return undefined;
      return lay(own, id) ? `${name}/${symbol}` : undefined;
    },
    total(how, of) {
      const name = `${how} of ${of.join(', ')}`;
      if (!totals.has(name)) pieces.push({ name, how, of });
      totals.add(name);
      return name;
    },
  };

  const compares = new Map<string, Compares>();
  for (const finding of only ? [] : assessment.findings) {
    if (finding.asked === undefined) continue;
    const refs = refsOf(CHECK.get(finding.check)!);
    if (!refs) continue;
    const chain = assessment.refit.chains.find(({ id }) => id === finding.chain) ?? null;
    const at = (ref: Ref | undefined) => ref && trace(tracing, scopeFor(chain), ref);
    const [demand, capacity, most] = [at(refs.demand), at(refs.capacity), at(refs.most)];
    if (demand === undefined || capacity === undefined) continue;
    compares.set(finding.id, { demand, capacity, ...(most === undefined ? {} : { most }) });
  }
  const also = (only ?? []).flatMap(({ chain, ref }) => trace(tracing, scopeFor(chain), ref) ?? []);
  return {
    sheet: sheetOf(sources, pieces),
    sources,
    given: Object.fromEntries(
      [...sources].map(([key, { value }]) => [key, value.state === 'curve' ? value.curve : value.value]),
    ),
    compares,
    also,
  };
}
