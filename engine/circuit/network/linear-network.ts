/** A network of resistors, contacts and sources, factored once and asked with many sets of currents. */
import { checkCircuit } from './check.ts';
import { ampsOf } from './operate.ts';
import { piecesOf } from './pieces.ts';
import { System } from './system.ts';
import type { Answer, Circuit, Element, Piece } from './types.ts';

/** Drawn out of the node `from`, given back into the node `to`. */
export interface Drawn {
  readonly from: string;
  readonly to: string;
  readonly amps: number;
}

export interface Flowing {
  readonly amps: (id: string) => number;
  /** Undefined where no path joins both nodes. */
  readonly volts: (a: string, b: string) => number | undefined;
}

export class LinearNetwork {
  readonly #system: System;
  readonly #pieceOf: ReadonlyMap<string, Piece>;
  readonly #elements: ReadonlyMap<string, Element>;

  private constructor(system: System, pieces: readonly Piece[]) {
    this.#system = system;
    this.#pieceOf = new Map(pieces.flatMap((piece) => piece.nodes.map((node) => [node, piece] as const)));
    this.#elements = new Map(system.elements.map((e) => [e.id, e] as const));
  }

  /** Elements that are neither resistor, contact nor voltage source are refused. */
  static of(circuit: Circuit): Answer<{ network: LinearNetwork }> {
    const odd = circuit.elements.find(({ kind }) => !['resistor', 'switch', 'voltage'].includes(kind));
    if (odd)
      return {
        ok: false,
        trouble: {
          kind: 'value',
          nodes: [],
          elements: [odd.id],
          sentence: `${odd.id}: only resistors, contacts and voltage sources stand in such a network.`,
        },
      };
    const wrong = checkCircuit(circuit);
    if (wrong) return { ok: false, trouble: wrong };
    const cut = piecesOf(circuit);
    if (!cut.ok) return cut;
    const system = new System(cut.pieces);
    system.prepare({ time: 0, share: 1, leak: 0 });
    if (!system.hold())
      return {
        ok: false,
        trouble: {
          kind: 'singular',
          nodes: [],
          elements: [],
          sentence: 'Nothing settles the currents of this network.',
        },
      };
    return { ok: true, network: new LinearNetwork(system, cut.pieces) };
  }

  /**
   * Currents and volts with these currents drawn. A current between nodes that nothing joins is left out.
   *
   * @param sources without them only what the drawn currents cause is answered
   */
  flowing(drawn: readonly Drawn[], sources = true): Flowing {
    const system = this.#system;
    const currents = drawn
      .filter(({ from, to }) => this.#pieceOf.has(from) && this.#pieceOf.get(from) === this.#pieceOf.get(to))
      .flatMap(({ from, to, amps }): readonly (readonly [number, number])[] => [
        [system.node(from), -amps],
        [system.node(to), amps],
      ]);
    const x = system.respond(currents, sources);
    const at = (node: string): number => {
      const unknown = system.node(node);
      return unknown < 0 ? 0 : x[unknown]!;
    };
    return {
      amps: (id) => {
        const e = this.#elements.get(id);
        return e ? ampsOf(e, system, x, 0) : 0;
      },
      volts: (a, b) => {
        const piece = this.#pieceOf.get(a);
        return piece !== undefined && piece === this.#pieceOf.get(b) ? at(a) - at(b) : undefined;
      },
    };
  }
}
