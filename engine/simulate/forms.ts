/**
 * Linear expressions while a mode is put together. Each is a place in one array that is used again for the next mode:
 * a mode takes some sixty of them, and to make each anew took longer than all the sums.
 */
import { doubles } from './doubles.ts';
import * as modes from './modes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { ONE, STATES, WIDTH } = modes;

/** Where an expression begins in the array. */
export type Form = number;

const MOST = 256;
const cells = new Float64Array(MOST * WIDTH);
let used = 0;

/** Before a mode is put together: all forms of the one before are gone. */
export function clearForms(): void {
  used = 0;
}

/** Room for one more, still with whatever stood there. */
function room(): Form {
  if (used === MOST) throw new RangeError('a mode takes more expressions than there is room for');
  return WIDTH * used++;
}

export function zero(): Form {
  const form = room();
  for (let at = 0; at < WIDTH; at++) cells[form + at] = 0;
  return form;
}

export function state(at: number): Form {
  const form = zero();
  cells[form + at] = 1;
  return form;
}

export const input = (at: number): Form => state(STATES + at);

export function constant(value: number): Form {
  const form = zero();
  cells[form + STATES + ONE] = value;
  return form;
}

export function scaled(from: Form, by: number): Form {
  const form = room();
  for (let at = 0; at < WIDTH; at++) {
    const weight = cells[from + at]!;
    // Nothing times an infinite limit stays nothing.
    cells[form + at] = weight === 0 ? 0 : weight * by;
  }
  return form;
}

export function sum(a: Form, b: Form): Form {
  const form = room();
  for (let at = 0; at < WIDTH; at++) cells[form + at] = cells[a + at]! + cells[b + at]!;
  return form;
}

export function less(a: Form, b: Form): Form {
  const form = room();
  for (let at = 0; at < WIDTH; at++) cells[form + at] = cells[a + at]! - cells[b + at]!;
  return form;
}

/** The expression by itself, to keep. */
export function kept(form: Form): number[] {
  const out = doubles(WIDTH);
  for (let at = 0; at < WIDTH; at++) out[at] = cells[form + at]!;
  return out;
}

/** Rows as pairs of column (states, then inputs) and weight; row `at` goes from start[at] to start[at + 1]. */
export interface Sparse {
  readonly start: readonly number[];
  readonly column: readonly number[];
  readonly weight: readonly number[];
}

export function sparse(rows: readonly Form[]): Sparse {
  const start = [0];
  const column: number[] = [];
  const weight = doubles(0);
  for (const row of rows) {
    for (let at = 0; at < WIDTH; at++) {
      const value = cells[row + at]!;
      if (value === 0) continue;
      column.push(at);
      weight.push(value);
    }
    start.push(column.length);
  }
  return { start, column, weight };
}
