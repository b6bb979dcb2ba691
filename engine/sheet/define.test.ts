import { describe, expect, test } from 'vitest';
import { constant, curve, defineSheet, formula, input, procedure, SheetError } from './index.ts';
import type { SymbolSpec } from './types.ts';

const source = 'test';
const sheetOf = (symbols: Record<string, SymbolSpec>) =>
  defineSheet({ id: 'trial', title: 'Trial', about: 'for a test', symbols });

function refusal(symbols: Record<string, SymbolSpec>): SheetError {
  try {
    sheetOf(symbols);
  } catch (error) {
    if (error instanceof SheetError) return error;
    throw error;
  }
  throw new Error('the sheet was accepted');
}

const refuseExpression = (expression: string): string =>
  refusal({ a: input('a', '1'), b: input('b', '1'), f: formula('f', '1', expression, source) }).message;

describe('derived: a sheet as defined', () => {
  const sheet = sheetOf({
    power: formula('power', 'W', 'torque * speed', source),
    torque: formula('torque', 'N·m', 'F * r', source),
    F: input('force', 'N'),
    r: input('radius', 'mm'),
    speed: input('speed', 'r/min'),
    g: constant('gravity', 'm/s²', '9.80665 m/s²', source),
  });

  test('derived: orders inputs, constants, then each symbol after what it needs', () => {
    expect(sheet.order).toEqual(['F', 'r', 'speed', 'g', 'torque', 'power']);
    expect(sheet.inputs).toEqual(['F', 'r', 'speed']);
    expect(sheet.derived).toEqual(['torque', 'power']);
  });

  test('derived: knows the inputs each symbol depends on', () => {
    expect(sheet.dependsOn.power).toEqual(['F', 'r', 'speed']);
    expect(sheet.dependsOn.torque).toEqual(['F', 'r']);
  });

  test('derived: reads constants in SI', () => {
    expect(sheet.constants.g).toBe(9.80665);
  });

  test('derived: turns and radians are plain numbers in a formula', () => {
    const angle = sheetOf({
      n: input('speed', 'r/min'),
      lead: input('lead', 'mm'),
      v: formula('feed', 'mm/min', 'n * lead / (2 * pi)', source),
      alpha: input('angle', 'deg'),
      s: formula('sine', '1', 'sin(alpha)', source),
    });
    expect(angle.derived).toEqual(['v', 's']);
  });

  test('derived: half powers, a zero of any dimension, branches and extremes that agree', () => {
    sheetOf({
      E: input('modulus', 'GPa'),
      rho: input('density', 'kg/m³'),
      c: formula('sound', 'm/s', '(E / rho) ^ 0.5', source),
      k: formula('sound', 'm/s', 'max(0, sqrt(E / rho))', source),
      w: formula('third', 'm/s', 'c > 0 ? (c ^ 3) ^ (1 / 3) : 0', source),
    });
  });
});

describe('derived: what a sheet refuses, by name', () => {
  test('derived: a cycle', () => {
    const error = refusal({
      a: formula('a', '1', 'b + 1', source),
      b: formula('b', '1', 'c', source),
      c: formula('c', '1', 'a', source),
    });
    expect(error.sheet).toBe('trial');
    expect(error.message).toContain('a → b → c → a');
  });

  test('derived: a symbol that needs itself', () => {
    expect(refusal({ a: formula('a', '1', 'a + 1', source) }).message).toContain('a → a');
  });

  test('derived: an unknown symbol, in a formula and in a procedure', () => {
    expect(refuseExpression('a + nowhere')).toContain("it reads 'nowhere', which the sheet does not have");
    const body = { reads: ['gone'], run: () => 1, says: 'one', source };
    const error = refusal({ p: procedure('p', '1', body) });
    expect([error.symbol, error.message]).toEqual(['p', expect.stringContaining("'gone'")]);
  });

  test('derived: a wrong dimension, saying both', () => {
    const error = refusal({
      F: input('force', 'N'),
      r: input('radius', 'mm'),
      W: formula('work', 'N', 'F * r', source),
    });
    expect(error.symbol).toBe('W');
    expect(error.message).toContain('comes out as m²·kg·s⁻²');
    expect(error.message).toContain('its unit says m·kg·s⁻²');
  });

  test.each([
    ['F + r', 'joins m·kg·s⁻² with m'],
    ['max(F, r)', 'joins m·kg·s⁻² with m'],
    ['F > r ? F : F', 'joins m·kg·s⁻² with m'],
    ['r > 1 ? F : F', 'joins m with a plain number'],
    ['F * (r > 0 ? r : F)', 'joins m with m·kg·s⁻²'],
    ['sin(r)', "'sin' takes a plain number, but r is m"],
    ['exp(F / r)', "'exp' takes a plain number"],
    ['r ^ k', 'not a fixed number'],
    ['k ^ r', 'the exponent'],
    ['atan2(F, r)', 'joins m·kg·s⁻² with m'],
    ['round(r)', "'round' takes a plain number"],
  ])('derived: %s', (expression, says) => {
    const symbols = { F: input('force', 'N'), r: input('radius', 'm'), k: input('factor', '1') };
    expect(refusal({ ...symbols, f: formula('f', '1', expression, source) }).message).toContain(says);
  });

  test('derived: a unit, a curve’s unit and a constant that cannot be read', () => {
    expect(refusal({ a: input('a', 'furlongs of cheese') }).message).toContain(
      "the unit 'furlongs of cheese'",
    );
    expect(refusal({ a: curve('a', 'N', 'x', 'blorps') }).message).toContain("the unit 'blorps'");
    expect(refusal({ a: constant('a', 'GPa', 'about 200', source) }).message).toContain(
      "the value 'about 200'",
    );
    expect(refusal({ a: constant('a', 'GPa', '5 mm', source) }).message).toContain("the value '5 mm'");
  });

  test('derived: a formula that reads a curve', () => {
    const error = refusal({
      c: curve('curve', 'N·m', 'speed', 'r/min'),
      f: formula('f', 'N·m', 'c * 2', source),
    });
    expect(error.message).toContain("the curve 'c', which only a procedure can");
  });

  test.each([
    '__proto__',
    'constructor',
    'toString',
    '2a',
    'a-b',
    'a b',
    '',
    'sqrt',
    'pi',
    'and',
    'true',
    'é',
  ])('derived: the key %j', (key) => {
    const symbols = Object.fromEntries([[key, input('x', '1')]]);
    expect(refusal(symbols).symbol).toBe(key);
  });

  test.each([
    ['2 a', "'2 * a', not '2 a'"],
    ['2(a)', "'2 * a', not '2 a'"],
    ['a b', "before 'b' an operator is missing"],
    ['(a b)', "before 'b' an operator is missing"],
    ['5 kg', 'operator is missing'],
    ['a = 2', "a comparison is written '=='"],
    ['[a, b]', '"["'],
    ['a ; b', '";"'],
    ['a # b', '"#"'],
    ['"a"', '"\\""'],
    ["a'", '"\'"'],
    ['a!', '"!"'],
    ['a % b', '"%"'],
    ['a.b', '"."'],
    ['a mod b', "before 'mod'"],
    ['gamma(a)', "there is no function 'gamma'"],
    ['log(a)', "there is no function 'log'"],
    ['toString(a)', "there is no function 'toString'"],
    ['sin a', "'sin' needs its argument in parentheses"],
    ['sin()', 'a number or a symbol is missing'],
    ['atan2(a)', "'atan2' takes 2 argument(s), not 1"],
    ['sqrt(a, b)', "'sqrt' takes 1 argument(s), not 2"],
    ['a < b', 'is a yes or no, not a number'],
    ['a < b < a ? 1 : 0', 'comparisons do not chain'],
    ['a ? 1 : 0', "'?' needs a comparison"],
    ['a < b ? 1', "'?' needs ':'"],
    ['(a < b) + 1', "'+' needs numbers"],
    ['not a ? 1 : 2', "'not' needs a comparison"],
    ['+a', "missing before '+'"],
    ['a +', "missing before 'the end'"],
    ['(a', "'(' needs ')'"],
    ['a)', "')' stands where the expression should end"],
    ['1e999', 'the number 1e999 is too large'],
    ['a * true', "'true' has no place"],
    ['', 'the expression is empty'],
    [`${'('.repeat(500)}a${')'.repeat(500)}`, 'nested deeper'],
    ['a^'.repeat(400).concat('a'), 'nested deeper'],
    ['a+'.repeat(1500).concat('a'), 'longer than'],
    ['a × b', '"×"'],
    ['a +\n b', '"\\n"'],
  ])('derived: the expression %j', (expression, says) => {
    expect(refuseExpression(expression)).toContain(says);
  });
});
