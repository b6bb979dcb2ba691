/** Runs a procedure between two stages of a program, lane by lane. */
import type { Argument, Domain, ProcedureSymbol, Sheet } from '../types.ts';
import type { Program } from './program.ts';

/** Whether a number is finite and lies in its domain. */
export function isLawful(value: number, domain: Domain | undefined): boolean {
  switch (domain) {
    case 'positive':
      return value > 0 && value < Number.POSITIVE_INFINITY;
    case 'not negative':
      return value >= 0 && value < Number.POSITIVE_INFINITY;
    case 'fraction':
      return value >= 0 && value <= 1;
    default:
      return Number.isFinite(value);
  }
}

const domainOf = (sheet: Sheet, key: string): Domain | undefined => {
  const spec = sheet.symbols[key]!;
  return 'domain' in spec ? spec.domain : undefined;
};

/** Fills the procedure's column (or its slot, where nothing it reads varies); NaN where there is no answer. */
export function runProcedure(
  program: Program,
  sheet: Sheet,
  key: string,
  fixed: (key: string) => Argument | undefined,
  base: number,
  count: number,
): void {
  const spec = sheet.symbols[key] as ProcedureSymbol;
  // Looked up anew for each lane: a procedure that runs lanes of its own may make the memory grow.
  const { arena } = program;
  const columns = spec.reads.map((read) => {
    const column = program.columns.get(read);
    return column === undefined ? undefined : base / 8 + column;
  });
  const domains = spec.reads.map((read) => domainOf(sheet, read));
  const args: (Argument | undefined)[] = spec.reads.map((read) => fixed(read));
  const own = domainOf(sheet, key);
  const target = program.columns.get(key);
  const first = target === undefined ? program.slots.get(key)! : base / 8 + target;
  const lanes = target === undefined ? 1 : count;
  for (let lane = 0; lane < lanes; lane++) {
    columns.forEach((column, at) => {
      if (column !== undefined) args[at] = arena.numbers[column + lane]!;
    });
    const value = procedureValue(spec, args, domains, own);
    arena.numbers[first + lane] = value;
  }
}

export function procedureValue(
  spec: ProcedureSymbol,
  args: readonly (Argument | undefined)[],
  domains: readonly (Domain | undefined)[],
  own: Domain | undefined,
): number {
  for (let at = 0; at < args.length; at++) {
    const argument = args[at];
    if (argument === undefined) return Number.NaN;
    if (typeof argument === 'number' && !isLawful(argument, domains[at])) return Number.NaN;
  }
  const all = args as readonly Argument[];
  if (spec.refuses?.(...all) !== undefined) return Number.NaN;
  const value = spec.run(...all);
  return isLawful(value, own) ? value : Number.NaN;
}
