import { describe, expect, test } from 'vitest';
import { SCREW_ENDS } from '../../tables/screw-ends.ts';
import { whirl } from '../whirl.ts';
import { whirlShortcut } from '../whirl-shortcut.ts';
import { holds, work } from './expect.ts';

const size = { d1: '17.5 mm', L: '1100 mm' };
const RPM = (2 * Math.PI) / 60;

holds('derived', 'whirling speed of a 17.5 mm core over 1.1 m', 'beam formula, second calculation', {
  sheet: whirl,
  given: { ...size, lambda: '3.927', k_allow: '0.8' },
  expected: { n_c: '2727.6249 r/min', n_allow: '2182.1000 r/min' },
});

holds(
  'published',
  'allowed speed of the worked example, 2180 r/min',
  'THK Ball Screw General Catalog, high-speed transfer equipment (horizontal)',
  {
    sheet: whirlShortcut,
    given: { ...size, f: '15.1' },
    expected: { n_allow: ['2180 r/min', { absolute: '5 r/min', because: 'printed to whole tens' }] },
  },
);

holds('derived', 'the shortcut to more digits', '15.1 · 17.5 / 1100² · 10⁷', {
  sheet: whirlShortcut,
  given: { ...size, f: '15.1' },
  expected: { n_allow: '2183.884 r/min' },
});

describe('the printed factors', () => {
  for (const { id, whirl: ends } of SCREW_ENDS) {
    test(`published: shortcut factor ${ends.f} for ${id} comes out of the beam formula (${ends.source})`, () => {
      const exact = work(whirl, { d1: '1 mm', L: '1 m', lambda: `${ends.lambda}`, k_allow: '0.8' });
      // f · 1 mm / (1000 mm)² · 10⁷ is ten times f in r/min; f is printed to a tenth.
      expect(Math.abs(exact('n_allow') / RPM / 10 - ends.f)).toBeLessThanOrEqual(0.05);
    });
  }

  const frequencyEquation: Record<string, (x: number) => number> = {
    'fixed-free': (x) => Math.cos(x) * Math.cosh(x) + 1,
    'supported-supported': (x) => Math.sin(x),
    'fixed-supported': (x) => Math.tan(x) - Math.tanh(x),
    'fixed-fixed': (x) => Math.cos(x) * Math.cosh(x) - 1,
  };
  for (const { id, whirl: ends } of SCREW_ENDS) {
    test(`derived: ${ends.lambda} for ${id} is a root of the beam’s frequency equation to its last digit`, () => {
      const f = frequencyEquation[id]!;
      expect(Math.sign(f(ends.lambda - 0.0005))).toBe(-Math.sign(f(ends.lambda + 0.0005)));
    });
  }
});
