/** From a refit to its findings, their working, their remedies, and what to find out next. */
export { answer, worstFirst } from './answer.ts';
export { type Assessment, assess } from './assess.ts';
export { withFact, withOption } from './change.ts';
export { assessDrawn } from './drawn.ts';
export { type DrawnScopes, drawScopes, type ScopeFor } from './drawn-scope.ts';
export type {
  Amount,
  Doubt,
  Finding,
  NotAsked,
  Question,
} from './finding.ts';
export { type Carried, next, type Step } from './next.ts';
export { type Changed, type Remedy, remedies, seekRemedies } from './remedies.ts';
export { marginText } from './say-margin.ts';
export { policyFault, setPath, setPolicy } from './set-policy.ts';
export { type Spread, type Spreading, type SpreadOptions, seekSpread, spread } from './spread.ts';
export {
  type FactRow,
  type PolicyRow,
  type StatedRow,
  sayValue,
  type Why,
  type WorkStep,
  why,
} from './why.ts';
export {
  heavyGuesses,
  sayBoth,
  sayChain,
  sayDoubt,
  sayDoubted,
  sayDoubts,
  sayGuesses,
  sayPath,
  sayRounded,
} from './words.ts';
