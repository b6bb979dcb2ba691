import { screwPreload } from '../screw-preload.ts';
import { screwTorque } from '../screw-torque.ts';
import { holds } from './expect.ts';

const given = { Ph: '5 mm', eta: '0.9', eta_b: '0.9' };

holds('derived', 'torque for 2000 N on 5 mm of lead, driving and back-driven', 'energy balance of one turn', {
  sheet: screwTorque,
  given: { ...given, Fa: '2000 N', T_in: '1.76838826 N·m' },
  expected: { T: '1.76838826 N·m', T_b: '1.43239449 N·m', T_s: '1.76838826 N·m', F: '2000.00000 N' },
});

holds('derived', 'a load that pushes along is held back with less', 'energy balance of one turn', {
  sheet: screwTorque,
  given: { ...given, Fa: '-2000 N' },
  expected: { T_s: '-1.43239449 N·m' },
});

holds(
  'published',
  '17 N on 40 mm of lead at 0.9 takes 120 N·mm',
  'THK Ball Screw General Catalog, high-speed transfer equipment (horizontal)',
  {
    sheet: screwTorque,
    given: { Fa: '17 N', Ph: '40 mm', eta: '0.9' },
    expected: { T: ['120 N·mm', { absolute: '1 N·mm', because: 'the catalogue rounds to whole tens' }] },
  },
);

holds(
  'derived',
  'drag of a 32 × 10 mm nut preloaded with 1500 N',
  'JIS B 1192 reference torque, second calculation',
  {
    sheet: screwPreload,
    given: { d0: '32 mm', Ph: '10 mm', Fpr: '1500 N' },
    expected: { k: '0.15853309', T_pr: '0.37846988 N·m' },
  },
);

holds(
  'published',
  'a preloaded pair lifts off at 2.83 times its preload',
  'ball-screw maker’s preload page',
  {
    sheet: screwPreload,
    given: { d0: '32 mm', Ph: '10 mm', Fpr: '1 N' },
    expected: { F_off: '2.83 N' },
  },
);
