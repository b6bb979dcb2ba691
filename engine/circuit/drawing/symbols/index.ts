/** All symbols by name. Add one: a line in the file of its group. */
import { coils } from './coils.ts';
import { contacts } from './contacts.ts';
import { machines } from './machines.ts';
import { passive } from './passive.ts';
import { points } from './points.ts';
import { protection } from './protection.ts';
import { semiconductors } from './semiconductors.ts';
import { sensors } from './sensors.ts';
import type { SymbolSpec } from './types.ts';

const ALL = {
  ...points,
  ...contacts,
  ...coils,
  ...protection,
  ...passive,
  ...semiconductors,
  ...machines,
  ...sensors,
} as const;

export type SymbolName = keyof typeof ALL;
export const SYMBOLS: Readonly<Record<SymbolName, SymbolSpec>> = ALL;
export { GLYPH, type SymbolSpec, WIDE } from './types.ts';
