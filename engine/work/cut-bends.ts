/** At which depth or feed a cut comes to what a link of the machine has. */
import { type Cut, cutOf, type Operation } from '../threads/index.ts';

const STEPS_BEYOND = 20;
const MOST_TRIES = 20;

/** A link, what the cut asks of it, what it has, and where it would give way. */
export interface CutLink {
  readonly id: string;
  readonly name: string;
  readonly asked: number;
  readonly there: number;
  readonly unit: string;
  readonly margin: number;
  /** Depth (or width) and feed at which it gives way, the rest of the cut as it is; m. */
  readonly depth?: number;
  readonly feed?: number;
}

/** Depth (or width) and feed at which a row of the cut comes to what there is; absent where that lies far beyond. */
export function bender(
  operation: Operation,
  typed: Readonly<Record<string, string>>,
  row: (cut: Cut, key: string) => number,
): (key: string, there: number) => { depth?: number; feed?: number } {
  const symbols: Readonly<Record<string, string>> = {
    depth: 'ap',
    width: 'w',
    feed: operation === 'milling' ? 'fz' : 'f',
  };
  const solve = (word: string, key: string, there: number): number | undefined => {
    if (typed[word] === undefined || !(there > 0)) return undefined;
    const now = cutOf(operation, typed);
    const start = now.ok ? row(now.value, symbols[word]!) : 0;
    if (!(start > 0)) return undefined;
    return reach(start, there, (value) => {
      const made = cutOf(operation, { ...typed, [word]: `${value * 1e3} mm` });
      return made.ok ? row(made.value, key) : Number.NaN;
    });
  };
  const deep = operation === 'parting' ? 'width' : 'depth';
  return (key, there) => {
    const depth = solve(deep, key, there);
    const feed = solve('feed', key, there);
    return { ...(depth === undefined ? {} : { depth }), ...(feed === undefined ? {} : { feed }) };
  };
}

/** Where a force that grows about as a power of the value comes to a target, by the power of the last two tries. */
function reach(start: number, target: number, force: (value: number) => number): number | undefined {
  let [value, power] = [start, 1];
  let at = force(value);
  for (let turn = 0; turn < MOST_TRIES; turn++) {
    if (!(at > 0)) return undefined;
    if (Math.abs(at / target - 1) < 1e-9) return value;
    const next = value * (target / at) ** (1 / power);
    if (!(next < STEPS_BEYOND * start && next > start / 1e6)) return undefined;
    const then = force(next);
    const found = Math.log(then / at) / Math.log(next / value);
    if (found > 0.1) power = found;
    [value, at] = [next, then];
  }
  return Math.abs(at / target - 1) < 1e-3 ? value : undefined;
}
