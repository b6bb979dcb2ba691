/** What a kind of auxiliary is. Add one: its file in kinds/ and one line in kinds/index.ts. */
import type { SettingSpecs } from '../../quantity/settings.ts';
import type { Machine } from './machine.ts';
import type { Read } from './settings.ts';

export interface AuxiliaryKind {
  readonly id: string;
  readonly name: string;
  /** What it does, in a sentence. */
  readonly says: string;
  readonly settings: SettingSpecs;
  /** Machines that usually have one; all when absent. */
  readonly machines?: readonly ('lathe' | 'mill' | 'other')[];
  /** States that other auxiliaries can ask for, the one it starts in first. */
  readonly states: readonly string[];
  readonly make: (read: Read) => Machine;
  /** Abilities of the control that these settings ask for, with why. */
  readonly abilities?: (read: Read) => Readonly<Record<string, string>>;
  /** Code of the positions, where it tells them. */
  readonly code?: (read: Read) => string;
}
