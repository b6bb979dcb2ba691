/** Readings and their doubt: quantiles, fits, propagation, coverage. */
export {
  chiSquareProbability,
  chiSquareQuantile,
  normalProbability,
  normalQuantile,
  studentProbability,
  studentQuantile,
} from './quantiles.ts';
export { type Combined, type Component, combine, coverage, type Summary, summarise } from './readings.ts';
