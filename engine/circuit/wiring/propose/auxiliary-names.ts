/** What the devices and cables of an auxiliary are called. */
import type { AskedAuxiliary, AskedInput, AskedOutput } from './asked.ts';
import type { Build } from './build.ts';

export const inputName = (of: AskedAuxiliary, { name, shared }: AskedInput): string =>
  shared ? name[0]!.toUpperCase() + name.slice(1) : `${of.name}: ${name}`;
export const outputName = (of: AskedAuxiliary, { name }: AskedOutput): string => `${of.name}: ${name}`;

/** One cable for the switches of each auxiliary, and one for its valves. */
export const signalCable = (build: Build, { id, name }: AskedAuxiliary): string =>
  build.cable(`WA-${id}`.slice(0, 50), `Switches of ${name}`.slice(0, 100), {
    section: '0.5 mm²',
    shield: 'none',
    route: 'signals',
  });
export const valveCable = (build: Build, { id, name }: AskedAuxiliary): string =>
  build.cable(`WV-${id}`.slice(0, 50), `Valves of ${name}`.slice(0, 100), {
    section: '0.75 mm²',
    shield: 'none',
    route: 'coils',
  });
