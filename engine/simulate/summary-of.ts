/** What is told of an axis once its run is over. */
import type { AxisRun } from './axis-run.ts';
import { balanceOf, ENERGY } from './energy.ts';
import { ACTUAL, FOLLOWING, REFERENCE } from './io.ts';
import { PHI } from './modes.ts';
import type { Move } from './moves.ts';
import type { Summary } from './run.ts';

/** `until`: s that it ran. */
export function summaryOf(run: AxisRun, until: number, move: Move): Summary {
  const { plant, model, events, axis, stepper } = run;
  plant.settleEnergy();
  const behind = (run.io[REFERENCE]! - plant.x[PHI]!) * plant.constants.rotorTeeth;
  const runOut = run.runningOn.finish(run.io[ACTUAL]!, run.slideSpeed);
  return run.notes.summary({
    until,
    referenceEnd: run.reference.end,
    finalFollowing: run.io[FOLLOWING]!,
    rmsCurrent: run.books ? Math.sqrt(Math.max(0, plant.energy[ENERGY.copper]!) / until) : null,
    sticks: events.count('stick', axis),
    slips: events.count('slip', axis),
    distance: move.kind === 'reversal' ? move.distance : null,
    travelAfterOff: runOut?.driveOff ? runOut.end - runOut.driveOff.place : null,
    runOut,
    stepsLost: model.motor.kind === 'stepper' ? Math.round(behind / (2 * Math.PI)) * 4 : 0,
    energy: run.books ? balanceOf(plant, run.storedAtStart, stepper !== null) : null,
  });
}
