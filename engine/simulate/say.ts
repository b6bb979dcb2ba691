/** How a run's numbers are said, and the sentences they go into. */
import { formatQuantity } from '../quantity/index.ts';

export interface Saying {
  /** `bad`: it does not do the move; `doubtful`: it does, at a price; `good`; `note`: a number to know. */
  readonly level: 'bad' | 'doubtful' | 'good' | 'note';
  readonly sentence: string;
}

export type Say = (level: Saying['level'], sentence: string) => void;

export const ms = (seconds: number): string =>
  formatQuantity(seconds, 's').replace(
    /^(0\.0?\d+) s$/,
    (_, n: string) => `${Number((Number(n) * 1000).toPrecision(3))} ms`,
  );

/** A length small enough for the eye: thousandths below a tenth of a millimetre. */
export function short(metres: number, system: 'mm' | 'in'): string {
  const size = Math.abs(metres);
  if (system === 'in') return formatQuantity(size, 'in', { digits: 3 });
  return formatQuantity(size, size < 1e-4 ? 'µm' : 'mm', { digits: 3 });
}

/** A speed of a slide, as rapids are told. */
export const slideSpeed = (speed: number, system: 'mm' | 'in'): string =>
  formatQuantity(Math.abs(speed), system === 'in' ? 'in/min' : 'm/min', { digits: 2 });

export const PROP = 'Prop the axis before the power goes, and never stand or reach under it.';
/** m below which nothing has moved: far less than an atom is from the next. */
export const NOTHING = 1e-11;
