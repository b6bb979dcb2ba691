/** The whole sheet: wires end to end, paths to 0 V and to earth, contacts moved by hand, then volts step by step. */
import { conductorProtective } from '../../handbook/conductor-protective.ts';
import { evaluate } from '../../sheet/index.ts';
import { COPPER } from '../../tables/conductor-resistance.ts';
import type { Resistor } from '../network/index.ts';
import { MeshOrder } from '../network/mesh-order.ts';
import { StarMesh } from '../network/star-mesh.ts';
import { conductorElements, wireOhms } from '../power/conductors.ts';
import { flowOf } from '../power/flow.ts';
import { guardsOf } from '../power/guards.ts';
import { sourcesOf } from '../power/sources.ts';
import type { ReadWiring } from '../wiring/types.ts';
import { type Commons, commonsOf } from './commons.ts';
import { contactSteps } from './contact-steps.ts';
import { diodeStep } from './diode-step.ts';
import { companyOf, OhmPaths } from './ohms.ts';
import { judgeOhms, ohms, SHORT } from './say.ts';
import { touched } from './touched.ts';
import type { RingRow, RingSheet, RingStep } from './types.ts';
import { voltSteps } from './volt-steps.ts';

const DEAD: readonly string[] = [
  'Plug out or main switch off and locked. Then measure that nothing is live, with a meter you have just tried on something live.',
  'Capacitors of the drives stay charged: wait, measure their plus against their minus, and go on only below 60 V, better below 5 V.',
];
const LIVE: readonly string[] = [
  'From here on the machine is live. If you are not sure, have somebody who is do this with you; mains parts are for a licensed electrician.',
  'One hand only, the other behind your back; never alone; nothing conducting on wrists and neck.',
  'A meter and leads for category III, 600 V or more; on volts, and looked at once more before each touch.',
  'Chuck empty, axes free to stop anywhere, motors’ plugs off if you can, emergency stop within reach and tried.',
];

/** How far the work is after each part, about, of a wiring of some thousand wires. */
const SHARES = { sources: 0.1, flow: 0.35, ohms: 0.55, diodes: 0.6 };

/** Readings to expect at every terminal of a wired network. Deterministic; an empty wiring gives empty steps. */
export function ringItOut(wiring: ReadWiring): RingSheet {
  const pieces = seekRingOut(wiring);
  for (;;) {
    const next = pieces.next();
    if (next.done) return next.value;
  }
}

/** The same in pieces of some milliseconds, so that it can be shown how far it is, or ended; yields the share done. */
export function* seekRingOut(wiring: ReadWiring): Generator<number, RingSheet, void> {
  yield 0;
  const sources = sourcesOf(wiring);
  const guards = guardsOf(wiring, sources);
  const returns = guardsOf(wiring, sources, ({ back }) => back);
  const commons = commonsOf(wiring, sources, guards, returns);
  const notes: string[] = [];
  yield SHARES.sources;
  const { trouble } = flowOf(wiring);
  if (trouble) notes.push(`${trouble.sentence} No power before that is mended, and no volts are worked out.`);
  yield SHARES.flow;
  const paths = OhmPaths.of(wiring);
  const dead = [
    { ...wireStep(wiring), cautions: DEAD },
    ...pathSteps(wiring, commons, paths),
    ...contactSteps(wiring, paths),
  ];
  yield SHARES.ohms;
  const diodes = diodeStep(wiring);
  yield SHARES.diodes;
  const powered: RingStep[] = [];
  if (!trouble) {
    const working = voltSteps(wiring, commons, notes);
    for (;;) {
      const next = working.next();
      if (next.done) {
        powered.push(...next.value);
        break;
      }
      yield SHARES.diodes + (1 - SHARES.diodes) * next.value;
    }
  }
  const first = powered.findIndex((each) => each.powered);
  const steps: readonly RingStep[] = [
    ...dead,
    ...diodes,
    ...powered.map((step, k) => (k === first ? { ...step, cautions: [...LIVE, ...step.cautions] } : step)),
  ].filter(({ rows }) => rows.length > 0);
  return {
    cautions: [
      'Measured beats worked out: where a reading disagrees, stop and find out why before the next step.',
      ...DEAD,
    ],
    ...(commons.main === undefined ? {} : { common: commons.main }),
    ...(commons.earth === undefined ? {} : { earth: commons.earth }),
    steps,
    notes,
  };
}

/** Every wire by itself, both ends still on: others in parallel can only make it less. */
function wireStep(wiring: ReadWiring): Omit<RingStep, 'cautions'> {
  const rows = [...wiring.wires.values()]
    .filter(({ from, to }) => wiring.terminals.has(from) && wiring.terminals.has(to) && from !== to)
    .map((wire): RingRow => {
      const own = wireOhms(wire);
      const most = Math.max(SHORT, own === undefined ? SHORT : 1.5 * own + 0.5);
      return {
        id: `wire:${wire.id}`,
        measured: 'ohms',
        at: [wire.from],
        against: wire.to,
        wire: wire.id,
        expect: { low: 0, high: most },
        says: most <= SHORT ? `under ${SHORT} Ω: it beeps` : `under ${ohms(most)}: it is long and thin`,
        otherwise:
          'OL: broken, a ferrule pressed on insulation, or the other end is landed elsewhere. Some ohms: a loose screw or a strand alone.',
      };
    });
  return {
    id: 'wires',
    title: 'Each wire, end to end',
    says: 'Meter on ohms, leads held together first: what they show is taken off. Then both ends of each wire, tugging at them.',
    powered: false,
    rows,
  };
}

/** Every net against its 0 V and against earth. */
function pathSteps(wiring: ReadWiring, commons: Commons, paths: OhmPaths): readonly RingStep[] {
  const company = companyOf(wiring, paths.ways);
  const nets = wiring.nets.filter(({ wires }) => wires.length > 0);
  const node = (id: string): string => wiring.netOf.get(id)?.id ?? id;
  const fills = fillsBetween(wiring);
  const rowsAgainst = (
    step: string,
    of: (net: string) => string | undefined,
    otherwise: (short: boolean) => string,
  ): RingRow[] =>
    nets.flatMap((net): RingRow[] => {
      const black = of(net.id);
      if (black === undefined || node(black) === net.id) return [];
      const band = paths.band(net.id, node(black));
      const judged = judgeOhms(band, company.get(net.id) ?? { electronics: [], unsaid: [] });
      const short = judged.expect !== undefined && judged.expect.high <= SHORT;
      return [
        {
          id: `${step}:${net.id}`,
          measured: 'ohms',
          at: touched(wiring, net),
          against: black,
          ...judged,
          ...(fills(net.terminals, black)
            ? { says: `${judged.says}; it climbs to that while the capacitors fill` }
            : {}),
          otherwise: otherwise(short),
        },
      ];
    });
  const steps: RingStep[] = [...bondStep(wiring, commons.earth)];
  if (commons.earth !== undefined)
    steps.push({
      id: 'earth',
      title: 'Against protective earth',
      says: 'Black lead on the earth bar, red lead on each terminal; fuses in, buttons as they lie.',
      cautions: [],
      powered: false,
      rows: rowsAgainst(
        'earth',
        () => commons.earth,
        (short) =>
          short
            ? 'More than an ohm: paint under the screw, or a broken protective conductor. Nothing is switched on until this beeps.'
            : 'Near nothing where a path is not expected: a live wire touches metal. Find it before power is ever put on.',
      ),
    });
  if (commons.of.size > 0)
    steps.push({
      id: 'common',
      title: 'Against its own 0 V',
      says: 'Black lead on the 0 V named, red lead on each terminal; fuses in, buttons as they lie.',
      cautions: [],
      powered: false,
      rows: rowsAgainst(
        'common',
        (net) => commons.of.get(net),
        (short) =>
          short
            ? 'OL: a wire of the 0 V is off.'
            : 'Much less: a short, or a wire on the wrong terminal. OL where a path is expected: a coil burnt out, a fuse blown, a wire off.',
      ),
    });
  return steps;
}

/** Whether the meter fills capacitors between the nets of these terminals and another: both sides of a bus. */
function fillsBetween(wiring: ReadWiring): (ids: readonly string[], black: string) => boolean {
  const busOf = (id: string): string | undefined => {
    const terminal = wiring.terminals.get(id);
    const isBus = terminal?.nature.kind === 'supply' && terminal.nature.regulated === false;
    return isBus ? terminal.device : undefined;
  };
  const known = new Map<string, ReadonlySet<string>>();
  const buses = (black: string): ReadonlySet<string> => {
    const found =
      known.get(black) ??
      new Set(
        (wiring.netOf.get(black)?.terminals ?? [black]).map(busOf).filter((each) => each !== undefined),
      );
    known.set(black, found);
    return found;
  };
  return (ids, black) => {
    const devices = buses(black);
    return devices.size > 0 && ids.some((id) => devices.has(busOf(id) ?? ''));
  };
}

/** Each earth terminal and each metal part against the bar, through its protective conductor. */
function bondStep(wiring: ReadWiring, bar: string | undefined): readonly RingStep[] {
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
        ? 'More: paint under the screw, a loose screw, a broken protective conductor. Nothing is switched on until this is right.'
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
