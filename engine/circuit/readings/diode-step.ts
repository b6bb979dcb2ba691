/** Diodes on the diode range, both ways round. */
import { DIODE_METER, diodeOf, type Element, nodesOf, ohmsTo } from '../network/index.ts';
import { MeshOrder } from '../network/mesh-order.ts';
import { SteadyMesh } from '../network/steady-mesh.ts';
import { pairsOf } from '../power/conductors.ts';
import type { ReadWiring, Terminal } from '../wiring/types.ts';
import type { RingRow, RingStep } from './types.ts';
import { waysOf } from './ways.ts';

interface Junction {
  readonly id: string;
  readonly anode: Terminal;
  readonly cathode: Terminal;
}

/** Silicon under a milliampere: 0.6 V at 1 mA, and a tenth either way for kinds and warmth: common practice. */
const SILICON = { volts: 0.6, amps: 1e-3, emission: 1.5 };
const SPREAD = 0.15;

function junctionsOf(wiring: ReadWiring): readonly Junction[] {
  const made: Junction[] = pairsOf(wiring, ({ nature }) => nature.kind === 'diode').map(([one, other]) => {
    const straight = one.nature.kind === 'diode' && one.nature.leg === 'anode';
    return { id: one.id, anode: straight ? one : other, cathode: straight ? other : one };
  });
  for (const device of wiring.devices.values()) {
    const legs = device.terminals.map((id) => wiring.terminals.get(id)!);
    const ac = legs.filter(({ nature }) => nature.kind === 'rectifier' && nature.leg === 'ac');
    const plus = legs.find(
      ({ nature }) =>
        (nature.kind === 'supply' && nature.pole === 'plus') ||
        (nature.kind === 'rectifier' && nature.leg === 'plus'),
    );
    const minus = legs.find(
      ({ nature }) =>
        (nature.kind === 'supply' && nature.pole === 'minus') ||
        (nature.kind === 'rectifier' && nature.leg === 'minus'),
    );
    for (const leg of ac) {
      if (plus) made.push({ id: `${leg.id} ${plus.id}`, anode: leg, cathode: plus });
      if (minus) made.push({ id: `${minus.id} ${leg.id}`, anode: minus, cathode: leg });
    }
  }
  return made;
}

export function diodeStep(wiring: ReadWiring): readonly RingStep[] {
  const junctions = junctionsOf(wiring);
  if (junctions.length === 0) return [];
  const node = (id: string): string => wiring.netOf.get(id)?.id ?? id;
  // What hangs beside them for certain; electronics and what is unsaid are left out, and may spoil the reading.
  const beside = waysOf(wiring)
    .filter((way) => way.electronics === undefined && way.unsaid === undefined && Number.isFinite(way.high))
    .map(
      (way): Element => ({
        kind: 'resistor',
        id: way.id,
        a: way.a,
        b: way.b,
        ohms: (way.low + way.high) / 2,
      }),
    );
  const diodes = junctions
    .filter(({ anode, cathode }) => node(anode.id) !== node(cathode.id))
    .map(({ id, anode, cathode }) => diodeOf(`diode ${id}`, node(anode.id), node(cathode.id), SILICON));
  const shownAt = diodeMeter([...beside, ...diodes]);
  const rows = junctions.flatMap(({ id, anode, cathode }): readonly RingRow[] =>
    [
      [anode, cathode, 'forward'],
      [cathode, anode, 'back'],
    ].flatMap((each): readonly RingRow[] => {
      const [red, black, way] = each as [Terminal, Terminal, 'forward' | 'back'];
      const [a, b] = [node(red.id), node(black.id)];
      if (a === b) return [];
      const shown = shownAt(a, b);
      if (shown === undefined) return [];
      const blocks = shown > 2.5;
      const [low, high] = [shown * (1 - SPREAD) - 0.02, shown * (1 + SPREAD) + 0.02];
      return [
        {
          id: `diode:${id}:${way}`,
          measured: 'volts',
          at: [red.id],
          against: black.id,
          when: 'on the diode range',
          ...(blocks
            ? {
                says: 'OL: it blocks',
                expect: { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY },
              }
            : { says: `${low.toFixed(2)} to ${high.toFixed(2)} V`, expect: { low, high } }),
          otherwise:
            way === 'forward'
              ? 'OL: broken, or the wrong way round. Near nothing: burnt through.'
              : 'A low reading: burnt through, or the wrong way round: then switching on makes a short.',
        },
      ];
    }),
  );
  return [
    {
      id: 'diodes',
      title: 'Diodes and rectifiers',
      says: 'Meter on the diode range: red lead on the terminal named first. Over a capacitor the reading climbs for some seconds; wait. What hangs beside a diode may lower its reading: lift one end if in doubt.',
      cautions: [],
      powered: false,
      rows,
    },
  ];
}

/** Volts that a meter on its diode range shows between two nodes that a junction joins; undefined: not found. */
function diodeMeter(elements: readonly Element[]): (plus: string, minus: string) => number | undefined {
  const order = new MeshOrder(elements.map((e) => nodesOf(e) as [string, string]));
  // Without the meter everything stands at 0 V; each measurement is a state near that.
  const dead = SteadyMesh.at(order, elements, [], { volts: () => 0 });
  const { openVolts, shortAmps } = DIODE_METER;
  return (plus, minus) => {
    const meter: Element = {
      kind: 'voltage',
      id: ' meter',
      plus,
      minus,
      volts: openVolts,
      ohms: openVolts / shortAmps,
    };
    const near = dead?.near([meter], [])?.level(order.node(plus), order.node(minus));
    if (near !== undefined) return near;
    const answer = ohmsTo({ elements, references: [] }, minus, [plus], DIODE_METER);
    return answer.ok ? openVolts / (1 + openVolts / shortAmps / answer.ohms.get(plus)!) : undefined;
  };
}
