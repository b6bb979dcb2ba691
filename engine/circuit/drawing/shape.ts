/** Graphs that differ in names alone need to be laid out once: twenty limit switches make one picture. */
import type { ElkNode } from 'elkjs/lib/elk-api.js';

export interface Shape {
  /** The same for graphs that differ in names alone. */
  readonly key: string;
  readonly graph: ElkNode;
  /** An answer for the shape with the names of the graph it was taken from. */
  readonly named: (answer: ElkNode) => ElkNode;
}

export function shapeOf(graph: ElkNode): Shape {
  const numbers = new Map<string, string>();
  const names: string[] = [];
  const numberOf = (name: string): string => {
    let number = numbers.get(name);
    if (number === undefined) {
      number = `n${names.length}`;
      numbers.set(name, number);
      names.push(name);
    }
    return number;
  };
  const nameOf = (number: string): string => names[Number(number.slice(1))] ?? number;
  const renamed = (node: ElkNode, rename: (id: string) => string): ElkNode => ({
    ...node,
    id: rename(node.id),
    ...(node.children ? { children: node.children.map((each) => renamed(each, rename)) } : {}),
    ...(node.ports ? { ports: node.ports.map((port) => ({ ...port, id: rename(port.id) })) } : {}),
    ...(node.labels ? { labels: node.labels.map(({ text: _, ...label }) => ({ ...label, text: 'x' })) } : {}),
    ...(node.edges
      ? {
          edges: node.edges.map((edge) => ({
            ...edge,
            id: rename(edge.id),
            sources: edge.sources.map(rename),
            targets: edge.targets.map(rename),
            ...(edge.labels
              ? { labels: edge.labels.map(({ text: _, ...label }) => ({ ...label, text: 'x' })) }
              : {}),
          })),
        }
      : {}),
  });
  const plain = renamed(graph, numberOf);
  return { key: JSON.stringify(plain), graph: plain, named: (answer) => renamed(answer, nameOf) };
}
