/** Advice on whole parts and the whole machine. */
export { adviseOn, type Subject, seekAdvice, seekAllAdvice, subjects } from './keep.ts';
export type { Bill, Change, Cost, PartAdvice, Reason, Recommendation, Swap, TestResult } from './types.ts';
