/** A wanted tapped hole, judged on this machine: torque, overrun at the reversal, depth of the hole, float. */
import type { Work } from '../refit/types.ts';
import type { Thread } from '../threads/index.ts';
import { missing, type WorkFinding } from './finding.ts';
import { chosenSpeed, type LinkLimit, leadLimits, sorted, spindleLimits } from './limits.ts';
import { abilityFinding, feedbackFindings, noSpindle, speedFinding, standing } from './links.ts';
import type { WorkMachine } from './machine.ts';
import { Settings } from './settings.ts';
import { reversalFindings, torqueFinding } from './tap-findings.ts';
import { highestFor, type Reversal, reversalAt, type Wanted } from './tap-reversal.ts';
import { type TapSize, tapSizes } from './tap-sizes.ts';
import { axisFor, noAxis } from './thread-axis.ts';
import { waysFor } from './thread-findings.ts';
import type { WayRound } from './ways-round.ts';

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

export interface JudgedTap {
  readonly findings: readonly WorkFinding[];
  readonly detail: TapDetail | null;
  readonly ways: readonly WayRound[];
}

const CAUTION =
  'Try a new hole in the air first, the tap well above the work, and watch that it turns back. A tap that meets the bottom bursts: guard closed, eyes covered.';

/** What hole and float allow, where they give way before every other link: a link as any other. */
const turningBack = (highest: number | null, lowest: number | null): readonly LinkLimit[] =>
  highest === null || lowest === null || highest >= lowest * (1 - 1e-9)
    ? []
    : [
        {
          id: 'turning-back',
          name: 'stopping distance at the bottom',
          speed: highest,
          says: 'Up to this speed hole and holder take what the spindle runs on.',
          needs: [],
          isHard: false,
        },
      ];

export function judgeTap(machine: WorkMachine, work: Work): JudgedTap {
  const s = new Settings(work);
  const read = s.thread();
  const kind = s.option('tap');
  const holder = s.option('holder');
  const turnedBy = s.option('turned-by');
  const depthTyped = s.number('depth');
  const isThrough = s.text('hole')?.toLowerCase() === 'through';
  const holeTyped = s.number('hole');
  const floatTyped = s.number('float');
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
      standing(
        work.id,
        'a tap is turned in and out. Give a speed, or leave the field empty for the highest one.',
      ),
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
    const known = spindleLimits(machine);
    if (typeof typedSpeed === 'number') found.push(...speedFinding(work.id, machine, known, typedSpeed));
    return ending(null);
  }
  if (holder === 'rigid') found.push(...feedbackFindings(work.id, machine, thread.lead, false));
  const links = [...spindleLimits(machine), ...(axis ? leadLimits(machine, axis, thread.lead) : [])];
  const wanted: Wanted = {
    thread,
    depth,
    hole: isThrough ? 'through' : (holeTyped ?? null),
    float: holder === 'floating' ? (floatTyped ?? null) : null,
    slip:
      holder === 'floating' && (!spindle.feedback || machine.can('rigid-tapping') === 'no')
        ? machine.habits.slip.value
        : 0,
    chamfer: CHAMFER[kind] ?? 3,
    habits: machine.habits,
  };
  const lowest = sorted(links)[0]?.speed ?? null;
  // In a draw one belt range is kept; what the hole allows is asked of all of them, as on the machine as it stands.
  const highest = lowest === null ? null : highestFor({ ...spindle, kept: undefined }, axis, wanted, lowest);
  const speed = chosenSpeed(spindle, links, typedSpeed, highest);
  const limits = [...links, ...turningBack(highest, lowest)];
  let reversal: Reversal | null = null;
  let torque: number | null = null;
  if (speed !== null && speed > 0 && typedSpeed !== 'zero') {
    found.push(...speedFinding(work.id, machine, limits, speed));
    const made = torqueFinding({ spindle, cutting: machine.cutting }, work, wanted, kind, speed);
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
    sizes: machine.isDraw ? [] : tapSizes(machine, spindle, axis, work),
    caution: CAUTION,
  });
}
