/** The currents of a proposed wiring, without asking the rules of the supply: they are asked once it is recorded. */
import type { Refit } from '../../../refit/types.ts';
import { saidOf, sharesOf } from '../../power/bus-share.ts';
import { Cells } from '../../power/cells.ts';
import type { PowerContext } from '../../power/context.ts';
import { type Drawn, powerFacts } from '../../power/given.ts';
import { Grid } from '../../power/grid/grid.ts';
import { readPowerSettings } from '../../power/settings.ts';
import { type Standing, viewOf } from '../../power/view.ts';
import type { ReadWiring, Terminal } from '../types.ts';

/** @param drawn what has been worked out of the drives; without it they take what has been said of them */
export function currentsOf(refit: Refit, read: ReadWiring, drawn: Drawn): PowerContext {
  const cells = new Cells();
  const grid = new Grid((name) => cells.touch(name));
  const { devices, wires, cables } = read;
  const terminals = sharing(read, drawn);
  grid.update(devices.keys(), wires.keys(), {
    device: (id) => devices.get(id),
    terminal: (id) => terminals.get(id),
    wire: (id) => wires.get(id),
  });
  const standing: Standing = {
    devices,
    terminals,
    wires,
    cables,
    // What of them cannot be read is told where they are typed.
    settings: readPowerSettings(refit.wiring.settings, []),
    problems: [],
    facts: powerFacts(refit, drawn),
    roles: new Map(),
    capacitanceSaid: () => false,
  };
  return viewOf(cells, grid, () => standing);
}

/** Terminals with each drive's share of the bus, as the rules of the supply will have them. */
function sharing(
  { devices, terminals }: ReadWiring,
  { busSteadyAmps }: Drawn,
): ReadonlyMap<string, Terminal> {
  const shares = sharesOf(
    saidOf(terminals.values(), (device) => devices.get(device)?.kind),
    busSteadyAmps,
  );
  if (shares.size === 0) return terminals;
  const shared = new Map(terminals);
  for (const [id, amps] of shares) {
    const terminal = terminals.get(id)!;
    if (terminal.nature.kind === 'feed')
      shared.set(id, { ...terminal, nature: { ...terminal.nature, amps } });
  }
  return shared;
}
