/** What is found on the axes that feed a cut: their push and their pace. */
import type { Work } from '../refit/types.ts';
import type { Cut, Operation } from '../threads/index.ts';
import type { CutLink } from './cut-bends.ts';
import { missing, ratio, type WorkFinding } from './finding.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { say } from './say.ts';

/** Which row of a cut presses on which axis. */
export const PUSHES: Readonly<
  Record<Operation, readonly (readonly [axis: string, row: string, what: string])[]>
> = {
  turning: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the work'],
  ],
  boring: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the wall'],
  ],
  parting: [['X', 'Ff', 'push into the work']],
  drilling: [['Z', 'Ff', 'thrust']],
  milling: [
    ['X', 'F_axis', 'force on the table'],
    ['Y', 'F_axis', 'force across the table'],
  ],
  threading: [
    ['Z', 'Ff', 'feed force'],
    ['X', 'Fp', 'push away from the work'],
  ],
  tapping: [],
};

export function axisFindings(
  machine: WorkMachine,
  work: Work,
  axis: WorkAxis,
  what: string,
  link: (name: string, there: number) => CutLink,
  where: (of: CutLink) => readonly string[],
): readonly WorkFinding[] {
  const { thrust, peakThrust, buckling } = axis;
  const of = {
    check: `thrust-${axis.id.toLowerCase()}`,
    link: 'axis',
    title: `Push of the ${axis.id} axis`,
  } as const;
  if (thrust.value === null)
    return [
      missing(work.id, {
        ...of,
        sentence: `How hard the ${axis.id} axis can push is not known.`,
        needs: thrust.needs,
      }),
    ];
  const isScrew = buckling.value !== null && buckling.value < thrust.value;
  const there = isScrew ? buckling.value! : thrust.value;
  const name = isScrew ? `screw of ${axis.id} (buckling)` : `${axis.weakest} of ${axis.id}`;
  const made = link(name, there);
  return [
    ratio(work.id, {
      ...of,
      asked: made.asked,
      there,
      unit: 'N',
      tight: machine.tight,
      says: {
        fits: `The ${what} is {asked}; the ${name} gives {there} beside friction and weight.`,
        fails: `The ${what} is {asked}, but the ${name} gives only {there} beside friction and weight.`,
      },
      because: [
        peakThrust.value === null || isScrew
          ? 'What it can push for hours.'
          : `What it can push for hours; for a moment ${say(peakThrust.value, 'N')}.`,
        ...where(made),
      ],
      basis: thrust.basis,
    }),
  ];
}

/** Whether the feeding axis is fast enough. */
export function feedFindings(
  machine: WorkMachine,
  work: Work,
  cut: Cut,
  speed: number,
): readonly WorkFinding[] {
  const id = cut.operation === 'parting' || cut.operation === 'milling' ? 'X' : 'Z';
  const axis = machine.axes.get(id);
  if (!axis || speed <= 0 || axis.rapid.value === null) return [];
  return [
    ratio(work.id, {
      check: 'feed',
      link: 'axis',
      title: `Feed of the ${id} axis`,
      asked: speed,
      there: axis.rapid.value,
      unit: 'mm/min',
      tight: 1,
      says: {
        fits: `The feed is {asked}; ${id} runs at {there} at most.`,
        fails: `The feed is {asked}, but ${id} runs at {there} at most.`,
      },
      basis: axis.rapid.basis,
    }),
  ];
}
