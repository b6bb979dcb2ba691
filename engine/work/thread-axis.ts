/** The axis that leads a thread: which it is, how fast it may be led, its plan and its travel. */
import { threadRunIn } from '../handbook/thread-run-in.ts';
import { largest } from '../threads/bisect.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import type { Machine, Plan, Side, Thread } from '../threads/index.ts';
import { USUAL_LEAD_ERROR } from '../threads/plan.ts';
import { planFor } from './asked.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import type { LinkLimit } from './limits.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm } from './say.ts';

/** Above any workshop's spindle, rad/s. */
const FASTEST = 3000;

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

/** Where the room is given: the speed at which the axis still settles within it. */
export function accelerationLimit(axis: WorkAxis, thread: Thread, room: number): readonly LinkLimit[] {
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

export function planAt(
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
  return planFor(thread, machine, {
    side: wish.side,
    length: wish.length,
    infeed: wish.infeed,
    ...(wish.passes === undefined ? {} : { passes: wish.passes }),
  });
}

export function travelFindings(
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
  found.push(
    travelFinding(work, axis, plan.runIn + length + plan.runOut, 'Run-in, thread and run-out', [
      `Run-in ${mm(plan.runIn)}, thread ${mm(length)}, run-out ${mm(plan.runOut)}.`,
    ]),
  );
  return found;
}

/** Whether the axis travels as far as the work wants, m. `parts` are what takes it, in the plural. */
export function travelFinding(
  work: string,
  { id, travel }: WorkAxis,
  asked: number,
  parts: string,
  because: readonly string[] = [],
): WorkFinding {
  const of = { check: 'travel', link: 'travel', title: 'Travel' } as const;
  if (travel.value === null)
    return missing(work, {
      ...of,
      sentence: `The travel of the ${id} axis is not known.`,
      needs: travel.needs,
    });
  return ratio(work, {
    ...of,
    asked,
    there: travel.value,
    unit: 'mm',
    tight: 1,
    says: {
      fits: `${parts} take {asked} of the {there} that ${id} travels.`,
      fails: `${parts} take {asked}, more than the {there} that ${id} travels.`,
    },
    because,
    basis: travel.basis,
  });
}
