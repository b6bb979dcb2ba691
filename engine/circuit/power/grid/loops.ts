/** Currents where wires, supplies or contacts lie beside each other: shared by resistance, loop by loop. */
import { type Drawn, type Element, type Flowing, LinearNetwork, type Trouble } from '../../network/index.ts';
import { fromNano, nano } from './channels.ts';
import type { Arrow, Block, Edge } from './forest.ts';

/** What flows from `a` to `b` of each link, by channel, in nA; and with no load on, in A. */
export interface Solved {
  readonly sums: ReadonlyMap<Edge, ReadonlyMap<string, number>>;
  readonly idle: ReadonlyMap<Edge, number>;
  readonly trouble?: Trouble;
}

const NOTHING: Solved = { sums: new Map(), idle: new Map() };

/** Worked out once for each state of its links. */
export function solvedOf(block: Block): Solved {
  block.solved ??= solve(block.edges);
  return block.solved as Solved;
}

function solve(edges: readonly Edge[]): Solved {
  const idle = new Map<Edge, number>();
  const sums = new Map<Edge, Map<string, number>>(edges.map((edge) => [edge, new Map()]));
  const lifted = edges.some(({ link }) => link.lifts !== undefined);
  const channels = [...new Set(edges.flatMap((edge) => [...edge.sums.keys()]))].sort();
  if (!lifted && channels.length === 0) return NOTHING;
  const made = networkOf(edges, () => 0);
  if (!made.ok) return { ...NOTHING, trouble: made.trouble };
  const reference = edges[0]!.link.a;
  for (const channel of channels) {
    const flowing = made.network.flowing(drawnIn(edges, channel, reference), false);
    for (const edge of edges) {
      const whole = nano(through(edge, flowing));
      if (whole !== 0) sums.get(edge)!.set(channel, whole);
    }
  }
  if (lifted)
    for (const [part, channel] of [
      ['re', 'a0'],
      ['im', 'a90'],
    ] as const) {
      if (edges.every(({ link }) => (link.lifts?.[part] ?? 0) === 0)) continue;
      const live = networkOf(edges, (lifts) => lifts[part] / 1e6);
      if (!live.ok) return { ...NOTHING, trouble: live.trouble };
      const flowing = live.network.flowing([]);
      for (const edge of edges) {
        const amps = through(edge, flowing);
        idle.set(edge, Math.hypot(idle.get(edge) ?? 0, amps));
        const whole = nano(amps);
        const own = sums.get(edge)!;
        if (whole !== 0) own.set(channel, (own.get(channel) ?? 0) + whole);
      }
    }
  return { sums, idle };
}

/** What flows from `a` to `b`; a source counts as positive what it gives out of `a`. */
const through = ({ link }: Edge, flowing: Flowing): number =>
  link.lifts ? -flowing.amps(link.id) : flowing.amps(link.id);

const networkOf = (edges: readonly Edge[], volts: (lifts: Arrow) => number) =>
  LinearNetwork.of({
    elements: edges.map(
      ({ link: { id, a, b, ohms, lifts } }): Element =>
        lifts
          ? { kind: 'voltage', id, plus: a, minus: b, volts: volts(lifts), ohms }
          : { kind: 'resistor', id, a, b, ohms },
    ),
    references: [edges[0]!.link.a],
  });

/** What leaves the loops at each of their points: what flows there along the forest, taken together. */
function drawnIn(edges: readonly Edge[], channel: string, reference: string): readonly Drawn[] {
  const leaves = new Map<string, number>();
  for (const edge of edges) {
    const whole = edge.sums.get(channel);
    if (whole === undefined) continue;
    leaves.set(edge.link.a, (leaves.get(edge.link.a) ?? 0) - whole);
    leaves.set(edge.link.b, (leaves.get(edge.link.b) ?? 0) + whole);
  }
  return [...leaves]
    .filter(([node, whole]) => whole !== 0 && node !== reference)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([node, whole]) => ({ from: node, to: reference, amps: fromNano(whole) }));
}
