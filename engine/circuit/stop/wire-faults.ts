/** What can go wrong with wires and cables. */
import { domains, plusNode } from './domains.ts';
import type { NamedFault } from './faults.ts';
import type { Model } from './model.ts';
import { networkOf } from './network.ts';

/** Wires of one cable beyond which only neighbours are taken as pairs. */
const MOST_PAIRED = 12;

export function* wireFaults(model: Model): Generator<NamedFault> {
  const of = domains(model);
  const { net } = networkOf(model);
  for (const [wire, { id, a, b }] of model.wires.entries()) {
    if (isHome(model, a) || isHome(model, b)) continue;
    const path = `${model.nodes[a]}–${model.nodes[b]}`;
    yield {
      id: `${id} off`,
      group: 'wire',
      element: elementOf(model, a),
      says: `Wire ${id} (${path}) has come off`,
      faults: [{ kind: 'wire-off', wire }],
    };
    const source = of[a]!;
    if (source >= 0) {
      const plus = plusNode(model, source);
      if (net[plus] !== net[a] && net[model.sources[source]!.plus] !== net[a])
        yield {
          id: `${id} to plus`,
          group: 'wire',
          element: elementOf(model, a),
          says: `Wire ${id} (${path}) touches plus`,
          faults: [{ kind: 'touch', nodes: [a, plus] }],
        };
    }
    if (net[model.frame] !== net[a])
      yield {
        id: `${id} to frame`,
        group: 'wire',
        element: elementOf(model, a),
        says: `Wire ${id} (${path}) touches the frame`,
        faults: [{ kind: 'touch', nodes: [a, model.frame] }],
      };
  }
}

/** Wires that touch across one contact, and wires of one cable that touch or are crushed together. */
export function* touchFaults(model: Model): Generator<NamedFault> {
  const { net } = networkOf(model);
  for (const { id, element, a, b, fuse, doubled } of model.contacts) {
    if (fuse || doubled || net[a] === net[b]) continue;
    yield {
      id: `${id} bridged`,
      group: 'wire',
      element,
      says: `The two wires at ${id} touch`,
      faults: [{ kind: 'touch', nodes: [a, b] }],
    };
  }
  const seen = new Set<string>();
  const once = (nodes: readonly number[]): boolean => {
    const key = [...new Set(nodes.map((node) => net[node]!))].sort((x, y) => x - y).join(',');
    if (!key.includes(',') || seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  for (const { a, b, fuse } of model.contacts) if (!fuse) once([a, b]);
  const cables = new Map<string, { id: string; a: number }[]>();
  for (const { id, a, cable } of model.wires)
    if (cable !== '') cables.set(cable, [...(cables.get(cable) ?? []), { id, a }]);
  for (const [cable, wires] of cables) {
    for (const [n, one] of wires.entries())
      for (const two of wires.slice(n + 1, wires.length > MOST_PAIRED ? n + 2 : undefined))
        if (once([one.a, two.a]))
          yield {
            id: `${one.id} to ${two.id}`,
            group: 'wire',
            element: elementOf(model, one.a),
            says: `Wires ${one.id} and ${two.id} of cable ${cable} touch`,
            faults: [{ kind: 'touch', nodes: [one.a, two.a] }],
          };
    if (wires.length > 2 && once(wires.map(({ a }) => a)))
      yield {
        id: `cable ${cable} crushed`,
        group: 'wire',
        element: elementOf(model, wires[0]!.a),
        says: `Cable ${cable} is crushed: all its wires touch each other`,
        faults: [{ kind: 'touch', nodes: wires.map(({ a }) => a) }],
      };
  }
}

/** Home switches stop nothing, and neither do their wires. */
function isHome({ nodes, homes }: Model, node: number): boolean {
  const [element = '', terminal = ''] = nodes[node]!.split('.');
  return /^home\d$/.test(terminal) || homes.some((each) => each.element === element);
}

const elementOf = (model: Model, node: number): string => model.nodes[node]!.split('.')[0]!;
