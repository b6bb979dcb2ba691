/** Residual current devices (they trip when current goes astray to earth): which currents each type sees. */

export type ResidualType = 'AC' | 'A' | 'F' | 'B';

/** What the fault current of a load can look like. */
export type Astray =
  | 'sine'
  /** Half waves and phase-cut: single-phase rectifiers. */
  | 'pulses'
  /** Mixed frequencies: a single-phase inverter behind a rectifier. */
  | 'mixed'
  /** Smooth direct current: a three-phase rectifier, or one between two phases. */
  | 'smooth';

export const RESIDUAL_SOURCE = {
  source: 'IEC 60755 and IEC 62423 (recalled, check the standard); an inverter’s own manual goes before this',
  status: 'from memory' as const,
};

export const SEES: Readonly<Record<ResidualType, readonly Astray[]>> = {
  AC: ['sine'],
  A: ['sine', 'pulses'],
  F: ['sine', 'pulses', 'mixed'],
  B: ['sine', 'pulses', 'mixed', 'smooth'],
};

/** The least type that sees a kind of fault. */
export const typeFor = (astray: Astray): ResidualType =>
  (['AC', 'A', 'F', 'B'] as const).find((type) => SEES[type].includes(astray))!;

/** A device may trip from this share of its rated difference on, and surely does at all of it. */
export const TRIPS_FROM = 0.5;
/** Habit: standing leakage up to this share of the rated difference leaves room for switching on. */
export const LEAKAGE_SHARE = 0.3;
export const LEAKAGE_SHARE_SOURCE = 'IEC 60364-5-53, 531.3.2 (recalled, check the standard)';
