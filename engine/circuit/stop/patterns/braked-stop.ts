import { headOf, MAINS } from './head.ts';
import { drivesFor, lay, type Pattern } from './pattern.ts';

export const brakedStop: Pattern = {
  id: 'braked-stop',
  name: 'Two channels, power taken away late (stop category 1)',
  need: 'Heavy axes or a spindle that would coast too long: the drives brake first, then their power goes.',
  reach:
    'Braked by the drives in the usual case; the power goes after the delay whatever the drives and the control do.',
  limits:
    'Where the drive or its enable fails, it is driven on until the delay is over and coasts from there. Set the delay a little longer than the longest braking, no more.',
  make: (motions) =>
    lay(
      'braked-stop',
      headOf({ outputs: 2, late: '1 s' }),
      drivesFor(motions, {
        power: MAINS,
        enable: 'U1.14',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    ),
};
