/** Bench methods: measuring salvaged parts at home without the dead control. Add one: its file in methods/ and one line here. */
import { axialStiffness } from './methods/axial-stiffness.ts';
import { backEmf } from './methods/back-emf.ts';
import { backlashSplit } from './methods/backlash-split.ts';
import { breakaway } from './methods/breakaway.ts';
import { coastDown } from './methods/coast-down.ts';
import { encoderLines } from './methods/encoder-lines.ts';
import { holdingBrake } from './methods/holding-brake.ts';
import { inductance } from './methods/inductance.ts';
import { insulation } from './methods/insulation.ts';
import { lockedRotor } from './methods/locked-rotor.ts';
import { lostCounts } from './methods/lost-counts.ts';
import { mainsVoltage } from './methods/mains-voltage.ts';
import { noLoadCurrent } from './methods/no-load-current.ts';
import { polePairs } from './methods/pole-pairs.ts';
import { resolverRatio } from './methods/resolver-ratio.ts';
import { runOut } from './methods/run-out.ts';
import { spindleDelay } from './methods/spindle-delay.ts';
import { tachoConstant } from './methods/tacho-constant.ts';
import { travelPerTurn } from './methods/travel-per-turn.ts';
import { weakMagnet } from './methods/weak-magnet.ts';
import { whichFeedback } from './methods/which-feedback.ts';
import { whichMotor } from './methods/which-motor.ts';
import { windingResistance } from './methods/winding-resistance.ts';
import type { Method } from './types.ts';

export { DRAWING_SIZE, type Drawing, type Point, type Shape } from './drawing.ts';
export { type Measurement, type Recorded, recordEvidence } from './record.ts';
export { runMethod } from './run.ts';
export type {
  AccuracyAsked,
  Candidate,
  ChoiceAsked,
  ChoiceResult,
  Column,
  Entry,
  EvidenceResult,
  FactPath,
  Method,
  Outcome,
  QuantityAsked,
  QuantityResult,
  Question,
  Taken,
  Verdict,
  WorkingLine,
} from './types.ts';

/** In the order a salvaged part is usually tested. */
export const METHODS: readonly Method[] = [
  whichMotor,
  whichFeedback,
  insulation,
  windingResistance,
  backEmf,
  noLoadCurrent,
  coastDown,
  lockedRotor,
  weakMagnet,
  inductance,
  polePairs,
  resolverRatio,
  tachoConstant,
  encoderLines,
  lostCounts,
  holdingBrake,
  breakaway,
  travelPerTurn,
  backlashSplit,
  axialStiffness,
  runOut,
  spindleDelay,
  mainsVoltage,
];

export const METHOD: ReadonlyMap<string, Method> = new Map(METHODS.map((each) => [each.id, each]));
