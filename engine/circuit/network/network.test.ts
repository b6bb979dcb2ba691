import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Answer,
  type Circuit,
  diodeOf,
  type Element,
  LinearNetwork,
  MOST_ELEMENTS,
  ohmsTo,
  operatingPoint,
  type Point,
  runCircuit,
  THERMAL_VOLTS,
  type Trouble,
  wattsOf,
} from './index.ts';

const R = (id: string, a: string, b: string, ohms: number): Element => ({ kind: 'resistor', id, a, b, ohms });
const V = (id: string, plus: string, minus: string, volts: number, ohms = 0): Element => ({
  kind: 'voltage',
  id,
  plus,
  minus,
  volts,
  ohms,
});
const contact = (id: string, a: string, b: string, closed: boolean): Element => ({
  kind: 'switch',
  id,
  a,
  b,
  closed,
  onOhms: 0.01,
});
const circuit = (...elements: Element[]): Circuit => ({ elements, references: ['0'] });

function solved(of: Circuit, previous?: Point): Point {
  const answer = operatingPoint(of, previous ? { previous } : {});
  if (!answer.ok) throw new Error(answer.trouble.sentence);
  return answer.point;
}
function trouble(answer: Answer<unknown & {}>): Trouble {
  if (answer.ok) throw new Error('it was solved');
  return answer.trouble;
}

describe('steady states', () => {
  test('published: opto input and pull-ups of an I/O reference (W-7), with the LED as a fixed 1.2 V', () => {
    // 24 V, 2.2 kΩ, LED 1.2 V, 0.3 V left across the output: 0.010227273 A, 0.2301 W (the 0.22 W printed is short).
    const point = solved(
      circuit(
        V('supply', 'p', '0', 24),
        R('Rs', 'p', 'a', 2200),
        V('led', 'a', 'c', 1.2),
        V('out', 'c', '0', 0.3),
      ),
    );
    expect(point.amps('Rs')).toBeCloseTo(0.010227273, 9);
    expect(wattsOf(point, R('Rs', 'p', 'a', 2200))).toBeCloseTo(0.010227273 ** 2 * 2200, 6);
    // 5 V, 330 Ω, 0.4 V left: 0.01030303 A.
    const five = solved(
      circuit(
        V('supply', 'p', '0', 5),
        R('Rs', 'p', 'a', 330),
        V('led', 'a', 'c', 1.2),
        V('out', 'c', '0', 0.4),
      ),
    );
    expect(five.amps('Rs')).toBeCloseTo(0.01030303, 8);
  });

  test('published: encoder at 10 m of 0.14 mm², copper of IEC 60028, 150 mA: 4.63054187 V', () => {
    const lead = (10 / 58 / 0.14) * 1;
    const point = solved(
      circuit(V('supply', 's', '0', 5), R('go', 's', 'b', lead), R('back', 'c', '0', lead), {
        kind: 'current',
        id: 'encoder',
        from: 'b',
        to: 'c',
        amps: 0.15,
      }),
    );
    expect(point.volts('b', 'c')).toBeCloseTo(4.63054187, 8);
  });

  test('derived: a diode through a resistor obeys its own law and Kirchhoff’s', () => {
    const diode = diodeOf('D', 'a', '0', { volts: 0.7, amps: 0.01 });
    const point = solved(circuit(V('V', 'p', '0', 5), R('R', 'p', 'a', 430), diode));
    const volts = point.volts('a')!;
    const law = diode.saturation * Math.expm1(volts / THERMAL_VOLTS);
    expect((5 - volts) / 430).toBeCloseTo(law, 9);
    expect(volts).toBeCloseTo(0.7, 3);
  });

  test('derived: power given is power taken, for random ladders with diodes', () => {
    const positive = (least: number, most: number): fc.Arbitrary<number> =>
      fc.double({ min: least, max: most, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(positive(1, 1e5), positive(1, 1e5), fc.integer({ min: 0, max: 3 })), {
          minLength: 1,
          maxLength: 12,
        }),
        positive(0.1, 100),
        positive(0, 10),
        (rungs, volts, inner) => {
          const elements: Element[] = [V('V', 'n0', '0', volts, inner)];
          rungs.forEach(([along, across, what], k) => {
            elements.push(R(`a${k}`, `n${k}`, `n${k + 1}`, along));
            if (what === 1) elements.push(diodeOf(`d${k}`, `n${k + 1}`, '0', { volts: 0.6, amps: 1e-3 }));
            else if (what === 2)
              elements.push(diodeOf(`d${k}`, '0', `n${k + 1}`, { volts: 0.6, amps: 1e-3, breakdown: 5 }));
            else if (what === 3)
              elements.push(
                contact(`s${k}`, `n${k + 1}`, `m${k}`, k % 2 === 0),
                R(`x${k}`, `m${k}`, '0', across),
              );
            elements.push(R(`r${k}`, `n${k + 1}`, '0', across));
          });
          const point = solved({ elements, references: ['0'] });
          const watts = elements.map((e) => wattsOf(point, e));
          const sum = watts.reduce((a, b) => a + b, 0);
          const all = watts.reduce((a, b) => a + Math.abs(b), 0);
          expect(Math.abs(sum)).toBeLessThan(1e-6 * all + 1e-9);
          for (const node of point.pieces[0]!.nodes) {
            expect(point.volts(node)!).toBeGreaterThan(-1e-6);
            expect(point.volts(node)!).toBeLessThan(volts + 1e-6);
          }
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });

  test('derived: an opto-coupler across isolation: its two sides have no common, its current follows the LED', () => {
    const point = solved({
      elements: [
        V('V1', 'p', 'n', 24),
        R('R1', 'p', 'a', 2200),
        diodeOf('led', 'a', 'c', { volts: 1.2, amps: 0.01, emission: 2 }),
        V('sense', 'n', 'c', 0),
        { kind: 'mirror', id: 'ctr', from: 'out', to: '0', of: 'sense', gain: 0.5 },
        V('V2', 'q', '0', 5),
        R('R2', 'q', 'out', 100),
      ],
      references: ['0'],
    });
    expect(point.volts('p', 'out')).toBeUndefined();
    expect(point.volts('p')).toBeUndefined();
    expect(point.volts('p', 'n')).toBeCloseTo(24, 9);
    const led = point.amps('led');
    expect(led).toBeCloseTo((24 - 1.2) / 2200, 4);
    expect(point.volts('out')).toBeCloseTo(5 - 100 * 0.5 * led, 8);
  });
});

describe('what has no answer says so', () => {
  test('two ideal supplies joined', () => {
    const said = trouble(
      operatingPoint(circuit(V('G1', 'p', '0', 24), V('G2', 'p', '0', 24.1), R('R', 'p', '0', 1))),
    );
    expect(said.kind).toBe('source-loop');
    expect(said.elements).toEqual(['G1', 'G2']);
    expect(said.sentence).toContain('G1 and G2');
    expect(said.nodes).toContain('p');
  });
  test('two supplies with inner resistance are solved, and show the current that flows from one into the other', () => {
    const point = solved(circuit(V('G1', 'p', '0', 24, 0.1), V('G2', 'p', '0', 23, 0.1)));
    expect(point.amps('G1')).toBeCloseTo(5, 9);
    expect(point.amps('G2')).toBeCloseTo(-5, 9);
  });
  test('a short-circuited ideal supply, and a loop through ideal coils', () => {
    expect(trouble(operatingPoint(circuit(V('G1', '0', '0', 24)))).sentence).toContain('short-circuited');
    const coil: Element = { kind: 'inductor', id: 'L', a: 'p', b: '0', henries: 1, ohms: 0 };
    expect(trouble(operatingPoint(circuit(V('G1', 'p', '0', 24), coil))).elements).toEqual(['G1', 'L']);
  });
  test('a current without a way back', () => {
    const said = trouble(
      operatingPoint(circuit({ kind: 'current', id: 'I', from: 'a', to: '0', amps: 1 }, R('R', 'a', 'b', 5))),
    );
    expect(said.kind).toBe('no-return');
    expect(said.sentence).toBe('The current of I from a to 0 has no way back.');
  });
  test('floating pieces have volts among themselves only', () => {
    const point = solved(
      circuit(
        V('G', 'p', '0', 5),
        R('R', 'p', '0', 10),
        V('B', 'x', 'y', 9),
        R('L', 'x', 'y', 3),
        contact('S', 'x', 'p', false),
      ),
    );
    expect(point.volts('x')).toBeUndefined();
    expect(point.volts('x', 'y')).toBeCloseTo(9, 12);
    expect(point.volts('x', '0')).toBeUndefined();
    expect(point.volts('nowhere')).toBeUndefined();
    expect(point.amps('S')).toBe(0);
  });
  test('numbers that cannot be meant are named', () => {
    for (const [element, word] of [
      [R('R', 'a', '0', 0), 'resistance'],
      [R('R', 'a', '0', Number.NaN), 'resistance'],
      [V('R', 'a', '0', Number.POSITIVE_INFINITY), 'voltage'],
      [V('R', 'a', '0', 1, -1), 'inner'],
      [{ kind: 'capacitor', id: 'R', a: 'a', b: '0', farads: 0 } as Element, 'capacitance'],
      [{ kind: 'inductor', id: 'R', a: 'a', b: '0', henries: -1, ohms: 0 } as Element, 'inductance'],
      [diodeOf('R', 'a', '0', { volts: -1, amps: -1 }), 'zzz'],
      [{ kind: 'mirror', id: 'R', from: 'a', to: '0', of: 'Q', gain: 1 } as Element, 'Q'],
    ] as const) {
      const answer = operatingPoint(circuit(element, R('other', 'a', '0', 1)));
      if (word === 'zzz') {
        // A diode turned round on both counts is a diode.
        expect(answer.ok).toBe(true);
        continue;
      }
      const said = trouble(answer);
      expect(said.sentence).toMatch(/^R: /);
      expect(said.sentence).toContain(word);
    }
    expect(trouble(operatingPoint(circuit(R('R', 'a', '0', 1), R('R', 'a', '0', 1)))).sentence).toContain(
      'two elements',
    );
    const many = Array.from({ length: MOST_ELEMENTS + 1 }, (_, k) => R(`R${k}`, 'a', '0', 1));
    expect(trouble(operatingPoint(circuit(...many))).kind).toBe('too-long');
    expect(trouble(runCircuit(circuit(R('R', 'a', '0', 1)), { until: 0 })).kind).toBe('value');
  });
  test('derived: any circuit thrown together is solved or refused in words, never NaN', () => {
    const node = fc.constantFrom('0', 'a', 'b', 'c', 'd', 'e');
    const size = fc.double({ min: -12, max: 12, noNaN: true }).map((x) => 10 ** x);
    const element = fc.oneof(
      fc.record({ kind: fc.constant('resistor' as const), a: node, b: node, ohms: size }),
      fc.record({
        kind: fc.constant('voltage' as const),
        plus: node,
        minus: node,
        volts: fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        ohms: fc.oneof(fc.constant(0), size),
      }),
      fc.record({
        kind: fc.constant('current' as const),
        from: node,
        to: node,
        amps: fc.double({ min: -10, max: 10, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant('switch' as const),
        a: node,
        b: node,
        closed: fc.boolean(),
        onOhms: size,
      }),
      fc.record({
        kind: fc.constant('inductor' as const),
        a: node,
        b: node,
        henries: size,
        ohms: fc.oneof(fc.constant(0), size),
      }),
      fc.record({
        kind: fc.constant('diode' as const),
        anode: node,
        cathode: node,
        saturation: fc.constant(1e-12),
        emission: fc.constant(1.5),
        ohms: fc.oneof(fc.constant(0), size),
      }),
      fc.record({
        kind: fc.constant('transistor' as const),
        polarity: fc.constantFrom('npn' as const, 'pnp' as const),
        collector: node,
        base: node,
        emitter: node,
        gain: fc.constant(100),
        reverseGain: fc.constant(2),
        saturation: fc.constant(1e-14),
      }),
    );
    fc.assert(
      fc.property(fc.array(element, { minLength: 1, maxLength: 14 }), (list) => {
        const elements = list.map((e, k) => ({ ...e, id: `E${k}` }) as Element);
        const answer = operatingPoint({ elements, references: ['0'] });
        if (!answer.ok) {
          expect(answer.trouble.sentence).not.toMatch(/NaN|undefined|Infinity/);
          expect(answer.trouble.sentence.length).toBeGreaterThan(10);
          return;
        }
        for (const e of elements) expect(Number.isFinite(answer.point.amps(e.id))).toBe(true);
        for (const piece of answer.point.pieces)
          for (const each of piece.nodes)
            expect(Number.isFinite(answer.point.volts(each, piece.reference)!)).toBe(true);
      }),
      { numRuns: 400, seed: 5 },
    );
  });
});

describe('a network held and asked again', () => {
  const elements = [
    V('G', 'p', '0', 24, 0.5),
    R('w1', 'p', 'a', 0.2),
    R('w2', 'a', 'b', 0.3),
    contact('S', 'a', 'c', true),
    R('r', 'c', '0', 50),
    R('leak', 'b', '0', 1e6),
    V('H', 'x', 'y', 5),
    R('q', 'x', 'y', 10),
  ];
  test('derived: currents drawn are those of the solver with the same currents as sources', () => {
    const made = LinearNetwork.of({ elements, references: ['0'] });
    if (!made.ok) throw new Error(made.trouble.sentence);
    for (const amps of [0, 1, 2.5, -0.7]) {
      const ours = made.network.flowing([{ from: 'b', to: '0', amps }]);
      const point = solved(circuit(...elements, { kind: 'current', id: 'I', from: 'b', to: '0', amps }));
      for (const { id } of elements) expect(ours.amps(id)).toBeCloseTo(point.amps(id), 9);
      expect(ours.volts('a', 'b')).toBeCloseTo(point.volts('a', 'b')!, 9);
    }
  });
  test('derived: what is drawn alone adds to what the sources do; what nothing joins has no volts', () => {
    const made = LinearNetwork.of({ elements, references: ['0'] });
    if (!made.ok) throw new Error(made.trouble.sentence);
    const drawn = [{ from: 'b', to: '0', amps: 3 }];
    const [all, rest, alone] = [
      made.network.flowing(drawn),
      made.network.flowing([]),
      made.network.flowing(drawn, false),
    ];
    for (const { id } of elements) expect(all.amps(id)).toBeCloseTo(rest.amps(id) + alone.amps(id), 9);
    expect(all.volts('x', 'a')).toBeUndefined();
    expect(made.network.flowing([{ from: 'x', to: 'a', amps: 1 }]).amps('q')).toBeCloseTo(0.5, 12);
  });
  test('what is not linear is refused by name', () => {
    const said = trouble(LinearNetwork.of(circuit(diodeOf('D', 'a', '0', { volts: 0.7, amps: 1 }))));
    expect(said.sentence).toMatch(/^D: only resistors/);
  });
});

describe('an edit', () => {
  test('derived: solves again only the group of pieces it touches', () => {
    const left = [V('G1', 'p', '0', 24), R('R1', 'p', '0', 100)];
    const right = [V('G2', 'q', 'm', 5), R('R2', 'q', 'm', 10)];
    const before = solved({ elements: [...left, ...right], references: ['0'] });
    expect(before.kept).toBe(0);
    const after = solved(
      { elements: [...left, right[0]!, R('R2', 'q', 'm', 20)], references: ['0'] },
      before,
    );
    expect(after.kept).toBe(1);
    expect(after.amps('R2')).toBeCloseTo(0.25, 12);
    expect(after.amps('R1')).toBeCloseTo(0.24, 12);
  });
});

describe('runs in time', () => {
  const coil: Element = { kind: 'inductor', id: 'L', a: 'p', b: 's', henries: 1.2, ohms: 480 };
  test('published: a coil of 480 Ω and 1.2 H behind its diode (0.7 V) falls to 15 % in 4.37047055 ms', () => {
    const ran = runCircuit(
      { elements: [{ ...coil, startAmps: 0.05 } as Element, V('clamp', 's', 'p', 0.7)], references: ['p'] },
      { until: 6e-3, tolerance: 1e-8, longest: 1e-5 },
    );
    if (!ran.ok) throw new Error(ran.trouble.sentence);
    expect(ran.run.at(ran.run.amps('L')!, 0.00437047055)).toBeCloseTo(0.0075, 7);
  });
  test('derived: a contact that opens on a coil with a resistor across it lifts that resistor’s voltage at once', () => {
    const ran = runCircuit(
      circuit(V('G', 'p', '0', 24), coil, R('Rp', 'p', 's', 1000), {
        kind: 'switch',
        id: 'S',
        a: 's',
        b: '0',
        closed: [
          [0, true],
          [1e-3, false],
        ],
        onOhms: 1e-3,
      }),
      { until: 2e-3, tolerance: 1e-6 },
    );
    if (!ran.ok) throw new Error(ran.trouble.sentence);
    const { run } = ran;
    expect(run.at(run.amps('L')!, 0.999e-3)).toBeCloseTo(24 / 480.001, 6);
    // All of the coil's current goes on through the resistor: 24 V + 0.05 A × 1 kΩ.
    expect(Math.max(...run.volts('s')!)).toBeCloseTo(24 + (24 / 480.001) * 1000, 1);
    const later = (24 / 480.001) * Math.exp((-0.5e-3 * 1480) / 1.2);
    expect(run.at(run.amps('L')!, 1.5e-3)).toBeCloseTo(later, 5);
  });
  test('published: 22 mF at 81.048651 V through 220 Ω reaches 60 V in 1.4554124 s (P-5)', () => {
    const ran = runCircuit(
      circuit(
        { kind: 'capacitor', id: 'C', a: 'b', b: '0', farads: 22e-3, startVolts: 81.048651 },
        R('R', 'b', '0', 220),
      ),
      { until: 3, tolerance: 1e-8 },
    );
    if (!ran.ok) throw new Error(ran.trouble.sentence);
    const volts = ran.run.volts('b')!;
    expect(ran.run.at(volts, 1.4554124)).toBeCloseTo(60, 3);
  });
  test('derived: nothing stored changes when nothing is done to a steady circuit', () => {
    const ran = runCircuit(
      circuit(V('G', 'p', '0', 24), coil, R('R', 's', '0', 100), {
        kind: 'capacitor',
        id: 'C',
        a: 's',
        b: '0',
        farads: 1e-6,
      }),
      { until: 1e-2 },
    );
    if (!ran.ok) throw new Error(ran.trouble.sentence);
    const volts = ran.run.volts('s')!;
    for (const each of volts) expect(each).toBeCloseTo((24 * 100) / 580, 8);
  });
  test('derived: halving the tolerance brings a ringing circuit nearer to its closed form', () => {
    const ring = circuit(
      { kind: 'capacitor', id: 'C', a: 'b', b: '0', farads: 1e-5, startVolts: 10 },
      { kind: 'inductor', id: 'L', a: 'b', b: '0', henries: 1e-2, ohms: 0, startAmps: 0 },
    );
    const off = [1e-3, 1e-5, 1e-7].map((tolerance) => {
      const ran = runCircuit(ring, { until: 1e-2, tolerance, fromNothing: true });
      if (!ran.ok) throw new Error(ran.trouble.sentence);
      const w = 1 / Math.sqrt(1e-5 * 1e-2);
      return Math.abs(ran.run.volts('b')!.at(-1)! - 10 * Math.cos(w * 1e-2));
    });
    expect(off[1]!).toBeLessThan(off[0]! / 4);
    expect(off[2]!).toBeLessThan(off[1]! / 4);
    expect(off[2]!).toBeLessThan(1e-3);
  });
});

describe('an ohmmeter', () => {
  test('derived: resistors as they are, diodes by its own voltage, contacts open or closed, supplies not at all', () => {
    const answer = ohmsTo(
      circuit(
        V('G', 'p', '0', 24),
        R('R1', 'p', 'x', 1000),
        R('R2', 'x', '0', 500),
        contact('S', 'x', 'y', true),
        contact('T', 'x', 'z', false),
        R('R3', 'z', 'p', 100),
        diodeOf('D', 'w', '0', { volts: 0.7, amps: 0.01 }),
      ),
      '0',
      ['p', 'x', 'y', 'z', 'w', '0', 'nowhere'],
    );
    if (!answer.ok) throw new Error(answer.trouble.sentence);
    expect(answer.ohms.get('p')).toBeCloseTo(1500, 6);
    expect(answer.ohms.get('x')).toBeCloseTo(500, 6);
    expect(answer.ohms.get('y')).toBeCloseTo(500.01, 6);
    expect(answer.ohms.get('z')).toBeCloseTo(1600, 6);
    expect(answer.ohms.get('0')).toBe(0);
    expect(answer.ohms.get('nowhere')).toBe(Number.POSITIVE_INFINITY);
    // 0.5 V lights no silicon junction: thousands of ohms, not hundreds.
    expect(answer.ohms.get('w')).toBeGreaterThan(2000);
  });
});
