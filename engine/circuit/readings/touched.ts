/** Where a lead goes on a net: the terminals that a wire ends on; spare screws of bars and strips are left out. */
import type { Net, ReadWiring } from '../wiring/types.ts';

export function touched(wiring: ReadWiring, net: Net): readonly string[] {
  const ends = new Set(
    net.wires.flatMap((id) => {
      const wire = wiring.wires.get(id);
      return wire ? [wire.from, wire.to] : [];
    }),
  );
  return net.terminals.filter((id) => ends.has(id));
}
