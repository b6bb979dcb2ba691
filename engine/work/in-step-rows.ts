/** A run in step as rows to read: what each column is, and the error where it counts. */
import type { InStepAnswer } from './in-step.ts';
import { mm } from './say.ts';

export interface InStepRow {
  /** s, turns of the spindle, rad/s. */
  readonly time: number;
  readonly turns: number;
  readonly speed: number;
  /** m where the tool is: from where it waits, of a tap from the face of the work. */
  readonly place: number;
  /** m by which the tool is off its groove, of a tap ahead of its thread; null while it does not cut. */
  readonly off: number | null;
}

/** Heads of the columns, in mm and µm. */
export const inStepHeads = ({ of }: InStepAnswer): readonly string[] => [
  'time, s',
  'turns',
  'spindle, r/min',
  of.kind === 'thread' ? 'tool at, mm' : 'depth, mm',
  of.kind === 'thread' ? 'off groove, µm' : 'ahead, µm',
];

/** What the columns mean, a sentence each. */
export function inStepWords({ of }: InStepAnswer): readonly string[] {
  if (of.kind === 'tap')
    return [
      'Turns and time count from the order to start. Depth counts from the face of the work; below zero the tap is above it.',
      '“Ahead” is how far the axis is ahead of where the spindle’s angle wants the tap, below zero behind. It counts only in the hole: in the air it harms nothing.',
    ];
  return [
    'Turns and time count from the start of the run; the axis sets off once the spindle’s mark has come. The tool’s place counts from where it waits.',
    `All along the tool trails the spindle’s angle by ${mm(of.run.trail)}, the same at every pass: that moves the whole groove and is no error. “Off groove” is what is left, and it counts only in the cut.`,
  ];
}

/** Every point of the run. */
export function inStepRows({ of }: InStepAnswer): readonly InStepRow[] {
  const { time, angle, speed, place, ideal } = of.run.trace;
  const trail = of.kind === 'thread' ? of.run.trail : 0;
  const [from, to] = of.kind === 'thread' ? [of.runIn, of.runIn + of.length] : [0, Number.POSITIVE_INFINITY];
  return Array.from(time, (t, at) => {
    const z = place[at]!;
    return {
      time: t,
      turns: angle[at]! / (2 * Math.PI),
      speed: speed[at]!,
      place: z,
      off: z >= from && z <= to && z > 0 ? z - ideal[at]! + trail : null,
    };
  });
}
