/** Advice on whole parts and the whole machine. */

export type { CostLine } from './cost-lines.ts';
export {
  emptyDuties,
  guessedDuties,
  isSize,
  type ProposedFact,
  proposeDuty,
  SIZES,
  type Size,
  sizeByWeight,
} from './duty.ts';
export {
  type Diagnosis,
  diagnose,
  type FaultTest,
  SKIP,
  SYMPTOM,
  SYMPTOMS,
  type Symptom,
} from './faults/index.ts';
export { adviseOn, type Subject, seekAdvice, seekAllAdvice, subjects } from './keep.ts';
export type { Stopper } from './showstoppers.ts';
export type { Bill, Change, Cost, PartAdvice, Reason, Recommendation, Swap, TestResult } from './types.ts';
export { type Total, type Worth, worthOf } from './worth.ts';
