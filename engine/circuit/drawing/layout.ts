/**
 * All diagrams of a plan. Each cluster is laid out for itself and kept by what it is made of, so that an edit lays out
 * again only what it touched.
 */
import type { ElkNode } from 'elkjs/lib/elk-api.js';
import { pack } from './pack.ts';
import { graphOf, laidOf } from './place.ts';
import { shapeOf } from './shape.ts';
import { clustersOf } from './split.ts';
import type { Cluster, LaidCluster, Plan, Sheet } from './types.ts';

/** Works a graph out; a worker or the library in place. */
export type Layouter = (graph: ElkNode) => Promise<ElkNode>;

export interface Diagrams {
  readonly sheets: readonly Sheet[];
  /** Clusters by what they are made of: given back next time. */
  readonly kept: ReadonlyMap<string, LaidCluster>;
  readonly laidOut: number;
  /** Clusters that stand on the sheets, and all there are: fewer where it was cancelled. */
  readonly done: number;
  readonly of: number;
}

export interface LayoutOptions {
  readonly previous?: Diagrams | undefined;
  /** After each cluster; clusters that stand already count from the beginning. */
  readonly onProgress?: (done: number, all: number) => void;
  /** Asked between clusters. */
  readonly isCancelled?: () => boolean;
}

/** Where it is cancelled, the sheets hold what was laid out by then; given back as `previous`, it goes on from there. */
export async function layOut(
  plan: Plan,
  layouter: Layouter,
  { previous, onProgress = () => {}, isCancelled = () => false }: LayoutOptions = {},
): Promise<Diagrams> {
  const circuits = plan.circuits.map(({ id, title }) => ({ id, title, clusters: clustersOf(plan, id) }));
  const all = circuits.reduce((sum, { clusters }) => sum + clusters.length, 0);
  const kept = new Map<string, LaidCluster>();
  const shapes = new Map<string, ElkNode>();
  const sheets: Sheet[] = [];
  let done = 0;
  let laidOut = 0;
  let cancelled = false;
  for (const { id, title, clusters } of circuits) {
    const laid: LaidCluster[] = [];
    for (const cluster of clusters) {
      const key = keyOf(cluster);
      let found = previous?.kept.get(key) ?? kept.get(key);
      if (!found) {
        cancelled ||= isCancelled();
        if (cancelled) continue;
        const prepared = graphOf(cluster);
        const { key: shape, graph, named } = shapeOf(prepared.graph);
        let answer = shapes.get(shape);
        if (!answer) {
          // The library writes into what it is given.
          const worked = await layouter(structuredClone(graph)).catch((error: unknown) => {
            // Whoever cancels may end the library in the middle of its work.
            cancelled = isCancelled();
            if (!cancelled) throw error;
          });
          if (!worked) continue;
          answer = worked;
          shapes.set(shape, answer);
        }
        found = laidOf(cluster, prepared, named(answer));
        laidOut++;
        onProgress(done + 1, all);
      }
      kept.set(key, found);
      laid.push(found);
      done++;
    }
    if (laid.length > 0) sheets.push(...pack(id, title, laid));
  }
  if (cancelled) for (const [key, each] of previous?.kept ?? []) if (!kept.has(key)) kept.set(key, each);
  if (!cancelled) onProgress(all, all);
  return { sheets, kept, laidOut, done, of: all };
}

const keyOf = ({ pieces, flags, wires, rank }: Cluster): string =>
  JSON.stringify([pieces, flags, wires, [...rank]]);
