/** The currents of a proposed wiring, without asking the rules of the supply: they are asked once it is recorded. */
import type { Refit } from '../../../refit/types.ts';
import { Cells } from '../../power/cells.ts';
import type { PowerContext } from '../../power/context.ts';
import { powerFacts } from '../../power/given.ts';
import { Grid } from '../../power/grid/grid.ts';
import { readPowerSettings } from '../../power/settings.ts';
import { type Standing, viewOf } from '../../power/view.ts';
import type { ReadWiring } from '../types.ts';

export function currentsOf(refit: Refit, read: ReadWiring): PowerContext {
  const cells = new Cells();
  const grid = new Grid((name) => cells.touch(name));
  const { devices, terminals, wires, cables } = read;
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
    facts: powerFacts(refit, {}),
    roles: new Map(),
    capacitanceSaid: () => false,
  };
  return viewOf(cells, grid, () => standing);
}
