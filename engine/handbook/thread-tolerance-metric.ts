import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const iso =
  'ISO 965-1:1998, formulas of clause 13 (from memory; the tables they give were compared with published ones)';

export const threadToleranceMetric = defineSheet({
  id: 'thread-tolerance-metric',
  title: 'Tolerances of metric threads, grade 6',
  about:
    'How much a thread of grade 6 may vary. The standard rounds each result to a preferred number (series R40); in a few places it prints another one. The other grades are fixed steps away. Trapezoidal threads use the same formulas.',
  symbols: {
    P: input('pitch', 'mm', { domain: 'positive' }),
    d_m: input('middle of the diameter range', 'mm', {
      domain: 'positive',
      tex: 'd_m',
      note: 'The square root of lowest times highest diameter of the range: 5.6 to 11.2 mm gives 7.92 mm.',
    }),
    mm1: constant('one millimetre', 'mm', '1 mm', 'definition'),
    um1: constant('one micrometre', 'µm', '1 µm', 'definition'),
    T_d2: formula(
      'tolerance of the bolt’s pitch diameter',
      'µm',
      '90 * um1 * (P / mm1)^0.4 * (d_m / mm1)^0.1',
      iso,
      { tex: 'T_{d2}' },
    ),
    T_D2: formula('tolerance of the nut’s pitch diameter', 'µm', '1.32 * T_d2', iso, { tex: 'T_{D2}' }),
    T_d: formula(
      'tolerance of the bolt’s outside',
      'µm',
      '180 * um1 * (P / mm1)^(2 / 3) - 3.15 * um1 / sqrt(P / mm1)',
      iso,
      { tex: 'T_d' },
    ),
    T_D1: formula(
      'tolerance of the nut’s bore',
      'µm',
      'P < 0.9 * mm1 ? 433 * um1 * (P / mm1) - 190 * um1 * (P / mm1)^1.22 : 230 * um1 * (P / mm1)^0.7',
      iso,
      { tex: 'T_{D1}' },
    ),
    g: formula('gap of position g', 'µm', '15 * um1 + 11 * um1 * (P / mm1)', iso, {
      says: 'How far the bolt stays below the nominal size; position h has none.',
    }),
    e: formula('gap of position e', 'µm', '50 * um1 + 11 * um1 * (P / mm1)', iso),
    f: formula('gap of position f', 'µm', '30 * um1 + 11 * um1 * (P / mm1)', iso),
  },
});
