/**
 * What a mode comes to over one whole sample with a held command: its matrix exponential, by Taylor series over a part of
 * the sample short enough for the fastest motion, doubled as often as the sample was halved.
 */
import { doublesOf } from './doubles.ts';
import type { Mode } from './modes.ts';
import * as modes from './modes.ts';
import * as shapes from './shapes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CHARGE, CURRENT, HELD, LOAD, ONE, PHI, STATES, W1, W2, WIDTH, WIND } = modes;

const { COLUMNS, ROWS } = shapes;
const FROM = [W1, W2, WIND, CURRENT, STATES + HELD, STATES + ONE, STATES + LOAD] as const;
const TO = [W1, W2, WIND, CURRENT, PHI, CHARGE] as const;
/** Of the rows, those that act back on the rest; angle and charge only gather. */
const ACTING = 4;
const SIZE = ROWS * COLUMNS;

/** Most terms of the series before the time is halved, and when a term no longer counts. */
const TERMS = 16;
const SMALL = 1e-17;
/** Halved more often than this, a mode runs away within the sample; its numbers are then none. */
const HALVINGS = 60;

const COLUMN_OF = new Int8Array(WIDTH).fill(-1);
for (let column = 0; column < COLUMNS; column++) COLUMN_OF[FROM[column]!] = column;

const rates = new Float64Array(SIZE);
const all = new Float64Array(SIZE);
const largest = new Float64Array(SIZE);
let term = new Float64Array(SIZE);
let next = new Float64Array(SIZE);

/** `ROWS` × `COLUMNS`, row by row, after `h` seconds. The mode must be linear, and its drive sampled. */
export function oneSample(mode: Mode, h: number): number[] {
  const { start, column, weight } = mode;
  rates.fill(0);
  for (let row = 0; row < ROWS; row++) {
    const end = start[TO[row]! + 1]!;
    for (let pair = start[TO[row]!]!; pair < end; pair++)
      rates[row * COLUMNS + COLUMN_OF[column[pair]!]!] = weight[pair]!;
  }
  let s = h;
  let halvings = 0;
  while (!taylor(s) && halvings < HALVINGS) {
    s /= 2;
    halvings++;
  }
  for (let turn = 0; turn < halvings; turn++) double();
  if (mode.current[CURRENT] !== 1) currentAtEnd(mode);
  return doublesOf(all);
}

/** The series over `s`, into `all`; whether it came to its end. */
function taylor(s: number): boolean {
  all.fill(0);
  term.fill(0);
  for (let row = 0; row < ACTING; row++) {
    all[row * COLUMNS + row] = 1;
    term[row * COLUMNS + row] = 1;
  }
  largest.fill(0);
  let quiet = 0;
  for (let k = 1; k <= TERMS; k++) {
    const by = s / k;
    let counts = false;
    for (let row = 0; row < ROWS; row++) {
      const at = row * COLUMNS;
      for (let column = 0; column < COLUMNS; column++) {
        // The inputs stand still: they count in the first term only.
        let total = k === 1 && column >= ACTING ? rates[at + column]! : 0;
        for (let j = 0; j < ACTING; j++) total += rates[at + j]! * term[j * COLUMNS + column]!;
        total *= by;
        next[at + column] = total;
        all[at + column] = all[at + column]! + total;
        const size = total < 0 ? -total : total;
        if (!(size <= SMALL * largest[at + column]!)) {
          if (size > largest[at + column]!) largest[at + column] = size;
          counts = true;
        }
      }
    }
    const spare = term;
    term = next;
    next = spare;
    quiet = counts ? 0 : quiet + 1;
    if (quiet === 2) return true;
  }
  return false;
}

/** The same for twice the time. */
function double(): void {
  next.set(all);
  for (let row = 0; row < ROWS; row++) {
    const at = row * COLUMNS;
    for (let column = 0; column < COLUMNS; column++) {
      // What inputs do, they do in both halves; what is gathered is gathered in both.
      const own = (row >= ACTING ? 1 : 0) + (column >= ACTING ? 1 : 0);
      let total = own * next[at + column]!;
      for (let j = 0; j < ACTING; j++) total += next[at + j]! * next[j * COLUMNS + column]!;
      all[at + column] = total;
    }
  }
}

/** Without inductance the current follows from the rest, at the end of the sample. */
function currentAtEnd(mode: Mode): void {
  for (let column = 0; column < COLUMNS; column++) {
    let i = column >= ACTING ? mode.current[FROM[column]!]! : 0;
    for (let row = 0; row < ACTING; row++)
      if (row !== 3) i += mode.current[TO[row]!]! * all[row * COLUMNS + column]!;
    all[3 * COLUMNS + column] = i;
  }
}
