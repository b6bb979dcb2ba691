/** The option --units: lengths in millimetres or in inches. */
import type { UnitSystem } from '../engine/quantity/index.ts';
import { shown } from './arguments.ts';
import { Refusal } from './refusal.ts';

export const UNITS = { takes: 'mm or in', says: 'lengths to read in millimetres (usual) or inches' };

export function readUnits(text: string | undefined): UnitSystem {
  const word = text?.trim().toLowerCase() ?? 'mm';
  if (word === 'mm' || word === 'in') return word;
  throw new Refusal(`--units takes mm or in, not “${shown(word)}”.`);
}
