import {
  BOTH_COILS,
  BOTH_IN_A_ROW,
  CHANNELS,
  drivesFor,
  lay,
  type Pattern,
  startLoop,
  TWO_CONTACTORS,
} from './pattern.ts';

export const verticalAxis: Pattern = {
  id: 'vertical-axis',
  name: 'Vertical axis: the brake closes before the drive lets go',
  need: 'An axis that drops when nothing holds it.',
  reach:
    'The brake loses its current at once, the drive goes on holding until the delay is over; its coil is switched on both sides. It stays up when the power fails.',
  limits:
    'A brake that does not close lets it drop: test it, and block the axis before anybody reaches under it or takes motor or brake off. The drive must hold, braking, until the brake has closed.',
  make: (motions) =>
    lay(
      'vertical-axis',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['U1 safety-relay', 'Safety relay', { outputs: '4', delayed: '2', delay: '500 ms' }],
          ...TWO_CONTACTORS,
        ],
        runs: [
          ...CHANNELS,
          ...startLoop('K1', 'K2'),
          'A1.enable U1.13',
          'F1.2 U1.23',
          'U1.24 A1.stop',
          'F1.2 U1.33',
          'F1.2 U1.47',
          'F1.2 U1.57',
          'U1.44 G1.minus',
          'U1.48 K1.A1',
          'U1.58 K2.A1',
          ...BOTH_COILS,
          ...BOTH_IN_A_ROW,
        ],
      },
      drivesFor(
        motions.map((motion, n) =>
          n === 0 && motion.kind === 'axis' && !motions.some(({ settings }) => settings?.vertical === 'yes')
            ? { ...motion, settings: { ...motion.settings, vertical: 'yes' } }
            : motion,
        ),
        {
          power: ['K2.2', 'K2.4'],
          enable: 'U1.14',
          settings: { 'on-disable': 'brakes, then lets go', 'brake-output': 'yes', 'hold-up': '100 ms' },
          brake: (drive, brake) => [`U1.34 ${drive}.33`, `${drive}.34 ${brake}.A1`, `${brake}.A2 U1.43`],
        },
      ),
    ),
};
