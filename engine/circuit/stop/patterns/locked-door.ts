import { BOTH_IN_A_ROW, drivesFor, lay, type Pattern, startLoop } from './pattern.ts';

export const lockedDoor: Pattern = {
  id: 'locked-door',
  name: 'Spindle that runs down behind a locked door',
  need: 'A chuck or cutter that turns on for longer than it takes to open the door and reach in.',
  reach:
    'The drives brake, their power goes after the delay, and only then can the door be opened. The lock cannot let go while a contactor is in.',
  limits:
    'A lock that breaks lets the door be opened early; the door’s contacts still stop the machine. The lock waits a time, it does not see the spindle: without braking a heavy chuck turns longer than that. Set the time from a measured coast-down, or use a standstill monitor.',
  make: (motions) =>
    lay(
      'locked-door',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['S3 locked-door', 'Door with lock', { nc: '2' }],
          ['S4 button', 'Stop', { role: 'stop', no: '0', nc: '2' }],
          ['U1 safety-relay', 'Safety relay', { outputs: '3', delayed: '2', delay: '3 s' }],
          ['K1 contactor', 'Power of the drives, first', { main: '2', nc: '2' }],
          ['K2 contactor', 'Power of the drives, second', { main: '2', nc: '2' }],
          ['K4 delayed-relay', 'Waits before the door is let go', { no: '0', nc: '2', delay: '20 s' }],
        ],
        runs: [
          'F1.2 U1.A1',
          'U1.A2 G1.minus',
          'U1.C1a S1.11 / W1',
          'S1.12 S4.11 / W1',
          'S4.12 S3.11 / W1',
          'S3.12 U1.C1b / W1',
          'U1.C2a S1.21 / W2',
          'S1.22 S4.21 / W2',
          'S4.22 S3.21 / W2',
          'S3.22 U1.C2b / W2',
          ...startLoop('K1', 'K2'),
          'A1.enable U1.13',
          'F1.2 U1.23',
          'U1.24 A1.stop',
          'F1.2 U1.33',
          'U1.34 K4.A1',
          'K4.A2 G1.minus',
          'F1.2 U1.47',
          'F1.2 U1.57',
          'U1.48 K1.A1',
          'U1.58 K2.A1',
          'K1.A2 G1.minus',
          'K2.A2 G1.minus',
          'F1.2 K1.61',
          'K1.62 K4.51',
          'K4.52 S3.A1',
          'S3.A2 K2.61',
          'K2.62 G1.minus',
          ...BOTH_IN_A_ROW,
        ],
      },
      drivesFor(motions, {
        power: ['K2.2', 'K2.4'],
        enable: 'U1.14',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    ),
};
