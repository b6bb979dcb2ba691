/** A small network put together by hand, for tests of what is drawn and listed from one. */
import type { Cable, Device, Nature, Net, ReadWiring, Terminal, Wire } from '../wiring/types.ts';

export interface MadeDevice {
  readonly id: string;
  readonly kind: string;
  readonly name?: string;
  readonly where?: string;
  readonly part?: string;
  /** By mark; pairs of marks share a pole. */
  readonly terminals: Readonly<Record<string, Nature>>;
  readonly pairs?: readonly (readonly [string, string])[];
}

type MadeWire = readonly [from: string, to: string, more?: Partial<Wire>];

export function madeNetwork(
  devices: readonly MadeDevice[],
  wires: readonly MadeWire[],
  cables: readonly Cable[] = [],
): ReadWiring {
  const terminals = new Map<string, Terminal>();
  for (const { id, terminals: own, pairs = [] } of devices)
    for (const [mark, nature] of Object.entries(own)) {
      const pair = pairs.find((each) => each.includes(mark));
      const other = pair?.find((each) => each !== mark);
      terminals.set(`${id}.${mark}`, {
        id: `${id}.${mark}`,
        device: id,
        mark,
        name: '',
        nature,
        group: '',
        common: null,
        with: other === undefined ? null : `${id}.${other}`,
        holds: 2,
        signal: '',
        needed: false,
      });
    }
  const made = wires.map(
    ([from, to, more], at): Wire => ({
      id: `w${at + 1}`,
      from,
      to,
      cable: null,
      number: '',
      colour: '',
      ferrule: '',
      isInside: false,
      atMost: false,
      ...more,
    }),
  );
  return {
    devices: new Map(
      devices.map(({ id, kind, name = '', where = 'cabinet', part, terminals: own }): [string, Device] => [
        id,
        {
          id,
          kind,
          kindName: kind,
          name,
          part: part ?? null,
          partThere: part ? true : null,
          where,
          settings: {},
          terminals: Object.keys(own).map((mark) => `${id}.${mark}`),
          joins: [],
          exposed: false,
        },
      ]),
    ),
    terminals,
    wires: new Map(made.map((wire) => [wire.id, wire])),
    cables: new Map(cables.map((cable) => [cable.id, cable])),
    ...netsOf([...terminals.keys()], made),
    problems: [],
  };
}

function netsOf(ids: readonly string[], wires: readonly Wire[]): Pick<ReadWiring, 'nets' | 'netOf'> {
  const net = new Map(ids.map((id) => [id, id]));
  for (const { from, to } of wires) {
    const [a, b] = [net.get(from), net.get(to)];
    if (a === undefined || b === undefined) continue;
    for (const [id, own] of net) if (own === b) net.set(id, a);
  }
  const nets = [...new Set(net.values())].map((first): Net => {
    const terminals = ids.filter((id) => net.get(id) === first).sort();
    return {
      id: terminals[0]!,
      terminals,
      wires: wires.filter(({ from }) => net.get(from) === first).map(({ id }) => id),
    };
  });
  return { nets, netOf: new Map(nets.flatMap((each) => each.terminals.map((id) => [id, each] as const))) };
}

const coil: Nature = { kind: 'load', what: 'coil', supply: 'dc', leg: 'either', inductive: true };
const main: Nature = { kind: 'contact', closes: 'when-on', role: 'main', moved: 'coil' };
const joint: Nature = { kind: 'joint' };
const CABLE: Cable = {
  id: 'W2',
  name: 'switches on the slide',
  cores: 5,
  section: 0.5e-6,
  length: 4.5,
  shield: 'braid',
  twisted: false,
  capacitance: 1e-10,
  route: 'drag chain',
  moved: true,
  wires: ['w5', 'w6'],
};

/** A supply, a contactor between mains and a drive, a switch on the slide behind a strip, a control, earth. */
export const SMALL: ReadWiring = madeNetwork(
  [
    {
      id: 'G1',
      kind: 'dc-supply',
      terminals: {
        L: { kind: 'mains', side: 'takes', pole: 'L1' },
        N: { kind: 'mains', side: 'takes', pole: 'N' },
        PE: { kind: 'earth', role: 'device' },
        plus: { kind: 'supply', pole: 'plus', volts: 24 },
        minus: { kind: 'supply', pole: 'minus', volts: 24 },
      },
    },
    { id: 'X0', kind: 'earth-bar', terminals: { 1: { kind: 'earth', role: 'bar' } } },
    {
      id: 'K1',
      kind: 'contactor',
      name: 'Drives on',
      terminals: { A1: coil, A2: coil, 1: main, 2: main },
      pairs: [
        ['A1', 'A2'],
        ['1', '2'],
      ],
    },
    {
      id: 'Q1',
      kind: 'main-switch',
      terminals: {
        1: { kind: 'mains', side: 'gives', pole: 'L1' },
        3: { kind: 'mains', side: 'gives', pole: 'N' },
      },
    },
    {
      id: 'T1',
      kind: 'servo-drive',
      part: 'x-drive',
      terminals: {
        L: { kind: 'mains', side: 'takes', pole: 'L1' },
        N: { kind: 'mains', side: 'takes', pole: 'N' },
        U: { kind: 'motor-phase', side: 'gives', of: 'brushless' },
        V: { kind: 'motor-phase', side: 'gives', of: 'brushless' },
      },
    },
    {
      id: 'M1',
      kind: 'servo-motor',
      part: 'x-motor',
      where: 'slide',
      terminals: {
        U: { kind: 'motor-phase', side: 'takes', of: 'brushless' },
        V: { kind: 'motor-phase', side: 'takes', of: 'brushless' },
        PE: { kind: 'earth', role: 'device' },
      },
    },
    { id: 'X1', kind: 'strip', terminals: { 1: joint, 2: joint, 10: joint } },
    {
      id: 'S10',
      kind: 'limit',
      name: '=cmd(a,"b")',
      where: 'slide',
      terminals: {
        13: { kind: 'contact', closes: 'when-on', role: 'signal', moved: 'machine' },
        14: { kind: 'contact', closes: 'when-on', role: 'signal', moved: 'machine' },
      },
      pairs: [['13', '14']],
    },
    {
      id: 'A1',
      kind: 'control',
      terminals: {
        I1: { kind: 'input', form: 'sinking', leg: 'only' },
        Q1: { kind: 'output', stage: 'sourcing' },
        C: { kind: 'common', of: 'inputs' },
      },
    },
  ],
  [
    ['Q1.1', 'K1.1', { number: '1', colour: 'black', section: 2.5e-6 }],
    ['K1.2', 'T1.L', { number: '2', colour: 'black', section: 2.5e-6 }],
    ['T1.U', 'M1.U', { number: '3' }],
    ['G1.plus', 'X1.1', { number: '4', colour: 'blue', section: 0.75e-6, length: 0.8 }],
    ['X1.1', 'S10.13', { number: '+5', cable: 'W2', colour: 'white' }],
    ['S10.14', 'X1.2', { number: '6', cable: 'W2', colour: 'brown' }],
    ['X1.2', 'A1.I1', { number: '7', colour: 'blue', section: 0.75e-6, ferrule: '0.75 grey' }],
    ['A1.Q1', 'K1.A1', { number: '8' }],
    ['K1.A2', 'G1.minus', { number: '9' }],
    ['A1.C', 'G1.minus', { number: '10' }],
    ['A1.C', 'K1.A2', { number: '11' }],
    ['G1.PE', 'X0.1', { number: '12', colour: 'green-yellow' }],
    ['M1.PE', 'X0.1', { number: '13', colour: 'green-yellow' }],
  ],
  [CABLE],
);
