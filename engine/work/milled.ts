/** A wanted thread that is milled: a cutter goes round in a circle while the axis along the thread climbs one lead. */
import { cutThreadMilling } from '../handbook/cut-thread-milling.ts';
import type { Work } from '../refit/types.ts';
import type { Given } from '../sheet/index.ts';
import { materialOf } from '../threads/cut-material.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import { type Basic, limitsOf, type Side, type Thread } from '../threads/index.ts';
import { axisFindings } from './cut-axes.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import { type LinkLimit, rangeAt, sorted, spindleLimits, torqueOver } from './limits.ts';
import { noSpindle, speedFinding } from './links.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { remember } from './remember.ts';
import { mm, rpm, say } from './say.ts';
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
/** A cutter larger than this share of the bore cuts away the flanks it leaves behind. */
const MOST_CUTTER = 0.75;
/** A milled bolt wants a cutter of about its own size at most; this one where nothing was typed. */
const OUTSIDE_CUTTER = 12e-3;

const CIRCLE: Readonly<Record<string, readonly string[]>> = { X: ['Y', 'Z'], Y: ['X', 'Z'], Z: ['X', 'Y'] };

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
      told(work.id, {
        check: 'standing',
        link: 'settings',
        title: 'Spindle speed',
        verdict: 'fails',
        sentence:
          'The spindle speed is 0: the cutter has to turn. Give a speed such as 60 m/min, or leave it empty.',
      }),
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
  const limits = spindle ? spindleLimits(spindle) : [];
  const lowest = sorted(limits)[0]?.speed ?? null;
  const slowest = spindle ? Math.min(...spindle.ranges.map((each) => each.lowest)) : 0;
  const usual = Math.max(slowest, (2 * USUAL_SPEED) / cutter);
  const speed = typedSpeed ?? (lowest === null ? null : Math.min(lowest, usual));
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
    if (spindle) {
      found.push(...speedFinding(work.id, machine, limits, speed));
      found.push(...torqueFinding(work.id, machine, made.Mc, speed, rows, material.value.name));
    }
    for (const id of CIRCLE[axis?.id ?? 'Z'] ?? CIRCLE.Z!) {
      const other = axisFor(machine, id);
      found.push(
        ...(other
          ? circleFindings(machine, work, other, made)
          : [
              told(work.id, {
                check: `axis-${id.toLowerCase()}`,
                link: 'axis',
                title: `The ${id} axis`,
                verdict: 'fails',
                sentence: `A thread is milled with three axes; this machine has no ${id}.`,
              }),
            ]),
      );
    }
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

type Round = Readonly<Record<'R' | 'v' | 'w' | 'a' | 'v_z' | 't' | 'Mc' | 'F' | 'h', number>>;

function cutterFinding(work: string, cutter: number, basic: Basic, side: Side): WorkFinding {
  const of = { check: 'cutter', link: 'hole', title: 'Cutter' } as const;
  if (side === 'external')
    return told(work, {
      ...of,
      verdict: 'fits',
      sentence: `A cutter of ${mm(cutter)} goes round outside; it needs that much room all round the bolt.`,
    });
  return ratio(work, {
    ...of,
    asked: cutter,
    there: basic.bore,
    unit: 'mm',
    tight: 1 / MOST_CUTTER,
    says: {
      fits: 'The cutter of {asked} goes into the bore of {there}.',
      fails: 'The cutter of {asked} does not go into the bore of {there}.',
    },
    because: [
      `Up to about ${say(MOST_CUTTER, '%')} of the bore it leaves the flanks as they should be; a larger one cuts some of them away: common practice, no source.`,
    ],
  });
}

function helixFinding(work: string, machine: WorkMachine): WorkFinding {
  const of = { check: 'helix', link: 'control', title: 'Three axes together' } as const;
  const { coordinated } = machine;
  if (coordinated.value === null)
    return missing(work, {
      ...of,
      sentence:
        'How many axes the control moves together is not known: a circle in a plane while the third axis climbs needs three.',
      needs: coordinated.needs,
    });
  return ratio(work, {
    ...of,
    asked: 3,
    there: coordinated.value,
    unit: '1',
    tight: 1,
    says: {
      fits: 'The control moves {there} axes together; a circle with a climb needs {asked}. The spindle’s angle does not matter.',
      fails:
        'A circle in a plane while the third axis climbs needs {asked} axes moved together; the control does {there}.',
    },
    basis: coordinated.basis,
  });
}

function torqueFinding(
  work: string,
  machine: WorkMachine,
  sharp: number,
  speed: number,
  rows: number,
  material: string,
): readonly WorkFinding[] {
  const { spindle, habits, cutting } = machine;
  const range = spindle && rangeAt(spindle, speed);
  if (!range) return [];
  return [
    ratio(work, {
      check: 'spindle-torque',
      link: 'spindle',
      title: 'Torque of the cutter',
      asked: sharp * cutting,
      there: torqueOver(range, speed),
      unit: 'N·m',
      tight: machine.tight,
      says: {
        fits: 'The cutter takes {asked} while it is fully in; the spindle gives {there} at that speed.',
        fails:
          'The cutter takes {asked} while it is fully in, but the spindle gives only {there} at that speed: fewer rows of teeth, or less feed.',
      },
      because: [
        `${rows === 1 ? 'One groove' : `${rows} grooves`} at once in the ${range.name} at ${rpm(speed)}; ${material}, a sharp cutter. Blunt it takes up to twice as much; usual margin ${habits.margin.says}.`,
      ],
      basis: spindle.basis,
    }),
  ];
}

/** What the circle asks of each of its two axes. */
function circleFindings(
  machine: WorkMachine,
  work: Work,
  axis: WorkAxis,
  { v, a, R, F }: Round,
): readonly WorkFinding[] {
  const small = axis.id.toLowerCase();
  const unknown = (check: string, title: string, needs: readonly string[]): WorkFinding =>
    missing(work.id, { check, link: 'axis', title, sentence: `${title} is not known.`, needs });
  const { rapid, acceleration } = axis;
  const link = (name: string, there: number) => {
    const asked = F * machine.cutting;
    return { id: `axis-${axis.id}`, name, asked, there, unit: 'N', margin: there / asked };
  };
  return [
    rapid.value === null
      ? unknown(`circle-speed-${small}`, `Fastest speed of the ${axis.id} axis`, rapid.needs)
      : ratio(work.id, {
          check: `circle-speed-${small}`,
          link: 'axis',
          title: `Speed of ${axis.id} on the circle`,
          asked: v,
          there: rapid.value,
          unit: 'mm/min',
          tight: 1,
          says: {
            fits: `On the circle ${axis.id} reaches {asked}; it runs at {there} at most.`,
            fails: `On the circle ${axis.id} would have to reach {asked}, but it runs at {there} at most: less feed or a slower cutter.`,
          },
          basis: rapid.basis,
        }),
    acceleration.value === null
      ? unknown(`circle-acceleration-${small}`, `Acceleration of the ${axis.id} axis`, acceleration.needs)
      : ratio(work.id, {
          check: `circle-acceleration-${small}`,
          link: 'axis',
          title: `Acceleration of ${axis.id} on the circle`,
          asked: a,
          there: acceleration.value,
          unit: 'm/s²',
          tight: 1,
          says: {
            fits: `Going round a circle of ${mm(R)} radius asks {asked} of ${axis.id}, back and forth; it has {there}.`,
            fails: `Going round a circle of ${mm(R)} radius asks {asked} of ${axis.id}, back and forth, but it has only {there}: less feed, or a smaller cutter, whose circle is wider.`,
          },
          because: [`Speed squared over radius: ${say(v, 'mm/min')} on ${mm(R)}.`],
          basis: acceleration.basis,
        }),
    ...axisFindings(machine, work, axis, 'force of the cutter', link, () => []),
  ];
}

/** A circle comes out smaller than asked, because each axis answers a to and fro a little less than in full. */
function roundFinding(
  work: string,
  machine: WorkMachine,
  thread: Thread,
  side: Side,
  { R, w }: Round,
  along: string,
): readonly WorkFinding[] {
  const limits = limitsOf(thread);
  const row = limits.ok
    ? limits.value.find((each) => each.side === side)?.rows.find(({ key }) => key.toLowerCase() === 'd2')
    : undefined;
  const gains = (CIRCLE[along] ?? CIRCLE.Z!).map((id) => axisFor(machine, id)?.gain.value ?? null);
  if (row?.low === undefined || row.high === undefined || gains.includes(null)) return [];
  const Kv = Math.min(...(gains as number[]));
  return [
    ratio(work, {
      check: 'round',
      link: 'axis',
      title: 'Size of the circle',
      asked: 2 * R * (1 - 1 / Math.sqrt(1 + (w / Kv) ** 2)),
      there: row.high - row.low,
      unit: 'µm',
      tight: 2,
      says: {
        fits: 'At that feed the axes fall short of the circle by {asked} on the diameter; the thread’s own tolerance is {there}. Make it good with the offset of the cutter.',
        fails:
          'At that feed the axes fall short of the circle by {asked} on the diameter, more than the {there} that the thread may vary: less feed.',
      },
      because: [
        `A lag with a gain of ${say(Kv, '1/s')}, as the slower of both axes follows in the simulation, at ${rpm(w)} round the thread.`,
      ],
      basis: 'guess',
    }),
  ];
}

function climbFindings(work: string, axis: WorkAxis, climb: number, way: number): readonly WorkFinding[] {
  const { rapid, travel } = axis;
  return [
    ...(rapid.value === null
      ? []
      : [
          ratio(work, {
            check: 'climb',
            link: 'axis',
            title: `Climb of ${axis.id}`,
            asked: climb,
            there: rapid.value,
            unit: 'mm/min',
            tight: 1,
            says: {
              fits: `${axis.id} climbs at {asked}; it runs at {there} at most.`,
              fails: `${axis.id} would have to climb at {asked}, but it runs at {there} at most.`,
            },
            basis: rapid.basis,
          }),
        ]),
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
          asked: way,
          there: travel.value,
          unit: 'mm',
          tight: 1,
          says: {
            fits: `Thread and one lead of climb take {asked} of the {there} that ${axis.id} travels.`,
            fails: `Thread and one lead of climb take {asked}, more than the {there} that ${axis.id} travels.`,
          },
          basis: travel.basis,
        }),
  ];
}
