/** The wiring with some faults in it: which terminals are joined for good, and what cannot move as it should. */
import type { Model } from './model.ts';

/** One thing wrong. Ids are positions in the model. */
export type Fault =
  | { readonly kind: 'contact-closed'; readonly contact: number }
  | { readonly kind: 'contact-open'; readonly contact: number }
  | { readonly kind: 'wire-off'; readonly wire: number }
  /** Nodes that touch each other. */
  | { readonly kind: 'touch'; readonly nodes: readonly number[] }
  /** A mover that stays in one position whatever pulls or pushes it. */
  | { readonly kind: 'stuck'; readonly mover: number; readonly at: 0 | 1 }
  /** A mushroom head that springs back. */
  | { readonly kind: 'no-latch'; readonly mover: number }
  /** A relay that should let go late and does so at once. */
  | { readonly kind: 'no-delay'; readonly mover: number }
  /** A mover that is quicker or slower than written: for races, not a fault. */
  | { readonly kind: 'tempo'; readonly mover: number; readonly factor: number }
  /** One of the two contacts inside a safety relay's output stays closed. */
  | { readonly kind: 'unit-contact'; readonly unit: number }
  | { readonly kind: 'supply-lost'; readonly source: number };

export interface Network {
  readonly model: Model;
  readonly faults: readonly Fault[];
  /** For each node, its net; terminals joined by wires share one. */
  readonly net: Int32Array;
  readonly nets: number;
  /** For each contact: 1 always closed, −1 always open, 0 as its mover. */
  readonly forced: Int8Array;
  /** For each mover: position it is stuck in, −1 for none. */
  readonly stuck: Int8Array;
  readonly pickUp: Float64Array;
  readonly dropOut: Float64Array;
  readonly noLatch: Uint8Array;
  readonly lost: Uint8Array;
  readonly unitWelded: Uint8Array;
}

export function networkOf(model: Model, faults: readonly Fault[] = []): Network {
  const off = new Set<number>();
  for (const fault of faults) if (fault.kind === 'wire-off') off.add(fault.wire);
  const parent = Int32Array.from(model.nodes, (_, at) => at);
  const find = (at: number): number => {
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  const join = (a: number, b: number) => {
    parent[find(a)] = find(b);
  };
  for (const [at, { a, b }] of model.wires.entries()) if (!off.has(at)) join(a, b);
  for (const { minus, earthed } of model.sources) if (earthed) join(minus, model.frame);
  for (const fault of faults)
    if (fault.kind === 'touch') for (const node of fault.nodes.slice(1)) join(fault.nodes[0]!, node);
  // Inside a safety relay the start loop and, without cross-fault detection, the channels hang on its plus.
  for (const unit of model.safety) {
    const plus = model.movers[unit.supply]!.a;
    join(unit.plus, plus);
    if (!unit.crossFault) for (const node of unit.fed) join(node, plus);
  }
  for (const unit of model.controls)
    if (unit.stop >= 0) join(model.movers[unit.stop]!.b, model.movers[unit.supply]!.b);
  const number = new Map<number, number>();
  const net = Int32Array.from(model.nodes, (_, at) => {
    const root = find(at);
    if (!number.has(root)) number.set(root, number.size);
    return number.get(root)!;
  });
  const made: Network = {
    model,
    faults,
    net,
    nets: number.size,
    forced: new Int8Array(model.contacts.length),
    stuck: new Int8Array(model.movers.length).fill(-1),
    pickUp: Float64Array.from(model.movers, (each) => each.pickUp),
    dropOut: Float64Array.from(model.movers, (each) => each.dropOut),
    noLatch: new Uint8Array(model.movers.length),
    lost: new Uint8Array(model.sources.length),
    unitWelded: new Uint8Array(model.safety.length),
  };
  for (const fault of faults) put(made, fault);
  return made;
}

function put(
  { model, forced, stuck, pickUp, dropOut, noLatch, lost, unitWelded }: Network,
  fault: Fault,
): void {
  switch (fault.kind) {
    case 'contact-closed':
      forced[fault.contact] = 1;
      holdLinked(model, forced, fault.contact);
      return;
    case 'contact-open':
      forced[fault.contact] = -1;
      return;
    case 'stuck':
      stuck[fault.mover] = fault.at;
      return;
    case 'no-latch':
      noLatch[fault.mover] = 1;
      return;
    case 'no-delay':
      dropOut[fault.mover] = 0;
      return;
    case 'tempo':
      pickUp[fault.mover]! *= fault.factor;
      dropOut[fault.mover]! *= fault.factor;
      return;
    case 'unit-contact':
      unitWelded[fault.unit] = 1;
      return;
    case 'supply-lost':
      lost[fault.source] = 1;
      return;
    case 'wire-off':
    case 'touch':
      return;
  }
}

/**
 * A contact that is stuck closed keeps those linked to it, which close in the other position, open: a mirror contact
 * tells of a stuck main contact; force-guided contacts tell of each other. A mirror contact itself that is stuck
 * holds nothing: main contacts do not know of it.
 */
function holdLinked(model: Model, forced: Int8Array, at: number): void {
  const { linked, mover, closedAt, main } = model.contacts[at]!;
  if (!linked) return;
  const hasMain = model.contacts.some((each) => each.mover === mover && each.main);
  if (hasMain && !main) return;
  for (const [other, each] of model.contacts.entries())
    if (each.mover === mover && each.linked && each.closedAt !== closedAt && forced[other] === 0)
      forced[other] = -1;
}
