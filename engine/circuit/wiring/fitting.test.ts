import { describe, expect, test } from 'vitest';
import { fitting } from './fitting.ts';
import { wired } from './wired.fixture.ts';

const wiring = wired(
  [
    'G1 supply',
    'G2 supply volts=5_V',
    'A1 control pulse-axes=X output-level=open-collector output-withstands=30_V input-form=sinking',
    'T1 drive command=pulses input-level=opto-24v motor=stepper feedback=differential',
    'M1 stepper',
    'B1 encoder lines=differential',
    'B2 sensor output=NPN',
    'B3 sensor output=PNP',
    'X0 mains-inlet',
    'X1 earth-bar',
    'H1 metal',
  ],
  ['G1.plus A1.plus', 'G1.minus A1.minus', 'A1.GND G1.minus', 'A1.in-com G1.minus', 'G1.plus T1.STEP+'],
);
const best = (terminal: string) => fitting(wiring, terminal)[0]!.terminal;
const of = (terminal: string, other: string) =>
  fitting(wiring, terminal).find((each) => each.terminal === other)!;

describe('what fits', () => {
  test('derived: the best is what is made for it', () => {
    expect(best('T1.A+')).toBe('M1.A+');
    expect(best('B1.A-')).toBe('T1.E-A-');
    expect(best('T1.STEP-')).toBe('A1.X-step');
    expect(best('H1.PE')).toMatch(/^X1\./);
    expect(best('B3.BK')).toMatch(/^A1\./);
    expect(best('B1.5V')).toBe('T1.E-5V');
  });

  test('derived: what does not fit says why', () => {
    expect(of('B2.BK', 'A1.in1')).toMatchObject({ fits: false, why: expect.stringMatching(/NPN/) });
    expect(of('B3.BK', 'A1.in1').fits).toBe(true);
    expect(of('B1.5V', 'G1.plus')).toMatchObject({
      fits: false,
      why: expect.stringMatching(/24 V are more than it stands/),
    });
    expect(of('X0.L1', 'A1.in1').fits).toBe(false);
    expect(of('G1.plus', 'A1.plus').why).toBe('They are joined already.');
    expect(of('T1.E-A+', 'B1.A-').why).toMatch(/exchanged/);
    expect(fitting(wiring, 'nothing')).toEqual([]);
    for (const { why } of fitting(wiring, 'G1.plus')) expect(why).toMatch(/\.$/);
  });

  test('derived: everything is answered once, those that fit before those that do not', () => {
    const all = fitting(wiring, 'A1.out1');
    expect(new Set(all.map(({ terminal }) => terminal)).size).toBe(all.length);
    const firstNot = all.findIndex(({ fits }) => !fits);
    expect(all.slice(firstNot).every(({ fits }) => !fits)).toBe(true);
  });
});
