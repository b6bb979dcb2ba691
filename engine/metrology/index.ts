/** Readings and their doubt: quantiles, fits, propagation, coverage. */

export { type Distribution, samples, standardOf } from './distributions.ts';
export { neighbourCorrelation } from './drift.ts';
export { type CurveFit, type CurveOptions, fitCurve, type Model } from './fit-curve.ts';
export { type CurveOfX, fitLine, fitLinear, fitPolynomial, type LinearFit } from './fit-linear.ts';
export {
  type Interval,
  intervals,
  numericalTolerance,
  type Simulated,
  type Simulation,
  simulate,
  simulateInBlocks,
} from './monte-carlo.ts';
export { parseReadings } from './paste.ts';
export type { Cell, Column, Pasted } from './paste-types.ts';
export { writeReadings } from './paste-write.ts';
export {
  correlationOf,
  type Formula,
  type Input,
  type Propagated,
  type PropagateOptions,
  propagate,
  propagateTogether,
  slopesOf,
  type Together,
} from './propagate.ts';
export {
  chiSquareProbability,
  chiSquareQuantile,
  normalProbability,
  normalQuantile,
  studentProbability,
  studentQuantile,
} from './quantiles.ts';
export { grubbsCritical, type Question, questionReadings } from './question.ts';
export { type Fill, normals, students, uniforms } from './random.ts';
export { type Combined, type Component, combine, coverage, type Summary, summarise } from './readings.ts';
