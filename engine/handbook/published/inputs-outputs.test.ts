import { expect, test } from 'vitest';
import { evaluate } from '../../sheet/index.ts';
import { type LogicFamily, logicFamily, RS422 } from '../../tables/logic-levels.ts';
import { coilSuppression } from '../coil-suppression.ts';
import { logicLevels } from '../logic-levels.ts';
import { optoInput } from '../opto-input.ts';
import { pullUp } from '../pull-up.ts';
import { holds } from './expect.ts';

const LOOP = 'voltages round the loop';

holds('derived', 'opto-coupler of 10 mA on 24 V', LOOP, {
  sheet: optoInput,
  given: { V: '24 V', VF: '1.2 V', VOL: '0.3 V', I_F: '10 mA', R_s: '2.2 kΩ' },
  expected: { R: '2250 Ω', I: '0.010227273 A', P: '0.230 W' },
});

holds('derived', 'opto-coupler on 5 V with 330 Ω, at worst', LOOP, {
  sheet: optoInput,
  given: {
    V: '5 V',
    VF: '1.2 V',
    VOL: '0.4 V',
    I_F: '10 mA',
    R_s: '330 Ω',
    V_min: '4.75 V',
    VF_max: '1.4 V',
    VOL_max: '0.5 V',
    R_tol: '5 %',
    I_on: '5 mA',
  },
  expected: { R: '340 Ω', I: '0.01030303 A', I_min: '0.0082251082 A', m: '1.6450216' },
});

holds('derived', 'the same input between two 3.3 V outputs, one at 2.4 V and one at 0.4 V', LOOP, {
  sheet: optoInput,
  given: { V: '2.4 V', VF: '1.2 V', VOL: '0.4 V', R_s: '330 Ω' },
  expected: { I: '0.0024242424 A' },
});

holds('derived', 'a 5 V input of 10 mA driven from 24 V', LOOP, {
  sheet: optoInput,
  given: { V: '24 V', V_rated: '5 V', I_F: '10 mA' },
  expected: { R_add: '1900 Ω', P_add: '0.19 W' },
});

holds('derived', 'window of a 5 V pull-up', LOOP, {
  sheet: pullUp,
  given: { Vcc: '5 V', VIH: '3.5 V', VOL: '0.4 V', I_leak: '50 µA', I_OL: '16 mA', R: '1 kΩ', C: '500 pF' },
  expected: { R_max: '30000 Ω', R_min: '287.5 Ω', t_r: '1.1 µs' },
});

const COIL = { V: '24 V', R: '480 Ω', L: '1.2 H', drop: '15 %', Rs: '480 Ω' };
const DECAY = 'current of a coil against a constant voltage';

holds('derived', 'a contactor coil with a plain diode', DECAY, {
  sheet: coilSuppression,
  given: { ...COIL, Vc: '0.7 V' },
  expected: { I0: '0.05 A', t: '0.0043704706 s', E_coil: '0.0015 J', V_spike: '24.0 V' },
});

holds('derived', 'the same with a clamp at 24.7 V', DECAY, {
  sheet: coilSuppression,
  given: { ...COIL, Vc: '24.7 V' },
  expected: { t: '0.0013570431 s' },
});

function margins(output: LogicFamily, input: LogicFamily): { high: number; low: number } {
  const at = evaluate(logicLevels, {
    VOH: output.outputHigh,
    VOL: output.outputLow,
    VIH: input.inputHigh,
    VIL: input.inputLow,
  });
  if (at.NMH.state !== 'known' || at.NML.state !== 'known') throw new Error('levels are missing');
  return { high: at.NMH.value, low: at.NML.value };
}

const PAIRS = [
  ['logic-3v3', 'hc-4v5', -0.75],
  ['logic-3v3', 'hct-5v', 0.4],
  ['ttl-5v', 'cmos', -1.1],
  ['ttl-5v', 'plc-type-3', -8.6],
] as const;

for (const [output, input, high] of PAIRS) {
  test(`published: ${output} into ${input} has ${high} V in hand when high (level tables; HC, HCT and 3.3 V from memory)`, () => {
    expect(margins(logicFamily(output), logicFamily(input, 5)).high).toBeCloseTo(high, 12);
  });
}

test('published: 24 V into a 5 V input destroys it (supplies compared)', () => {
  const at = evaluate(logicLevels, { V_out_max: 24, V_in_max: 5 });
  expect(at.m_survive.state === 'known' && at.m_survive.value).toBeLessThan(1);
});

test('published: a driver of 2 V leaves 1.8 V over the receiver’s threshold (TIA/EIA-422-B)', () => {
  const at = evaluate(logicLevels, { VOH: RS422.driverLeast, VIH: RS422.receiverThreshold });
  expect(at.NMH).toEqual({ state: 'known', value: 1.8 });
});

test('derived: shares of a supply need the supply', () => {
  expect(() => logicFamily('cmos')).toThrow('the supply in volts is needed');
  expect(logicFamily('cmos', 5).inputHigh).toBeCloseTo(3.5, 12);
});
