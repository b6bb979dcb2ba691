/** The thread book and the cuts. */
export { CHART_LEADS, type ChartRow, chartOf } from './chart.ts';
export { OPERATIONS, type Operation } from './cut-shapes.ts';
export { type Asked, type Capacity, type Cut, type CutRow, cutOf } from './cuts.ts';
export { type Basic, basicSizes, dimensionsOf, taperLengths } from './dimensions.ts';
export { type Drill, drillsFor, inchDrill, metricDrill } from './drills.ts';
export { limitsOf } from './limits.ts';
export { type OddWord, oddWords } from './odd.ts';
export { parseThread } from './parse.ts';
export { flankInfeed, type Pass, passesOf, usualPasses } from './passes.ts';
export {
  AXIS_SHARE,
  type Machine,
  PLAN_CAUTION,
  type Plan,
  planThread,
  type SpeedLimit,
  USUAL_GAIN,
  type Wish,
} from './plan.ts';
export { boltProfile, type Point } from './profile.ts';
export { planTap, type TapHole, type TapPlan, type TapSpindle, tapTorques } from './tapping.ts';
export type * from './types.ts';
