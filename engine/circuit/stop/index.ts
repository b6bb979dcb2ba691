/** Stop circuits: what really happens when somebody asks a machine to stop, with every single fault. */

export {
  type Act,
  act,
  actOn,
  actsOf,
  canAct,
  demandsOf,
  handsOf,
  POWER_OFF,
  POWER_ON,
  standingOf,
  startActs,
  started,
  takeOver,
} from './acts.ts';
export {
  analyseStop,
  type FaultReport,
  lookThrough,
  NOT_EXAMINED,
  type StopAnalysis,
} from './analyse.ts';
export { NO_CIRCUIT, type StopAnswer, sayStopAnswer, stopAnswer } from './answer.ts';
export { CIRCUIT_SETTINGS } from './answers.ts';
export { AS_WIRED, asWiredFinding, type Difference, differencesOf } from './as-wired/index.ts';
export { type Baseline, baselineOf } from './baseline.ts';
export { sayJudgement, whatCatches } from './catch.ts';
export {
  type Chains,
  chainsOf,
  type Feed,
  type FeedNow,
  type FeedStanding,
  feedNow,
  type Held,
  sayFeed,
} from './chains.ts';
export { compileStop, terminalsOf } from './compile.ts';
export type { AxisDistances, Mark } from './distances.ts';
export {
  addElement,
  cutWire,
  EMPTY_CIRCUIT,
  joinTerminals,
  removeElement,
  setPlace,
  wholeCircuit,
} from './edit.ts';
export type { Estimate } from './estimate.ts';
export { FAULT_GROUPS, type FaultGroup, groupOf } from './fault-groups.ts';
export { type NamedFault, singleFaults } from './faults.ts';
export type { StopFinding } from './findings.ts';
export type { GuardDistance } from './guards.ts';
export { type Judgement, judge, type Verdict } from './judge.ts';
export { isKind, KINDS, kindSpec } from './kinds.ts';
export type { Model } from './model.ts';
export { DROPS, MOTION_SETTINGS } from './motion.ts';
export type {
  MotionNumbers,
  NumberRow,
  Offer,
  Offers,
  Origin,
} from './motion-numbers.ts';
export { type Fault, networkOf } from './network.ts';
export { StopOrder } from './order.ts';
export { dangerousPairs, type FaultPair, type PairProgress } from './pairs.ts';
export { type MotionWanted, motionsOf, ONLY_TO_LOOK, PATTERNS, type Pattern } from './patterns/index.ts';
export { type Ranked, rankPatterns, type Traits, torqueOffOf, traitsOf } from './patterns/rank.ts';
export { atOnce, type LookProgress } from './pieces.ts';
export { length as sayLength, sayStopping, stoppingVerdict } from './say-stopping.ts';
export { Simulation } from './simulate.ts';
export { copyState, type State } from './state.ts';
export { type DemandStops, SAY_CATEGORY, type Stopping, stoppingOf } from './stops.ts';
export { testSheetHtml, testSheetText } from './test-paper.ts';
export {
  type Built,
  type BuiltBus,
  type BuiltWire,
  type TestLine,
  type TestSheet,
  testSheet,
} from './test-sheet.ts';
export { type Race, sayState, type Truth, type TruthRow } from './truth.ts';
export { exampleOf, type Typed, typeNumber, type Waited, waitedFor } from './type-number.ts';
export { contactsOf, isJoined, type Way } from './way.ts';
export {
  ESTIMATE_TITLE,
  markVerdict,
  sayEstimate,
  sayGuard,
  sayMargin,
  sayPair,
  sayPlace,
  sayReserve,
  sayRow,
  sayRunOn,
} from './words.ts';
