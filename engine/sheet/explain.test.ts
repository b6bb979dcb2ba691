import { describe, expect, test } from 'vitest';
import { constant, curve, defineSheet, describeSheet, explain, formula, input, procedure } from './index.ts';
import { parseExpression } from './parse.ts';
import { plainText } from './print-plain.ts';
import { numberTex, quantityTex, texKey, texText } from './print-tex.ts';

const source = 'invented for a test';
const sheet = defineSheet({
  id: 'shaft',
  title: 'Shaft',
  about: 'a bar that turns',
  symbols: {
    d_1: input('diameter', 'mm', { domain: 'positive' }),
    L: input('length', 'mm', { domain: 'positive', tex: '\\ell' }),
    n: input('speed', 'r/min'),
    T: input('temperature', '°C'),
    rho: constant('density of steel', 'kg/m³', '7850 kg/m³', 'common practice, no source'),
    pull: curve('pull-out torque', 'N·m', 'speed', 'r/min'),
    m: formula('mass', 'kg', 'rho * pi * d_1^2 / 4 * L', source, { says: 'volume times density' }),
    v: formula('rim speed', 'm/min', 'n * d_1 / 2', source),
    k: formula('warmth', '1', 'T / (300 * T) * T / T', source),
    left: formula('torque left', 'N·m', 'm > 0 ? t : 0', source),
    t: procedure('torque', 'N·m', {
      reads: ['pull', 'n'],
      run: () => 1.5,
      says: 'read off the curve at the speed',
      source,
    }),
  },
});

describe('derived: a formula shown', () => {
  const given = { d_1: 0.02, L: 0.8, n: (1500 * 2 * Math.PI) / 60, T: 293.15 };

  test('derived: as text and TeX, without and with its numbers', () => {
    const shown = explain(sheet, 'm', given);
    expect(shown.plain).toBe('m = ρ · π · d_1² / 4 · L');
    expect(shown.plainWithNumbers).toBe('m = 7850 kg/m³ · π · (20 mm)² / 4 · 800 mm = 1.973 kg');
    expect(shown.tex).toBe('m = \\frac{\\rho \\cdot \\pi \\cdot d_{1}^{2}}{4} \\cdot \\ell');
    expect(shown.texWithNumbers).toBe(
      'm = \\frac{7850\\,\\mathrm{kg}/\\mathrm{m}^{3} \\cdot \\pi \\cdot \\left(20\\,\\mathrm{mm}\\right)^{2}}{4} \\cdot 800\\,\\mathrm{mm} = 1.973\\,\\mathrm{kg}',
    );
    expect(shown.inputs.map(({ key, name, text }) => [key, name, text])).toEqual([
      ['rho', 'density of steel', '7850 kg/m³'],
      ['d_1', 'diameter', '20 mm'],
      ['L', 'length', '800 mm'],
    ]);
    expect([shown.source, shown.says]).toEqual([source, 'volume times density']);
  });

  test('derived: the line with numbers is true as written: 1500 r/min · 20 mm / 2 is 94.25 m/min', () => {
    expect(explain(sheet, 'v', given).plainWithNumbers).toBe('v = 1500 r/min · 20 mm / 2 = 94.25 m/min');
    expect(1500 * 2 * Math.PI * (0.02 / 2)).toBeCloseTo(94.25, 2);
  });

  test('derived: a temperature stands in a formula from absolute zero', () => {
    expect(explain(sheet, 'k', { T: 300 }).plainWithNumbers).toBe(
      'k = 300 K / (300 · 300 K) · 300 K / (300 K) = 0.003333',
    );
  });

  test('derived: what is missing keeps its symbol', () => {
    expect(explain(sheet, 'v', { d_1: 0.02 }).plainWithNumbers).toBe('v = n · 20 mm / 2');
    expect(explain(sheet, 'v', { d_1: 0.02 }).outcome).toEqual({ state: 'missing', needs: ['n'] });
  });

  test('derived: inputs, constants and procedures', () => {
    expect(explain(sheet, 'd_1', given).plainWithNumbers).toBe('d_1 = 20 mm');
    expect(explain(sheet, 'rho', given)).toMatchObject({
      tex: '\\rho',
      source: 'common practice, no source',
    });
    const pull = { x: [0], y: [2] };
    const shown = explain(sheet, 't', { ...given, pull });
    expect(shown.plain).toBe('t from (pull, n)');
    expect(shown.plainWithNumbers).toBe('t from (pull, 1500 r/min) = 1.5 N·m');
    expect(shown.says).toBe('read off the curve at the speed');
  });

  test('derived: a symbol the sheet does not have is refused by name', () => {
    expect(() => explain(sheet, 'nope' as 'm', given)).toThrow("sheet 'shaft' has no symbol 'nope'");
  });
});

describe('derived: printing', () => {
  test.each([
    ['a - (b - c)', 'a − (b − c)', 'a - \\left(b - c\\right)'],
    ['(a - b) - c', 'a − b − c', 'a - b - c'],
    ['a / (b * c)', 'a / (b · c)', '\\frac{a}{b \\cdot c}'],
    ['a / b * c', 'a / b · c', '\\frac{a}{b} \\cdot c'],
    ['(a + b) * -c', '(a + b) · (−c)', '\\left(a + b\\right) \\cdot \\left(-c\\right)'],
    ['-a ^ 2', '−a²', '-a^{2}'],
    ['(-a) ^ 2', '(−a)²', '\\left(-a\\right)^{2}'],
    ['2 ^ -3', '2⁻³', '2^{-3}'],
    ['(a ^ b) ^ c', '(a^b)^c', '\\left(a^{b}\\right)^{c}'],
    ['a ^ (1 / 3)', 'a^(1 / 3)', 'a^{\\frac{1}{3}}'],
    ['sqrt(a + b)', '√(a + b)', '\\sqrt{a + b}'],
    ['min(a, -b)', 'min(a, −b)', '\\min\\left(a, -b\\right)'],
    ['eta_b * 6.6e-9', 'η_b · 6.6 × 10⁻⁹', '\\eta_{b} \\cdot 6.6 \\times 10^{-9}'],
    [
      'not (a < b or b >= c) ? 1 : 2',
      '1 if not (a < b or b ≥ c), otherwise 2',
      '\\begin{cases} 1 & \\text{if } \\text{not } \\left(a < b \\text{ or } b \\ge c\\right) \\\\ 2 & \\text{otherwise} \\end{cases}',
    ],
  ])('derived: %s', (expression, plain, tex) => {
    const tree = parseExpression(expression);
    expect(plainText(tree)).toBe(plain);
    expect(texText(tree, (key) => ({ tex: texKey(key), word: true }))).toBe(tex);
  });

  test('derived: keys and quantities as TeX', () => {
    expect(['L10', 'n_max', 'Omega', 'F_a_1', 'Kt'].map(texKey)).toEqual([
      'L_{10}',
      'n_{\\mathrm{max}}',
      '\\Omega',
      'F_{a,1}',
      '\\mathit{Kt}',
    ]);
    expect(quantityTex('6.6 × 10⁻⁵ kg·m²')).toBe(
      '6.6\\,{\\times}\\,10^{-5}\\,\\mathrm{kg}{\\cdot}\\mathrm{m}^{2}',
    );
    expect(numberTex(1e21)).toBe('1 \\times 10^{21}');
  });
});

describe('derived: a sheet described', () => {
  test('derived: every symbol in working order, with its formula and source', () => {
    const { symbols } = describeSheet(sheet);
    expect(symbols.map(({ key }) => key)).toEqual([...sheet.order]);
    const mass = symbols.find(({ key }) => key === 'm')!;
    expect(mass).toMatchObject({ kind: 'formula', unit: 'kg', source, dependsOn: ['d_1', 'L'] });
    expect(mass.formula?.plain).toBe('ρ · π · d_1² / 4 · L');
    expect(symbols.find(({ key }) => key === 'pull')!.over).toEqual({ name: 'speed', unit: 'r/min' });
    expect(symbols.find(({ key }) => key === 'rho')!.value).toBe('7850 kg/m³');
    expect(symbols.find(({ key }) => key === 't')!.reads).toEqual(['pull', 'n']);
  });
});
