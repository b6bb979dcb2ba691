/** The steady state of a circuit: capacitors open, inductors only their winding's resistance. */
import { checkCircuit, nodesOf } from './check.ts';
import { junction, through } from './junction.ts';
import { solveAt } from './newton.ts';
import { piecesOf } from './pieces.ts';
import { System } from './system.ts';
import type { Answer, Circuit, Element, Piece } from './types.ts';
import { Union } from './union.ts';
import { closedAt, valueAt } from './value.ts';

/** One group of pieces that were solved together. */
export interface Solved {
  readonly pieces: readonly Piece[];
  readonly system: System;
  readonly x: Float64Array;
}

export interface Volts {
  /** Volts of a node against another, or against its reference; undefined where no path joins them or none has one. */
  volts(node: string, against?: string): number | undefined;
  /** The piece a node is in; undefined for a node that is nowhere. */
  pieceOf(node: string): Piece | undefined;
}

export interface Point extends Volts {
  /** Amperes through an element, by the direction of its kind; of a transistor into its collector. Open: 0. */
  amps(id: string): number;
  readonly pieces: readonly Piece[];
  /** How many of its groups were taken over from the point before. */
  readonly kept: number;
}

export interface PointInside extends Point {
  readonly solved: readonly Solved[];
}

/** Pieces in groups: those whose currents follow each other are solved together. */
function groups(pieces: readonly Piece[]): readonly (readonly Piece[])[] {
  const joined = new Union();
  const home = new Map<string, Piece>();
  const name = (piece: Piece): string => piece.reference;
  for (const piece of pieces) {
    joined.find(name(piece));
    for (const e of piece.elements) home.set(e.id, piece);
  }
  for (const piece of pieces)
    for (const e of piece.elements) {
      const other = e.kind === 'mirror' ? home.get(e.of) : undefined;
      if (other) joined.join(name(piece), name(other));
    }
  const grouped = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const root = joined.find(name(piece));
    grouped.set(root, [...(grouped.get(root) ?? []), piece]);
  }
  return [...grouped.values()];
}

/** Whether a group is, element for element, the one solved before. */
function same(now: readonly Piece[], before: readonly Piece[]): boolean {
  return (
    now.length === before.length &&
    now.every((piece, k) => {
      const old = before[k]!;
      return (
        piece.reference === old.reference &&
        piece.elements.length === old.elements.length &&
        piece.elements.every((e, n) => e === old.elements[n])
      );
    })
  );
}

/**
 * The steady state.
 *
 * @param options.time at which sources and contacts are taken; 0 unless given
 * @param options.previous a point of a circuit before an edit, at the same time: groups of pieces whose elements
 *   are the very same objects are not solved again
 */
export function operatingPoint(
  circuit: Circuit,
  options: { readonly time?: number; readonly previous?: Point } = {},
): Answer<{ point: Point }> {
  const time = options.time ?? 0;
  const wrong = checkCircuit(circuit);
  if (wrong) return { ok: false, trouble: wrong };
  const cut = piecesOf(circuit, time);
  if (!cut.ok) return cut;
  const before = new Map<string, Solved>();
  for (const each of (options.previous as PointInside | undefined)?.solved ?? [])
    before.set(each.pieces[0]!.reference, each);
  const solved: Solved[] = [];
  let kept = 0;
  for (const group of groups(cut.pieces)) {
    const old = before.get(group[0]!.reference);
    if (old && same(group, old.pieces)) {
      solved.push(old);
      kept++;
      continue;
    }
    const system = new System(group);
    const x = new Float64Array(system.size);
    if (options.previous) startNear(system, group, x, options.previous);
    const trouble = solveAt(system, { time, share: 1, leak: 0 }, x);
    if (trouble) return { ok: false, trouble };
    solved.push({ pieces: group, system, x });
  }
  return { ok: true, point: pointOf(cut.pieces, solved, time, kept) };
}

/** Begins at the voltages of a point before, where it knows the same nodes: what an edit leaves alone stays near. */
function startNear(system: System, group: readonly Piece[], x: Float64Array, previous: Point): void {
  for (const piece of group) {
    for (const node of piece.nodes) {
      const at = system.node(node);
      if (at >= 0) x[at] = previous.volts(node, piece.reference) ?? 0;
    }
    for (const e of piece.elements) {
      if (e.kind === 'voltage' || e.kind === 'inductor') x[system.branch(e.id)] = previous.amps(e.id);
      if (e.kind === 'diode' && e.ohms > 0)
        x[system.inside(e)] = previous.volts(e.anode, piece.reference) ?? 0;
    }
  }
  system.startFrom(x);
}

function pointOf(
  pieces: readonly Piece[],
  solved: readonly Solved[],
  time: number,
  kept: number,
): PointInside {
  const nodePiece = new Map<string, Piece>();
  for (const piece of pieces) for (const node of piece.nodes) nodePiece.set(node, piece);
  const home = new Map<string, readonly [Solved, Element]>();
  const where = new Map<Piece, Solved>();
  for (const each of solved)
    for (const piece of each.pieces) {
      where.set(piece, each);
      for (const e of piece.elements) home.set(e.id, [each, e]);
    }
  // Groups taken over were cut from another list of pieces, with the same nodes.
  const solvedAt = new Map<string, Solved>();
  for (const each of solved)
    for (const piece of each.pieces) for (const node of piece.nodes) solvedAt.set(node, each);
  const raw = (node: string): number => {
    const { system, x } = solvedAt.get(node)!;
    const at = system.node(node);
    return at < 0 ? 0 : x[at]!;
  };
  return {
    volts: (node, against) => {
      const piece = nodePiece.get(node);
      if (!piece) return undefined;
      if (against === undefined) return piece.anchored ? raw(node) : undefined;
      const other = nodePiece.get(against);
      if (!other) return undefined;
      const together = other === piece || (other.anchored && piece.anchored);
      return together ? raw(node) - raw(against) : undefined;
    },
    amps: (id) => {
      const found = home.get(id);
      return found ? ampsOf(found[1], found[0].system, found[0].x, time) : 0;
    },
    pieceOf: (node) => nodePiece.get(node),
    pieces,
    solved,
    kept,
  };
}

/** The current of an element from the unknowns of a steady state. */
export function ampsOf(e: Element, system: System, x: Float64Array, time: number): number {
  const at = (unknown: number): number => (unknown < 0 ? 0 : x[unknown]!);
  const drop = (a: string, b: string): number => at(system.node(a)) - at(system.node(b));
  switch (e.kind) {
    case 'resistor':
      return drop(e.a, e.b) / e.ohms;
    case 'switch': {
      const ohms = closedAt(e.closed, time) ? e.onOhms : e.offOhms;
      return ohms === undefined ? 0 : drop(e.a, e.b) / ohms;
    }
    case 'voltage':
    case 'inductor':
      return x[system.branch(e.id)]!;
    case 'current':
      return valueAt(e.amps, time);
    case 'mirror':
      return e.gain * x[system.branch(e.of)]!;
    case 'capacitor':
      return 0;
    case 'diode':
      return e.ohms > 0
        ? (at(system.node(e.anode)) - at(system.inside(e))) / e.ohms
        : through(junction(e.saturation, e.emission, e.breakdown), drop(e.anode, e.cathode))[0];
    case 'transistor': {
      const sign = e.polarity === 'npn' ? 1 : -1;
      const law = junction(e.saturation, 1);
      const [forward] = through(law, sign * drop(e.base, e.emitter));
      const [reverse] = through(law, sign * drop(e.base, e.collector));
      return sign * (forward - reverse - reverse / e.reverseGain);
    }
  }
}

/** Watts turned into heat (or, negative, given) by an element in a steady state; a source's share is what it gives. */
export function wattsOf(point: Point, e: Element): number {
  const [a, b] = nodesOf(e) as [string, string];
  const current = point.amps(e.id);
  if (e.kind === 'voltage') return -current * (point.volts(a, b) ?? 0);
  return current * (point.volts(a, b) ?? 0);
}
