/** Axes that drop: their brake closes before the drive lets go. Fits a head whose contactors let go late, with four outputs. */
import { MAINS } from './head.ts';
import { drivesFor, isDropping, type MotionWanted } from './pattern.ts';

/** How long the drives go on holding, braking, once the brake has lost its current. */
export const HOLDS = '500 ms';

/** The brakes' coils are switched on both sides: before the drive's own contact, and behind the coil. */
export const BRAKE_RUNS: readonly string[] = ['F1.2 U1.33', 'U1.44 G1.minus'];

/** Drives that brake and hold until their power goes, with a brake for each axis that drops. Where none is said to, the first. */
export const heldByBrake = (motions: readonly MotionWanted[]): ReturnType<typeof drivesFor> =>
  drivesFor(
    motions.map((motion, n) =>
      n === 0 && motion.kind === 'axis' && !motions.some(isDropping)
        ? { ...motion, settings: { ...motion.settings, vertical: 'yes' } }
        : motion,
    ),
    {
      power: MAINS,
      enable: 'U1.14',
      settings: { 'on-disable': 'brakes, then lets go', 'brake-output': 'yes', 'hold-up': '100 ms' },
      brake: (drive, brake) => [`U1.34 ${drive}.33`, `${drive}.34 ${brake}.A1`, `${brake}.A2 U1.43`],
    },
  );
