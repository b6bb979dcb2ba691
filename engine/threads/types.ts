/** A thread as it was understood. Lengths in metres, angles in radians. */

export type Family =
  | 'metric'
  | 'unified'
  | 'whitworth'
  | 'pipe-parallel'
  | 'pipe-taper'
  | 'npt'
  | 'trapezoidal';

export type Hand = 'right' | 'left';
/** Outside of a part (bolt, screw, pipe) or inside (nut, hole). */
export type Side = 'external' | 'internal';

export interface Thread {
  /** Written one way only: 'M10x1.25', '1/4-20 UNC', 'Tr 40x14 (P7) LH'. */
  readonly designation: string;
  readonly family: Family;
  /** Coarse, fine, UNC, BSF …, where the standard has a name for it. */
  readonly series?: string;
  /** The size as a name where the diameter is another number: '1/2' of G 1/2. */
  readonly size?: string;
  /** Nominal or major diameter; of a taper thread at the gauge plane, of NPT the outside of the pipe. */
  readonly diameter: number;
  readonly pitch: number;
  readonly starts: number;
  /** Pitch times starts: travel of one turn. */
  readonly lead: number;
  readonly hand: Hand;
  /** Between the flanks. */
  readonly flankAngle: number;
  /** Change of diameter over length; 0 for a parallel thread. */
  readonly taper: number;
  readonly threadsPerInch?: number;
  /** Where the name says it: R is outside, Rc and Rp inside. */
  readonly side?: Side;
  /** Tolerance class as typed with it: '6g', '2A'. */
  readonly className?: string;
  /** How it was read, where that is not plain. Whole sentences. */
  readonly notes: readonly string[];
}

/** One size of a thread. */
export interface Dimension {
  readonly key: string;
  readonly name: string;
  /** SI. */
  readonly value: number;
  /** Unit it is read in: mm, °, %. */
  readonly unit: string;
  /** Sheet and symbol it comes from. */
  readonly sheet: string;
  readonly says?: string;
  readonly source: string;
}

/** Between what sizes a finished thread may be. */
export interface LimitRow {
  readonly key: string;
  readonly name: string;
  /** Metres; absent where the standard sets no limit. */
  readonly low?: number;
  readonly high?: number;
}

export interface Limits {
  readonly side: Side;
  readonly className: string;
  readonly rows: readonly LimitRow[];
  readonly source: string;
  readonly status: 'published' | 'from memory';
  readonly note?: string;
}
