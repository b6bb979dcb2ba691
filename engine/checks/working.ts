/** A working: one sheet of the handbook, its inputs bound to a machine. */
import type { Sheet } from '../sheet/types.ts';
import type { Ref } from './refs.ts';

export interface Working<K extends string = string> {
  readonly id: string;
  /** One for each axis, one for each spindle, or one for the machine. */
  readonly scope: 'axis' | 'spindle' | 'machine';
  /** What it works out, for a heading: 'Torque while accelerating'. */
  readonly title: string;
  readonly sheet: Sheet<K>;
  /** An input left out makes only what depends on it unavailable; `tests` list those that are meant to be. */
  readonly bind: Readonly<Partial<Record<K, Ref>>>;
}

/** A working whose results are typed by its sheet's symbols. */
export interface TypedWorking<K extends string> extends Working<K> {
  readonly get: (symbol: K) => Ref;
}

const make =
  (scope: Working['scope']) =>
  <K extends string>(
    id: string,
    title: string,
    sheet: Sheet<K>,
    bind: Readonly<Partial<Record<K, Ref>>>,
  ): TypedWorking<K> => ({
    id,
    scope,
    title,
    sheet,
    bind,
    get: (symbol) => ({ kind: 'result', working: id, symbol }),
  });

/** One instance for each axis. */
export const axisWorking = make('axis');
/** One instance for each spindle. */
export const spindleWorking = make('spindle');
/** One instance for the machine. */
export const machineWorking = make('machine');
