/**
 * What an ohmmeter meets in a wiring without power: paths whose resistance lies between two bounds.
 *
 * The resistance between two points never falls when any resistance of a network rises (Rayleigh), so the network
 * with all its paths at their lowest and the one with all at their highest bound every reading.
 */
import { closedAtRest, pairsOf } from '../power/conductors.ts';
import type { Nature, ReadWiring, Terminal } from '../wiring/types.ts';

/** A path between two nodes; `high` Infinity: perhaps none at all. */
export interface Way {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly low: number;
  readonly high: number;
  /** Device whose electronics it stands for. */
  readonly electronics?: string;
  /** Device whose resistance nobody has said. */
  readonly unsaid?: string;
}

/** Tolerance of printed resistances, of coils cold or warm, of hand meters: common practice, no source. */
export const RESISTOR = 0.05;
export const COIL = 0.15;

/** A coil and a winding that nobody has measured lie somewhere here: common practice, no source. */
const SOME_COIL: readonly [number, number] = [1, 50e3];
const SOME_WINDING: readonly [number, number] = [0.05, 500];
const SOME_MOTOR: readonly [number, number] = [0.02, 50];
/** A silicon junction under the half volt of an ohms range: tens of kilohms or nothing. */
const JUNCTION: readonly [number, number] = [10e3, Number.POSITIVE_INFINITY];
/** Electronics: anything from a short to nothing. */
const ANYTHING: readonly [number, number] = [0.1, Number.POSITIVE_INFINITY];
const METAL = 1e-3;
const CONTACT: readonly [number, number] = [METAL, 0.5];

const around = (ohms: number, share: number): readonly [number, number] => [
  ohms * (1 - share),
  ohms * (1 + share),
];

const ELECTRONICS: ReadonlySet<Nature['kind']> = new Set([
  'output',
  'input',
  'differential-output',
  'differential-input',
  'analogue-output',
  'analogue-input',
  'supply',
  'feed',
  'common',
  'unclear',
] as const);

/** Whether a terminal leads into electronics, which an ohmmeter reads as it pleases. */
export function isElectronics({ nature }: Terminal): boolean {
  if (nature.kind === 'motor-phase') return nature.side === 'gives';
  if (nature.kind === 'mains') return nature.side === 'takes';
  // Capacitors behind a bridge are no electronics.
  if (nature.kind === 'supply') return nature.regulated !== false;
  return ELECTRONICS.has(nature.kind);
}

/** Every path inside devices, contacts at rest. Wires and joints are not among them: they make the nodes. */
export function waysOf(wiring: ReadWiring): readonly Way[] {
  const ways: Way[] = [];
  const node = (id: string): string => wiring.netOf.get(id)?.id ?? id;
  const add = (
    name: string,
    a: string,
    b: string,
    [low, high]: readonly [number, number],
    more: Partial<Way> = {},
  ): void => {
    const [from, to] = [node(a), node(b)];
    if (from !== to) ways.push({ id: `${ways.length} ${name}`, a: from, b: to, low, high, ...more });
  };
  for (const [one, other] of pairsOf(wiring, () => true)) {
    const { nature } = one;
    const name = one.id;
    if (nature.kind === 'contact') {
      if (closedAtRest(nature)) add(name, one.id, other.id, CONTACT);
    } else if (nature.kind === 'protection') {
      // The main switch stays off and locked while wires are rung out.
      if (nature.form !== 'switch') add(name, one.id, other.id, [METAL, 1]);
    } else if (nature.kind === 'load') {
      const own = nature.ohms;
      if (nature.supply === 'dc' && own !== undefined) add(name, one.id, other.id, around(own, COIL));
      else add(name, one.id, other.id, SOME_COIL, { unsaid: one.device });
      if (nature.suppressor === 'diode' || nature.suppressor === 'clamp')
        add(name, one.id, other.id, JUNCTION);
    } else if (nature.kind === 'resistor') {
      if (nature.ohms !== undefined) add(name, one.id, other.id, around(nature.ohms, RESISTOR));
      else add(name, one.id, other.id, SOME_COIL, { unsaid: one.device });
    } else if (nature.kind === 'diode') add(name, one.id, other.id, JUNCTION);
    else if (nature.kind === 'winding') add(name, one.id, other.id, SOME_WINDING, { unsaid: one.device });
    else if (nature.kind === 'mains' && nature.side === 'passes') add(name, one.id, other.id, [METAL, 1]);
    else if (nature.kind === 'sensor' && other.nature.kind === 'sensor')
      add(name, one.id, other.id, ANYTHING, { electronics: one.device });
  }
  windings(wiring, add);
  electronics(wiring, add);
  rectifiers(wiring, add);
  frames(wiring, add);
  return ways;
}

export interface ContactWay {
  /** What a meter meets while it is closed. */
  readonly way: Way;
  readonly closedAtRest: boolean;
}

/** Contacts by the device that moves them; those between two points of one net are left out. */
export function contactWays(wiring: ReadWiring): ReadonlyMap<string, readonly ContactWay[]> {
  const found = new Map<string, ContactWay[]>();
  for (const [one, other] of pairsOf(wiring, () => true)) {
    const { id, device, nature } = one;
    const [a, b] = [id, other.id].map((each) => wiring.netOf.get(each)?.id ?? each) as [string, string];
    if (nature.kind !== 'contact' || a === b) continue;
    const [low, high] = CONTACT;
    const own = found.get(device) ?? [];
    found.set(device, own);
    own.push({ way: { id, a, b, low, high }, closedAtRest: closedAtRest(nature) });
  }
  return found;
}

type Add = (
  name: string,
  a: string,
  b: string,
  bounds: readonly [number, number],
  more?: Partial<Way>,
) => void;

/** Motor windings hang together at a point inside. */
function windings(wiring: ReadWiring, add: Add): void {
  for (const terminal of wiring.terminals.values()) {
    const { nature } = terminal;
    if (nature.kind !== 'motor-phase' || nature.side !== 'takes') continue;
    // The two coils of a stepper do not meet.
    const coil = nature.of === 'stepper' ? (terminal.mark[0] ?? '') : '';
    add(terminal.id, terminal.id, `inside ${terminal.device} ${coil}`, SOME_MOTOR, {
      unsaid: terminal.device,
    });
  }
}

/** All electronic terminals of one group of a device lead to one point. */
function electronics(wiring: ReadWiring, add: Add): void {
  for (const terminal of wiring.terminals.values()) {
    if (!isElectronics(terminal)) continue;
    const inside = `inside ${terminal.device} ${terminal.group}`;
    add(terminal.id, terminal.id, inside, ANYTHING, { electronics: terminal.device });
    if (terminal.common !== null && wiring.terminals.has(terminal.common))
      add(terminal.id, terminal.common, inside, ANYTHING, { electronics: terminal.device });
  }
}

/** Bridges: four junctions; a bleeder where its ohms are said. */
function rectifiers(wiring: ReadWiring, add: Add): void {
  for (const device of wiring.devices.values()) {
    const legs = device.terminals.map((id) => wiring.terminals.get(id)!);
    const ac = legs.filter(({ nature }) => nature.kind === 'rectifier' && nature.leg === 'ac');
    if (ac.length === 0) continue;
    const dc = legs.filter(
      ({ nature }) => nature.kind === 'supply' || (nature.kind === 'rectifier' && nature.leg !== 'ac'),
    );
    for (const a of ac) for (const d of dc) add(a.id, a.id, d.id, JUNCTION);
    const bleeder = device.settings.bleeder;
    const [plus, minus] = [dc[0], dc[1]];
    if (typeof bleeder === 'number' && plus && minus)
      add(device.id, plus.id, minus.id, around(bleeder, RESISTOR));
  }
}

/** The metal of a device: its earth terminals, and shields that are joined to it. */
function frames(wiring: ReadWiring, add: Add): void {
  for (const device of wiring.devices.values()) {
    const terminals = device.terminals.map((id) => wiring.terminals.get(id)!);
    const earth = terminals.find(({ nature }) => nature.kind === 'earth');
    if (!earth) continue;
    for (const each of terminals)
      if (
        each !== earth &&
        (each.nature.kind === 'earth' || (each.nature.kind === 'shield' && each.nature.earthed))
      )
        add(each.id, each.id, earth.id, [METAL, 0.5]);
  }
}
