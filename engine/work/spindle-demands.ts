/** The cuts that are wanted, as demands on the spindle for its pictures. */
import type { Assessment } from '../assess/index.ts';
import type { Demand } from '../assess/pictures/index.ts';
import { worstOf } from './finding.ts';
import { judgeOne } from './judge.ts';
import { workMachineOf } from './machine.ts';

/** One for each cut whose speed and torque are known, in the order of the work. */
export function spindleDemands(assessment: Assessment): Demand[] {
  const cuts = Object.values(assessment.refit.work).filter(({ kind }) => kind === 'cut');
  if (cuts.length === 0) return [];
  const machine = workMachineOf(assessment);
  return cuts.flatMap((work): Demand[] => {
    const { detail, findings } = judgeOne(machine, work);
    if (detail?.kind !== 'cut') return [];
    const { cut, speed } = detail;
    const row = ['Mc', 'T'].map((key) => cut.found.find((each) => each.key === key)).find((each) => each);
    if (!row || !(speed > 0) || !(row.value > 0)) return [];
    // What gives way elsewhere is no matter of the spindle's torque.
    const own = findings.filter(({ link }) => link === 'spindle' || link === 'speed');
    const verdict = own.length > 0 ? worstOf(own) : 'unknown';
    return [{ name: work.name || cut.operation, speed, torque: row.value, verdict }];
  });
}
