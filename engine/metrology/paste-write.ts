/** Readings written as separated values again. */
import { convert } from '../quantity/index.ts';
import type { Column, Pasted } from './paste-types.ts';

/** A number so that it reads back only one way: 1,125 gets a zero more. */
function numberText(value: number, unit: string, comma: boolean): string {
  const text = String(Number(convert(value, unit).toPrecision(12)));
  if (!comma) return text;
  const decimal = text.replace('.', ',');
  return /^-?[1-9]\d{0,2},\d{3}$/.test(decimal) ? `${decimal}0` : decimal;
}

/**
 * Writes readings as separated values: one heading with units, numbers in the columns' units. What could not be read
 * is written as it was pasted, formulas with ' in front so that no spreadsheet runs them. `decimal: ','` writes decimal
 * commas with semicolons between.
 */
export function writeReadings(
  pasted: Pick<Pasted, 'columns'>,
  wanted: { readonly columns: readonly Column[] },
  options: { readonly decimal?: '.' | ',' } = {},
): string {
  const comma = options.decimal === ',';
  const separator = comma ? ';' : ',';
  const quoted = (text: string): string =>
    /[",;\t\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  const harmless = (text: string): string => (/^[=+\-@\t]/.test(text) ? `'${text}` : text);
  const { columns } = wanted;
  const head = columns.map((c) => quoted(c.unit === '1' ? c.name : `${c.name} (${c.unit})`));
  const length = Math.max(0, ...columns.map((c) => pasted.columns[c.key]?.length ?? 0));
  const rows = Array.from({ length }, (_, i) =>
    columns.map((c) => {
      const cell = pasted.columns[c.key]?.[i];
      if (!cell) return '';
      return cell.value === null ? quoted(harmless(cell.text)) : numberText(cell.value, c.unit, comma);
    }),
  );
  return `${[head, ...rows].map((row) => row.join(separator)).join('\r\n')}\r\n`;
}
