/** One axis, or two in step, simulated in time: following error, trips, ringing, stick-slip, lost motion, the bus. */

export { type Band, BandMaker, band, joinBands, type Spread, variantOf } from './band.ts';
export { bandInWords, peakOf } from './band-in-words.ts';
export { checkModel, checkMove } from './check-model.ts';
export type { EventKind, RunEvent } from './events.ts';
export { limitOfGain } from './gain-limit.ts';
export { type Gain, gainWords } from './gain-words.ts';
export {
  type CascadeGains,
  placedGains,
  type SingleGains,
  type StartingGains,
  startingGains,
} from './gains.ts';
export { type Hunting, hunting } from './hunting.ts';
export { headline, type InWordsOptions, inWords } from './in-words.ts';
export { huntingInWords, marginsInWords } from './loop-in-words.ts';
export { type Cut, loopMargins, type Margins } from './margins.ts';
export type {
  AxisModel,
  Brake,
  Cascade,
  Drive,
  Feedback,
  OpenLoop,
  ServoMotor,
  SingleLoop,
  Slide,
  StepperMotor,
  Supply,
  Transmission,
} from './model.ts';
export { inertias, travelPerRadian } from './model.ts';
export { ModelError } from './model-error.ts';
export { MOVE_KINDS, MOVES, type Move, type MoveField, type MoveKind } from './moves.ts';
export { GROUPS, type Group, type NumberParameter, type Parameter } from './parameters.ts';
export { playCycle, type Swing } from './play-cycle.ts';
export { modelSchema, type ReadModel, readModel, readMove, readMoveField } from './read-model.ts';
export {
  buffersOf,
  type EnergyBalance,
  type Roundness,
  type Run,
  type RunOut,
  type Summary,
} from './run.ts';
export { type Beside, besideOf, coastIntoEnd, doesTheMove, type EndStop, speedAfter } from './run-out.ts';
export type { Saying } from './say.ts';
export { type SimulateOptions, simulate, timeOf } from './simulate.ts';
export { pullOutTorque } from './stepper.ts';
