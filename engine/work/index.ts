/** What the machine must cut, judged on the machine as it is. */
export { chartFor, type WorkChart, type WorkChartPoint, type WorkChartRow } from './chart.ts';
export type { CutLink } from './cut-bends.ts';
export type { CutDetail } from './cuts.ts';
export { type DrawOptions, judgeDrawn, seekDrawn, WORK_LANES } from './drawn.ts';
export { fieldsOf, WORK_FIELDS, WORK_KINDS, type WorkField, type WorkKind } from './fields.ts';
export {
  LINKS,
  type Link,
  sayChance,
  sayMargin,
  sayRange,
  sayShare,
  type WorkFinding,
  worstOf,
} from './finding.ts';
export { FOLLOWING_DRAWS } from './following.ts';
export {
  type InStepAnswer,
  type InStepTap,
  type InStepThread,
  type NotInStep,
  runInStep,
} from './in-step.ts';
export { type InStepRow, inStepHeads, inStepRows, inStepWords } from './in-step-rows.ts';
export { type JudgedWork, judgeOne, judgeWork } from './judge.ts';
export { highestAllowed, type LinkLimit, noPermission, spindleRefused } from './limits.ts';
export { sayNeeds, type WorkMachine, workMachine, workMachineOf } from './machine.ts';
export type { MilledDetail } from './milled.ts';
export { newWorkId } from './new.ts';
export { type OddField, oddFields } from './odd.ts';
export type { Reversal } from './tap-reversal.ts';
export type { TapSize } from './tap-sizes.ts';
export type { TapDetail } from './taps.ts';
export type { ThreadDetail } from './threads.ts';
export type * from './types.ts';
export type { WayRound } from './ways-round.ts';
