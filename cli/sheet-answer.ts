/** The answers of a sheet, each with the doubt that comes through from what was given. */
import { formatQuantity } from '../engine/quantity/index.ts';
import { type Gradient, gradient, type Outcome, type Sheet } from '../engine/sheet/index.ts';
import type { SheetGiven } from './sheet-given.ts';

export interface SheetAnswer {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly outcome: Outcome;
  /** Standard uncertainty, SI; undefined without a value, or where a doubtful input has no slope there. */
  readonly doubt: number | undefined;
  /** With its unit and two standard uncertainties either way; undefined without a value. */
  readonly text: string | undefined;
}

/** Every derived symbol, in working order. First order: slopes times doubts, added in square. */
export function answersOf(sheet: Sheet, given: SheetGiven): SheetAnswer[] {
  const { outcomes, partials }: Gradient<string> = gradient(sheet, given.values);
  return sheet.derived.map((key) => {
    const { name, unit } = sheet.symbols[key]!;
    const outcome = outcomes[key]!;
    if (outcome.state !== 'known') return { key, name, unit, outcome, doubt: undefined, text: undefined };
    const doubt = doubtOf(sheet, key, partials[key] ?? {}, given.doubts);
    const text = formatQuantity(outcome.value, unit, { half: 2 * (doubt ?? 0) });
    return { key, name, unit, outcome, doubt, text };
  });
}

function doubtOf(
  sheet: Sheet,
  key: string,
  slopes: Readonly<Record<string, number | undefined>>,
  doubts: ReadonlyMap<string, number>,
): number | undefined {
  const parts: number[] = [];
  for (const input of sheet.dependsOn[key]!) {
    const doubt = doubts.get(input) ?? 0;
    if (doubt === 0) continue;
    const slope = slopes[input];
    if (slope === undefined) return undefined;
    parts.push(slope * doubt);
  }
  const total = Math.hypot(...parts);
  return Number.isFinite(total) ? total : undefined;
}
