/** What catches a fault: each kind of element and fault gets what mends it, and where that can be drawn, it is drawn and mends it. */
import { describe, expect, test } from 'vitest';
import type { StopCircuit, StopWire } from '../../refit/types.ts';
import { analyseStop, type FaultReport } from './analyse.ts';
import { circuitA, circuitBC } from './circuits.fixture.ts';
import { compileStop } from './compile.ts';
import { draw } from './draw.ts';
import { placeOfFault } from './fault-place.ts';
import { PATTERNS } from './patterns/index.ts';

const MOTIONS = [
  { id: 'X', kind: 'axis' as const, name: 'X axis', settings: { vertical: 'yes' } },
  { id: 'spindle', kind: 'spindle' as const, name: 'spindle' },
];
const pattern = (id: string): StopCircuit => PATTERNS.find((each) => each.id === id)!.make(MOTIONS);

function look(circuit: StopCircuit): readonly FaultReport[] {
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value.faults;
}

/** The wire that joins two terminals, 'K3.52–T1.EN to plus' for the fault of it. */
function faultId(circuit: StopCircuit, named: string): string {
  const [, from, to, rest] = /^(\S+)–(\S+) (.*)$/.exec(named) ?? [];
  if (from === undefined) return named;
  const wire = Object.values(circuit.wires).find((each) => each.from === from && each.to === to);
  if (!wire) throw new Error(`No wire ${from}–${to}`);
  return `${wire.id} ${rest}`;
}

function report(circuit: StopCircuit, named: string): FaultReport {
  const id = faultId(circuit, named);
  const found = look(circuit).find(({ fault }) => fault.id === id);
  if (!found) throw new Error(`No fault ${id}`);
  return found;
}

const withSettings = (
  circuit: StopCircuit,
  element: string,
  settings: Record<string, string>,
): StopCircuit => ({
  ...circuit,
  elements: {
    ...circuit.elements,
    [element]: {
      ...circuit.elements[element]!,
      settings: { ...circuit.elements[element]!.settings, ...settings },
    },
  },
});

const inCables = (circuit: StopCircuit, cable: (wire: StopWire) => string): StopCircuit => ({
  ...circuit,
  wires: Object.fromEntries(
    Object.values(circuit.wires).map((wire) => [wire.id, { ...wire, cable: cable(wire) }]),
  ),
});

/** A force-guided relay beside the enable, with its opening contact in the start path. */
function watched(circuit: StopCircuit): StopCircuit {
  const wires = Object.values(circuit.wires).flatMap((wire) =>
    wire.from === 'K2.52' && wire.to === 'K3.A1'
      ? [
          { ...wire, to: 'K9.51' },
          { ...wire, id: 'w901', from: 'K9.52' },
        ]
      : [wire],
  );
  wires.push({ id: 'w902', from: 'A1.enable', to: 'K9.A1', cable: '' });
  wires.push({ id: 'w903', from: 'K9.A2', to: 'G1.minus', cable: '' });
  return {
    ...circuit,
    elements: {
      ...circuit.elements,
      K9: { id: 'K9', kind: 'relay', name: 'Enable is on', settings: { no: '0', nc: '1' } },
    },
    wires: Object.fromEntries(wires.map((wire) => [wire.id, wire])),
  };
}

/** The control's own supply and its enable; it waits for a program start. */
const CONTROL = ['F1.2 A1.plus', 'A1.minus G1.minus', 'A1.enable D1.EN'];

/** A brake whose coil hangs on 0 V for good: it is switched on one side only. */
const oneSided = (circuit: StopCircuit): StopCircuit => ({
  ...circuit,
  wires: Object.fromEntries(
    Object.values(circuit.wires).map((wire) => [
      wire.id,
      wire.from === 'Y1.A2' ? { ...wire, to: 'G1.minus' } : wire,
    ]),
  ),
});

const torqueOff = (channels: 1 | 2): StopCircuit =>
  draw({
    pattern: null,
    elements: [
      ['G1 supply', ''],
      ['F1 fuse', ''],
      ['S1 mushroom', '', { nc: '2' }],
      ['D1 drive', '', { sto: `${channels}` }],
      ['A1 control', ''],
    ],
    runs: [
      'G1.plus F1.1',
      'F1.2 S1.11',
      'F1.2 S1.21',
      'S1.12 D1.STO1',
      'S1.12 A1.stop',
      ...CONTROL,
      ...(channels === 2 ? ['S1.22 D1.STO2'] : []),
      'D1.COM G1.minus',
      'G1.plus D1.L',
      'D1.N G1.minus',
    ],
    motions: [{ id: 'X', kind: 'axis', name: 'X axis', drive: 'D1', brake: null, settings: {} }],
  });

const SUPERVISED = /falling edge.*monitored manual reset/;
const WATCHED = /enable be watched.*force-guided relay beside it/;
const MIRROR = /mirror contact/;
const BEHIND = /power away behind the enable.*enable is no stop/;
const SECOND = /second contact in a channel of its own.*compares/;
const COMPARES = /safety relay, or mirror contacts of two contactors/;
const A = circuitA();
const B = circuitBC(false);
const C = circuitBC(true);
const [ASKS, ONE, TWO, RELAY] = ['asks-the-control', 'one-contactor', 'two-contactors', 'safety-relay'].map(
  pattern,
) as [StopCircuit, StopCircuit, StopCircuit, StopCircuit];
const BRAKE = pattern('vertical-axis');
const AUTOMATIC = withSettings(RELAY, 'U1', { reset: 'as soon as the start loop is closed' });
const ONE_CABLE = inCables(TWO, ({ cable }) => (cable === '' ? '' : 'W1'));
const RELAY_ONE_CABLE = inCables(RELAY, ({ cable }) => (cable === '' ? '' : 'W1'));

type Mends = readonly [
  before: StopCircuit,
  fault: string,
  was: string,
  says: RegExp,
  after: StopCircuit,
  /** The same fault there. */
  same: string,
  is: readonly string[],
];
const CAUGHT = ['noticed', 'stops'];
const HARMLESS = ['unnoticed', ...CAUGHT];

const ROWS: readonly Mends[] = [
  [A, 'K1 welded', 'dangerous', /second contactor in a row.*mirror/, C, 'K1 welded', CAUGHT],
  [
    A,
    'K1 stays pulled in',
    'dangerous',
    /second contactor in a row.*mirror/,
    C,
    'K1 stays pulled in',
    CAUGHT,
  ],
  [B, 'K1 welded', 'unnoticed', MIRROR, C, 'K1 welded', CAUGHT],
  [A, 'S1 11-12 stays closed', 'dangerous', SECOND, C, 'S1 11-12 stays closed', CAUGHT],
  [A, 'S1 11-12 bridged', 'dangerous', SECOND, C, 'S1 11-12 bridged', CAUGHT],
  [A, 'S1.12–S2.13 to plus', 'dangerous', SECOND, C, 'S1.12–K3.13 to plus', CAUGHT],
  [B, 'S1 11-12 bridged', 'unnoticed', COMPARES, C, 'S1 11-12 bridged', CAUGHT],
  [C, 'S2 13-14 bridged', 'dangerous', SUPERVISED, RELAY, 'S2 13-14 bridged', CAUGHT],
  [C, 'S2 13-14 stays closed', 'dangerous', SUPERVISED, RELAY, 'S2 13-14 stays closed', CAUGHT],
  [C, 'S2 stuck pressed', 'dangerous', SUPERVISED, RELAY, 'S2 stuck pressed', CAUGHT],
  [C, 'S2.14–K1.51 to plus', 'dangerous', SUPERVISED, RELAY, 'S2.14–U1.Rb to plus', CAUGHT],
  [ONE, 'K1 13-14 bridged', 'unnoticed', SUPERVISED, RELAY, 'K1 13-14 welded', CAUGHT],
  [TWO, 'A1 plus-enable bridged', 'unnoticed', WATCHED, watched(TWO), 'A1 plus-enable bridged', CAUGHT],
  [TWO, 'A1 plus-enable welded', 'unnoticed', WATCHED, watched(TWO), 'A1 plus-enable welded', CAUGHT],
  [TWO, 'A1 enable stuck on', 'unnoticed', WATCHED, watched(TWO), 'A1 enable stuck on', CAUGHT],
  [TWO, 'K3.52–T1.EN to plus', 'unnoticed', WATCHED, watched(TWO), 'K3.52–T1.EN to plus', CAUGHT],
  [ASKS, 'A1 plus-enable bridged', 'dangerous', BEHIND, ONE, 'A1 plus-enable bridged', HARMLESS],
  [ASKS, 'A1.enable–T1.EN to plus', 'dangerous', BEHIND, ONE, 'A1.enable–T1.EN to plus', HARMLESS],
  [ASKS, 'T1 enable stuck on', 'dangerous', BEHIND, ONE, 'T1 enable stuck on', HARMLESS],
  [
    ASKS,
    'A1 stop input stuck on',
    'dangerous',
    /by contactors or safe torque off/,
    ONE,
    'A1 stop input stuck on',
    HARMLESS,
  ],
  [
    torqueOff(1),
    'D1 STO1 stuck on',
    'dangerous',
    /second channel of safe torque off/,
    torqueOff(2),
    'D1 STO1 stuck on',
    HARMLESS,
  ],
  [B, 'K3 13-14 welded', 'unnoticed', /Force-guided contacts in K3/, C, 'K3 13-14 welded', CAUGHT],
  [
    oneSided(BRAKE),
    'T1.34–Y1.A1 to plus',
    'dangerous',
    /both sides of its coil/,
    BRAKE,
    'T1.34–Y1.A1 to plus',
    HARMLESS,
  ],
  [
    circuitA('no'),
    'S1.12–S2.13 to frame',
    'unnoticed',
    /Earth 0 V at one point/,
    A,
    'S1.12–S2.13 to frame',
    CAUGHT,
  ],
  [
    circuitBC(true, 'yes', true),
    'S1.12–K3.13 to frame',
    'noticed',
    /circuit as drawn/,
    C,
    'S1.12–K3.13 to frame',
    CAUGHT,
  ],
  [
    ONE_CABLE,
    'cable W1 crushed',
    'dangerous',
    /cable of its own for each channel/,
    RELAY_ONE_CABLE,
    'cable W1 crushed',
    CAUGHT,
  ],
];

describe('derived: what is said to mend a fault mends it', () => {
  test.each(ROWS.map((row) => [row[1], row[2], ...row] as const))(
    '%s, %s',
    (_fault, _was, before, fault, was, says, after, same, is) => {
      const { judged, catches } = report(before, fault);
      expect(judged.verdict, fault).toBe(was);
      expect(catches).toMatch(says);
      expect(is, same).toContain(report(after, same).judged.verdict);
    },
  );

  test('with a cable of its own for each channel the fault of crushing both is gone', () => {
    expect(look(TWO).some(({ fault }) => fault.id === 'cable W1 crushed')).toBe(false);
    expect(look(RELAY_ONE_CABLE).some(({ judged }) => judged.verdict === 'dangerous')).toBe(true);
  });

  test('it is the edge that mends a start button that is bridged, not the safety relay', () => {
    const power = ({ judged }: FaultReport) => judged.happenings.some(({ kind }) => kind === 'power-returns');
    const automatic = report(AUTOMATIC, 'S2 13-14 bridged');
    expect(power(automatic)).toBe(true);
    expect(automatic.catches).toMatch(SUPERVISED);
    expect(power(report(RELAY, 'S2 13-14 bridged'))).toBe(false);
  });
});

/**
 * Kind of element, what is wrong with it, and what has to be said of it wherever it is dangerous or nobody is told. Wires stand
 * under what they feed. A fault that is in no row fails the test: somebody has to say what mends it.
 */
const SAID: readonly (readonly [fault: RegExp, says: RegExp])[] = [
  [/^button start: (stays closed|stuck pressed|bridged)$/, SUPERVISED],
  [/^wire start: to plus$/, SUPERVISED],
  [/^(contactor|relay) start: (welded|bridged)$/, SUPERVISED],
  [/^(mushroom|limit|door|key|button) channel: (stays closed|bridged|stuck pressed|stays on)$/, COMPARES],
  [/^wire channel: to plus$/, COMPARES],
  [/^control (enable|output): (welded|bridged|stuck on)$/, WATCHED],
  [/^wire enable: to plus$/, WATCHED],
  [/^(drive|inverter) input: stuck on$/, /drive’s own report/],
  [/^control ear: stuck on$/, /only asks|lets the control compare/],
  [/^(wire told: to plus|contactor told: (welded|bridged))$/, /only asks|lets the control compare/],
  [/^contactor power: (welded|stays pulled in)$/, MIRROR],
  [/^(contactor power: bridged|wire power: to plus)$/, /No mirror contact sees.*table D\.4/],
  [/^wire power: to frame$/, /residual-current device.*insulation/],
  [/^wire \w+: to frame$/, /Earth 0 V|plus side of the coil/],
  [/^relay relay: (welded|stays pulled in|bridged)$/, /[Ff]orce-guided contact/],
  [/^(contactor|relay) proof: (welded|bridged)$/, /once a year, power off and locked/],
  [/^locked-door lock: stays pulled in$/, /both sides of the lock’s coil/],
  [/^cable: crushed$/, /cable of its own for each channel/],
  [/^mushroom latch: does not latch$/, /replaced/],
  [/^(relay|delayed-relay|safety-relay) delay: no delay$/, /Time the stop/],
  [/^\w+ none: /, /by hand/],
  [/^brake brake: does not close$/, /blocked from below/],
];

const CIRCUITS: readonly (readonly [string, StopCircuit])[] = [
  ...PATTERNS.map(({ id }) => [id, pattern(id)] as const),
  ['one channel', A],
  ['two channels', B],
  ['mirrored', C],
  ['contacts behind the coils', circuitBC(true, 'yes', true)],
  ['not earthed', circuitA('no')],
  ['one cable', ONE_CABLE],
  ['relays not force-guided', withSettings(TWO, 'K3', { linked: 'no' })],
  ['brake switched on one side', oneSided(BRAKE)],
];

test.each(CIRCUITS)(
  'derived: every fault of “%s” that needs a remedy gets that of its kind',
  (_name, circuit) => {
    const made = compileStop(circuit);
    if (!made.ok) throw new Error(made.problem.message);
    for (const { fault, judged, catches } of look(circuit)) {
      if (fault.mayExclude || judged.verdict === 'stops' || judged.verdict === 'noticed') continue;
      // What it ends in comes first.
      if (judged.happenings.some(({ kind }) => kind === 'drops')) {
        expect(catches, fault.id).toMatch(/brake/);
        continue;
      }
      const place = placeOfFault(made.value, fault);
      const words = /(does not \w+|stays \w+( in)?|stuck \w+|no delay|to plus|to frame|\w+)$/.exec(
        fault.id,
      )![0];
      const isWire = fault.group === 'wire' && Object.hasOwn(circuit.wires, fault.id.split(' ')[0]!);
      const kind =
        place === 'cable' ? 'cable' : `${isWire ? 'wire' : circuit.elements[fault.element]!.kind} ${place}`;
      const key = `${kind}: ${place === 'cable' ? 'crushed' : words}`;
      const row = SAID.find(([of]) => of.test(key));
      expect(row, `${fault.id}: ${key}`).toBeDefined();
      expect(catches, `${fault.id}: ${key}`).toMatch(row![1]);
    }
  },
);
