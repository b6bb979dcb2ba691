import { headOf, MAINS } from './head.ts';
import { drivesFor, lay, type Pattern } from './pattern.ts';

export const lockedDoor: Pattern = {
  id: 'locked-door',
  name: 'Spindle that runs down behind a locked door',
  need: 'A chuck or cutter that turns on for longer than it takes to open the door and reach in.',
  reach:
    'The drives brake, their power goes after the delay, and only then can the door be opened. The lock cannot let go while a contactor is in.',
  limits:
    'A lock that breaks lets the door be opened early; the door’s contacts still stop the machine. The lock waits a time, it does not see the spindle: without braking a heavy chuck turns longer than that. Set the time from a measured coast-down, or use a standstill monitor.',
  make: (motions) => {
    const head = headOf({
      outputs: 3,
      late: '3 s',
      behind: {
        one: ['S4.11', 'S4.12', 'S3.11', 'S3.12'],
        two: ['S4.21', 'S4.22', 'S3.21', 'S3.22'],
      },
      devices: [
        ['S3 locked-door', 'Door with lock', { nc: '2' }],
        ['S4 button', 'Stop', { role: 'stop', no: '0', nc: '2' }],
      ],
      contactors: { main: '2', nc: '2' },
    });
    return lay(
      'locked-door',
      {
        elements: [
          ...head.elements,
          ['K4 delayed-relay', 'Waits before the door is let go', { no: '0', nc: '2', delay: '20 s' }],
        ],
        runs: [
          ...head.runs,
          'F1.2 U1.33',
          'U1.34 K4.A1',
          'K4.A2 G1.minus',
          'F1.2 K1.61',
          'K1.62 K4.51',
          'K4.52 S3.A1',
          'S3.A2 K2.61',
          'K2.62 G1.minus',
        ],
      },
      drivesFor(motions, {
        power: MAINS,
        enable: 'U1.14',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    );
  },
};
