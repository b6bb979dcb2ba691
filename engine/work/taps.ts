/** A wanted tapped hole, judged on this machine: torque, overrun at the reversal, depth of the hole, float. */
import type { Work } from '../refit/types.ts';
import { torqueAt } from '../simulate/instep/index.ts';
import { TAP_KINDS } from '../tables/tapping-materials.ts';
import { largest } from '../threads/bisect.ts';
import { cutOf, type Thread } from '../threads/index.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import type { Habits } from './habits.ts';
import { type LinkLimit, leadLimits, sorted, spindleLimits, stoppingAt } from './limits.ts';
import { abilityFinding, feedbackFindings, noSpindle, sayTurns, speedFinding } from './links.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import { Settings } from './settings.ts';
import { type TapSize, tapSizes } from './tap-sizes.ts';
import { axisFor, noAxis, waysFor } from './threads.ts';
import type { SpindleModel } from './types.ts';
import type { WayRound } from './ways-round.ts';

const TURN = 2 * Math.PI;
/** Threads that the chamfer of each kind of tap leaves incomplete. */
const CHAMFER: Readonly<Record<string, number>> = {
  'spiral-flute': 3,
  'spiral-point': 5,
  hand: 5,
  bottoming: 2,
};

export interface TapDetail {
  readonly kind: 'tap';
  readonly thread: Thread;
  readonly axis: string;
  readonly depth: number;
  readonly hole: number | 'through' | null;
  readonly speed: number | null;
  readonly limits: readonly LinkLimit[];
  /** N·m of a sharp tap. */
  readonly torque: number | null;
  readonly reversal: Reversal | null;
  readonly sizes: readonly TapSize[];
  readonly caution: string;
}

export interface Reversal {
  readonly range: string;
  /** s, rad and m from the order to turn back until the spindle stands. */
  readonly time: number;
  readonly angle: number;
  readonly overrun: number;
  /** m by which axis and spindle are out of step each way; it changes sign as the spindle turns back. */
  readonly step: number;
  /** m: depth to drill, and float that a holder would need. */
  readonly hole: number;
  readonly float: number;
  /** rad/s that hole and float allow at most; null where neither limits. */
  readonly highest: number | null;
}

export interface JudgedTap {
  readonly findings: readonly WorkFinding[];
  readonly detail: TapDetail | null;
  readonly ways: readonly WayRound[];
}

const CAUTION =
  'Try a new hole in the air first, the tap well above the work, and watch that it turns back. A tap that meets the bottom bursts: guard closed, eyes covered.';

export function judgeTap(machine: WorkMachine, work: Work): JudgedTap {
  const s = new Settings(work);
  const read = s.thread();
  const kind = s.option('tap', [
    'spiral-flute',
    ...TAP_KINDS.map(({ id }) => id).filter((each) => each !== 'spiral-flute'),
  ]);
  const holder = s.option('holder', ['rigid', 'floating']);
  const turnedBy = s.option('turned-by', ['spindle', 'tool']);
  const depthTyped = s.quantity('depth', 'mm', 10);
  const isThrough = s.text('hole')?.toLowerCase() === 'through';
  const holeTyped = isThrough ? undefined : s.quantity('hole', 'mm', 10);
  const floatTyped = s.quantity('float', 'mm', 1);
  const axisId = s.text('axis') ?? 'Z';
  if (!read) return { findings: s.findings, detail: null, ways: [] };
  const { thread } = read;
  const typedSpeed = s.speed(thread.diameter);
  const found: WorkFinding[] = [...s.findings];
  if (holder === 'floating' && floatTyped === undefined && s.findings.length === 0)
    found.push(
      missing(work.id, {
        check: 'float',
        link: 'hole',
        title: 'Float of the holder',
        sentence: 'How much the holder gives is not known; its maker says, each way from the middle.',
        needs: [],
      }),
    );
  if (typedSpeed === 'zero')
    found.push(
      told(work.id, {
        check: 'standing',
        link: 'settings',
        title: 'Spindle speed',
        verdict: 'fails',
        sentence:
          'The spindle speed is 0: a tap is turned in and out. Give a speed, or leave the field empty for the highest one.',
      }),
    );
  const depth = depthTyped ?? 1.5 * thread.diameter;
  const ending = (detail: TapDetail | null): JudgedTap => ({
    findings: found,
    detail,
    ways: waysFor(machine, thread, 'internal', found),
  });
  if (turnedBy === 'tool') {
    found.push(abilityFinding(work.id, machine, 'powered-tools'));
    return ending(null);
  }
  const axis = axisFor(machine, axisId);
  if (!axis) found.push(noAxis(work.id, machine, axisId));
  if (holder === 'rigid') found.push(abilityFinding(work.id, machine, 'rigid-tapping'));
  const { spindle } = machine;
  if (!spindle) {
    found.push(noSpindle(work.id, machine));
    return ending(null);
  }
  if (holder === 'rigid') found.push(...feedbackFindings(work.id, machine, thread.lead, false));
  const limits = [...spindleLimits(spindle), ...(axis ? leadLimits(machine, axis, thread.lead) : [])];
  const wanted: Wanted = {
    thread,
    depth,
    hole: isThrough ? 'through' : (holeTyped ?? null),
    float: holder === 'floating' ? (floatTyped ?? null) : null,
    chamfer: CHAMFER[kind] ?? 3,
    habits: machine.habits,
  };
  const lowest = sorted(limits)[0]?.speed ?? null;
  const highest = lowest === null ? null : highestFor(spindle, axis, wanted, lowest);
  const slowest = Math.min(...spindle.ranges.map((each) => each.lowest));
  const speed =
    typeof typedSpeed === 'number'
      ? typedSpeed
      : highest === null || lowest === null
        ? lowest
        : Math.min(lowest, Math.max(highest, slowest));
  let reversal: Reversal | null = null;
  let torque: number | null = null;
  if (speed !== null && speed > 0 && typedSpeed !== 'zero') {
    found.push(...speedFinding(work.id, machine, limits, speed));
    const made = torqueFinding(spindle, work, wanted, kind, speed);
    found.push(...made.findings);
    torque = made.torque;
    reversal = reversalAt(spindle, axis, wanted, speed, highest);
    found.push(...reversalFindings(work.id, wanted, reversal, speed, axis, spindle));
  }
  return ending({
    kind: 'tap',
    thread,
    axis: axisId,
    depth,
    hole: wanted.hole,
    speed,
    limits: sorted(limits),
    torque,
    reversal,
    sizes: tapSizes(machine, spindle, axis, work),
    caution: CAUTION,
  });
}

interface Wanted {
  readonly thread: Thread;
  readonly depth: number;
  readonly hole: number | 'through' | null;
  readonly float: number | null;
  readonly chamfer: number;
  readonly habits: Habits;
}

/** m by which the axis trails the spindle, which leads. */
const outOfStep = (axis: WorkAxis | undefined, lead: number, speed: number): number =>
  ((axis?.lag.value ?? 0) * (lead * speed)) / TURN;

function reversalAt(
  spindle: SpindleModel,
  axis: WorkAxis | undefined,
  { thread, depth, chamfer, habits }: Wanted,
  speed: number,
  highest: number | null,
): Reversal | null {
  const best = stoppingAt(spindle, speed, habits.delay.value);
  if (!best) return null;
  const overrun = (best.stop.angle * thread.lead) / TURN;
  const step = outOfStep(axis, thread.lead, speed);
  return {
    range: best.range.name,
    time: best.stop.time,
    angle: best.stop.angle,
    overrun,
    step,
    hole: depth + chamfer * thread.pitch + overrun + step + habits.chips.value,
    float: overrun + 2 * step,
    highest,
  };
}

/** rad/s up to which hole and float take the overrun; null where nothing limits it. */
function highestFor(
  spindle: SpindleModel,
  axis: WorkAxis | undefined,
  wanted: Wanted,
  most: number,
): number | null {
  if (typeof wanted.hole !== 'number' && wanted.float === null) return null;
  return largest(most, (speed) => {
    if (speed === 0) return true;
    // Below the slowest speed of every range the nearest one stands in.
    const at = reversalAt(spindle, axis, wanted, speed, null) ?? slowest(spindle, axis, wanted, speed);
    return (
      (typeof wanted.hole !== 'number' || at.hole <= wanted.hole) &&
      (wanted.float === null || at.float <= wanted.float)
    );
  });
}

function slowest(spindle: SpindleModel, axis: WorkAxis | undefined, wanted: Wanted, speed: number): Reversal {
  const open: SpindleModel = {
    ...spindle,
    ranges: spindle.ranges.map((each) => ({ ...each, lowest: 0, highest: Number.MAX_VALUE })),
  };
  return reversalAt(open, axis, wanted, speed, null)!;
}

function torqueFinding(
  spindle: SpindleModel,
  work: Work,
  { thread, habits }: Wanted,
  kind: string,
  speed: number,
): { readonly torque: number | null; readonly findings: readonly WorkFinding[] } {
  const cut = cutOf('tapping', {
    material: work.settings.material?.trim() || 'c45',
    thread: thread.designation,
    tap: kind,
    speed: `${(speed * 30) / Math.PI} r/min`,
  });
  if (!cut.ok)
    return {
      torque: null,
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
  const torque = cut.value.asked.find(({ id }) => id === 'torque')?.value ?? 0;
  const range = stoppingAt(spindle, speed, 0)?.range;
  if (!range) return { torque, findings: [] };
  const there = Math.max(0, torqueAt(range.continuous, speed) - range.drag);
  return {
    torque,
    findings: [
      ratio(work.id, {
        check: 'spindle-torque',
        link: 'spindle',
        title: 'Torque of the tap',
        asked: torque,
        there,
        unit: 'N·m',
        tight: habits.worn.value,
        says: {
          fits: 'A sharp tap takes {asked}; the spindle gives {there} at that speed.',
          fails: 'A sharp tap takes {asked}, but the spindle gives only {there} at that speed.',
        },
        because: [
          `In the ${range.name} at ${rpm(speed)}; ${cut.value.material}. A worn tap takes more, times ${habits.worn.says}: a smaller margin is tight.`,
          ...cut.value.notes,
        ],
        basis: spindle.basis,
      }),
    ],
  };
}

function reversalFindings(
  work: string,
  wanted: Wanted,
  reversal: Reversal | null,
  speed: number,
  axis: WorkAxis | undefined,
  spindle: SpindleModel,
): readonly WorkFinding[] {
  if (!reversal) return [];
  const { thread, depth, hole, float, habits } = wanted;
  const brakes = spindle.ranges.some(({ braking }) => braking.some(({ torque }) => torque > 0));
  const because = [
    `In the ${reversal.range} from ${rpm(speed)}: the drive acts after ${habits.delay.says}, ${brakes ? 'then brakes' : 'and nothing brakes: the spindle runs down by its own drag'}.`,
    'The tap’s own torque would stop it a little sooner; it is not counted on.',
  ];
  const basis = spindle.basis;
  const found: WorkFinding[] = [];
  if (!Number.isFinite(reversal.overrun) || reversal.overrun > depth)
    found.push(
      told(work, {
        check: 'spindle-stop',
        link: 'spindle',
        title: 'Stopping to turn back',
        verdict: 'fails',
        sentence: Number.isFinite(reversal.overrun)
          ? `After the order to turn back the spindle runs on for ${sayTurns(reversal.angle)} (${say(reversal.time, 's')}): the tap would go ${mm(reversal.overrun)} deeper, more than the thread is deep.`
          : 'Nothing slows this spindle: it never comes to rest by itself, so no tap can be turned back.',
        because,
        basis,
      }),
    );
  if (Number.isFinite(reversal.hole)) {
    if (typeof hole === 'number')
      found.push(
        ratio(work, {
          check: 'hole',
          link: 'hole',
          title: 'Depth of the hole',
          asked: reversal.hole,
          there: hole,
          unit: 'mm',
          tight: 1,
          says: {
            fits: 'Thread, chamfer, overrun and chips take {asked} of the {there} drilled.',
            fails: `Thread, chamfer, overrun and chips need {asked}, but the hole is only {there}: the tap meets the bottom and breaks. ${reversal.highest && reversal.highest > 1 ? `Up to ${rpm(reversal.highest)} it would fit.` : 'No speed makes it fit.'}`,
          },
          because: [
            `The tap runs on ${mm(reversal.overrun)} (${sayTurns(reversal.angle)}, ${say(reversal.time, 's')}).`,
            ...because,
          ],
          basis,
        }),
      );
    else
      found.push(
        told(work, {
          check: 'hole',
          link: 'hole',
          title: 'Depth of the hole',
          verdict: 'fits',
          sentence:
            hole === 'through'
              ? `Through: leave ${mm(reversal.hole - depth)} free below the work for chamfer, overrun and chips.`
              : `Drill at least ${mm(reversal.hole)} deep, not counting the point: the tap runs on ${mm(reversal.overrun)}.`,
          because,
          basis,
        }),
      );
  }
  if (float !== null && Number.isFinite(reversal.float))
    found.push(
      ratio(work, {
        check: 'float',
        link: 'hole',
        title: 'Float of the holder',
        asked: reversal.float,
        there: float,
        unit: 'mm',
        tight: 1,
        says: {
          fits: 'The holder has to give {asked} and gives {there}.',
          fails:
            'The holder has to give {asked} but gives only {there}: the thread strips or the tap breaks.',
        },
        because,
        basis,
      }),
    );
  else if (axis && axis.lag.value !== null && float === null)
    found.push(
      ratio(work, {
        check: 'in-step',
        link: 'axis',
        title: 'In step through the reversal',
        asked: 2 * reversal.step,
        there: habits.rigid.value * thread.pitch,
        unit: 'mm',
        tight: 1,
        says: {
          fits: 'As the spindle turns back the axis changes from behind to ahead by {asked}; a rigid holder and the flanks bear about {there}.',
          fails:
            'As the spindle turns back the axis changes from behind to ahead by {asked}; a rigid holder and the flanks bear only about {there}. Turn slower, or take a holder with a little float.',
        },
        because: [axis.gainSays, `It bears ${habits.rigid.says} of the pitch: a habit, not a standard.`],
        basis: axis.lag.basis,
      }),
    );
  return found;
}
