/** The supply judged from the start: every rule over a wiring as it is read. */
import type { Refit } from '../../refit/types.ts';
import type { ReadWiring, WiringFinding } from '../wiring/types.ts';
import type { Size } from './buying.ts';
import { SupplyChecker } from './checker.ts';
import type { PowerContext } from './context.ts';
import type { Drawn } from './given.ts';

export interface PowerAnswer {
  readonly context: PowerContext;
  readonly findings: readonly WiringFinding[];
  readonly sizes: readonly Size[];
}

/** Nothing to judge while nothing is drawn; what to buy for the drives' bus needs no drawing. */
export function judgeSupply(refit: Refit, wiring: ReadWiring, drawn: Drawn = {}): PowerAnswer {
  const checker = new SupplyChecker(refit, drawn);
  const { devices, wires, cables } = wiring;
  checker.update(refit, wiring, { devices: devices.keys(), wires: wires.keys(), cables: cables.keys() });
  return { context: checker.context, findings: checker.findings(), sizes: checker.sizes() };
}
