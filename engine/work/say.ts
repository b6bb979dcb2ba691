/** Numbers of this room as text. */
import { formatQuantity } from '../quantity/index.ts';

export const say = (value: number, unit: string, digits = 3): string =>
  formatQuantity(value, unit, { digits });
export const rpm = (speed: number): string => say(speed, 'r/min');
export const mm = (length: number): string => say(length, 'mm');

const RANKS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];
export const rank = (at: number): string => RANKS[at] ?? `${at + 1}th`;
