/** Numbers of a picture as text. */
import { convert, formatNumber, formatQuantity } from '../../engine/quantity/index.ts';

export const cell = (value: number | null, unit: string): string =>
  value === null ? '–' : formatNumber(convert(value, unit), 4);

export const amount = (value: number, unit: string): string => formatQuantity(value, unit, { digits: 3 });

/** 'motor speed, r/min'; a plain number has no unit to name. */
export const heading = (name: string, unit: string): string => (unit === '1' ? name : `${name}, ${unit}`);
