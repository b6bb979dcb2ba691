import { describe, expect, test } from 'vitest';
import type { Wiring, WiringTerminal } from '../../../refit/types.ts';
import { checkWiring } from '../check/checker.ts';
import type { WiringFinding } from '../types.ts';
import { wired } from '../wired.fixture.ts';

/** Findings of one rule about one subject, as 'verdict: sentence'. */
const ask = (wiring: Wiring, id: string): WiringFinding | undefined =>
  checkWiring(wiring).find((each) => each.id === id);
const verdict = (wiring: Wiring, id: string) => ask(wiring, id)?.verdict;

function terminal(
  wiring: Wiring,
  device: string,
  mark: string,
  kind: string,
  settings: Record<string, string>,
): Wiring {
  const own = wiring.devices[device]!;
  const stated: WiringTerminal = { kind, name: '', settings };
  return {
    ...wiring,
    devices: { ...wiring.devices, [device]: { ...own, terminals: { ...own.terminals, [mark]: stated } } },
  };
}

const FEED = ['G1.plus A1.plus', 'G1.minus A1.minus'];

describe('sensors', () => {
  const sensor = (output: string, form: string, common = 'G1.minus A1.in-com') =>
    wired(
      ['G1 supply', `A1 control input-form=${form} output-level=ttl-5v`, `B1 sensor output=${output}`],
      [...FEED, common, 'G1.plus B1.BN', 'B1.BU G1.minus', 'B1.BK A1.in1'],
    );

  test('published: PNP with a sinking input of type 1: 24 V less 2 V against 15 V (IEC 61131-2)', () => {
    const found = ask(sensor('PNP', 'sinking'), 'levels:A1.in1')!;
    expect(found.verdict).toBe('fits');
    expect(found.figures.find(({ name }) => name === 'on: there is')!.value).toBe(22);
    expect(found.figures.find(({ name }) => name === 'on: asked')!.value).toBe(15);
  });

  test('derived: NPN with a sinking input, and PNP with a sourcing one, never work', () => {
    const npn = ask(sensor('NPN', 'sinking'), 'levels:A1.in1')!;
    expect(npn.verdict).toBe('fails');
    expect(npn.sentence).toMatch(/neither brings the current/);
    expect(verdict(sensor('PNP', 'sourcing', 'G1.plus A1.in-com'), 'levels:A1.in1')).toBe('fails');
    expect(verdict(sensor('NPN', 'sourcing', 'G1.plus A1.in-com'), 'levels:A1.in1')).toBe('fits');
  });

  test('derived: inputs that take either go by their common', () => {
    expect(verdict(sensor('NPN', 'either_way', 'G1.plus A1.in-com'), 'levels:A1.in1')).toBe('fits');
    expect(verdict(sensor('PNP', 'either_way'), 'levels:A1.in1')).toBe('fits');
    const wrong = ask(sensor('NPN', 'either_way'), 'levels:A1.in1')!;
    expect(wrong.verdict).toBe('fails');
    expect(wrong.remedy).toMatch(/Join A1.in-com to plus/);
    const none = sensor('PNP', 'either_way', 'A1.in-com A1.in2');
    expect(verdict(none, 'levels:A1.in1')).toBe('fails');
  });

  test('derived: a sensor on a supply of its own needs a common', () => {
    const apart = wired(
      ['G1 supply', 'G2 supply', 'A1 control input-form=sinking', 'B1 sensor output=PNP'],
      [...FEED, 'G1.minus A1.in-com', 'G2.plus B1.BN', 'B1.BU G2.minus', 'B1.BK A1.in1'],
    );
    expect(ask(apart, 'levels:A1.in1')!.sentence).toMatch(/no common/);
    const joined = {
      ...apart,
      wires: { ...apart.wires, j: { id: 'j', from: 'G1.minus', to: 'G2.minus', cable: null, settings: {} } },
    };
    expect(verdict(joined, 'levels:A1.in1')).toBe('fits');
  });

  test('derived: reversed, or on no supply', () => {
    const wiring = sensor('PNP', 'sinking');
    const reversed = {
      ...wiring,
      wires: {
        ...wiring.wires,
        w4: { ...wiring.wires.w4!, from: 'G1.minus' },
        w5: { ...wiring.wires.w5!, to: 'G1.plus' },
      },
    };
    expect(ask(reversed, 'feed:B1.BN')!.sentence).toMatch(/wrong way round/);
    expect(verdict(wiring, 'feed:B1.BN')).toBe('fits');
    const { w4: _, ...rest } = wiring.wires;
    expect(ask({ ...wiring, wires: rest }, 'connected:B1')!.about).toContain('B1.BN');
  });

  test('derived: a sensor that leaks more than the input ignores', () => {
    const leaks = terminal(sensor('PNP', 'sinking'), 'B1', 'BK', 'output', { leaks: '1.5 mA' });
    const strict = terminal(leaks, 'A1', 'in1', 'input', { 'off-current': '1 mA', 'off-level': '5 V' });
    const found = ask(strict, 'levels:A1.in1')!;
    expect(found.verdict).toBe('fails');
    // R ≤ 5 V ÷ 1.5 mA.
    expect(found.remedy).toMatch(/3\.33 kΩ/);
  });
});

describe('logic levels', () => {
  const logic = (out: string, input: string) => {
    const base = wired(['A1 line-unit', 'A2 line-unit'], ['A1.0V A2.0V', 'A1.1 A2.2']);
    const from = terminal(base, 'A1', '1', 'output', {});
    return terminal(
      terminal(from, 'A1', '1', 'output', JSON.parse(out)),
      'A2',
      '2',
      'input',
      JSON.parse(input),
    );
  };
  const LVTTL = '{"high":"2.4 V","low":"0.4 V","top":"3.3 V"}';
  const TTL = '{"high":"2.4 V","low":"0.4 V","top":"5 V"}';

  test('published: 3.3 V logic into HC at 4.5 V fails, into TTL-like inputs it just passes (JESD8C and maker’s levels, from memory)', () => {
    const hc = ask(logic(LVTTL, '{"on-level":"3.15 V","off-level":"1.35 V","most":"5 V"}'), 'levels:A2.2')!;
    expect(hc.verdict).toBe('fails');
    // 2.4 V against 3.15 V: 0.75 V short.
    expect(hc.figures[0]!.value - hc.figures[1]!.value).toBeCloseTo(-0.75, 12);
    expect(
      verdict(logic(LVTTL, '{"on-level":"2 V","off-level":"0.8 V","most":"5.5 V"}'), 'levels:A2.2'),
    ).toBe('fits');
    // 5 V TTL into CMOS at 5 V: 2.4 V against 0.7 × 5 V.
    expect(
      verdict(logic(TTL, '{"on-level":"3.5 V","off-level":"1.5 V","most":"5.5 V"}'), 'levels:A2.2'),
    ).toBe('fails');
  });

  test('derived: 5 V into an input that survives 3.6 V destroys it', () => {
    expect(
      ask(logic(TTL, '{"on-level":"2 V","off-level":"0.8 V","most":"3.6 V"}'), 'levels:A2.2')!.sentence,
    ).toMatch(/destroyed/);
  });

  test('derived: an open collector needs a pull-up, and the window is named', () => {
    const base = wired(
      ['A1 opto-board output-current=8_mA', 'A2 line-unit', 'G1 supply volts=5_V', 'R1 resistor ohms=1_kohm'],
      ['A1.0V A2.0V', 'G1.minus A2.0V', 'A1.O1 A2.1'],
    );
    const none = ask(base, 'levels:A2.1')!;
    expect(none.verdict).toBe('fails');
    // (5 − 0.4) V ÷ 8 mA = 575 Ω; (5 − 2.0) V ÷ 0.1 mA = 30 kΩ; E24 below twice the least: 1.1 kΩ.
    expect(none.remedy).toMatch(/1\.1 kΩ.*575 Ω to 30 kΩ/);
    const pulled = wired(
      ['A1 opto-board output-current=8_mA', 'A2 line-unit', 'G1 supply volts=5_V', 'R1 resistor ohms=1_kohm'],
      ['A1.0V A2.0V', 'G1.minus A2.0V', 'A1.O1 A2.1', 'G1.plus R1.1', 'R1.2 A2.1'],
    );
    expect(verdict(pulled, 'levels:A2.1')).toBe('fits');
  });
});

describe('pulse inputs', () => {
  const pulses = (level: string, input: string, wires: readonly string[], more: readonly string[] = []) =>
    wired(
      [
        'G1 supply',
        `A1 control pulse-axes=X output-level=${level} output-current=20_mA output-withstands=30_V`,
        `T1 drive command=pulses input-level=${input} motor=stepper`,
        ...more,
      ],
      [...FEED, ...wires],
    );

  test('published: 3.3 V logic gives a 330 Ω, 5 V opto input 3.6 mA at most: not the 5 mA it needs (loop of R, VF 1.2 V)', () => {
    const found = ask(
      pulses('logic-3v3', 'opto-5v', ['A1.X-step T1.STEP+', 'A1.GND T1.STEP-']),
      'levels:T1.STEP+',
    )!;
    expect(found.verdict).toBe('fails');
    // (2.4 − 1.2) V ÷ 330 Ω
    expect(found.figures[0]!.value).toBeCloseTo(1.2 / 330, 12);
  });

  test('published: 5 V and an open collector of 0.4 V through 330 Ω: 10.3030 mA (LED 1.2 V)', () => {
    const found = ask(
      pulses(
        'open-collector',
        'opto-5v',
        ['G5.plus T1.STEP+', 'A1.X-step T1.STEP-', 'G5.minus A1.GND'],
        ['G5 supply volts=5_V tolerance=0.0001_%'],
      ),
      'levels:T1.STEP+',
    )!;
    expect(found.verdict).toBe('fits');
    expect(found.figures[0]!.value).toBeCloseTo(0.0103030303, 6);
  });

  test('published: 24 V on an input for 5 V and 10 mA: 1900 Ω, 0.19 W; sold as 1.8 kΩ, 0.5 W', () => {
    const base = pulses('open-collector', 'opto-5v', [
      'G1.plus T1.STEP+',
      'A1.X-step T1.STEP-',
      'G1.minus A1.GND',
    ]);
    const found = ask(
      terminal(
        terminal(
          {
            ...base,
            devices: { ...base.devices, G1: { ...base.devices.G1!, settings: { tolerance: '0.00001 %' } } },
          },
          'A1',
          'X-step',
          'output',
          { low: '0 V' },
        ),
        'T1',
        'STEP+',
        'input',
        { current: '10 mA' },
      ),
      'levels:T1.STEP+',
    )!;
    expect(found.verdict).toBe('fails');
    expect(found.sentence).toMatch(/destroyed/);
    expect(found.remedy).toMatch(/1\.8 kΩ, 0\.5 W.*1\.9 kΩ, it burns 0\.19 W/);
  });

  test('derived: with that resistor in the way it fits', () => {
    const found = ask(
      pulses(
        'open-collector',
        'opto-5v',
        ['G1.plus R1.1', 'R1.2 T1.STEP+', 'A1.X-step T1.STEP-', 'G1.minus A1.GND'],
        ['R1 resistor ohms=1.8_kohm'],
      ),
      'levels:T1.STEP+',
    )!;
    expect(found.verdict).toBe('fits');
    // (24 × 0.95 − 0.4 − 1.2) V ÷ (330 + 1800) Ω
    expect(found.figures[0]!.value).toBeCloseTo((22.8 - 1.6) / 2130, 12);
  });

  test('derived: a 5 V output against 24 V never lets a 24 V input go off', () => {
    const found = ask(
      pulses('ttl-5v', 'opto-24v', ['G1.plus T1.STEP+', 'A1.X-step T1.STEP-', 'G1.minus A1.GND']),
      'levels:T1.STEP+',
    )!;
    expect(found.sentence).toMatch(/never goes off/);
  });

  test('derived: only one end of an opto input, and none', () => {
    expect(ask(pulses('ttl-5v', 'opto-5v', ['A1.GND T1.STEP-']), 'levels:T1.STEP+')!.sentence).toMatch(
      /hangs in the air/,
    );
    expect(ask(pulses('ttl-5v', 'opto-5v', []), 'connected:T1')!.about).toContain('T1.STEP+');
  });
});

describe('encoders', () => {
  const pair = (wires: readonly string[], settings = 'length=10_m section=0.14_mm2') => {
    const [length, section] = settings.split(' ').map((each) => each.split('=')[1]!.replace('_', ' '));
    return wired(
      [
        'T1 drive feedback=differential motor=brushed termination=120_ohm',
        'B1 encoder lines=differential current=150_mA rate=100_kHz',
      ],
      wires,
      {
        W1: { length: length!, section: section!, shield: 'braid' },
      },
    );
  };
  const all = ['T1.E-5V B1.5V / W1', 'B1.0V T1.E-0V / W1', 'B1.A+ T1.E-A+ / W1', 'B1.A- T1.E-A- / W1'];

  test('published: a pair of 30 m carries 2 MHz (TIA/EIA-422-B, curve of length against rate)', () => {
    const found = ask(pair(all, 'length=30_m section=0.5_mm2'), 'line:T1.E-A+')!;
    expect(found.figures.find(({ name }) => name === 'it carries')!.value).toBeCloseTo(2e6, 3);
    expect(found.verdict).toBe('fits');
  });

  test('derived: reversed, half, mixed, without common', () => {
    expect(verdict(pair(all), 'pair:T1.E-A+')).toBe('fits');
    expect(
      ask(pair([...all.slice(0, 2), 'B1.A- T1.E-A+ / W1', 'B1.A+ T1.E-A- / W1']), 'pair:T1.E-A+')!.sentence,
    ).toMatch(/reversed/);
    expect(ask(pair(all.slice(0, 3)), 'pair:T1.E-A+')!.sentence).toMatch(/one half/);
    expect(ask(pair([...all.slice(0, 3), 'B1.B- T1.E-A- / W1']), 'pair:T1.E-A+')!.sentence).toMatch(
      /two different pairs/,
    );
    expect(ask(pair(all.slice(2)), 'pair:T1.E-A+')!.sentence).toMatch(/0 V of both ends are not joined/);
  });

  test('published: 1 kΩ over 5 m of 100 pF/m: 1.1 µs, 90909.091 Hz (2.2 R C, a tenth of the period)', () => {
    const wiring = wired(
      ['T1 drive feedback=open_collector motor=brushed', 'B1 encoder lines=open_collector rate=50_kHz'],
      ['T1.E-5V B1.5V / W1', 'B1.0V T1.E-0V / W1', 'B1.A T1.E-A / W1'],
      { W1: { length: '5 m', section: '0.25 mm²' } },
    );
    const found = ask(wiring, 'line:T1.E-A')!;
    expect(found.figures.find(({ name }) => name === 'it carries')!.value).toBeCloseTo(90909.091, 3);
    expect(found.figures.find(({ name }) => name === 'rise time')!.value).toBeCloseTo(1.1e-6, 12);
    expect(found.verdict).toBe('fits');
  });
});

describe('coils and contacts', () => {
  const relay = (settings: string, extra: readonly string[] = [], wires: readonly string[] = []) =>
    wired(
      ['G1 supply', 'A1 control switch-current=200_mA', `K1 relay ${settings}`, ...extra],
      [...FEED, 'A1.out1 K1.A1', 'K1.A2 G1.minus', ...wires],
    );

  test('published: 480 Ω, 1.2 H, 24 V: plain diode 4.3704705 ms, clamp of 24.7 V 1.3570431 ms (closed form)', () => {
    const slow = ask(
      relay('coil-resistance=480_ohm coil-inductance=1.2_H suppressor=diode'),
      'load:K1.A1:spike',
    )!;
    expect(slow.verdict).toBe('tight');
    expect(slow.figures[0]!.value).toBeCloseTo(0.0043704706, 9);
    const quick = ask(
      relay('coil-resistance=480_ohm coil-inductance=1.2_H suppressor=clamp clamp-volts=24.7_V'),
      'load:K1.A1:spike',
    )!;
    expect(quick.verdict).toBe('fits');
    expect(quick.figures[0]!.value).toBeCloseTo(0.0013570431, 9);
  });

  test('derived: nothing on the coil kills a transistor output, and wears a contact', () => {
    expect(verdict(relay('suppressor=none'), 'load:K1.A1:spike')).toBe('fails');
    expect(verdict(relay(''), 'load:K1.A1:spike')).toBe('unknown');
    const byHand = wired(
      ['G1 supply', 'S1 button', 'K1 relay suppressor=none'],
      ['G1.plus S1.13', 'S1.14 K1.A1', 'K1.A2 G1.minus'],
    );
    expect(verdict(byHand, 'load:K1.A1:spike')).toBe('tight');
  });

  test('derived: a loose diode counts, and its direction', () => {
    const diode = (a: string, k: string) =>
      relay('suppressor=none', ['R1 diode'], [`R1.A ${a}`, `R1.K ${k}`]);
    expect(verdict(diode('K1.A2', 'K1.A1'), 'load:K1.A1:spike')).toBe('tight');
    expect(ask(diode('K1.A1', 'K1.A2'), 'load:K1.A1:spike')!.sentence).toMatch(/wrong way round/);
  });

  test('derived: the current of an output and of a supply is summed', () => {
    const both = relay(
      'coil-current=150_mA',
      ['K2 relay coil-current=100_mA'],
      ['A1.out1 K2.A1', 'K2.A2 G1.minus'],
    );
    const found = ask(both, 'output-current:A1.out1')!;
    expect(found.verdict).toBe('fails');
    expect(found.margin).toBeCloseTo(0.2 / 0.25, 12);
    const fed = wired(
      [
        'G1 supply current=1_A',
        'A1 control current=400_mA',
        'B1 sensor output=PNP current=10_mA',
        'K1 relay coil-current=50_mA',
        'S1 button',
      ],
      [...FEED, 'G1.plus B1.BN', 'B1.BU G1.minus', 'G1.plus S1.13', 'S1.14 K1.A1', 'K1.A2 G1.minus'],
    );
    const sum = ask(fed, 'supply-current:G1.plus')!;
    expect(sum.verdict).toBe('fits');
    expect(sum.figures[0]!.value).toBeCloseTo(0.46, 12);
  });

  test('derived: a.c. on a d.c. coil, a coil for another voltage, plus and minus exchanged', () => {
    const mains = wired(['X0 mains-inlet volts=230_V', 'K1 relay'], ['X0.L1 K1.A1', 'K1.A2 X0.N']);
    expect(ask(mains, 'load:K1.A1')!.sentence).toMatch(/gets a\.c\./);
    expect(verdict(relay('coil-volts=12_V'), 'load:K1.A1')).toBe('fails');
    const exchanged = wired(['G1 supply', 'K1 relay suppressor=diode'], ['G1.plus K1.A2', 'K1.A1 G1.minus']);
    expect(ask(exchanged, 'load:K1.A1')!.sentence).toMatch(/wrong way round/);
  });

  test('derived: a contact against its rating, d.c. and a.c. apart', () => {
    const valve = (rating: string) =>
      wired(
        ['G1 supply', `K1 relay ${rating}`, 'Y1 valve coil-current=2_A suppressor=diode'],
        ['G1.plus K1.13', 'K1.14 Y1.A1', 'Y1.A2 G1.minus'],
      );
    expect(verdict(valve('dc-volts=24_V dc-coil-amps=1_A'), 'contact:K1.13')).toBe('fails');
    expect(verdict(valve('dc-volts=24_V dc-coil-amps=3_A'), 'contact:K1.13')).toBe('fits');
    expect(ask(valve('ac-volts=230_V ac-amps=10_A'), 'contact:K1.13')!.sentence).toMatch(
      /a\.c\. rating says nothing/,
    );
    expect(ask(valve('dc-volts=12_V dc-amps=5_A'), 'contact:K1.13')!.sentence).toMatch(/arc stays/);
  });
});

describe('what must not meet', () => {
  test('derived: two outputs, an output and a supply, two supplies, plus and minus', () => {
    const two = wired(['A1 control', 'A2 control'], ['A1.out1 A2.out1', 'A1.minus A2.minus']);
    expect(verdict(two, 'outputs-joined:A1.out1')).toBe('fits');
    const pushing = wired(
      ['A1 control pulse-axes=X output-level=ttl-5v', 'A2 control pulse-axes=X output-level=ttl-5v'],
      ['A1.X-step A2.X-step'],
    );
    expect(verdict(pushing, 'outputs-joined:A1.X-step')).toBe('fails');
    const shorted = wired(['A1 control', 'G1 supply'], [...FEED, 'A1.out1 G1.minus']);
    expect(ask(shorted, 'outputs-joined:A1.out1:G1.minus')!.sentence).toMatch(/shorts the supply/);
    const supplies = wired(['G1 supply', 'G2 supply volts=5_V', 'F1 fuse'], ['G1.plus F1.1', 'F1.2 G2.plus']);
    expect(verdict(supplies, 'supplies-joined:G1.plus:G2.plus')).toBe('fails');
    expect(verdict(wired(['G1 supply'], ['G1.plus G1.minus']), 'supplies-joined:G1.plus:short')).toBe(
      'fails',
    );
  });

  test('derived: mains on an input, on earth, phase on phase', () => {
    const found = ask(
      wired(['X0 mains-inlet', 'F1 fuse', 'A1 control'], ['X0.L1 F1.1', 'F1.2 A1.in1']),
      'mains:X0.L1',
    )!;
    expect(found.verdict).toBe('fails');
    expect(found.about).toContain('A1.in1');
    expect(verdict(wired(['X0 mains-inlet', 'X1 earth-bar'], ['X0.N X1.1']), 'mains:X0.N:earth')).toBe(
      'fails',
    );
    expect(verdict(wired(['X0 mains-inlet phases=three'], ['X0.L1 X0.L2']), 'mains:X0.L1:X0.L2')).toBe(
      'fails',
    );
  });

  test('derived: 230 V between phase and neutral, 398 V between phases', () => {
    const supply = (mains: string, from: string) =>
      wired(
        [`X0 mains-inlet volts=230_V phases=three`, `G1 supply mains-volts=${mains}_V`],
        ['X0.L1 G1.L', `${from} G1.N`],
      );
    expect(verdict(supply('230', 'X0.N'), 'mains:G1.L')).toBe('fits');
    expect(verdict(supply('230', 'X0.L2'), 'mains:G1.L')).toBe('fails');
    expect(verdict(supply('400', 'X0.L2'), 'mains:G1.L')).toBe('fits');
    expect(verdict(supply('230', 'X0.L1'), 'mains:G1.L')).toBe('fails');
  });

  test('derived: a contactor between inverter and motor; leads exchanged', () => {
    const direct = wired(['T1 inverter', 'M1 spindle-motor'], ['T1.U M1.U', 'T1.V M1.V', 'T1.W M1.W']);
    expect(verdict(direct, 'motor:M1.U')).toBe('fits');
    const cut = wired(['T1 inverter', 'K1 contactor', 'M1 spindle-motor'], ['T1.U K1.1', 'K1.2 M1.U']);
    expect(verdict(cut, 'motor:M1.U')).toBe('fails');
    expect(ask(cut, 'motor:M1.U')!.about).toContain('K1.1');
    expect(verdict(wired(['T1 inverter', 'M1 spindle-motor'], ['T1.U M1.V']), 'motor:M1.V')).toBe('tight');
  });
});

describe('earth, shields, cables', () => {
  test('derived: a star, not a chain', () => {
    const wiring = wired(
      ['X0 mains-inlet', 'X1 earth-bar', 'H1 metal', 'H2 metal', 'H3 metal'],
      ['X0.PE X1.1', 'H1.PE X1.2', 'H2.PE H1.PE'],
    );
    expect(verdict(wiring, 'earth:X0.PE')).toBe('fits');
    expect(verdict(wiring, 'earth:H1.PE')).toBe('fits');
    expect(verdict(wiring, 'earth:H2.PE')).toBe('tight');
    expect(verdict(wiring, 'earth:H3.PE')).toBe('fails');
    expect(
      verdict(wired(['X1 earth-bar', 'X2 strip', 'H1 metal'], ['H1.PE X2.1', 'X2.1 X1.4']), 'earth:H1.PE'),
    ).toBe('fits');
  });

  test('derived: motor shields at both ends, analogue at one', () => {
    const motor = (ends: readonly string[], shield = 'braid') =>
      wired(
        ['T1 drive motor=brushless', 'M1 servo-motor type=brushless'],
        ['T1.U M1.U / W1', ...ends.map((each) => `${each} / W1`)],
        { W1: { shield } },
      );
    expect(verdict(motor(['T1.M-SH M1.SH']), 'shield:W1')).toBe('fits');
    expect(verdict(motor([]), 'shield:W1')).toBe('tight');
    expect(verdict(motor([], 'none'), 'shield:W1')).toBe('tight');
    const analogue = wired(
      ['A1 control volts-axes=X', 'T1 drive command=volts motor=brushless'],
      ['A1.X-cmd+ T1.CMD+ / W1', 'A1.X-cmd0 T1.CMD- / W1', 'T1.CMD-SH A1.X-sh / W1'],
      { W1: { shield: 'foil' } },
    );
    expect(verdict(analogue, 'shield:W1')).toBe('fits');
    expect(verdict(analogue, 'analogue:T1.CMD+')).toBe('fits');
    const both = terminal(analogue, 'A1', 'X-sh', 'shield', { earthed: 'yes' });
    expect(verdict(both, 'shield:W1')).toBe('tight');
  });

  test('derived: mains and signals in one jacket, and on one way', () => {
    const jacket = wired(
      ['X0 mains-inlet', 'G1 supply', 'A1 control', 'B1 sensor output=PNP'],
      ['X0.L1 G1.L / W1', 'B1.BK A1.in1 / W1'],
      { W1: {} },
    );
    expect(verdict(jacket, 'separation:W1')).toBe('fails');
    const way = wired(
      ['X0 mains-inlet', 'G1 supply', 'A1 control', 'B1 sensor output=PNP'],
      ['X0.L1 G1.L / W1', 'B1.BK A1.in1 / W2'],
      { W1: { route: 'left' }, W2: { route: 'left' } },
    );
    expect(verdict(way, 'separation:W2:route')).toBe('tight');
  });

  test('derived: wires that go nowhere, to themselves, twice; too many in one terminal; a ring', () => {
    const wiring = wired(
      ['X1 strip', 'K1 relay'],
      [
        'X1.1 X1.1',
        'X1.1 K1.A9',
        'X1.2 K1.A1',
        'X1.2 K1.A1',
        'X1.2 K1.13',
        'X1.3 X1.4',
        'X1.4 X1.5',
        'X1.5 X1.3',
      ],
    );
    expect(verdict(wiring, 'wire:w1')).toBe('fails');
    // A9 is no slip for A1; what there is is told instead.
    expect(ask(wiring, 'wire:w2')!.remedy).toMatch(/K1 has: A1, A2/);
    expect(verdict(wiring, 'wire:w3')).toBe('fits');
    expect(verdict(wiring, 'holding:X1.2')).toBe('tight');
    expect(verdict(wiring, 'loop:X1.3')).toBe('fits');
  });

  test('derived: a part that went out of the machine while its device is wired', () => {
    const wiring = wired(['T1 drive motor=stepper'], ['T1.DC+ T1.EN']);
    const gone = { ...wiring, devices: { T1: { ...wiring.devices.T1!, part: 'x-drive' } } };
    const finding = checkWiring(gone, { parts: {}, places: {}, chains: [] }).find(
      ({ rule }) => rule === 'part',
    )!;
    expect(finding.verdict).toBe('fails');
  });
});
