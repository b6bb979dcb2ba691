/** A wanted thread that is milled: a cutter goes round in a circle while the axis along the thread climbs one lead. */
import { cutThreadMilling } from '../handbook/cut-thread-milling.ts';
import type { Work } from '../refit/types.ts';
import type { Given } from '../sheet/index.ts';
import { materialOf } from '../threads/cut-material.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import type { Basic, Side, Thread } from '../threads/index.ts';
import { missing, type WorkFinding } from './finding.ts';
import { chosenSpeed, type LinkLimit, sorted, spindleLimits } from './limits.ts';
import { noSpindle, speedFinding, standing } from './links.ts';
import type { WorkMachine } from './machine.ts';
import { circleFindings, climbFindings, helixFinding, roundFinding } from './milled-circle.ts';
import { cutterFinding, torqueFinding } from './milled-cutter.ts';
import { remember } from './remember.ts';
import type { Settings } from './settings.ts';
import { axisFor, noAxis } from './thread-axis.ts';

/** The same in every draw: it is the spindle and the axes that are in doubt. */
const helix = remember((given: Given<keyof typeof cutThreadMilling.symbols>) =>
  evaluated(cutThreadMilling, given),
);

export interface MilledDetail {
  readonly kind: 'milled';
  readonly thread: Thread;
  readonly side: Side;
  readonly length: number;
  readonly axis: string;
  /** Diameter of the cutter, its speed, and the radius its middle goes round; m and rad/s. */
  readonly cutter: number;
  readonly speed: number | null;
  readonly radius: number;
  /** m/s of its middle round the circle, m/s along the thread, s for the whole thread; null without a speed. */
  readonly feed: number | null;
  readonly climb: number | null;
  readonly time: number | null;
  readonly limits: readonly LinkLimit[];
  readonly caution: string;
}

const CAUTION =
  'Try the helix above the work first, with the spindle standing, and watch which way it goes: climbing with the cutter turning the right way cuts a right-hand thread, the other way a left-hand one. A thread mill that is driven into the wall breaks.';

/** Common practice, no source: cutting speed, feed, cutter against the bore. */
const USUAL_SPEED = 1;
const USUAL_FEED = 0.03e-3;
const USUAL_TEETH = 3;
const USUAL_CUTTER = 0.6;
/** A milled bolt wants a cutter of about its own size at most; this one where nothing was typed. */
const OUTSIDE_CUTTER = 12e-3;

export function judgeMilled(
  machine: WorkMachine,
  work: Work,
  s: Settings,
  asked: {
    readonly thread: Thread;
    readonly basic: Basic;
    readonly side: Side;
    readonly length: number;
    readonly axisId: string;
  },
): { readonly findings: readonly WorkFinding[]; readonly detail: MilledDetail | null } {
  const { thread, basic, side, length, axisId } = asked;
  const cutter = s.number('cutter') ?? (side === 'internal' ? USUAL_CUTTER * basic.bore : OUTSIDE_CUTTER);
  const teeth = s.number('teeth') ?? USUAL_TEETH;
  const feed = s.number('feed') ?? USUAL_FEED;
  const turns = Math.max(1, Math.ceil(length / thread.pitch - 1e-9));
  const rows = Math.min(turns, s.number('rows') ?? turns);
  const typedSpeed = s.speed(cutter);
  const material = materialOf(s.text('material') ?? 'c45', 'milling');
  if (!material.ok) s.refuse('material', material.problem.message);
  const found: WorkFinding[] = [...s.findings];
  const nothing = { findings: found, detail: null };
  if (typedSpeed === 'zero')
    found.push(
      standing(work.id, 'the cutter has to turn. Give a speed such as 60 m/min, or leave it empty.'),
    );
  if (thread.taper > 0)
    found.push(
      missing(work.id, {
        check: 'milled-taper',
        link: 'settings',
        title: 'Taper thread, milled',
        sentence:
          'A taper thread wants a taper cutter of its own or a circle that widens as it climbs; Fettle reckons with parallel ones only.',
        needs: [],
      }),
    );
  found.push(cutterFinding(work.id, cutter, basic, side));
  found.push(helixFinding(work.id, machine));
  const axis = axisFor(machine, axisId);
  if (!axis) found.push(noAxis(work.id, machine, axisId));
  if (!material.ok || typedSpeed === 'zero' || (side === 'internal' && cutter >= basic.bore)) return nothing;

  const { spindle } = machine;
  if (!spindle) found.push(noSpindle(work.id, machine));
  const limits = spindleLimits(machine);
  const speed = chosenSpeed(spindle, limits, typedSpeed, (2 * USUAL_SPEED) / cutter);
  const round = (n: number) =>
    helix({
      s: side === 'external' ? 1 : -1,
      d_w: side === 'external' ? basic.root : basic.major,
      d_b: side === 'external' ? basic.major : basic.bore,
      D_c: cutter,
      z: teeth,
      f_z: feed,
      n,
      P_h: thread.lead,
      alpha: thread.flankAngle / 2,
      m: rows,
      kc11: material.value.values.kc11!,
      mc: material.value.values.mc!,
      k_w: 1,
    });
  const made = speed === null ? null : round(speed);
  if (speed !== null && made) {
    found.push(...speedFinding(work.id, machine, limits, speed));
    if (spindle) found.push(...torqueFinding(work.id, machine, made.Mc, speed, rows, material.value.name));
    found.push(...circleFindings(machine, work, axis?.id ?? 'Z', made));
    found.push(...roundFinding(work.id, machine, thread, side, made, axis?.id ?? 'Z'));
    if (axis) found.push(...climbFindings(work.id, axis, made.v_z, length + thread.lead));
  }
  return {
    findings: found,
    detail: {
      kind: 'milled',
      thread,
      side,
      length,
      axis: axisId,
      cutter,
      speed,
      radius: made?.R ?? 0,
      feed: made?.v ?? null,
      climb: made?.v_z ?? null,
      // In and out along an arc take about half a round each.
      time: made ? made.t * (turns / rows + 1) : null,
      limits: sorted(limits),
      caution: CAUTION,
    },
  };
}
