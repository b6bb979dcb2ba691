/** A working evaluated again with one of its inputs varied. */
import { lanes } from '../../sheet/index.ts';
import type { Argument } from '../../sheet/types.ts';
import type { Worked } from '../work.ts';

/** The inputs of a working as they were used: SI numbers and curves; what is unknown is left out. */
export function numbers(worked: Worked): Record<string, Argument> {
  const given: Record<string, Argument> = {};
  for (const [symbol, value] of worked.inputs) {
    if (value.state === 'known') given[symbol] = value.value;
    else if (value.state === 'curve') given[symbol] = value.curve;
  }
  return given;
}

/**
 * A result of a working's sheet for many values (SI) of one of its inputs, the other inputs as worked or as given in
 * `others`. NaN where there is no answer; whoever draws leaves these out.
 */
export function sweep(
  worked: Worked,
  input: string,
  values: Float64Array,
  result: string,
  others: Readonly<Record<string, number>> = {},
): Float64Array {
  const { sheet } = worked.working;
  const given = { ...numbers(worked), ...others, [input]: values };
  const got = lanes(sheet, given, values.length, { only: [result] }).values[result];
  return got instanceof Float64Array ? got : new Float64Array(values.length).fill(got ?? Number.NaN);
}
