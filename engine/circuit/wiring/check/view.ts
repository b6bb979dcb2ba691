/** What a rule sees. Each look is noted, so that its answer is asked anew when, and only when, what it saw changes. */
import type { Cable, Device, Terminal, Wire } from '../types.ts';
import type { Component } from './components.ts';
import { pairOf, type WiringState } from './state.ts';

/** What one subject adds to a sum that another rule reads: amperes drawn from a supply or through a contact. */
export interface Gift {
  /** 'supply:G1.plus' */
  readonly to: string;
  /** In A; undefined where it is not known. */
  readonly amps: number | undefined;
}

export interface Total {
  /** In A. */
  readonly sum: number;
  /** How many gave, and how many of them do not know how much. */
  readonly count: number;
  readonly unknown: number;
}

/** More wires than this at one terminal are a mistake, or a drawing that stands for a bar. */
const MANY = 48;

export const NOTHING: Total = { sum: 0, count: 0, unknown: 0 };

const sorted = (set: ReadonlySet<string> | undefined): readonly string[] =>
  set === undefined ? [] : set.size < 2 ? [...set] : [...set].sort();

export class View {
  atoms: Set<string> = new Set();
  gifts: Gift[] = [];
  private readonly state: WiringState;
  private readonly totals: (to: string) => Total;

  constructor(state: WiringState, totals: (to: string) => Total) {
    this.state = state;
    this.totals = totals;
  }

  begin(): void {
    this.atoms = new Set();
    this.gifts = [];
  }

  device(id: string): Device | undefined {
    this.atoms.add(`d:${id}`);
    return this.state.devices.get(id);
  }

  terminal(id: string): Terminal | undefined {
    this.atoms.add(`t:${id}`);
    return this.state.terminals.get(id);
  }

  wire(id: string): Wire | undefined {
    this.atoms.add(`w:${id}`);
    return this.state.wires.get(id);
  }

  cable(id: string): Cable | undefined {
    this.atoms.add(`c:${id}`);
    return this.state.cables.get(id);
  }

  /** Ids of the wires that end at a terminal. */
  wiresAt(terminal: string): readonly string[] {
    this.atoms.add(`w@${terminal}`);
    return sorted(this.state.wiresAt.get(terminal));
  }

  /** Ids of the wires between the same two terminals, itself included. */
  twins(wire: Wire): readonly string[] {
    this.atoms.add(`w=${pairOf(wire)}`);
    return sorted(this.state.between.get(pairOf(wire)));
  }

  cablesOnRoute(route: string): readonly string[] {
    this.atoms.add(`route:${route}`);
    return sorted(this.state.routes.get(route));
  }

  /** What the terminal is joined with by wires and metal. */
  net(terminal: string): Component | undefined {
    this.atoms.add(`n:${terminal}`);
    return this.state.nets.find(terminal);
  }

  /** What it is joined with through fuses and main switches too. */
  rail(terminal: string): Component | undefined {
    this.atoms.add(`r:${terminal}`);
    return this.state.rails.find(terminal);
  }

  inNet(net: Component, kind: string): readonly string[] {
    this.atoms.add(`n${net.number}:${kind}`);
    return sorted(net.byKind.get(kind));
  }

  inRail(rail: Component, kind: string): readonly string[] {
    this.atoms.add(`r${rail.number}:${kind}`);
    return sorted(rail.byKind.get(kind));
  }

  sameRail(a: string, b: string): boolean {
    const [one, other] = [this.rail(a), this.rail(b)];
    return one !== undefined && one === other;
  }

  /**
   * Terminals one wire or one piece of metal away, with the wire. Where very many come together, which no terminal
   * holds, there is no going on.
   */
  neighbours(terminal: string): readonly { readonly to: string; readonly wire: string | null }[] {
    if ((this.state.nets.at(terminal)?.size ?? 0) > MANY) {
      this.atoms.add(`w@${terminal}`);
      return [];
    }
    // What joins a terminal to others changes only with its wires or with its device.
    this.atoms.add(`w@${terminal}`);
    const device = this.terminal(terminal)?.device;
    if (device !== undefined) this.device(device);
    const edges = [...(this.state.nets.at(terminal) ?? [])].sort(([a], [b]) => (a < b ? -1 : 1));
    // A terminal at the other end may have come or gone with its own device.
    for (const wire of this.wiresAt(terminal)) {
      const { from, to } = this.wire(wire)!;
      this.terminal(from === terminal ? to : from);
    }
    return edges.map(([id, to]) => ({ to, wire: id.startsWith('wire:') ? id.slice(5) : null }));
  }

  /** How many wires and joins a net has beyond what holds it together. */
  spare(net: Component): number {
    this.atoms.add(`loops${net.number}`);
    return net.edges - net.size + 1;
  }

  /** All terminals of a net: for nets that are small, or in trouble. */
  all(net: Component): readonly string[] {
    this.atoms.add(`all${net.number}`);
    return [...net.byKind.values()].flatMap((set) => [...set]).sort();
  }

  give(gift: Gift): void {
    this.gifts.push(gift);
  }

  total(to: string): Total {
    this.atoms.add(`sum:${to}`);
    return this.totals(to);
  }
}
