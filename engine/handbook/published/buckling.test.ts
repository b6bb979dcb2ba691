import { describe, expect, test } from 'vitest';
import { SCREW_ENDS } from '../../tables/screw-ends.ts';
import { buckling } from '../buckling.ts';
import { dnLimit } from '../dn-limit.ts';
import { holds, work } from './expect.ts';

holds('derived', 'fixed 17.5 mm core over 1.1 m', 'Euler column, second calculation', {
  sheet: buckling,
  given: { nE: '4', d1: '17.5 mm', L: '1.1 m', k_allow: '0.5' },
  expected: {
    F_cr: '30943.090 N',
    F_buckle: '15471.545 N',
    F_yield: '35357.644 N',
    F_allow: '15471.545 N',
  },
});

holds('derived', 'a short thick core is limited by plain compression', 'the smaller limit counts', {
  sheet: buckling,
  given: { nE: '4', d1: '17.5 mm', L: '0.3 m', k_allow: '0.5' },
  expected: { F_allow: '35357.644 N' },
});

holds(
  'published',
  '116 N for each square millimetre of the squared core diameter',
  'THK catalogue, recalled',
  {
    sheet: buckling,
    given: { nE: '4', d1: '1 mm', L: '1 mm', k_allow: '0.5' },
    expected: {
      F_yield: [
        '116 N',
        { absolute: '0.6 N', because: '147 π/4 = 115.45 rounds to 115; the maker rounds up' },
      ],
    },
  },
);

describe('the printed factors', () => {
  for (const { id, buckling: ends } of SCREW_ENDS) {
    test(`published: shortcut factor ${ends.q} for ${id} comes out of the column formula (${ends.source})`, () => {
      const exact = work(buckling, { nE: `${ends.nE}`, d1: '1 mm', L: '1 m', k_allow: '0.5' });
      // q · (1 mm)⁴ / (1000 mm)² · 10⁴ N is a hundredth of q; printed figures round 4.99 to 5 and its quarter, from 5.1, to 1.3.
      expect(Math.abs(exact('F_buckle') * 100 - ends.q)).toBeLessThanOrEqual(0.06);
    });
  }
});

holds('derived', '70 000 on a 20.75 mm ball circle', 'division', {
  sheet: dnLimit,
  given: { DN: '70000', D: '20.75 mm' },
  expected: { n_DN: '3373.4940 r/min' },
});
