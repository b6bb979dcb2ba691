/** Short builders for a sheet's symbols. */
import type { ConstantSymbol, CurveSymbol, FormulaSymbol, InputSymbol, ProcedureSymbol } from './types.ts';

type Extra<S, Taken extends string> = Omit<S, 'kind' | 'name' | 'unit' | Taken>;

/** A value that has to be given. */
export const input = (name: string, unit: string, extra: Extra<InputSymbol, never> = {}): InputSymbol => ({
  kind: 'input',
  name,
  unit,
  ...extra,
});

/** A published or conventional number with its source: `constant('modulus of steel', 'GPa', '206 GPa', 'source')`. */
export const constant = (
  name: string,
  unit: string,
  value: string,
  source: string,
  extra: Extra<ConstantSymbol, 'value' | 'source'> = {},
): ConstantSymbol => ({ kind: 'constant', name, unit, value, source, ...extra });

/** One expression in SI and radians: `formula('lead', 'mm', 'P * z', 'ISO 3408-1')`. */
export const formula = (
  name: string,
  unit: string,
  expression: string,
  source: string,
  extra: Extra<FormulaSymbol, 'expression' | 'source'> = {},
): FormulaSymbol => ({ kind: 'formula', name, unit, expression, source, ...extra });

/** A curve that only procedures read. */
export const curve = (
  name: string,
  unit: string,
  xName: string,
  xUnit: string,
  extra: Extra<CurveSymbol, 'xName' | 'xUnit'> = {},
): CurveSymbol => ({ kind: 'curve', name, unit, xName, xUnit, ...extra });

/** A typed function that stands in a sheet like a formula. */
export const procedure = (
  name: string,
  unit: string,
  body: Omit<ProcedureSymbol, 'kind' | 'name' | 'unit'>,
): ProcedureSymbol => ({ kind: 'procedure', name, unit, ...body });
