/** Numbers of work as text. */
import { formatQuantity } from '../../../engine/quantity/index.ts';

export const rpm = (speed: number | null): string =>
  speed === null ? 'not known' : formatQuantity(speed, 'r/min', { digits: 3 });
export const length = (metres: number): string => formatQuantity(metres, 'mm', { digits: 3 });
export const value = (si: number, unit: string): string => formatQuantity(si, unit, { digits: 3 });
