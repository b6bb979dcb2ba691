/** A wanted thread, with a single point or milled, judged on this machine. */

import type { Work } from '../refit/types.ts';
import { PLAN_CAUTION, type Plan, type Side, type Thread, usualPasses } from '../threads/index.ts';
import { missing, type WorkFinding } from './finding.ts';
import { chosenSpeed, type LinkLimit, leadLimits, sorted, spindleLimits } from './limits.ts';
import { abilityFinding, feedbackFindings, noSpindle, speedFinding, standing } from './links.ts';
import type { WorkMachine } from './machine.ts';
import { judgeMilled, type MilledDetail } from './milled.ts';
import { Settings } from './settings.ts';
import { accelerationLimit, axisFor, noAxis, planAt, travelFindings } from './thread-axis.ts';
import { leadFinding, torqueFindings, waysFor } from './thread-findings.ts';
import type { WayRound } from './ways-round.ts';

export interface ThreadDetail {
  readonly kind: 'thread';
  readonly thread: Thread;
  readonly side: Side;
  readonly length: number;
  readonly axis: string;
  /** All links, the lowest first. */
  readonly limits: readonly LinkLimit[];
  /** rad/s it is planned at; null where nothing is known to turn. */
  readonly speed: number | null;
  readonly plan: Plan | null;
  /** m by which the axis trails the spindle at that speed; null where it is not known. */
  readonly trail: number | null;
  readonly caution: string;
  /** N·m of the heaviest pass, and m from where it starts, for the simulation. */
  readonly cutTorque: number;
  readonly room: number | null;
}

export interface JudgedThread {
  readonly findings: readonly WorkFinding[];
  readonly detail: ThreadDetail | MilledDetail | null;
  readonly ways: readonly WayRound[];
}

export function judgeThread(machine: WorkMachine, work: Work): JudgedThread {
  const s = new Settings(work);
  const read = s.thread();
  const side: Side = s.option('side') === 'internal' ? 'internal' : 'external';
  const way = s.option('way');
  const infeed = s.option('infeed') === 'straight' ? 'straight' : 'flank';
  const length = s.number('length');
  const room = s.number('room');
  const lead = s.number('lead');
  const passes = s.number('passes');
  const axisId = s.text('axis') ?? 'Z';
  if (!read) return { findings: s.findings, detail: null, ways: [] };
  const { thread, basic } = read;
  if (way === 'mill') {
    const milled = judgeMilled(machine, work, s, {
      thread,
      basic,
      side,
      length: length ?? 1.5 * thread.diameter,
      axisId,
    });
    return { ...milled, ways: waysFor(machine, thread, side, milled.findings) };
  }
  const typedSpeed = s.speed(basic.major);
  const found: WorkFinding[] = [...s.findings];
  const add = (...more: readonly WorkFinding[]): void => {
    found.push(...more);
  };
  if (lead !== undefined) add(...leadFinding(work.id, thread, lead));
  if (typedSpeed === 'zero')
    add(
      standing(
        work.id,
        'a thread is cut while the spindle turns, and the axis follows its angle. Give a speed, or leave the field empty for the highest one.',
      ),
    );
  add(abilityFinding(work.id, machine, thread.taper > 0 ? 'threading-taper' : 'threading-straight'));
  if (thread.starts > 1) add(abilityFinding(work.id, machine, 'threading-multi-start'));
  const axis = axisFor(machine, axisId);
  if (!axis) add(noAxis(work.id, machine, axisId));
  const wanted = length ?? 1.5 * thread.diameter;
  if (!machine.spindle) add(noSpindle(work.id, machine));
  else add(...feedbackFindings(work.id, machine, thread.lead, true));

  const limits = [
    ...spindleLimits(machine),
    ...(axis ? leadLimits(machine, axis, thread.lead) : []),
    ...(axis && room !== undefined ? accelerationLimit(axis, thread, room) : []),
  ];
  const speed = chosenSpeed(machine.spindle, limits, typedSpeed);
  let plan: Plan | null = null;
  let cutTorque = 0;
  if (speed !== null && speed > 0 && typedSpeed !== 'zero') {
    add(...speedFinding(work.id, machine, limits, speed));
    const made = torqueFindings(
      machine,
      work,
      thread,
      side,
      speed,
      Math.round(passes ?? usualPasses(thread)),
    );
    cutTorque = made.torque;
    add(...made.findings);
    if (axis) {
      plan = planAt(axis, thread, { side, length: wanted, infeed, passes, speed });
      if (plan) add(...travelFindings(work.id, axis, plan, wanted, room));
      else
        add(
          missing(work.id, {
            check: 'run-in',
            link: 'axis',
            title: 'Run-in',
            sentence:
              axis.gainSays || `How the ${axis.id} axis gains speed is not known, so neither is the run-in.`,
            needs: [...axis.rapid.needs, ...axis.acceleration.needs, ...axis.gain.needs],
          }),
        );
    }
  }
  const ways = waysFor(machine, thread, side, found);
  return {
    findings: found,
    detail: {
      kind: 'thread',
      thread,
      side,
      length: wanted,
      axis: axisId,
      limits: sorted(limits),
      speed,
      plan,
      trail:
        speed === null || axis?.lag.value == null
          ? null
          : (axis.lag.value * thread.lead * speed) / (2 * Math.PI),
      caution: PLAN_CAUTION,
      cutTorque,
      room: room ?? null,
    },
    ways,
  };
}
