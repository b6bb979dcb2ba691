/** A cluster as a graph for the layout library, and what came back as places in our own terms. */
import type { ElkExtendedEdge, ElkNode, ElkPort } from 'elkjs/lib/elk-api.js';
import { TEXT, widthOf } from './measure.ts';
import { flagSize, headOf, MARK, sizeOf } from './pieces.ts';
import { terminalsOf } from './terminals.ts';
import type {
  Box,
  Cluster,
  Flag,
  LaidCluster,
  LaidFlag,
  LaidPiece,
  LaidWire,
  Piece,
  Point,
  Port,
} from './types.ts';

const OPTIONS = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.randomSeed': '1',
  'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
  'elk.layered.nodePlacement.favorStraightEdges': 'true',
  'elk.layered.considerModelOrder.strategy': 'PREFER_NODES',
  'elk.layered.spacing.nodeNodeBetweenLayers': '16',
  'elk.layered.spacing.edgeNodeBetweenLayers': '10',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '8',
  'elk.spacing.nodeNode': '14',
  'elk.spacing.edgeNode': '10',
  'elk.spacing.edgeEdge': '10',
  'elk.spacing.edgeLabel': '2',
  'elk.separateConnectedComponents': 'false',
  'elk.padding': '[top=6,left=6,bottom=6,right=6]',
} as const;

const SIDE = { left: 'WEST', right: 'EAST' } as const;

interface Prepared {
  readonly graph: ElkNode;
  readonly sides: ReadonlyMap<string, 'left' | 'right'>;
}

/** Boxes whose terminals keep their order, as phases are counted. */
const isInTurn = ({ group }: Piece): boolean => 'box' in group && group.symbol === 'mains';

/** Port ids are made of place and side, since a point has two for one terminal. */
const portId = (terminal: string, side: 'left' | 'right'): string => `${side} ${terminal}`;

export function graphOf(cluster: Cluster): Prepared {
  const { rank } = cluster;
  const sides = sidesOf(cluster);
  const ports = new Map<string, readonly Port[]>();
  const children: ElkNode[] = cluster.pieces.map((piece) => {
    const size = sizeOf(piece, (terminal) => sides.get(terminal) ?? 'right');
    for (const port of size.ports) ports.set(port.terminal, [...(ports.get(port.terminal) ?? []), port]);
    const head = size.free ? size.head : 0;
    return {
      id: piece.id,
      width: size.width,
      height: size.height - head,
      // What is written over a box hangs outside it, so that its terminals keep to the box.
      ...(size.free ? { labels: [{ text: 'head', width: size.width, height: head }] } : {}),
      layoutOptions: {
        'elk.portConstraints': !size.free ? 'FIXED_POS' : isInTurn(piece) ? 'FIXED_ORDER' : 'FIXED_SIDE',
        'elk.nodeLabels.placement': 'OUTSIDE V_TOP H_LEFT',
        'elk.spacing.labelNode': '0',
      },
      ports: size.ports.map(
        ({ terminal, side, x, y }, at): ElkPort => ({
          id: portId(terminal, side),
          width: 0,
          height: 0,
          layoutOptions: {
            'elk.port.side': SIDE[side],
            // Counted clockwise: down the right side, up the left one.
            ...(isInTurn(piece) ? { 'elk.port.index': String(side === 'right' ? at : 1000 - at) } : {}),
          },
          ...(size.free ? {} : { x, y }),
        }),
      ),
    };
  });
  const portFor = (terminal: string, side: 'left' | 'right'): string => {
    const own = ports.get(terminal)!;
    return portId(terminal, (own.find((port) => port.side === side) ?? own[0]!).side);
  };
  const edges: ElkExtendedEdge[] = cluster.wires.map(({ id, from, to, label }) => {
    const pieceOf = pieceFinder(cluster);
    const [a, b] = [rank.get(pieceOf(from))!, rank.get(pieceOf(to))!];
    const [first, second] = a <= b ? [from, to] : [to, from];
    return {
      id: `wire ${id}`,
      sources: [portFor(first, 'right')],
      targets: [portFor(second, 'left')],
      labels: [
        {
          text: label,
          width: widthOf(label, TEXT.small) + MARK,
          height: TEXT.small + 3,
          layoutOptions: { 'elk.edgeLabels.placement': 'CENTER' },
        },
      ],
    };
  });
  for (const flag of cluster.flags) {
    const side = sides.get(flag.id)!;
    children.push({
      id: flag.id,
      ...flagSize(flag),
      layoutOptions: { 'elk.portConstraints': 'FIXED_SIDE' },
      ports: [
        {
          id: `on ${flag.id}`,
          width: 0,
          height: 0,
          layoutOptions: { 'elk.port.side': side === 'left' ? 'EAST' : 'WEST' },
        },
      ],
    });
    const own = portFor(flag.at, side);
    edges.push({
      id: `stub ${flag.id}`,
      sources: [side === 'left' ? `on ${flag.id}` : own],
      targets: [side === 'left' ? own : `on ${flag.id}`],
    });
  }
  return { graph: { id: 'cluster', layoutOptions: OPTIONS, children, edges }, sides };
}

const finders = new WeakMap<Cluster, ReadonlyMap<string, string>>();
function pieceFinder(cluster: Cluster): (terminal: string) => string {
  let found = finders.get(cluster);
  if (!found) {
    found = new Map(
      cluster.pieces.flatMap((piece) => terminalsOf(piece).map((each) => [each, piece.id] as const)),
    );
    finders.set(cluster, found);
  }
  return (terminal) => found.get(terminal)!;
}

/** Towards what feeds on the left, towards what is fed on the right; a pole's two ends on two sides. */
function sidesOf(cluster: Cluster): ReadonlyMap<string, 'left' | 'right'> {
  const { rank } = cluster;
  const pieceOf = pieceFinder(cluster);
  const pull = new Map<string, number>();
  const add = (terminal: string, by: number) => pull.set(terminal, (pull.get(terminal) ?? 0) + by);
  for (const { from, to } of cluster.wires) {
    const by = Math.sign(rank.get(pieceOf(to))! - rank.get(pieceOf(from))!);
    add(from, by);
    add(to, -by);
  }
  for (const flag of cluster.flags) {
    const { at, rail, isFed } = flag;
    if (rail || !pull.get(at)) add(at, isFed ? -0.4 : 0.4);
  }
  const sides = new Map<string, 'left' | 'right'>();
  for (const piece of cluster.pieces) {
    for (const each of terminalsOf(piece)) sides.set(each, (pull.get(each) ?? 0) < 0 ? 'left' : 'right');
    if (!('poles' in piece.group)) continue;
    // One end that knows where it belongs settles the other; several poles are turned together.
    let wish = 0;
    for (const [a, b] of piece.group.poles) wish += (pull.get(b) ?? 0) - (pull.get(a) ?? 0);
    for (const [a, b] of piece.group.poles) {
      sides.set(a, wish < 0 ? 'right' : 'left');
      sides.set(b, wish < 0 ? 'left' : 'right');
    }
  }
  const isPoint = new Set(cluster.pieces.flatMap(({ group }) => ('points' in group ? group.points : [])));
  for (const { id, at, isFed } of cluster.flags)
    sides.set(id, isPoint.has(at) ? (isFed ? 'left' : 'right') : sides.get(at)!);
  return sides;
}

/** What the library worked out, in our own terms. */
export function laidOf(cluster: Cluster, { sides }: Prepared, answer: ElkNode): LaidCluster {
  const nodes = new Map((answer.children ?? []).map((node) => [node.id, node]));
  const boxOf = (id: string): Box => {
    const { x = 0, y = 0, width = 0, height = 0 } = nodes.get(id)!;
    return { x, y, width, height };
  };
  const edges = new Map((answer.edges ?? []).map((edge) => [edge.id, edge]));
  const pointsOf = (id: string): readonly Point[] => {
    const [section] = edges.get(id)?.sections ?? [];
    return section ? [section.startPoint, ...(section.bendPoints ?? []), section.endPoint].map(rounded) : [];
  };
  const met = new Set([...edges.values()].flatMap(({ sources, targets }) => [...sources, ...targets]));
  const stubs: (readonly Point[])[] = cluster.flags.map(({ id }) => pointsOf(`stub ${id}`));
  return {
    width: Math.ceil(answer.width ?? 0),
    height: Math.ceil(answer.height ?? 0),
    pieces: cluster.pieces.map((piece): LaidPiece => {
      const { x, y, width, height } = boxOf(piece.id);
      const head = 'box' in piece.group ? headOf(piece) : 0;
      return {
        piece,
        x,
        y: y - head,
        width,
        height: height + head,
        ports: portsOf(piece, nodes.get(piece.id)!, head, met),
      };
    }),
    flags: cluster.flags.map(
      (flag: Flag): LaidFlag => ({ flag, side: sides.get(flag.id)!, ...boxOf(flag.id) }),
    ),
    wires: cluster.wires.map((wire): LaidWire => {
      const [label] = edges.get(`wire ${wire.id}`)?.labels ?? [];
      const { x = 0, y = 0, width = 0, height = 0 } = label ?? {};
      return { wire, points: pointsOf(`wire ${wire.id}`), label: { x, y, width, height } };
    }),
    stubs,
    joints: [...edges.values()].flatMap(({ junctionPoints }) => junctionPoints ?? []).map(rounded),
  };
}

/** Of a point only the sides on which something meets it. */
function portsOf(piece: Piece, node: ElkNode, head: number, met: ReadonlySet<string>): readonly Port[] {
  const found = new Map((node.ports ?? []).map((port) => [port.id, port]));
  return terminalsOf(piece).flatMap((terminal) =>
    (['left', 'right'] as const).flatMap((side): readonly Port[] => {
      const port = found.get(portId(terminal, side));
      const isBare = 'points' in piece.group && !met.has(portId(terminal, side));
      return port && !isBare
        ? [{ terminal, side, ...rounded({ x: port.x ?? 0, y: (port.y ?? 0) + head }) }]
        : [];
    }),
  );
}

const rounded = ({ x, y }: Point): Point => ({ x: Math.round(x * 10) / 10, y: Math.round(y * 10) / 10 });
