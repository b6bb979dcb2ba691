/** What the control must do, who can do it, and the auxiliaries it steps through. */
export { askedOfWiring } from './asked.ts';
export { type Chart, type ChartRow, chartSvg, chartsOf } from './auxiliaries/chart.ts';
export type { AuxiliaryFinding, Checked } from './auxiliaries/check.ts';
export type { AuxiliaryKind } from './auxiliaries/kind.ts';
export { KINDS, kindOf } from './auxiliaries/kinds/index.ts';
export {
  type AuxiliariesReport,
  type AuxiliaryReport,
  checkAuxiliaries,
  type Opened,
  openAll,
  openAuxiliary,
  seekAuxiliaries,
  together,
} from './auxiliaries/open.ts';
export { type Candidate, type ControlReport, compareControls, type Row, type Signals } from './candidates.ts';
export { type Census, censusCsv, censusOf } from './census.ts';
export { CODE_NAMES, type Need, type Needs, needsOf } from './needs.ts';
export { SIGNALS, type Signal, type SignalId } from './signals.ts';
