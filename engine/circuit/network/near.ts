/** A steady state with a few resistors and sources put in or taken out, without solving the whole again. */

import { nodesOf } from './check.ts';
import type { Point, PointInside, Solved, Volts } from './operate.ts';
import type { Changed } from './system.ts';
import type { Element, Piece } from './types.ts';

type Ends = readonly [a: string, b: string];

const ends = (e: Element): Ends => nodesOf(e) as unknown as Ends;

/** As a conductance with a current beside it (Norton); undefined for what is no resistor and no real source. */
function asConductance(e: Element): { readonly siemens: number; readonly amps: number } | undefined {
  if (e.kind === 'resistor') return { siemens: 1 / e.ohms, amps: 0 };
  if (e.kind === 'voltage' && e.ohms > 0 && typeof e.volts === 'number')
    return { siemens: 1 / e.ohms, amps: e.volts / e.ohms };
  return undefined;
}

/** Whether two nodes still hang together in their piece. */
function joined(
  piece: Piece,
  [from, to]: Ends,
  without: ReadonlySet<Element>,
  and: readonly Element[],
): boolean {
  const next = new Map<string, string[]>();
  for (const e of [...piece.elements, ...and]) {
    if (without.has(e) || !['resistor', 'voltage', 'diode'].includes(e.kind)) continue;
    const [a, b] = ends(e);
    for (const [here, there] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = next.get(here) ?? [];
      next.set(here, list);
      list.push(there);
    }
  }
  const seen = new Set([from]);
  for (const node of seen) for (const other of next.get(node) ?? []) seen.add(other);
  return seen.has(to);
}

/**
 * Volts once some elements are put in and others, of the point’s own, are taken out.
 *
 * @param point at time 0
 * @returns undefined where pieces would join or part, where an element is no resistor and no source with inner
 *   resistance, or where it does not settle: then the whole is to be solved
 */
export function nearPoint(
  point: Point,
  added: readonly Element[],
  removed: readonly Element[],
): Volts | undefined {
  const inside = point as PointInside;
  const without = new Set(removed);
  const changes = new Map<Solved, Changed[]>();
  const same = (e: Element, other: Element): boolean => {
    const [[a, b], [c, d]] = [ends(e), ends(other)];
    return (a === c && b === d) || (a === d && b === c);
  };
  for (const [list, sign] of [
    [added, 1],
    [removed, -1],
  ] as const)
    for (const e of list) {
      const [a, b] = ends(e);
      const law = asConductance(e);
      const piece = inside.pieceOf(a);
      const solved = inside.solvedAt(a);
      if (!law || !piece || !solved || piece !== inside.pieceOf(b)) return undefined;
      if (
        sign < 0 &&
        !added.some((each) => same(each, e)) &&
        !joined(
          piece,
          [a, b],
          without,
          added.filter((each) => inside.pieceOf(ends(each)[0]) === piece),
        )
      )
        return undefined;
      const own = changes.get(solved) ?? [];
      changes.set(solved, own);
      own.push({
        a: solved.system.node(a),
        b: solved.system.node(b),
        siemens: sign * law.siemens,
        amps: sign * law.amps,
      });
    }
  const unknowns = new Map<Solved, Float64Array>();
  for (const [solved, own] of changes) {
    const x = solved.system.near(solved.x, own);
    if (!x) return undefined;
    unknowns.set(solved, x);
  }
  return inside.moved(unknowns);
}
