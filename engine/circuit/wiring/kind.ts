/** What a kind of device is: its settings, and the terminals that follow from them. */
import type { PartFacts } from './part-facts.ts';
import type { SettingSpecs, Settings } from './setting.ts';
import type { Nature } from './types.ts';

/** A terminal as a kind gives it; marks instead of ids. */
export interface Draft {
  readonly mark: string;
  readonly name: string;
  readonly nature: Nature;
  readonly group?: string;
  readonly common?: string;
  readonly with?: string;
  readonly holds?: number;
  readonly signal?: string;
  readonly needed?: boolean;
}

export interface WiringKind {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  /** Letter of its reference designation: K, F, X. */
  readonly letter: string;
  readonly settings: SettingSpecs;
  /** Settings that follow from facts of the part it stands for, as typed text. */
  readonly fromPart?: (part: PartFacts) => Readonly<Record<string, string | undefined>>;
  readonly terminals: (settings: Settings, part: PartFacts) => readonly Draft[];
  /** Metal inside that joins two terminals, by mark. */
  readonly joins?: (settings: Settings) => readonly (readonly [string, string])[];
  /** Metal that can be touched. */
  readonly exposed?: boolean;
}

export const wiringKind = (kind: WiringKind): WiringKind => kind;

export const numberOf = (settings: Settings, name: string): number | undefined => {
  const value = settings[name];
  return typeof value === 'number' ? value : undefined;
};
export const textOf = (settings: Settings, name: string): string => {
  const value = settings[name];
  return typeof value === 'string' ? value : '';
};

/** Leaves out what is not known, so that optional fields stay absent. */
export function known<T extends object>(
  fields: {
    [K in keyof T]: T[K] | undefined;
  },
): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never;
}
