/** The wiring of the samples: what is planted is found, everything else is clean, and numbers worked by hand. */
import { describe, expect, test } from 'vitest';
import { WiringLook } from '../engine/circuit/whole/index.ts';
import {
  checkWiring,
  proposeWiring,
  readWiring,
  type WiringFinding,
} from '../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../engine/control/index.ts';
import type { Refit } from '../engine/refit/index.ts';
import { layWiring } from './lay-wiring.ts';
import { sample } from './read.fixture.ts';

const lathe = sample('carriage-works-lathe');
const mill = sample('boatyard-mill');
const look = (refit: Refit) => checkWiring(refit.wiring, refit);
const of = (findings: readonly WiringFinding[], id: string): WiringFinding => {
  const found = findings.find((each) => each.id === id);
  if (!found) throw new Error(`no finding ${id}`);
  return found;
};
const number = (finding: WiringFinding, name: string): number =>
  finding.figures.find((each) => each.name === name)!.value;
const counts = (findings: readonly WiringFinding[]) =>
  Object.fromEntries(
    [...new Set(findings.map(({ rule }) => rule))]
      .sort()
      .map((rule) => [rule, findings.filter((each) => each.rule === rule).length]),
  );

describe('the lathe', () => {
  const findings = look(lathe);

  test('derived: planted: a PNP sensor on an input that wants NPN; and nothing else', () => {
    expect(readWiring(lathe.wiring, lathe).problems).toEqual([]);
    const open = findings.filter(({ verdict }) => verdict !== 'fits');
    expect(open.map(({ id, verdict }) => `${verdict} ${id}`)).toEqual(['fails levels:A1.in2']);
    expect(open[0]!.sentence).toMatch(/B22\.BK.*gives plus \(PNP\).*wants to be pulled to minus/);
    expect(open[0]!.remedy).toMatch(/NPN sensor/);
    // The other axis has the right one.
    expect(of(findings, 'levels:A1.in1').verdict).toBe('fits');
  });

  test('derived: an NPN sensor mends it', () => {
    const { B22 } = lathe.wiring.devices;
    const mended = {
      ...lathe,
      wiring: {
        ...lathe.wiring,
        devices: { ...lathe.wiring.devices, B22: { ...B22!, settings: { ...B22!.settings, output: 'NPN' } } },
      },
    };
    expect(look(mended).filter(({ verdict }) => verdict !== 'fits')).toEqual([]);
  });

  test('derived: by hand: a buffer lights the LED of a pulse input', () => {
    // (3.76 − 1.2) V ÷ 330 Ω = 7.76 mA against 5 mA.
    const found = of(findings, 'levels:T1.STEP+');
    expect(found.about[1]).toBe('A2.O1');
    expect(number(found, 'on: there is')).toBeCloseTo(0.00775757576, 10);
    expect(number(found, 'on: asked')).toBe(0.005);
    // The least of three: 1.2 V + 330 Ω × 20 mA = 7.8 V survive, 5.25 V come at most.
    expect(found.margin).toBeCloseTo(7.8 / 5.25, 9);
  });

  test('derived: by hand: the encoder’s 5 V at the end of 4 m, said once', () => {
    const all = new WiringLook().look(lathe).findings;
    expect(all.some(({ id }) => id === 'feed:B1.5V:drop')).toBe(false);
    const found = of(all, 'voltage-drop:B1.5V');
    // 0.25 mm² by its copper from the 13.3 Ω/km of 1.5 mm², class 5; 50 K warmer than that; there and back.
    const lost = 2 * 4 * ((0.0133 * 1.5) / 0.25) * (1 + 0.00393 * 50) * 0.12;
    // Rounded up to a thousandth of 5 V.
    expect(number(found, 'volts lost on the way there and back')).toBeCloseTo(
      Math.ceil(lost / 0.005) * 0.005,
      9,
    );
    expect(number(found, 'volts that arrive')).toBeCloseTo(
      5 - number(found, 'volts lost on the way there and back'),
      12,
    );
    expect(number(found, 'volts it needs at least')).toBe(4.75);
  });

  test('derived: by hand: a pair of 4 m carries 5 MHz, and 1000 lines at 2200 r/min are 36.7 kHz', () => {
    const found = of(findings, 'line:T1.E-A+');
    expect(number(found, 'it carries')).toBeCloseTo(5e6, 3);
    expect(number(found, 'rate')).toBe(Math.ceil((1000 * 2200) / 60));
  });

  test('derived: by hand: what the 24 V supply gives', () => {
    // Control 0.5 A, K1 and K2 0.2 A each, K3 30 mA, K11 and K12 20 mA each, two sensors 10 mA each; 6 mA each through
    // the stop input, the home input that works, and the inputs for forward and reverse.
    const before = 0.5 + 2 * 0.2 + 0.03 + 2 * 0.02 + 2 * 0.01 + 4 * 0.006;
    // Turret and chuck: seven sensors 10 mA each, which light seven LEDs of the opto board behind 2200 Ω, which pull
    // seven inputs of 6 mA; four valves 0.25 A each and five relays 20 mA each, a contactor 0.12 A. Two limits and the
    // fault contact of the spindle drive pull 6 mA each.
    const auxiliaries = 7 * (0.01 + (24 - 1.2) / 2200 + 0.006) + 4 * 0.25 + 5 * 0.02 + 0.12 + 3 * 0.006;
    // What the control lifts to plus comes from here too: the enable inputs of three drives.
    const enables = 3 * 0.006; // sums are kept to the nanoampere, seven of them are rounded
    const found = of(findings, 'supply-current:G1.plus');
    expect(number(found, 'drawn')).toBeCloseTo(before + auxiliaries + enables, 8);
    expect(found.margin).toBeCloseTo(5 / (before + auxiliaries + enables), 6);
  });

  test('derived: by hand: 400 V between the phases of the spindle drive', () => {
    expect(number(of(findings, 'mains:T3.L1'), 'gets')).toBeCloseTo(230 * Math.sqrt(3), 6);
  });
});

describe('the mill', () => {
  const findings = look(mill);

  test('derived: everything is connected and fits; the plain diode of the head’s brake is told of', () => {
    expect(readWiring(mill.wiring, mill).problems).toEqual([]);
    expect(
      findings.filter(({ verdict }) => verdict !== 'fits').map(({ id, verdict }) => `${verdict} ${id}`),
    ).toEqual(['tight load:Y3.A1:spike']);
  });

  test('derived: by hand: open collectors pull 24 V through the pulse inputs', () => {
    // (24 × 0.95 − 0.4 − 1.2) V ÷ 2200 Ω = 9.64 mA against 5 mA.
    const found = of(findings, 'levels:T1.STEP+');
    expect(number(found, 'on: there is')).toBeCloseTo(0.00963636364, 10);
  });

  test('derived: by hand: 60 V ± 2 % on drives for 24 to 80 V', () => {
    const found = of(findings, 'feed:T1.DC+');
    expect(number(found, 'it gets at most')).toBeCloseTo(61.2, 9);
    expect(found.margin).toBeCloseTo(80 / 61.2, 9);
  });
});

test('derived: proposing again adds nothing to either, and laid again they are what they are', () => {
  for (const refit of [lathe, mill]) {
    expect(proposeWiring(refit, askedOfWiring(refit)).changes).toEqual([]);
    expect(layWiring(refit).wiring).toEqual(refit.wiring);
  }
});

test('derived: what the controls have no room for is left out by name; the rest is wired whole', () => {
  const left = (refit: Refit) =>
    proposeWiring(refit, askedOfWiring(refit)).left.flatMap(
      (each) => /^(.*) is left out/.exec(each)?.[1] ?? [],
    );
  expect(left(lathe)).toEqual(['Tailstock quill', 'Sliding door', 'Way oil', 'Coolant']);
  expect(left(mill)).toEqual(['Gear shift of the head', 'Air drawbar', 'One-shot oiler', 'Coolant']);
  for (const refit of [lathe, mill])
    expect(look(refit).filter(({ rule }) => rule === 'connected')).toEqual([]);
});

test('frozen: how many answers of each rule there are', () => {
  expect(counts(look(lathe))).toMatchInlineSnapshot(`
    {
      "analogue": 1,
      "contact": 25,
      "earth": 15,
      "feed": 16,
      "levels": 33,
      "line": 9,
      "load": 30,
      "mains": 8,
      "motor": 7,
      "motor-start": 1,
      "output-current": 27,
      "pair": 9,
      "shield": 7,
      "supply-current": 5,
    }
  `);
  expect(counts(look(mill))).toMatchInlineSnapshot(`
    {
      "contact": 10,
      "earth": 16,
      "feed": 5,
      "filter": 2,
      "levels": 14,
      "load": 6,
      "mains": 3,
      "motor": 15,
      "output-current": 6,
      "shield": 4,
      "supply-current": 1,
    }
  `);
});
