/** A wanted thread with a single point, judged on this machine. */

import { threadRunIn } from '../handbook/thread-run-in.ts';
import type { Work } from '../refit/types.ts';
import { torqueAt } from '../simulate/instep/index.ts';
import { largest } from '../threads/bisect.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import {
  cutOf,
  type Machine,
  PLAN_CAUTION,
  type Plan,
  planThread,
  type Side,
  type Thread,
} from '../threads/index.ts';
import { USUAL_LEAD_ERROR } from '../threads/plan.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import { type LinkLimit, leadLimits, rangeAt, sorted, spindleLimits } from './limits.ts';
import { abilityFinding, feedbackFindings, noSpindle, speedFinding } from './links.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm, rpm } from './say.ts';
import { Settings } from './settings.ts';
import { type WayRound, waysRound } from './ways-round.ts';

/** Above any workshop's spindle, rad/s. */
const FASTEST = 3000;

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
  readonly detail: ThreadDetail | null;
  readonly ways: readonly WayRound[];
}

export function judgeThread(machine: WorkMachine, work: Work): JudgedThread {
  const s = new Settings(work);
  const read = s.thread();
  const side = s.option('side', ['external', 'internal']);
  const infeed = s.option('infeed', ['flank', 'straight']);
  const length = s.quantity('length', 'mm', 100);
  const room = s.quantity('room', 'mm', 100);
  const lead = s.quantity('lead', 'mm', 1);
  const passes = s.count('passes', 200);
  const axisId = s.text('axis') ?? 'Z';
  if (!read) return { findings: s.findings, detail: null, ways: [] };
  const { thread, basic } = read;
  const typedSpeed = s.speed(basic.major);
  const found: WorkFinding[] = [...s.findings];
  const add = (...more: readonly WorkFinding[]): void => {
    found.push(...more);
  };
  if (lead !== undefined) add(...leadFinding(work.id, thread, lead));
  if (typedSpeed === 'zero')
    add(
      told(work.id, {
        check: 'standing',
        link: 'settings',
        title: 'Spindle speed',
        verdict: 'fails',
        sentence:
          'The spindle speed is 0: a thread is cut while the spindle turns, and the axis follows its angle. Give a speed, or leave the field empty for the highest one.',
      }),
    );
  add(abilityFinding(work.id, machine, thread.taper > 0 ? 'threading-taper' : 'threading-straight'));
  if (thread.starts > 1) add(abilityFinding(work.id, machine, 'threading-multi-start'));
  const axis = axisFor(machine, axisId);
  if (!axis) add(noAxis(work.id, machine, axisId));
  const wanted = length ?? 1.5 * thread.diameter;
  if (!machine.spindle) add(noSpindle(work.id, machine));
  else add(...feedbackFindings(work.id, machine, thread.lead, true));

  const limits = [
    ...(machine.spindle ? spindleLimits(machine.spindle) : []),
    ...(axis ? leadLimits(machine, axis, thread.lead) : []),
    ...(axis && room !== undefined ? accelerationLimit(axis, thread, room) : []),
  ];
  const lowest = sorted(limits)[0]?.speed ?? null;
  const speed = typeof typedSpeed === 'number' ? typedSpeed : lowest;
  let plan: Plan | null = null;
  let cutTorque = 0;
  if (speed !== null && speed > 0 && typedSpeed !== 'zero') {
    add(...speedFinding(work.id, machine, limits, speed));
    const made = torqueFindings(machine, work, thread, side, speed);
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
            sentence: `How the ${axis.id} axis gains speed is not known, so neither is the run-in.`,
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

export function waysFor(
  machine: WorkMachine,
  thread: Thread,
  side: Side,
  findings: readonly WorkFinding[],
): readonly WayRound[] {
  const seen = new Set<string>();
  return findings
    .filter(({ verdict }) => verdict === 'fails')
    .flatMap(({ check }) => waysRound({ what: check, thread, side, machine: machine.refit.machine }))
    .filter(({ name }) => !seen.has(name) && seen.add(name));
}

/** By its id, whatever the case it was typed in. */
export const axisFor = (machine: WorkMachine, id: string): WorkAxis | undefined =>
  [...machine.axes.values()].find((each) => each.id.toLowerCase() === id.trim().toLowerCase());

export function noAxis(work: string, machine: WorkMachine, id: string): WorkFinding {
  const names = [...machine.axes.keys()];
  return told(work, {
    check: 'setting-axis',
    link: 'settings',
    title: 'Axis along the work',
    verdict: 'fails',
    sentence:
      names.length === 0
        ? 'This refit has no axis yet; add one under Fit.'
        : `There is no axis “${id.slice(0, 20)}”; this machine has ${names.join(', ')}.`,
  });
}

/** The pitch where the lead belongs, or a lead that is another thread's. */
function leadFinding(work: string, thread: Thread, lead: number): readonly WorkFinding[] {
  const of = { check: 'lead', link: 'settings', title: 'Travel of one turn' } as const;
  const close = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3 * b;
  if (close(lead, thread.lead))
    return [
      told(work, { ...of, verdict: 'fits', sentence: `${mm(lead)} a turn is the lead of this thread.` }),
    ];
  if (thread.starts > 1 && close(lead, thread.pitch))
    return [
      told(work, {
        ...of,
        verdict: 'fails',
        sentence: `${mm(lead)} is the pitch; the lead of ${thread.starts} starts is ${mm(thread.lead)}. Programmed like this, each start would be cut into the next.`,
        because: ['Pitch is from groove to groove; lead is the travel of one turn, pitch times starts.'],
      }),
    ];
  return [
    told(work, {
      ...of,
      verdict: 'fails',
      sentence: `${mm(lead)} a turn is not the lead of ${thread.designation}, which is ${mm(thread.lead)}.`,
    }),
  ];
}

/** Where the room is given: the speed at which the axis still settles within it. */
function accelerationLimit(axis: WorkAxis, thread: Thread, room: number): readonly LinkLimit[] {
  const a = axis.acceleration.value;
  const Kv = axis.gain.value;
  const needs = [...axis.acceleration.needs, ...axis.gain.needs];
  const runIn = (n: number): number =>
    evaluated(threadRunIn, { n, Ph: thread.lead, Kv: Kv!, a: a!, e: USUAL_LEAD_ERROR }).L_in;
  return [
    {
      id: 'axis-acceleration',
      name: `acceleration and lag of the ${axis.id} axis within the room`,
      speed: a === null || Kv === null ? null : largest(FASTEST, (n) => n === 0 || runIn(n) <= room),
      says: `${mm(room)} before the thread is where the axis must have its speed.`,
      needs,
      isHard: false,
    },
  ];
}

function planAt(
  axis: WorkAxis,
  thread: Thread,
  wish: {
    readonly side: Side;
    readonly length: number;
    readonly infeed: 'flank' | 'straight';
    readonly passes: number | undefined;
    readonly speed: number;
  },
): Plan | null {
  const { rapid, acceleration, gain } = axis;
  if (rapid.value === null || acceleration.value === null || gain.value === null) return null;
  // The speed is settled already: the plan's own limits must not lower it.
  const machine: Machine = {
    rapid: Math.max(rapid.value, (2 * thread.lead * wish.speed) / (2 * Math.PI)),
    acceleration: acceleration.value,
    gain: gain.value,
    spindle: wish.speed,
  };
  return planThread(thread, machine, {
    side: wish.side,
    length: wish.length,
    infeed: wish.infeed,
    ...(wish.passes === undefined ? {} : { passes: wish.passes }),
  });
}

function torqueFindings(
  machine: WorkMachine,
  work: Work,
  thread: Thread,
  side: Side,
  speed: number,
): { readonly torque: number; readonly findings: readonly WorkFinding[] } {
  const cut = cutOf('threading', {
    material: work.settings.material?.trim() || 'c45',
    thread: thread.designation,
    speed: `${(speed * 30) / Math.PI} r/min`,
  });
  if (!cut.ok)
    return {
      torque: 0,
      findings: [
        told(work.id, {
          check: 'setting-material',
          link: 'settings',
          title: 'Material',
          verdict: 'fails',
          sentence: cut.problem.message,
        }),
      ],
    };
  const of = (key: string): number => cut.value.found.find((row) => row.key === key)?.value ?? 0;
  const torque = of('Mc');
  const { spindle } = machine;
  if (!spindle) return { torque, findings: [] };
  const range = rangeAt(spindle, speed);
  if (!range) return { torque, findings: [] };
  const there = Math.max(0, torqueAt(range.continuous, speed) - range.drag);
  return {
    torque,
    findings: [
      ratio(work.id, {
        check: 'spindle-torque',
        link: 'spindle',
        title: 'Torque for the heaviest pass',
        asked: torque,
        there,
        unit: 'N·m',
        tight: machine.tight,
        says: {
          fits: 'The heaviest pass takes {asked}; the spindle gives {there} at that speed.',
          fails:
            'The heaviest pass takes {asked}, but the spindle gives only {there} at that speed: more passes, or a lower range.',
        },
        because: [
          `In the ${range.name} at ${rpm(speed)}; ${cut.value.material}${side === 'internal' ? ', worked as if outside' : ''}.`,
        ],
        basis: spindle.basis,
      }),
    ],
  };
}

function travelFindings(
  work: string,
  axis: WorkAxis,
  plan: Plan,
  length: number,
  room: number | undefined,
): readonly WorkFinding[] {
  const found: WorkFinding[] = [];
  if (room !== undefined)
    found.push(
      ratio(work, {
        check: 'run-in',
        link: 'axis',
        title: 'Run-in',
        asked: plan.runIn,
        there: room,
        unit: 'mm',
        tight: 1,
        says: {
          fits: 'The axis needs {asked} to come to its speed; there is {there} before the thread.',
          fails:
            'The axis needs {asked} to come to its speed, but there is only {there} before the thread: the first turns have a wrong lead. Turn slower.',
        },
        because: [axis.gainSays],
        basis: axis.gain.basis,
      }),
    );
  const asked = plan.runIn + length + plan.runOut;
  const { travel } = axis;
  found.push(
    travel.value === null
      ? missing(work, {
          check: 'travel',
          link: 'travel',
          title: 'Travel',
          sentence: `The travel of the ${axis.id} axis is not known.`,
          needs: travel.needs,
        })
      : ratio(work, {
          check: 'travel',
          link: 'travel',
          title: 'Travel',
          asked,
          there: travel.value,
          unit: 'mm',
          tight: 1,
          says: {
            fits: `Run-in, thread and run-out take {asked} of the {there} that ${axis.id} travels.`,
            fails: `Run-in, thread and run-out take {asked}, more than the {there} that ${axis.id} travels.`,
          },
          because: [`Run-in ${mm(plan.runIn)}, thread ${mm(length)}, run-out ${mm(plan.runOut)}.`],
          basis: travel.basis,
        }),
  );
  return found;
}
