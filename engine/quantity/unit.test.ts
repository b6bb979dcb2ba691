import fc from 'fast-check';
import { unit as outside } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { adapt } from './adapt.ts';
import { convert, describeDimension, parseUnit, sameDimension, toSI, unitOf } from './index.ts';
import type { Dimension } from './types.ts';
import { lookUp, RUN_TOGETHER, spellings } from './unit-table.ts';

/** Ours on the left, the outside library's spelling on the right. Angles are radians in both. */
const SHARED: readonly (readonly [string, string])[] = [
  ['mm', 'mm'],
  ['cm', 'cm'],
  ['m', 'm'],
  ['km', 'km'],
  ['µm', 'um'],
  ['nm', 'nm'],
  ['in', 'inch'],
  ['thou', 'mil'],
  ['ft', 'ft'],
  ['L', 'litre'],
  ['kg', 'kg'],
  ['g', 'g'],
  ['t', 'tonne'],
  ['lb', 'lbm'],
  ['oz', 'oz'],
  ['N', 'N'],
  ['kN', 'kN'],
  ['lbf', 'lbf'],
  ['kgf', 'kgf'],
  ['s', 's'],
  ['ms', 'ms'],
  ['µs', 'us'],
  ['min', 'minute'],
  ['h', 'hour'],
  ['Hz', 'Hz'],
  ['kHz', 'kHz'],
  ['MHz', 'MHz'],
  ['V', 'V'],
  ['mV', 'mV'],
  ['kV', 'kV'],
  ['A', 'A'],
  ['mA', 'mA'],
  ['Ω', 'ohm'],
  ['kohm', 'kohm'],
  ['Mohm', 'Mohm'],
  ['mΩ', 'mohm'],
  ['H', 'H'],
  ['mH', 'mH'],
  ['µH', 'uH'],
  ['F', 'F'],
  ['µF', 'uF'],
  ['C', 'C'],
  ['T', 'T'],
  ['Wb', 'Wb'],
  ['J', 'J'],
  ['W', 'W'],
  ['kW', 'kW'],
  ['hp', 'hp'],
  ['Pa', 'Pa'],
  ['MPa', 'MPa'],
  ['GPa', 'GPa'],
  ['bar', 'bar'],
  ['psi', 'psi'],
  ['K', 'K'],
  ['rad', 'rad'],
  ['mrad', 'mrad'],
  ['deg', 'deg'],
  ['arcmin', 'arcmin'],
  ['arcsec', 'arcsec'],
  ['rev', 'cycle'],
  ['N·m', 'N m'],
  ['mN·m', 'mN m'],
  ['N·cm', 'N cm'],
  ['lb-in', 'lbf inch'],
  ['lb-ft', 'lbf ft'],
  ['ft-lb', 'ft lbf'],
  ['kg-cm', 'kgf cm'],
  ['kgf·cm', 'kgf cm'],
  ['kg·m²', 'kg m^2'],
  ['kg-cm²', 'kg cm^2'],
  ['g·cm²', 'g cm^2'],
  ['lb-in²', 'lbm inch^2'],
  ['oz-in²', 'oz inch^2'],
  ['lb-in-s²', 'lbf inch s^2'],
  ['kgf·cm·s²', 'kgf cm s^2'],
  ['Nm/A', 'N m / A'],
  ['lb-in/A', 'lbf inch / A'],
  ['V·s/rad', 'V s / rad'],
  ['r/min', 'cycle / minute'],
  ['rad/s', 'rad / s'],
  ['deg/s', 'deg / s'],
  ['V/krpm', '0.001 V / (cycle / minute)'],
  ['mm/min', 'mm / minute'],
  ['m/min', 'm / minute'],
  ['ipm', 'inch / minute'],
  ['m/s', 'm / s'],
  ['mm/rev', 'mm / cycle'],
  ['in/rev', 'inch / cycle'],
  ['m/s²', 'm / s^2'],
  ['mm/s²', 'mm / s^2'],
  ['m/s³', 'm / s^3'],
  ['N/µm', 'N / um'],
  ['N/mm', 'N / mm'],
  ['kg/m³', 'kg / m^3'],
  ['K/W', 'K / W'],
  ['W/(m·K)', 'W / (m K)'],
  ['lb/in²', 'lbf / inch^2'],
];

/** The outside library's SI value: its parts are kilogram, metre, second, ampere, kelvin, radian. */
function outsideScale(text: string): number {
  const u = outside(/^\d/.test(text) ? text : `1 ${text}`);
  // biome-ignore lint/suspicious/noExplicitAny: the library's `value` (in its base units) is not in its types.
  return (u as any).value as number;
}

/** Its base dimensions in its own order. */
function outsideDimension(text: string): number[] {
  // biome-ignore lint/suspicious/noExplicitAny: the library's `dimensions` are not in its types.
  return (outside(/^\d/.test(text) ? text : `1 ${text}`) as any).dimensions as number[];
}

describe('published/outside: general-purpose unit library', () => {
  test.each(SHARED)('%s', (ours, theirs) => {
    const unit = unitOf(ours);
    // The library keeps psi and horsepower rounded to some ten digits; ours follow the definitions.
    expect(unit.scale / outsideScale(theirs)).toBeCloseTo(1, ours === 'hp' || ours === 'psi' ? 9 : 12);
    const [mass, length, time, current, temperature] = outsideDimension(theirs);
    const d = unit.dimension;
    expect([d.kg, d.m, d.s, d.A, d.K]).toEqual([mass, length, time, current, temperature]);
  });

  test('°C and °F agree with the library over a range of temperatures', () => {
    for (const t of [-40, 0, 20, 37.5, 100, 451]) {
      expect(toSI(t, '°C')).toBeCloseTo(outside(t, 'degC').toNumber('K'), 9);
      expect(toSI(t, '°F')).toBeCloseTo(outside(t, 'degF').toNumber('K'), 9);
    }
  });
});

describe('published: exact by definition of inch, pound, standard gravity', () => {
  // Tolerance: half the last printed digit.
  test.each([
    ['V/krpm', 'V·s/rad', 0.00954929658551, 5e-15],
    ['V/krpm', 'ozf·in/A', 1.352294345, 5e-10],
    ['V/krpm', 'lbf·in/A', 0.08451839656, 5e-12],
    ['ozf·in', 'N·m', 0.00706155181423, 5e-15],
    ['lbf·in', 'N·m', 0.112984829028, 5e-13],
    ['lbf·ft', 'N·m', 1.35581794833, 5e-12],
    ['kgf·cm', 'N·m', 0.0980665, 5e-8],
    ['lbf·in·s²', 'kg·m²', 0.112984829028, 5e-13],
    ['ozf·in·s²', 'kg·m²', 0.00706155181423, 5e-15],
    ['kgf·cm·s²', 'kg·m²', 0.0980665, 5e-8],
    ['lb·in²', 'kg·m²', 0.0002926396534, 5e-14],
    ['lbf', 'N', 4.4482216152605, 5e-14],
    ['in', 'm', 0.0254, 0],
    ['PS', 'W', 735.49875, 1e-12],
  ])('1 %s in %s', (from, to, printed, tolerance) => {
    expect(Math.abs(convert(toSI(1, from), to) - printed)).toBeLessThanOrEqual(tolerance);
  });
});

describe('derived: motor constants and inertias from plate units (M-1a to M-1c), relative tolerance 1e-6', () => {
  test.each([
    ['M-1a: voltage constant', 36.65, 'V/krpm', 'V·s/rad', 0.34998172],
    ['M-1b: torque constant', 36.65, 'V/krpm', 'ozf in/A', 49.5615877],
    ['M-1b: torque constant, pounds', 36.65, 'V/1000 r/min', 'lbf·in/A', 3.0975992],
    ['M-1c: inertia', 0.0075, 'lb-in-s²', 'kg·m²', 0.000847386218],
    ['M-1c: inertia, metric', 0.0123, 'kgf·cm·s²', 'kg·m²', 0.00120621795],
  ])('%s', (_, number, from, to, expected) => {
    expect(convert(toSI(number, from), to) / expected).toBeCloseTo(1, 6);
  });
});

const scaleOf = (text: string): number => unitOf(text).scale;
const dimensionOf = (text: string): Dimension => unitOf(text).dimension;

describe('derived: one unit, many spellings', () => {
  test.each([
    ['N·m', ['Nm', 'N m', 'N.m', 'N-m', 'N*m', 'N×m', 'NM', 'N\u00a0m', 'newton metre', 'W·s']],
    [
      'oz-in-s²',
      ['oz-in-sec^2', 'oz-in-sec2', 'OZ-IN-SEC²', 'ozf·in·s^2', 'oz.in.s2', 'oz in sec**2', 'ozf-in-s²'],
    ],
    [
      'V/krpm',
      [
        'V/KRPM',
        'V/1000rpm',
        'V/1000 rpm',
        'V/1000 r/min',
        'V/1000 min-1',
        'V/1000 min⁻¹',
        'V per 1000 rpm',
        'mV/rpm',
        'V/(1000 r/min)',
        'V/1000 r.p.m.',
      ],
    ],
    ['kg·cm²', ['kgcm²', 'kg-cm2', 'kg cm^2', 'KG-CM²', '(kg)(cm)^2']],
    ['µm', ['um', 'μm', 'micron', 'micrometre', 'micrometer']],
    ['Ω', ['ohm', 'Ohm', 'OHM', '\u2126', 'ohms', 'V/A']],
    ['r/min', ['rpm', 'RPM', 'rev/min', 'REV/MIN', 'r.p.m.', 'U/min', 'turn/min', 'rev per minute']],
    ['m/s²', ['m/s/s', 'm/s^2', 'm·s⁻²', 'm s-2', 'm/(s·s)', 'm per s per s']],
    ['in', ['"', '″', '”', 'inch', 'INCH', 'inches', 'in.', 'IN']],
    ['lb-ft', ['lbf-ft', 'ft-lb', 'ft·lbf', 'ftlb', 'LB-FT', 'lb.ft.', 'foot-pound']],
    ['1/K', ['K^-1', 'K⁻¹', 'K-1', '1/°C', 'per K']],
    ['W/K', ['W/°C', 'W/deg C', 'V·A/K']],
    ['°C', ['degC', 'deg C', '℃', '° C', 'ºC', 'celsius', 'degrees C']],
    ['V', ['volt', 'VOLTS', 'V DC', 'VDC', 'Vac']],
    ['N·m/W^0.5', ['N·m/√W', 'Nm/W^(1/2)', 'Nm·W^-0.5']],
    ['MΩ', ['Mohm', 'MOHM', 'megohm']],
    ['kW', ['KW', 'kilowatt', 'kVA', 'kV·A']],
  ])('%s', (unit, others) => {
    for (const other of others) {
      const read = parseUnit(other);
      expect(read.ok, other).toBe(true);
      expect(scaleOf(other) / scaleOf(unit), other).toBeCloseTo(1, 12);
      expect(dimensionOf(other), other).toEqual(dimensionOf(unit));
      expect(unitOf(other).offset, other).toBe(unitOf(unit).offset);
    }
  });

  test('flywheel effect GD² is four times the inertia, kilograms-force being the rotor’s kilograms', () => {
    for (const text of ['kgf·m2 GD2', 'kg·m² GD²', 'GD² kgf·m²', 'kgf-m² (GD²)', 'kp m² GD2'])
      expect(scaleOf(text), text).toBe(0.25);
    expect(parseUnit('N·m GD²').ok).toBe(false);
  });

  test('a hyphen binds closer than a stroke; a stroke followed by a product is refused', () => {
    expect(scaleOf('rpm/oz-in')).toBeCloseTo(scaleOf('rpm') / scaleOf('oz-in'), 9);
    expect(dimensionOf('rpm/oz-in')).toEqual(dimensionOf('rpm/(N·m)'));
    const read = parseUnit('W/m·K');
    expect(read.ok ? '' : read.problem).toMatchObject({ code: 'ambiguous', readings: ['W/(m·K)', 'W·K/m'] });
  });

  test('ounces, pounds and kilograms are force or mass as the compound needs', () => {
    expect(describeDimension(dimensionOf('kg'))).toBe('a mass');
    expect(describeDimension(dimensionOf('oz-in'))).toBe('a torque or an energy');
    expect(describeDimension(dimensionOf('oz-in²'))).toBe('an inertia');
    expect(describeDimension(dimensionOf('kg/cm²'))).toBe('a pressure or an elastic modulus');
    expect(describeDimension(dimensionOf('kg/m'))).toBe('a mass per length');
    expect(describeDimension(dimensionOf('kg·m/s²'))).toBe('a force');
    expect(scaleOf('oz-in') / scaleOf('oz-in²')).toBeCloseTo(9.80665 / 0.0254, 9);
  });
});

describe('derived: units met on plates and in catalogues', () => {
  // biome-ignore format: one quantity a line
  test.each([
    ['a length', 'mm cm m µm um in inch " thou mil ft'],
    ['a mass', 'kg g lb oz t'],
    ['a force', 'N kN lbf ozf kgf kp'],
    ['a torque or an energy', 'N·m Nm mN·m N·cm oz-in oz.in ozf-in lb-in lb-ft ft-lb kg-cm kgf·cm J'],
    ['an inertia', 'kg·m² kg-cm² g·cm² oz-in-s² oz-in-sec^2 lb-in-s² lb-in² oz-in² kgf·cm·s²'],
    ['a voltage', 'V kV mV'],
    ['a current', 'A mA'],
    ['a resistance', 'Ω ohm kohm Mohm mΩ'],
    ['an inductance', 'H mH µH'],
    ['a capacitance', 'F mF µF uF'],
    ['a voltage per turning speed', 'V/krpm V/1000rpm V·s/rad mV/rpm'],
    ['a torque per current', 'Nm/A oz-in/A lb-in/A'],
    ['a turning speed', 'r/min rpm rev/min rad/s deg/s turn/s'],
    ['a frequency', 'Hz kHz MHz'],
    ['a time', 's ms µs us min h sec minute'],
    ['a power', 'W kW hp PS VA kVA'],
    ['a temperature', '°C K °F'],
    ['a speed', 'mm/min m/min in/min ipm m/s mm/s'],
    ['a length per turn', 'mm/rev in/rev'],
    ['an acceleration', 'm/s² mm/s² g_n'],
    ['a jerk', 'm/s³'],
    ['a stiffness', 'N/µm N/mm'],
    ['a pressure or an elastic modulus', 'GPa MPa psi'],
    ['a density', 'kg/m³'],
    ['a change per degree', '1/K ppm/K'],
    ['a plain number', '% 1'],
    ['an angle', 'deg ° rad turn rev arcsec arcmin'],
    ['a number of counts per length', 'counts/mm'],
    ['a number of pulses per turn', 'pulses/rev ppr'],
    ['a number of lines per turn', 'lines/rev'],
    ['a number of steps per length', 'steps/mm'],
    ['a thermal resistance', 'K/W °C/W'],
    ['a number of lines', 'lines'],
    ['a number of counts', 'counts'],
    ['a number of pulses', 'pulses'],
    ['a number of steps', 'steps'],
    ['a number of teeth', 'teeth'],
    ['a number of starts', 'starts'],
    ['a number of cycles', 'cycles'],
  ])('%s: %s', (words, units) => {
    for (const text of units.split(' ')) expect(describeDimension(dimensionOf(text)), text).toBe(words);
  });
});

describe('derived: refused units say what would be right', () => {
  test.each([
    ['', 'empty', 'mm'],
    ['hertzz', 'unit-unknown', 'hertz'],
    ['millimetr', 'unit-unknown', 'millimetre'],
    ['N·mm/foo', 'unit-unknown', undefined],
    ['5 TPI', 'malformed', undefined],
    ['m^', 'malformed', undefined],
    ['m^99', 'malformed', undefined],
    ['((m', 'malformed', undefined],
    ['a)b', 'malformed', undefined],
    ['m)', 'malformed', undefined],
    ['/', 'malformed', undefined],
    ['per', 'malformed', undefined],
    ['cpr', 'ambiguous', 'counts/rev'],
    ['ton', 'ambiguous', 't'],
    ['mm$', 'unit-unknown', undefined],
    ['🙂', 'unit-unknown', undefined],
    ['constructor', 'unit-unknown', undefined],
    ['__proto__', 'unit-unknown', undefined],
    ['toString', 'unit-unknown', undefined],
  ])('%s', (text, code, suggestion) => {
    const read = parseUnit(text);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problem.code).toBe(code);
    expect(read.problem.message).toMatch(/\.$|\?$/);
    if (suggestion) expect(read.problem.suggestion).toBe(suggestion);
    if (read.problem.suggestion && code === 'unit-unknown')
      expect(parseUnit(read.problem.suggestion).ok || text.includes('foo')).toBe(true);
  });

  test('a megabyte is refused at once and not repeated', () => {
    const read = parseUnit('m'.repeat(1_000_000));
    expect(read.ok ? '' : read.problem.code).toBe('too-long');
    expect(read.ok ? 0 : read.problem.message.length).toBeLessThan(200);
  });
});

const spelling = fc.constantFrom(...spellings().filter((s) => !/^['"]$/.test(s)), ...RUN_TOGETHER.keys());
const compound = fc
  .array(
    fc.record({
      spelling,
      power: fc.constantFrom('', '²', '^3', '^-1'),
      joint: fc.constantFrom('·', '-', ' '),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .chain((above) => fc.option(spelling).map((below) => ({ above, below })))
  .map(({ above, below }) => {
    const top = above.map((p, i) => (i === 0 ? '' : p.joint) + p.spelling + p.power).join('');
    return below === null ? top : `${top}/${below}`;
  });

describe('derived: properties', () => {
  test('every spelling reads, and its printed symbol reads back as the same unit', () => {
    for (const text of [...spellings(), ...RUN_TOGETHER.keys()]) {
      const unit = unitOf(text);
      const again = unitOf(unit.symbol);
      expect([again.scale, again.offset, again.dimension], text).toEqual([
        unit.scale,
        unit.offset,
        unit.dimension,
      ]);
    }
  });

  test('the symbol of any compound reads back as the same unit', () => {
    fc.assert(
      fc.property(compound, (text) => {
        const read = parseUnit(text);
        if (!read.ok) return; // too large, or a hyphen before an exponent
        const again = parseUnit(read.value.symbol);
        expect(again.ok, read.value.symbol).toBe(true);
        if (!again.ok) return;
        expect(again.value.scale / read.value.scale).toBeCloseTo(1, 12);
        expect(
          sameDimension(again.value.dimension, read.value.dimension),
          `${text} → ${read.value.symbol}`,
        ).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });

  test('any text gives a finite unit or a problem', () => {
    const pieces = fc.constantFrom(
      'm',
      'N',
      '/',
      '^',
      '²',
      '(',
      ')',
      '-',
      '·',
      ' ',
      'per',
      '1000',
      '°',
      '√',
      'GD2',
      'k',
      '.',
      '9',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'grapheme', maxLength: 300 }),
          fc.array(pieces, { maxLength: 40 }).map((p) => p.join('')),
        ),
        (text) => {
          const read = parseUnit(text);
          if (read.ok) {
            expect(Number.isFinite(read.value.scale) && read.value.scale > 0).toBe(true);
            expect(Object.values(read.value.dimension)).not.toContain(Number.NaN);
          } else expect(read.problem.message).toBeTruthy();
        },
      ),
      { numRuns: 1500 },
    );
  });

  test('adapting there and back changes nothing', () => {
    const pairs = [
      ['counts', 'lines'],
      ['counts/mm', 'lines/mm'],
      ['lines', 'lines/rev'],
      ['mm', 'mm/rev'],
      ['V/krpm', 'N·m/A'],
      ['pulses', 'steps'],
      ['Hz', 'steps/s'],
      ['counts', 'lines/rev'],
    ] as const;
    for (const [a, b] of pairs) {
      const there = adapt(unitOf(a), unitOf(b));
      const back = adapt(unitOf(b), unitOf(a));
      if (!there || !back || 'why' in there || 'why' in back) throw new Error(`${a} and ${b} do not adapt`);
      expect(there.factor * back.factor, `${a} ${b}`).toBeCloseTo(1, 12);
    }
  });

  test('a spelling alone never has two meanings of one dimension', () => {
    for (const text of spellings()) {
      const meanings = lookUp(text)!.meanings;
      for (const [i, a] of meanings.entries())
        for (const b of meanings.slice(i + 1))
          expect(sameDimension(a.dimension, b.dimension), text).toBe(false);
    }
  });
});
