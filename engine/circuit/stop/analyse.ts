/** A stop circuit looked through: does every stop stop, what does each single fault do, how far does everything run on. */
import { ok, type Result } from '../../quantity/types.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { ReadWiring } from '../wiring/index.ts';
import { type NextFault, nextFaults } from './accumulate.ts';
import { CIRCUIT_SETTINGS } from './answers.ts';
import { asWiredFinding } from './as-wired/index.ts';
import { type Baseline, baselineOf } from './baseline.ts';
import { sayJudgement, whatCatches } from './catch.ts';
import { compileStop } from './compile.ts';
import { type AxisDistances, axisDistances } from './distances.ts';
import { type Estimate, estimateOf } from './estimate.ts';
import { type NamedFault, singleFaults } from './faults.ts';
import { findingsOf, type StopFinding } from './findings.ts';
import { type GuardDistance, guardDistances } from './guards.ts';
import { type Judgement, judge } from './judge.ts';
import type { Offers } from './motion-numbers.ts';
import { atOnce, type LookProgress } from './pieces.ts';
import { readSettings } from './settings.ts';
import { type DemandStops, runOnOf, stopsOf } from './stops.ts';
import { type Race, racesOf, type Truth, truthOf } from './truth.ts';

export interface FaultReport {
  readonly fault: NamedFault;
  readonly judged: Judgement;
  readonly says: string;
  readonly catches: string;
  /** Of one that nobody is told of: a next fault with which it no longer stops. */
  readonly next?: NextFault;
}

export interface StopAnalysis {
  readonly base: Baseline;
  readonly stops: readonly DemandStops[];
  /** Worst first: dangerous, unnoticed, noticed, stops. */
  readonly faults: readonly FaultReport[];
  readonly truth: Truth;
  readonly races: readonly Race[];
  readonly axes: readonly AxisDistances[];
  readonly guards: readonly GuardDistance[];
  readonly estimate: Estimate;
  readonly findings: readonly StopFinding[];
  readonly notExamined: readonly string[];
}

/** What this way of looking cannot see. Always said. */
export const NOT_EXAMINED: readonly string[] = [
  'Whether the machine itself is wired as stop circuit and wiring are drawn.',
  'Faults inside bought units, beyond what their kind says; their makers answer for those.',
  'Two faults that come at the same moment, but for crushed cables and welded contacts that hold each other.',
  'Voltage drop, chatter, heat, and how long a contact lasts.',
  'Change-over contacts in the moment between their positions: a contact that closes and one that opens are taken to change at the same instant, with neither a gap nor an overlap.',
  'A motor on two of three phases: it counts as one that can turn.',
  'Currents that flow through one coil into another, and coils that get too little voltage.',
  'Home switches and their wires: they stop nothing.',
  'Whether the categories and levels named here are what the law asks for where you are. This is no certificate.',
];

/** Worst first; among the unnoticed those with which the next fault ends stopping, and of these contactors first. */
function rank({ fault, judged, next }: Pick<FaultReport, 'fault' | 'judged' | 'next'>): number {
  const lost = next !== undefined || judged.kept.length > 0 ? 0 : 2;
  const contactor = fault.id === `${fault.element} welded` ? 0 : 1;
  return 8 * ORDER[judged.verdict] + (fault.mayExclude ? 4 : 0) + lost + contactor;
}

const ORDER = { dangerous: 0, unnoticed: 1, noticed: 2, stops: 3 } as const;

/** Faults to each piece. */
const PIECE = 10;

/**
 * Everything but pairs of faults, in pieces: stop asking and it stops. A circuit that cannot be read is refused with its
 * place. `offers`: numbers of the motions from the rest of the refit. `wiring`: what it is compared with; left out, it is not.
 */
export function* lookThrough(
  circuit: StopCircuit,
  offers: Offers = {},
  wiring?: ReadWiring,
): Generator<LookProgress, Result<StopAnalysis>, void> {
  const made = compileStop(circuit, offers);
  if (!made.ok) return made;
  const answers = readSettings(CIRCUIT_SETTINGS, circuit.settings, 'stop.settings');
  if (!answers.ok) return answers;
  const model = made.value;
  const base = baselineOf(model, runOnOf(model));
  const stops = stopsOf(base);
  // A machine that cannot be started, or never comes to rest, cannot be seen to stop.
  const named = base.runs.length === 0 || base.restless.length > 0 ? [] : singleFaults(model);
  const judged: (readonly [NamedFault, Judgement])[] = [];
  for (const fault of named) {
    judged.push([fault, judge(base, fault.faults)]);
    if (judged.length % PIECE === 0)
      yield { doing: 'every single fault', done: judged.length, all: named.length };
  }
  const nexts = yield* nextFaults(base, judged);
  const faults = judged
    .map(([fault, each]) => {
      const next = nexts.get(fault.id);
      return {
        fault,
        judged: each,
        says: sayJudgement(fault, each, next?.fault.id),
        catches: whatCatches(model, fault, each),
        ...(next ? { next } : {}),
      };
    })
    .sort((a, b) => rank(a) - rank(b));
  const truth = yield* truthOf(base);
  const races = racesOf(base);
  const axes = axisDistances(model, stops);
  const guards = guardDistances(model, stops);
  const part = { base, stops, faults, truth, races, axes, guards };
  return ok({
    ...part,
    estimate: estimateOf(circuit, answers.value, judged),
    findings: findingsOf(part, wiring && asWiredFinding(circuit, model, wiring)),
    notExamined: NOT_EXAMINED,
  });
}

/** The same at one go. */
export const analyseStop = (
  circuit: StopCircuit,
  offers: Offers = {},
  wiring?: ReadWiring,
): Result<StopAnalysis> => atOnce(lookThrough(circuit, offers, wiring));
