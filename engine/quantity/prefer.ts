/** Millimetres or inches: the unit a person reads a quantity in. What was typed is never changed. */

export type UnitSystem = 'mm' | 'in';

const INCH: Readonly<Record<string, string>> = {
  mm: 'in',
  m: 'ft',
  µm: 'thou',
  'm/min': 'in/min',
  'mm/min': 'in/min',
  'm/s': 'in/s',
  'mm/s': 'in/s',
  'm/s²': 'in/s²',
  'm/s³': 'in/s³',
  'mm²': 'in²',
  'mm⁴': 'in⁴',
  '1/mm': '1/in',
  'counts/mm': 'counts/in',
  'mm/m': 'thou/in',
};

/** The unit to show instead of `unit`; the same one where both systems agree or nobody reads it otherwise. */
export const preferred = (unit: string, system: UnitSystem): string =>
  system === 'in' && Object.hasOwn(INCH, unit) ? INCH[unit]! : unit;

/** Metric units with another one in inches: for the test that holds the table. */
export const PREFERRED_INCH = INCH;
