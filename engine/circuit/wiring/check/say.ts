/** Words for terminals and numbers in findings. */

import { formatQuantity } from '../../../quantity/index.ts';
import { andList } from '../../../quantity/words.ts';
import type { View } from './view.ts';

export const volts = (value: number): string => formatQuantity(value, 'V', { digits: 3 });
export const amps = (value: number): string =>
  Math.abs(value) < 1 && value !== 0
    ? formatQuantity(value, 'mA', { digits: 3 })
    : formatQuantity(value, 'A', { digits: 3 });
export const ohms = (value: number): string =>
  value >= 1000 ? formatQuantity(value, 'kΩ', { digits: 3 }) : formatQuantity(value, 'Ω', { digits: 3 });
export const watts = (value: number): string => formatQuantity(value, 'W', { digits: 2 });
export const metres = (value: number): string => formatQuantity(value, 'm', { digits: 3 });
export const hertz = (value: number): string =>
  value >= 1e6
    ? formatQuantity(value, 'MHz', { digits: 3 })
    : value >= 1000
      ? formatQuantity(value, 'kHz', { digits: 3 })
      : formatQuantity(value, 'Hz', { digits: 3 });
export const seconds = (value: number): string => formatQuantity(value, 'ms', { digits: 3 });

/** 'A1.in1 (input 1, 24 V)' */
export function terminalName(view: View, id: string): string {
  const terminal = view.terminal(id);
  return terminal ? `${id} (${terminal.name})` : id;
}

/** 'a', 'a and b', 'a, b and c', 'a, b, c and 7 more' */
export function list(names: readonly string[], most = 3): string {
  return names.length > most
    ? `${names.slice(0, most).join(', ')} and ${names.length - most} more`
    : andList(names);
}
