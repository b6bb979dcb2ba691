/** Spindle and axis in step, in time: threads with a single point, and tapping with the spindle turned back. */
export { markAngles, nextMark, seenAngle } from './feedback.ts';
export {
  type AxisInStep,
  type ControlInStep,
  type FeedbackInStep,
  type InStepModel,
  type SpindleInStep,
  type TapStroke,
  type ThreadPass,
  type TorqueCurve,
  torqueAt,
} from './model.ts';
export { type SpindleEnergy, SpindleRun } from './spindle.ts';
export { type Stopping, stopFrom } from './stop.ts';
export { simulateTap, type TapRun } from './tap-run.ts';
export { type InStepOptions, simulateThread, type ThreadRun } from './thread-run.ts';
export type { InStepTrace } from './trace.ts';
