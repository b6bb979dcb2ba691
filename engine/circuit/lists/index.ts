/** Lists to work from. */
import type { ReadWiring } from '../wiring/types.ts';
import { cableSchedule } from './cables.ts';
import { labelList } from './labels.ts';
import { pinTables } from './pins.ts';
import { ringOut } from './ring-out.ts';
import { terminalStrips } from './strips.ts';
import type { List, ListId } from './types.ts';
import { wireList } from './wires.ts';

export { listCsv } from './csv.ts';
export { listDocument, listPaper, PAPER_STYLE } from './paper.ts';
export { seekRingOutList } from './ring-out.ts';
export { type List, type ListGroup, type ListId, type ListRow, sharedLines } from './types.ts';
export { farEnds, inOrder, sayNature, sayTerminal } from './words.ts';

export interface ListsOptions {
  /** Photo on which a terminal is pinned, by the terminal's id. */
  readonly photos?: ReadonlyMap<string, string>;
}

/** By the name one asks for them. */
export const LISTS: Readonly<Record<ListId, (read: ReadWiring, options?: ListsOptions) => List>> = {
  wires: wireList,
  cables: cableSchedule,
  strips: terminalStrips,
  labels: labelList,
  pins: (read, options) => pinTables(read, options?.photos),
  'ring-out': ringOut,
};
