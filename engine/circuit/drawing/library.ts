/** The layout library in place, for the command line and tests; the page has a worker for it. */
import Elk from 'elkjs/lib/elk.bundled.js';
import type { Layouter } from './layout.ts';

export function libraryLayouter(): Layouter {
  const Constructor = Elk as unknown as new () => { layout: Layouter };
  const elk = new Constructor();
  return (graph) => elk.layout(graph);
}
