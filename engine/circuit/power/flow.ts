/** The currents of every wire, fuse and source when the machine runs and everything is on. */
import type { Trouble } from '../network/index.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { Lookup } from './context.ts';
import { Grid } from './grid/grid.ts';
import type { Load } from './loads.ts';
import type { Source } from './sources.ts';

export interface Current {
  /** Effective amperes; a lower bound where `needs` is not empty. */
  readonly amps: number;
  /** Loads beyond it whose current nobody has said: the settings to fill in. */
  readonly needs: readonly string[];
}

export interface Taking extends Current {
  /** Of its sources along its way there and back, as they are without load. */
  readonly volts: number;
  readonly fed: boolean;
}

export interface Flow {
  /** Mains first. */
  readonly sources: readonly Source[];
  readonly source: Lookup<Source>;
  readonly load: Lookup<Load>;
  readonly sourcesOf: (device: string) => readonly Source[];
  readonly loadsOf: (device: string) => readonly Load[];
  readonly wires: Lookup<Current>;
  /** Through a fuse, breaker or contact, by either of its terminals. */
  readonly pairs: Lookup<Current>;
  /** What each source gives, by its id; of the mains the heaviest line. */
  readonly gives: Lookup<Current>;
  /** What each load takes, by its id. */
  readonly takes: Lookup<Taking>;
  /** Why nothing could be worked out. */
  readonly trouble: Trouble | undefined;
}

const KEPT = new WeakMap<ReadWiring, Pick<Flow, 'trouble'>>();

/** Whether currents can be worked out at all; asked once for each reading of a wiring. */
export function flowOf(wiring: ReadWiring): Pick<Flow, 'trouble'> {
  const known = KEPT.get(wiring);
  if (known) return known;
  const grid = new Grid(() => {});
  const { devices, terminals, wires } = wiring;
  grid.update(devices.keys(), wires.keys(), {
    device: (id) => devices.get(id),
    terminal: (id) => terminals.get(id),
    wire: (id) => wires.get(id),
  });
  const flow = { trouble: grid.trouble };
  KEPT.set(wiring, flow);
  return flow;
}
