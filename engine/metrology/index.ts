/** Readings and their doubt: quantiles, fits, propagation, coverage. */

export { type CurveFit, type CurveOptions, fitCurve, type Model } from './fit-curve.ts';
export { type CurveOfX, fitLine, fitLinear, fitPolynomial, type LinearFit } from './fit-linear.ts';
export {
  chiSquareProbability,
  chiSquareQuantile,
  normalProbability,
  normalQuantile,
  studentProbability,
  studentQuantile,
} from './quantiles.ts';
export { type Combined, type Component, combine, coverage, type Summary, summarise } from './readings.ts';
