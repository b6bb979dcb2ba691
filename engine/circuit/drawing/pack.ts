/** Puts the clusters of one circuit on sheets of A3, one beside the other, in their order. */
import type { LaidCluster, Point, Sheet } from './types.ts';

/** A3 lying, less its margins, four units to a millimetre. */
export const PAGE = { width: 1600, height: 1000 } as const;
const GAP = 24;

type Placed = { readonly at: Point; readonly laid: LaidCluster };

export function pack(circuit: string, title: string, clusters: readonly LaidCluster[]): readonly Sheet[] {
  const pages: Placed[][] = [];
  let page: Placed[] = [];
  let [x, y, deep] = [0, 0, 0];
  const turn = () => {
    if (page.length > 0) pages.push(page);
    page = [];
    [x, y, deep] = [0, 0, 0];
  };
  for (const laid of clusters) {
    if (x > 0 && x + laid.width > PAGE.width) [x, y, deep] = [0, y + deep + GAP, 0];
    if (y > 0 && y + laid.height > PAGE.height) turn();
    page.push({ at: { x, y }, laid });
    x += laid.width + GAP;
    deep = Math.max(deep, laid.height);
    if (laid.width > PAGE.width || laid.height > PAGE.height) turn();
  }
  turn();
  return pages.map((placed, at) => ({
    circuit,
    title,
    number: at + 1,
    of: pages.length,
    width: Math.max(...placed.map((each) => each.at.x + each.laid.width)),
    height: Math.max(...placed.map((each) => each.at.y + each.laid.height)),
    clusters: placed,
  }));
}
