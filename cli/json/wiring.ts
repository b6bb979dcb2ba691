/** A looked-through wiring as JSON; docs/command-line.md says what is in it. */

import type { List } from '../../engine/circuit/lists/index.ts';
import { type Looked, sayPlace, type UsualHere } from '../../engine/circuit/whole/index.ts';
import { inSi, wiringFindingJson } from './figures.ts';

export const wiringJson = (
  { read, findings, problems, sizes, resting }: Looked,
  usual: readonly UsualHere[],
) => ({
  format: 'fettle-wiring',
  version: 1,
  devices: read.devices.size,
  terminals: read.terminals.size,
  wires: read.wires.size,
  nets: read.nets.length,
  problems,
  findings: findings.map((each) => {
    const restsOn = resting?.get(each.id);
    return { ...wiringFindingJson(each), ...(restsOn ? { restsOn } : {}) };
  }),
  sizes: sizes.map(inSi),
  usual: usual.map(({ name, value, because, places }) => ({
    name,
    value,
    because,
    places: places.map(sayPlace),
  })),
});

export const listJson = (list: List) => ({ format: 'fettle-list', version: 1, ...list });
