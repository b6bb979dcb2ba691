/** What a pattern is, and the parts that several patterns share. */
import { own } from '../../../quantity/own.ts';
import type { StopCircuit, StopMotion } from '../../../refit/types.ts';
import { type Drawing, type Drawn, draw } from '../draw.ts';
import { fedFromMains, type Phases } from './mains-feed.ts';

/** Something to be stopped, before it has a drive in the circuit. */
export interface MotionWanted {
  readonly id: string;
  readonly kind: 'axis' | 'spindle';
  readonly name: string;
  /** Whether it drops when nothing holds it, as the rest of the refit knows it; what is typed in `settings` comes first. */
  readonly drops?: boolean;
  /** Phases of the mains that its drive takes; absent where it is fed with the direct current of the others, or nobody knows. */
  readonly mains?: Phases;
  readonly settings?: Readonly<Record<string, string>>;
}

/** Whether an axis drops when nothing holds it, so that it gets a brake. Friction alone is not relied on. */
export const isDropping = ({ kind, drops = false, settings = {} }: MotionWanted): boolean => {
  const typed = (own(settings, 'vertical') ?? '').trim();
  return kind === 'axis' && (typed === '' ? drops : typed !== 'no');
};

export interface Pattern {
  readonly id: string;
  readonly name: string;
  /** When it is the one to take. */
  readonly need: string;
  readonly reach: string;
  readonly limits: string;
  /** True where it only shows what not to rely on. */
  readonly warning?: boolean;
  readonly make: (motions: readonly MotionWanted[]) => StopCircuit;
}

/** What is said of a pattern that only shows what not to rely on. */
export const ONLY_TO_LOOK = 'to look through only; do not build';

/** Supplies, fuse, control, buttons. */
export const COMMON: readonly Drawn[] = [
  ['G1 supply', '24 V, 0 V earthed at one point', { earthed: 'yes' }],
  ['F1 fuse', 'Fuse of the stop circuit'],
  ['G2 supply', 'Power for the drives', { earthed: 'yes' }],
  ['F2 fuse', 'Fuse of the drives'],
];

export const COMMON_RUNS: readonly string[] = [
  'G1.plus F1.1',
  'G2.plus F2.1',
  'F1.2 A1.plus',
  'A1.minus G1.minus',
];

export interface DriveWiring {
  /** Where each drive gets its power, both sides: 'K2.2', 'K2.4'. */
  readonly power: readonly [line: string, neutral: string];
  /** Where each drive gets its enable: 'A1.enable'. */
  readonly enable: string;
  readonly settings?: Readonly<Record<string, string>>;
  readonly brake?: (drive: string, brake: string) => readonly string[];
}

/** One drive for each motion, all fed alike; a brake for each where `brake` wires it. */
export function drivesFor(
  motions: readonly MotionWanted[],
  { power, enable, settings = {}, brake }: DriveWiring,
): {
  elements: readonly Drawn[];
  runs: readonly string[];
  motions: readonly StopMotion[];
  /** Drives that take mains. */
  mains: readonly (readonly [drive: string, phases: Phases])[];
} {
  const elements: Drawn[] = [];
  const runs: string[] = [];
  const made: StopMotion[] = [];
  const mains: [string, Phases][] = [];
  for (const [n, motion] of motions.entries()) {
    const id = `T${n + 1}`;
    elements.push([
      `${id} ${motion.kind === 'spindle' ? 'inverter' : 'drive'}`,
      `Drive of ${motion.name}`,
      settings,
    ]);
    runs.push(`${power[0]} ${id}.L`, `${power[1]} ${id}.N`, `${enable} ${id}.EN`, `${id}.COM G1.minus`);
    const holds = brake !== undefined && isDropping(motion);
    if (holds) {
      elements.push([`Y${n + 1} brake`, `Brake of ${motion.name}`]);
      runs.push(...brake(id, `Y${n + 1}`));
    }
    if (motion.mains) mains.push([id, motion.mains]);
    made.push({
      id: motion.id,
      kind: motion.kind,
      name: motion.name,
      drive: id,
      brake: holds ? `Y${n + 1}` : null,
      settings: motion.settings ?? {},
    });
  }
  return { elements, runs, motions: made, mains };
}

export const lay = (
  pattern: string,
  {
    control = {},
    ...drawing
  }: Omit<Drawing, 'pattern' | 'motions' | 'elements' | 'runs'> & {
    readonly elements: readonly Drawn[];
    readonly runs: readonly string[];
    /** Settings of the control. */
    readonly control?: Readonly<Record<string, string>>;
  },
  drives: ReturnType<typeof drivesFor>,
): StopCircuit =>
  drives.mains.reduce(
    (circuit, [drive, phases]) => fedFromMains(circuit, drive, phases),
    draw({
      ...drawing,
      pattern,
      elements: [...COMMON, ['A1 control', 'Control', control], ...drawing.elements, ...drives.elements],
      runs: [...COMMON_RUNS, ...drawing.runs, ...drives.runs],
      motions: drives.motions,
    }),
  );

/** Terminals joined two by two, from the first past those between to the last: 'U1.Ra K1.51', 'K1.52 S2.13'. */
export function inPairs(from: string, through: readonly string[], to: string): readonly string[] {
  const stops = [from, ...through, to];
  return stops.flatMap((each, n) => (n % 2 === 0 ? [`${each} ${stops[n + 1]}`] : []));
}
