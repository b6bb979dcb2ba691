import { headOf } from './head.ts';
import { BRAKE_RUNS, HOLDS, heldByBrake } from './held-by-brake.ts';
import { lay, type Pattern } from './pattern.ts';

export const verticalAxis: Pattern = {
  id: 'vertical-axis',
  name: 'Vertical axis: the brake closes before the drive lets go',
  need: 'An axis that drops when nothing holds it.',
  reach:
    'The brake loses its current at once, the drive goes on holding until the delay is over; its coil is switched on both sides. It stays up when the power fails.',
  limits:
    'A brake that does not close lets it drop: test it, and block the axis before anybody reaches under it or takes motor or brake off. The drive must hold, braking, until the brake has closed.',
  make: (motions) => {
    const head = headOf({ outputs: 4, late: HOLDS });
    return lay(
      'vertical-axis',
      { elements: head.elements, runs: [...head.runs, ...BRAKE_RUNS] },
      heldByBrake(motions),
    );
  },
};
