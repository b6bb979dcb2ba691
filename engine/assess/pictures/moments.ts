/** The three moments a motor is asked for: gaining speed, running, cutting. */

import { motorAtFeed, motorAtRapid, torque } from '../../checks/motion.ts';
import type { Verdict } from '../../quantity/verdict.ts';
import type { Finding } from '../finding.ts';
import { type Ground, numberOf, worst } from './ground.ts';
import type { Mark } from './types.ts';

export interface Moment {
  readonly name: string;
  /** Motor speed, rad/s. */
  readonly speed: number;
  /** Torque at the shaft, N·m. */
  readonly torque: number;
  readonly verdict?: Verdict;
  readonly finding?: string;
}

/** Moments whose speed and torque are known, judged by the worst of the checks named. */
export function momentsOf(
  ground: Ground,
  checks: Readonly<Record<'gaining' | 'running' | 'cutting', readonly string[]>>,
): Moment[] {
  const moment = (
    name: string,
    speed: number | undefined,
    load: number | undefined,
    ids: readonly string[],
  ): Moment[] => {
    if (speed === undefined || load === undefined) return [];
    const findings = ids.map((id) => ground.finding(id));
    const verdict = worst(findings);
    const leading = findings.find((finding): finding is Finding => finding?.verdict === verdict);
    return [{ name, speed, torque: load, ...(leading && verdict ? { verdict, finding: leading.id } : {}) }];
  };
  const [rapid, feed, gaining, running, cutting] = [
    motorAtRapid.get('n_m'),
    motorAtFeed.get('n_m'),
    torque.get('T_acc'),
    torque.get('T_run'),
    torque.get('T_cut'),
  ].map((ref) => numberOf(ground.value(ref)));
  return [
    ...moment('gaining speed', rapid, gaining, checks.gaining),
    ...moment('running', rapid, running, checks.running),
    ...moment('cutting', feed, cutting, checks.cutting),
  ];
}

export const markOf = ({ name, speed, torque, verdict, finding }: Moment): Mark => ({
  name,
  x: speed,
  y: torque,
  role: 'asked',
  ...(verdict ? { verdict } : {}),
  ...(finding ? { finding } : {}),
});
