import { screwRolling } from '../screw-rolling.ts';
import { holds } from './expect.ts';

holds(
  'derived',
  'ball screw 25.5 × 5 mm, both ways',
  'tan(beta)/tan(beta + rho) and tan(beta - rho)/tan(beta)',
  {
    sheet: screwRolling,
    given: { d0: '25.5 mm', Ph: '5 mm', mu: '0.006' },
    expected: { beta: '3.571409 °', eta: '0.91195663', eta_b: '0.90352891' },
  },
);

holds(
  'derived',
  'planetary roller screw 30 × 10 mm, both ways',
  'tan(beta)/tan(beta + rho) and tan(beta - rho)/tan(beta)',
  {
    sheet: screwRolling,
    given: { d0: '30 mm', Ph: '10 mm', mu: '0.01' },
    expected: { eta: '0.91290015', eta_b: '0.90479221' },
  },
);
