/** Bench methods: measuring salvaged parts at home without the dead control. Add one: its file in methods/ and one line here. */
import { backEmf } from './methods/back-emf.ts';
import { backlashSplit } from './methods/backlash-split.ts';
import { breakaway } from './methods/breakaway.ts';
import { coastDown } from './methods/coast-down.ts';
import { insulation } from './methods/insulation.ts';
import { lockedRotor } from './methods/locked-rotor.ts';
import { noLoadCurrent } from './methods/no-load-current.ts';
import { travelPerTurn } from './methods/travel-per-turn.ts';
import { weakMagnet } from './methods/weak-magnet.ts';
import { windingResistance } from './methods/winding-resistance.ts';
import type { Method } from './types.ts';

export { DRAWING_SIZE, type Drawing, type Point, type Shape } from './drawing.ts';
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
  insulation,
  windingResistance,
  backEmf,
  noLoadCurrent,
  coastDown,
  lockedRotor,
  weakMagnet,
  breakaway,
  travelPerTurn,
  backlashSplit,
];

export const METHOD: ReadonlyMap<string, Method> = new Map(METHODS.map((each) => [each.id, each]));
