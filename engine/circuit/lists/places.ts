/** Terminals joined to one piece of metal, in few words: where to put the lead, and what else hangs there. */
import { railsOf } from '../drawing/rails.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { isStrip } from './strips.ts';
import { inOrder } from './words.ts';

/** So many are written out. */
const FEW = 3;

export interface PlaceNames {
  /** The terminal to measure at: on a strip if one is among them, as a lead reaches it there. */
  readonly best: (joined: readonly string[]) => string;
  /** 'X2.1', 'A1.in1 / B21.BK', 'X2.1 (0 V, 45 terminals joined)'. */
  readonly say: (joined: readonly string[]) => string;
}

export function placeNames(read: ReadWiring): PlaceNames {
  const rails = railsOf(read);
  const strips = new Set(
    [...read.devices.values()].filter((device) => isStrip(device, read)).map(({ id }) => id),
  );
  const sorted = (joined: readonly string[]): readonly string[] => {
    const onStrip = (id: string) => (strips.has(id.slice(0, id.indexOf('.'))) ? 0 : 1);
    return [...joined].sort((a, b) => onStrip(a) - onStrip(b) || inOrder(a, b));
  };
  return {
    best: (joined) => sorted(joined)[0] ?? '',
    say: (joined) => {
      if (joined.length <= FEW) return [...joined].sort(inOrder).join(' / ');
      const [first = ''] = sorted(joined);
      const net = read.netOf.get(first);
      const rail = net && rails.get(net.id)?.name;
      return `${first} (${rail ? `${rail}, ` : ''}${joined.length} terminals joined)`;
    },
  };
}
