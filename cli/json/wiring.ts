/** A looked-through wiring as JSON; docs/command-line.md says what is in it. */

import type { List } from '../../engine/circuit/lists/index.ts';
import type { Looked } from '../../engine/circuit/whole/index.ts';

export const wiringJson = ({ read, findings, problems, sizes }: Looked) => ({
  format: 'fettle-wiring',
  version: 1,
  devices: read.devices.size,
  terminals: read.terminals.size,
  wires: read.wires.size,
  nets: read.nets.length,
  problems,
  findings,
  sizes,
});

export const listJson = (list: List) => ({ format: 'fettle-list', version: 1, ...list });
