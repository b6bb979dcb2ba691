/** Arguments of a procedure that reads plain numbers only. */
import type { Argument } from '../sheet/types.ts';

type Numbers<N extends number, T extends readonly number[] = readonly []> = T['length'] extends N
  ? T
  : Numbers<N, readonly [...T, number]>;

/** The first so many, in the order in which the procedure reads them. */
export const numbers = <N extends number>(read: readonly Argument[]): Numbers<N> =>
  read as readonly unknown[] as Numbers<N>;
