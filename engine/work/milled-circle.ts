/** The helix of a milled thread: what circle and climb ask of control and axes, and how round it comes out. */
import type { Work } from '../refit/types.ts';
import { limitsOf, type Side, type Thread } from '../threads/index.ts';
import { axisFindings } from './cut-axes.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import { axisFor, travelFinding } from './thread-axis.ts';

/** The circle as its sheet works it out, by the symbols there. */
export type Round = Readonly<Record<'R' | 'v' | 'w' | 'a' | 'v_z' | 't' | 'Mc' | 'F' | 'h', number>>;

const CIRCLE: Readonly<Record<string, readonly string[]>> = { X: ['Y', 'Z'], Y: ['X', 'Z'], Z: ['X', 'Y'] };

/** The two axes that go round where the work lies along an axis. */
const circleOf = (along: string): readonly string[] => CIRCLE[along] ?? CIRCLE.Z!;

export function helixFinding(work: string, machine: WorkMachine): WorkFinding {
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

/** What the circle asks of the two axes that go round. */
export function circleFindings(
  machine: WorkMachine,
  work: Work,
  along: string,
  round: Round,
): readonly WorkFinding[] {
  return circleOf(along).flatMap((id) => {
    const axis = axisFor(machine, id);
    return axis
      ? oneAxis(machine, work, axis, round)
      : [
          told(work.id, {
            check: `axis-${id.toLowerCase()}`,
            link: 'axis',
            title: `The ${id} axis`,
            verdict: 'fails',
            sentence: `A thread is milled with three axes; this machine has no ${id}.`,
          }),
        ];
  });
}

function oneAxis(
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
export function roundFinding(
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
  const gains = circleOf(along).map((id) => axisFor(machine, id)?.gain.value ?? null);
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

export function climbFindings(
  work: string,
  axis: WorkAxis,
  climb: number,
  way: number,
): readonly WorkFinding[] {
  const { rapid } = axis;
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
    travelFinding(work, axis, way, 'Thread and one lead of climb'),
  ];
}
