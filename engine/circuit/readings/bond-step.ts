/** Protective conductors, each against the bar. */
import { conductorProtective } from '../../handbook/conductor-protective.ts';
import { evaluate } from '../../sheet/index.ts';
import { COPPER } from '../../tables/conductor-resistance.ts';
import type { Resistor } from '../network/index.ts';
import { MeshOrder } from '../network/mesh-order.ts';
import { StarMesh } from '../network/star-mesh.ts';
import { conductorElements } from '../power/conductors.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { SHORT } from './say.ts';
import type { RingRow, RingStep } from './types.ts';

/** Each earth terminal and each metal part against the bar, through its protective conductor. */
export function bondStep(wiring: ReadWiring, bar: string | undefined): readonly RingStep[] {
  if (bar === undefined) return [];
  const earths = [...wiring.terminals.values()].filter(
    ({ id, nature }) => nature.kind === 'earth' && nature.role !== 'bar' && id !== bar,
  );
  const metal = conductorElements(wiring, { closed: () => false }).filter(
    (each) => each.kind === 'resistor' && !each.id.startsWith('pair '),
  ) as Resistor[];
  const order = new MeshOrder(metal.map(({ a, b }) => [a, b] as const));
  const mesh = new StarMesh(
    order,
    metal.map(({ a, b, ohms }) => ({ a: order.node(a), b: order.node(b), siemens: 1 / ohms, amps: 0 })),
  );
  const to = order.node(bar);
  const rows = earths.map(({ id, device }): RingRow => {
    const at = order.node(id);
    const path = at < 0 || to < 0 ? Number.POSITIVE_INFINITY : mesh.ohms(at, to);
    const bonded = path !== Number.POSITIVE_INFINITY;
    const most = bonded ? passes(path) : Number.POSITIVE_INFINITY;
    return {
      id: `bond:${id}`,
      measured: 'ohms',
      at: [id],
      against: bar,
      expect: bonded
        ? { low: 0, high: most }
        : { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY },
      says: bonded
        ? `under ${most.toFixed(2)} Ω with a bonding tester, under ${SHORT} Ω with a hand meter`
        : `no path is drawn: ${wiring.devices.get(device)?.name || device} is not bonded`,
      otherwise: bonded
        ? 'More: paint under the screw or a loose screw. OL: the protective conductor is broken or off. Nothing is switched on until this is right.'
        : 'It must be bonded before power is put on, however it reads now.',
    };
  });
  return [
    {
      id: 'bonds',
      title: 'Protective conductors',
      says: 'Black lead on the earth bar, red lead on bare metal of each device, not on its paint. Power stays off.',
      cautions: [],
      powered: false,
      rows,
    },
  ];
}

/** Highest reading to accept for a copper path, by the sheet: as of so much of 1 mm². */
function passes(ohms: number): number {
  const { R_pass } = evaluate(conductorProtective, { l: (ohms * 1e-6) / COPPER.resistivity, A: 1e-6 });
  return R_pass.state === 'known' ? R_pass.value : SHORT;
}
