/** What an ohmmeter shows between two nodes of a circuit without its sources. */
import { checkCircuit } from './check.ts';
import { solveAt } from './newton.ts';
import { piecesOf } from './pieces.ts';
import { System } from './system.ts';
import type { Answer, Circuit, Element, Piece } from './types.ts';

/** The ohmmeter: what it can drive through the thing measured, on its ohms range. */
export interface Meter {
  /** Volts at its open leads; below a junction's threshold diodes stay dark. */
  readonly openVolts: number;
  /** Short-circuit current in A. */
  readonly shortAmps: number;
}

/** A usual hand meter: common practice, no source. */
export const HAND_METER: Meter = { openVolts: 0.5, shortAmps: 1e-3 };

/** On its diode range it drives about a milliampere with up to three volts: common practice, no source. */
export const DIODE_METER: Meter = { openVolts: 3, shortAmps: 1e-3 };

/** Sources without power: their inner resistance if they have one and let current pass, otherwise nothing. */
export function deadElements(elements: readonly Element[]): readonly Element[] {
  return elements.filter((e) => !['voltage', 'current', 'mirror'].includes(e.kind));
}

/**
 * Readings against one node, for every node of a dead circuit: ohms as the meter shows them (volts at its leads
 * divided by its current), `Infinity` where no path leads.
 */
export function ohmsTo(
  circuit: Circuit,
  common: string,
  nodes: readonly string[],
  meter: Meter = HAND_METER,
): Answer<{ ohms: ReadonlyMap<string, number> }> {
  const wrong = checkCircuit(circuit);
  if (wrong) return { ok: false, trouble: wrong };
  const dead: Circuit = { elements: deadElements(circuit.elements), references: [common] };
  const cut = piecesOf(dead);
  if (!cut.ok) return cut;
  const piece = cut.pieces.find((each) => each.nodes.includes(common));
  const ohms = new Map<string, number>();
  for (const node of nodes) ohms.set(node, node === common ? 0 : Number.POSITIVE_INFINITY);
  if (!piece) return { ok: true, ohms };
  const inside = new Set(piece.nodes);
  for (const node of nodes) {
    if (node === common || !inside.has(node)) continue;
    const shown = oneReading(piece, node, common, meter);
    if (!shown.ok) return shown;
    ohms.set(node, shown.ohms);
  }
  return { ok: true, ohms };
}

function oneReading(piece: Piece, plus: string, minus: string, meter: Meter): Answer<{ ohms: number }> {
  const probe: Element = {
    kind: 'voltage',
    id: ' meter',
    plus,
    minus,
    volts: meter.openVolts,
    ohms: meter.openVolts / meter.shortAmps,
  };
  const system = new System([{ ...piece, elements: [...piece.elements, probe] }]);
  const x = new Float64Array(system.size);
  const trouble = solveAt(system, { time: 0, share: 1, leak: 0 }, x);
  if (trouble) return { ok: false, trouble };
  const amps = x[system.branch(probe.id)]!;
  const volts = meter.openVolts - amps * probe.ohms;
  return {
    ok: true,
    ohms: amps > meter.shortAmps * 1e-9 ? Math.max(0, volts / amps) : Number.POSITIVE_INFINITY,
  };
}
