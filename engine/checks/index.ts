/** Every working and every check. Add one: its file and one line here. */
import { bus } from './bus.ts';
import type { Check } from './check.ts';
import { holding } from './holding.ts';
import { motion } from './motion.ts';
import { motorConstants } from './motor-constants.ts';
import { pulses } from './pulses.ts';
import { screw } from './screw.ts';
import { servoAxis } from './servo.ts';
import { spindleAngle } from './spindle-angle.ts';
import { spindleChain } from './spindle-chain.ts';
import { spindleDrives } from './spindle-drive.ts';
import { spindleSpeeds } from './spindle-speed.ts';
import { spindleTimes } from './spindle-time.ts';
import { stepperAxis } from './stepper.ts';
import { suits } from './suits.ts';
import type { Working } from './working.ts';

/** What one file brings. */
export interface Subject {
  readonly workings: readonly Working[];
  readonly checks: readonly Check[];
}

/** In the order in which findings of equal weight are shown: the chain from command to slide, then that of the spindle. */
const SUBJECTS: readonly Subject[] = [
  suits,
  pulses,
  servoAxis,
  stepperAxis,
  motorConstants,
  bus,
  motion,
  screw,
  holding,
  spindleChain,
  spindleDrives,
  spindleSpeeds,
  spindleTimes,
  spindleAngle,
];

export const WORKINGS: readonly Working[] = SUBJECTS.flatMap((subject) => subject.workings);
export const CHECKS: readonly Check[] = SUBJECTS.flatMap((subject) => subject.checks);
