/** What a pattern is, and the parts that several patterns share. */
import type { StopCircuit, StopMotion } from '../../../refit/types.ts';
import { type Drawing, type Drawn, draw } from '../draw.ts';

/** Something to be stopped, before it has a drive in the circuit. */
export interface MotionWanted {
  readonly id: string;
  readonly kind: 'axis' | 'spindle';
  readonly name: string;
  readonly settings?: Readonly<Record<string, string>>;
}

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

/** Two contactors, either of which takes the power of the drives away. */
export const TWO_CONTACTORS: readonly Drawn[] = [
  ['K1 contactor', 'Power of the drives, first', { main: '2' }],
  ['K2 contactor', 'Power of the drives, second', { main: '2' }],
];
/** The far ends of their coils. */
export const BOTH_COILS: readonly string[] = ['K1.A2 G1.minus', 'K2.A2 G1.minus'];
/** The power of the drives goes through both, line and return. */
export const BOTH_IN_A_ROW: readonly string[] = ['F2.2 K1.1', 'K1.2 K2.1', 'G2.minus K1.3', 'K1.4 K2.3'];

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
): { elements: readonly Drawn[]; runs: readonly string[]; motions: readonly StopMotion[] } {
  const elements: Drawn[] = [];
  const runs: string[] = [];
  const made: StopMotion[] = [];
  for (const [n, motion] of motions.entries()) {
    const id = `T${n + 1}`;
    elements.push([
      `${id} ${motion.kind === 'spindle' ? 'inverter' : 'drive'}`,
      `Drive of ${motion.name}`,
      settings,
    ]);
    runs.push(`${power[0]} ${id}.L`, `${power[1]} ${id}.N`, `${enable} ${id}.EN`, `${id}.COM G1.minus`);
    const holds = brake !== undefined && motion.kind === 'axis' && motion.settings?.vertical === 'yes';
    if (holds) {
      elements.push([`Y${n + 1} brake`, `Brake of ${motion.name}`]);
      runs.push(...brake(id, `Y${n + 1}`));
    }
    made.push({
      id: motion.id,
      kind: motion.kind,
      name: motion.name,
      drive: id,
      brake: holds ? `Y${n + 1}` : null,
      settings: motion.settings ?? {},
    });
  }
  return { elements, runs, motions: made };
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
  draw({
    ...drawing,
    pattern,
    elements: [...COMMON, ['A1 control', 'Control', control], ...drawing.elements, ...drives.elements],
    runs: [...COMMON_RUNS, ...drawing.runs, ...drives.runs],
    motions: drives.motions,
  });

/** The safety relay's channels through the emergency stop and the door, each channel in a cable of its own. */
export const CHANNELS: readonly string[] = [
  'F1.2 U1.A1',
  'U1.A2 G1.minus',
  'U1.C1a S1.11 / W1',
  'S1.12 U1.C1b / W1',
  'U1.C2a S1.21 / W2',
  'S1.22 U1.C2b / W2',
];

/** The start loop: the button and what must have let go before. */
export const startLoop = (...through: readonly string[]): readonly string[] => {
  const stops = ['U1.Ra', ...through.flatMap((id) => [`${id}.51`, `${id}.52`]), 'S2.13'];
  const runs: string[] = [];
  for (let at = 0; at < stops.length; at += 2) runs.push(`${stops[at]} ${stops[at + 1]}`);
  return [...runs, 'S2.14 U1.Rb'];
};
