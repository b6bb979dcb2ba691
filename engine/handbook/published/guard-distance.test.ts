import { guardDistance } from '../guard-distance.ts';
import { holds } from './expect.ts';

const standard = 'ISO 13855:2010, S = K·T + C and S = K·T + 8 (d − 14), as quoted in light curtain manuals';
const exact = { absolute: '0.001 mm', because: 'whole numbers by the rule' } as const;

holds('published', 'guard without lock, 0.5 s', standard, {
  sheet: guardDistance,
  given: { T: '0.5 s', D_reach: '0 mm', d: '14 mm' },
  expected: { S_door: ['800 mm', exact] },
});
holds('published', 'door 400 mm away: 0.25 s', standard, {
  sheet: guardDistance,
  given: { T: '0.25 s', D_reach: '0 mm', d: '14 mm' },
  expected: { S_door: ['400 mm', exact] },
});
holds('published', 'spindle that coasts 4 s and 50 ms', standard, {
  sheet: guardDistance,
  given: { T: '4.05 s', D_reach: '0 mm', d: '14 mm' },
  expected: { S_door: ['6480 mm', exact] },
});
for (const [T, d, S] of [
  ['0.12 s', '30 mm', '368 mm'],
  ['0.32 s', '14 mm', '512 mm'],
  ['0.23 s', '30 mm', '500 mm'],
] as const)
  holds('published', `light curtain, ${T}, ${d}`, standard, {
    sheet: guardDistance,
    given: { T, d, D_reach: '0 mm' },
    expected: { S_curtain: [S, exact] },
  });
// Omron, user’s manual of a laser scanner, page 94; Daidisike, how to calculate the least distance of a light curtain.
for (const [T, d, S] of [
  ['0.58 s', '30 mm', '1056 mm'],
  ['0.165 s', '14 mm', '330 mm'],
] as const)
  holds(
    'published',
    `light curtain, ${T}, ${d}, as worked`,
    'ISO 13855:2010, worked examples of two makers',
    {
      sheet: guardDistance,
      given: { T, d, D_reach: '0 mm' },
      expected: { S_curtain: [S, exact] },
    },
  );
