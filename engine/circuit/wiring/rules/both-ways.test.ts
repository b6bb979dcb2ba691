/** Each rule with a wiring that breaks it and one that is right, where the other tests have no such pair. */
import { describe, expect, test } from 'vitest';
import type { Wiring } from '../../../refit/types.ts';
import { checkWiring } from '../check/checker.ts';
import { wired } from '../wired.fixture.ts';

const ask = (wiring: Wiring, id: string) => checkWiring(wiring).find((each) => each.id === id);
const verdict = (wiring: Wiring, id: string) => ask(wiring, id)?.verdict;
const CONTROL = ['G1 supply', 'A1 control input-form=sinking inputs-5v=2 switch-current=200_mA'];
const FEED = ['G1.plus A1.plus', 'G1.minus A1.minus', 'G1.minus A1.in-com'];

describe('inputs that are let go', () => {
  const logic = (wires: readonly string[], more: readonly string[] = []) =>
    wired(
      ['G5 supply volts=5_V', 'A2 buffer', 'S1 button', ...more],
      ['G5.plus A2.5V', 'G5.minus A2.0V', ...wires],
    );

  test('derived: a contact to plus on a logic input floats when it opens; with a pull-down it does not', () => {
    const open = ask(logic(['G5.plus S1.13', 'S1.14 A2.I1']), 'levels:A2.I1')!;
    expect([open.verdict, open.sentence]).toEqual(['fails', expect.stringMatching(/it floats/)]);
    const held = logic(
      ['G5.plus S1.13', 'S1.14 A2.I1', 'A2.I1 R1.1', 'R1.2 G5.minus'],
      ['R1 resistor ohms=10_kohm watts=0.25_W'],
    );
    expect(verdict(held, 'levels:A2.I1')).toBe('fits');
  });

  test('derived: a contact to 0 V needs a pull-up, inside or outside', () => {
    const bare = ask(logic(['G5.minus S1.13', 'S1.14 A2.I1']), 'levels:A2.I1')!;
    expect([bare.verdict, bare.remedy]).toEqual(['fails', expect.stringMatching(/pull-up/)]);
    const lifted = logic(
      ['G5.minus S1.13', 'S1.14 A2.I1', 'G5.plus R1.1', 'R1.2 A2.I1'],
      ['R1 resistor ohms=4.7_kohm watts=0.25_W'],
    );
    expect(verdict(lifted, 'levels:A2.I1')).toBe('fits');
    const inside = wired(
      ['A1 control inputs=0 inputs-5v=1 pulse-axes=X output-level=ttl-5v', 'S1 button', 'G1 supply'],
      ['G1.plus A1.plus', 'G1.minus A1.minus', 'G1.minus A1.GND', 'A1.GND S1.13', 'S1.14 A1.p1'],
    );
    expect(verdict(inside, 'levels:A1.p1')).toBe('fits');
  });

  test('derived: plus on an input that is pulled up inside changes nothing', () => {
    const wiring = wired(
      [...CONTROL, 'G5 supply volts=5_V', 'S1 button'],
      [...FEED, 'G5.minus G1.minus', 'G1.minus A1.GND', 'G5.plus S1.13', 'S1.14 A1.p1'],
    );
    expect(ask(wiring, 'levels:A1.p1')!.sentence).toMatch(/reads on whether/);
  });

  test('derived: connected, with nothing that drives it; and an input that is not connected is left alone', () => {
    const wiring = wired([...CONTROL, 'X2 strip'], [...FEED, 'A1.in1 X2.1']);
    expect(ask(wiring, 'levels:A1.in1:open')!.verdict).toBe('fails');
    expect(ask(wiring, 'levels:A1.in2')).toBeUndefined();
  });
});

describe('outputs and what hangs on them', () => {
  test('derived: a pull-up counts on what pulls it down: 5 V ÷ 220 Ω = 22.7 mA', () => {
    const pulled = (ohms: string) =>
      wired(
        [
          'A1 opto-board output-current=20_mA',
          'A2 line-unit',
          'G1 supply volts=5_V',
          `R1 resistor ohms=${ohms} watts=1_W`,
        ],
        ['A1.0V A2.0V', 'G1.minus A2.0V', 'A1.O1 A2.1', 'G1.plus R1.1', 'R1.2 A2.1'],
      );
    const small = ask(pulled('220_ohm'), 'output-current:A1.O1')!;
    expect(small.verdict).toBe('fails');
    expect(small.margin).toBeCloseTo(0.02 / (5 / 220), 12);
    expect(verdict(pulled('1_kohm'), 'output-current:A1.O1')).toBe('fits');
  });

  test('derived: fan-out: three inputs of 8 mA on an output of 20 mA, and two', () => {
    const on = (inputs: readonly string[]) =>
      wired(
        [
          'G1 supply',
          'A1 control input-form=sinking input-current=8_mA',
          'B1 sensor output=PNP output-current=20_mA',
        ],
        [...FEED, 'G1.plus B1.BN', 'B1.BU G1.minus', ...inputs.map((each) => `B1.BK A1.${each}`)],
      );
    expect(verdict(on(['in1', 'in2', 'in3']), 'output-current:B1.BK')).toBe('fails');
    expect(verdict(on(['in1', 'in2']), 'output-current:B1.BK')).toBe('fits');
  });

  test('derived: a supply that gives less than is drawn, and one that gives enough', () => {
    const on = (amps: string) =>
      wired(
        [`G1 supply current=${amps}`, 'A1 control current=800_mA'],
        ['G1.plus A1.plus', 'G1.minus A1.minus'],
      );
    expect(verdict(on('0.5_A'), 'supply-current:G1.plus')).toBe('fails');
    expect(verdict(on('2_A'), 'supply-current:G1.plus')).toBe('fits');
  });

  test('derived: a contact that switches coils wants to be rated for coils', () => {
    const on = (rating: string) =>
      wired(
        ['G1 supply', `K1 relay ${rating}`, 'Y1 valve coil-current=2_A suppressor=diode'],
        ['G1.plus K1.13', 'K1.14 Y1.A1', 'Y1.A2 G1.minus'],
      );
    const resistive = ask(on('dc-volts=24_V dc-amps=6_A'), 'contact:K1.13')!;
    expect([resistive.verdict, resistive.needs]).toEqual(['unknown', ['K1.13.dc-coil-amps']]);
    expect(verdict(on('dc-volts=24_V dc-amps=6_A dc-coil-amps=1_A'), 'contact:K1.13')).toBe('fails');
    expect(verdict(on('dc-volts=24_V dc-amps=6_A dc-coil-amps=3_A'), 'contact:K1.13')).toBe('fits');
    // A quarter of the rating for resistors is asked of no sheet.
    expect(verdict(on('dc-volts=24_V dc-amps=10_A'), 'contact:K1.13')).toBe('fits');
  });

  test('derived: a resistor burns V²/R across a supply, I²R before an LED; its rating counts', () => {
    const bleeder = (more: string) =>
      wired(['G1 supply tolerance=0.0001_%', `R1 resistor ${more}`], ['G1.plus R1.1', 'R1.2 G1.minus']);
    // 24² ÷ 100 = 5.76 W.
    const burns = ask(bleeder('ohms=100_ohm watts=5_W'), 'resistor:R1.1')!;
    expect(burns.verdict).toBe('fails');
    expect(burns.figures[0]!.value).toBeCloseTo(5.76, 4);
    expect(verdict(bleeder('ohms=100_ohm watts=10_W'), 'resistor:R1.1')).toBe('tight');
    expect(verdict(bleeder('ohms=100_ohm watts=25_W'), 'resistor:R1.1')).toBe('fits');
    expect(ask(bleeder('ohms=100_ohm'), 'resistor:R1.1')!.needs).toEqual(['R1.1.power']);
    const series = (watts: string) =>
      wired(
        [
          'G1 supply tolerance=0.0001_%',
          'A1 control pulse-axes=X output-level=open-collector output-current=20_mA output-withstands=30_V output-low=0.4_V',
          'T1 drive command=pulses input-level=opto-5v motor=stepper',
          `R1 resistor ohms=1.8_kohm ${watts}`,
        ],
        [
          'G1.plus A1.plus',
          'G1.minus A1.minus',
          'G1.plus R1.1',
          'R1.2 T1.STEP+',
          'A1.X-step T1.STEP-',
          'G1.minus A1.GND',
        ],
      );
    // (24 − 1.2) V ÷ 2130 Ω = 10.7 mA; 206 mW.
    const found = ask(series('watts=0.125_W'), 'resistor:R1.1')!;
    expect(found.verdict).toBe('fails');
    expect(found.figures[0]!.value).toBeCloseTo((22.8 / 2130) ** 2 * 1800, 5);
    expect(verdict(series('watts=0.5_W'), 'resistor:R1.1')).toBe('fits');
  });
});

describe('lines', () => {
  test('derived: a single line of 12 m at 200 kHz goes too far; of 2 m at 50 kHz it does not', () => {
    const on = (length: string, rate: string) =>
      wired(
        ['T1 drive feedback=single-ended motor=brushed', `B1 encoder lines=single-ended rate=${rate}`],
        ['T1.E-5V B1.5V / W1', 'B1.0V T1.E-0V / W1', 'B1.A T1.E-A / W1'],
        { W1: { length, section: '0.25 mm²' } },
      );
    expect(verdict(on('12 m', '200_kHz'), 'line:T1.E-A')).toBe('tight');
    expect(verdict(on('2 m', '50_kHz'), 'line:T1.E-A')).toBe('fits');
  });

  test('derived: two receivers that both end a pair load it twice: 120 Ω beside 120 Ω are 60 Ω', () => {
    const on = (other: string) =>
      wired(
        [
          'T1 drive feedback=differential motor=brushed termination=120_ohm',
          `A1 control encoders=X ${other}`,
          'B1 encoder lines=differential',
        ],
        [
          'T1.E-0V B1.0V',
          'T1.E-5V B1.5V',
          'A1.X-0V B1.0V',
          'B1.A+ T1.E-A+',
          'B1.A- T1.E-A-',
          'B1.A+ A1.X-A+',
          'B1.A- A1.X-A-',
        ],
      );
    const both = ask(on('termination=120_ohm'), 'pair:T1.E-A+')!;
    expect(both.verdict).toBe('tight');
    expect(both.figures[0]!.value).toBeCloseTo(60, 9);
    expect(verdict(on('termination=100_kohm'), 'pair:T1.E-A+')).toBe('fits');
  });

  test('derived: the shield of an encoder cable: at no end, and where it is read', () => {
    const on = (end: string) =>
      wired(
        ['T1 drive feedback=differential motor=brushed', 'B1 encoder lines=differential'],
        ['B1.A+ T1.E-A+ / W1', 'B1.A- T1.E-A- / W1', ...(end === '' ? [] : [`${end} / W1`])],
        { W1: { shield: 'braid' } },
      );
    expect(verdict(on(''), 'shield:W1')).toBe('tight');
    expect(verdict(on('B1.SH T1.E-SH'), 'shield:W1')).toBe('fits');
  });
});

describe('resolvers and tachos', () => {
  const PAIRS = ['R1', 'R2', 'S1', 'S2', 'S3', 'S4'].map((each) => `B1.${each} T1.RS-${each}`);
  const resolver = (wires: readonly string[], cable?: Record<string, string>, more = '') =>
    wired(
      [
        `T1 drive resolver=yes motor=brushless excitation-volts=7_V excitation-hertz=10_kHz`,
        `B1 resolver volts=7_V hertz=10_kHz ${more}`.trim(),
      ],
      cable ? wires.map((each) => `${each} / W1`) : wires,
      cable ? { W1: cable } : {},
    );

  test('derived: like to like fits, in a twisted cable under a shield', () => {
    const right = resolver([...PAIRS, 'B1.SH T1.RS-SH'], { shield: 'braid', twisted: 'yes' });
    expect(
      checkWiring(right)
        .filter(({ rule }) => rule === 'resolver')
        .map(({ id, verdict: own }) => `${own} ${id}`),
    ).toEqual([
      'fits resolver:B1.R1',
      'fits resolver:B1.R1:excitation',
      'fits resolver:T1.RS-S1',
      'fits resolver:T1.RS-S2',
    ]);
    expect(verdict(right, 'shield:W1')).toBe('fits');
    expect(verdict(resolver(PAIRS, { shield: 'braid', twisted: 'no' }), 'resolver:T1.RS-S1')).toBe('tight');
  });

  test('derived: reversed, sine for cosine, halves of two pairs, one wire, the wrong excitation', () => {
    const swap = (pairs: Readonly<Record<string, string>>) =>
      resolver(
        PAIRS.map((each) => `${each.split(' ')[0]} T1.RS-${pairs[each.slice(3, 5)] ?? each.slice(3, 5)}`),
      );
    expect(ask(swap({ S1: 'S3', S3: 'S1' }), 'resolver:T1.RS-S1')!.sentence).toMatch(/exchanged/);
    expect(ask(swap({ S1: 'S2', S3: 'S4', S2: 'S1', S4: 'S3' }), 'resolver:T1.RS-S1')!.sentence).toMatch(
      /The sine goes to the cosine/,
    );
    expect(ask(swap({ S3: 'S4', S4: 'S3' }), 'resolver:T1.RS-S1')!.sentence).toMatch(/two different pairs/);
    expect(ask(resolver(PAIRS.slice(0, 3)), 'resolver:T1.RS-S1')!.sentence).toMatch(/Only one wire/);
    const other = wired(
      [
        'T1 drive resolver=yes motor=brushless excitation-volts=4_V excitation-hertz=5_kHz',
        'B1 resolver volts=7_V hertz=10_kHz',
      ],
      PAIRS,
    );
    expect(verdict(other, 'resolver:B1.R1:excitation')).toBe('tight');
    expect(
      wired(['T1 drive resolver=yes motor=brushless', 'B1 resolver'], PAIRS) &&
        ask(
          wired(['T1 drive resolver=yes motor=brushless', 'B1 resolver'], PAIRS),
          'resolver:B1.R1:excitation',
        )!.needs,
    ).toHaveLength(4);
  });

  test('derived: a tacho within the range of its input, beyond it, and the wrong way round', () => {
    const tacho = (volts: string, wires = ['B1.T+ T1.TA+', 'B1.T- T1.TA-']) =>
      wired(['T1 drive tacho=yes motor=brushed tacho-volts=60_V', `B1 tacho volts=${volts}`], wires);
    expect(verdict(tacho('42_V'), 'analogue:T1.TA+')).toBe('fits');
    expect(verdict(tacho('90_V'), 'analogue:T1.TA+')).toBe('fails');
    const reversed = ask(tacho('42_V', ['B1.T- T1.TA+', 'B1.T+ T1.TA-']), 'analogue:T1.TA+')!;
    expect([reversed.verdict, reversed.sentence]).toEqual([
      'fails',
      expect.stringMatching(/exchanged.*runs away/),
    ]);
  });

  test('derived: analogue: another range, nothing that drives it, no return', () => {
    const on = (wires: readonly string[], control = 'volts-axes=X') =>
      wired([`A1 control ${control}`, 'T1 drive command=volts motor=brushless'], wires);
    expect(verdict(on(['A1.X-cmd+ T1.CMD+', 'A1.X-cmd0 T1.CMD-']), 'analogue:T1.CMD+')).toBe('fits');
    expect(verdict(on(['A1.X-cmd+ T1.CMD+']), 'analogue:T1.CMD+')).toBe('fails');
    expect(
      verdict(
        on(['A1.S-cmd+ T1.CMD+', 'A1.S-cmd0 T1.CMD-'], 'spindle-analogue=0_to_10_V'),
        'analogue:T1.CMD+',
      ),
    ).toBe('tight');
  });
});

describe('one earth', () => {
  test('derived: a bar that the protective conductor of the mains does not reach bonds nothing', () => {
    const bars = (more: readonly string[]) =>
      wired(
        ['X0 mains-inlet', 'X1 earth-bar', 'X9 earth-bar', 'H1 metal', 'H2 metal'],
        ['X0.PE X1.1', 'H1.PE X1.2', 'H2.PE X9.2', ...more],
      );
    expect(verdict(bars([]), 'earth:X9.1')).toBe('fails');
    expect(verdict(bars([]), 'earth:X1.1')).toBeUndefined();
    expect(verdict(bars(['X1.3 X9.3']), 'earth:X9.1')).toBeUndefined();
  });
});

describe('both ways round', () => {
  const motor = (coils: readonly string[]) =>
    wired(
      [
        'X0 mains-inlet phases=three',
        'G1 supply',
        'S1 button',
        'S2 button',
        'K1 contactor',
        'K2 contactor reverses=yes',
        'M1 mains-motor',
      ],
      [
        ...['L1', 'L2', 'L3'].map((each, n) => `X0.${each} K1.${2 * n + 1}`),
        ...[1, 3, 5].map((n) => `K1.${n} K2.${n}`),
        'K1.2 M1.U',
        'K1.4 M1.V',
        'K1.6 M1.W',
        'K2.2 K1.6',
        'K2.4 K1.4',
        'K2.6 K1.2',
        'G1.plus S1.13',
        'G1.plus S2.13',
        'K1.A2 G1.minus',
        'K2.A2 G1.minus',
        ...coils,
      ],
    );

  test('derived: each coil through an opening contact of the other, one only, neither', () => {
    const right = motor(['S1.14 K2.51', 'K2.52 K1.A1', 'S2.14 K1.51', 'K1.52 K2.A1']);
    expect(verdict(right, 'reversing:K2')).toBe('fits');
    const one = ask(motor(['S1.14 K1.A1', 'S2.14 K1.51', 'K1.52 K2.A1']), 'reversing:K2')!;
    expect([one.verdict, one.sentence]).toEqual([
      'fails',
      expect.stringMatching(/K1 can pull in while K2 is in:/),
    ]);
    expect(verdict(motor(['S1.14 K1.A1', 'S2.14 K2.A1']), 'reversing:K2')).toBe('fails');
    // A closing contact of the other is no interlock.
    expect(verdict(motor(['S1.14 K2.13', 'K2.14 K1.A1', 'S2.14 K1.51', 'K1.52 K2.A1']), 'reversing:K2')).toBe(
      'fails',
    );
  });
});
