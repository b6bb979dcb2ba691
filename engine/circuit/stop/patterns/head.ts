/** What the patterns with a safety relay begin with: two watched channels, a start that is looked at, two contactors. */
import type { Drawn } from '../draw.ts';
import { inPairs } from './pattern.ts';

export interface Head {
  /** Outputs of the safety relay that open at once. */
  readonly outputs: number;
  /** Seconds after which the contactors lose their current, '500 ms'; left out, they lose it at once. */
  readonly late?: string;
  /** Terminals that each channel goes through behind the emergency stop, in and out in turn: 'S3.11', 'S3.12'. */
  readonly behind?: Readonly<Record<'one' | 'two', readonly string[]>>;
  /** Terminals that the start loop goes through behind the contactors' own contacts, in and out in turn. */
  readonly loop?: readonly string[];
  /** What the machine has besides, in the order of its names. */
  readonly devices?: readonly Drawn[];
  /** Settings of both contactors. */
  readonly contactors?: Readonly<Record<string, string>>;
}

/** Two contactors, either of which takes the power of the drives away. */
const contactors = (settings: Readonly<Record<string, string>>): readonly Drawn[] => [
  ['K1 contactor', 'Power of the drives, first', settings],
  ['K2 contactor', 'Power of the drives, second', settings],
];

/** The power of the drives goes through both, line and return; it is had at `MAINS`. */
export const BOTH_IN_A_ROW: readonly string[] = ['F2.2 K1.1', 'K1.2 K2.1', 'G2.minus K1.3', 'K1.4 K2.3'];
export const MAINS = ['K2.2', 'K2.4'] as const;

/**
 * Emergency stop S1 through both channels of the safety relay U1, each in a cable of its own; start button S2 behind a contact of
 * K1 and K2 that opens with them; both coils. Where the contactors let go late, the first two outputs take the enable and tell
 * the control at once: the drives then have their enable at `U1.14`.
 */
export function headOf({
  outputs,
  late,
  behind = { one: [], two: [] },
  loop = [],
  devices = [],
  contactors: settings = { main: '2' },
}: Head): { readonly elements: readonly Drawn[]; readonly runs: readonly string[] } {
  const channel = (n: 1 | 2, through: readonly string[]) =>
    inPairs(`U1.C${n}a`, [`S1.${n}1`, `S1.${n}2`, ...through], `U1.C${n}b`).map((run) => `${run} / W${n}`);
  const coils =
    late === undefined
      ? ['F1.2 U1.13', 'U1.14 K1.A1', 'F1.2 U1.23', 'U1.24 K2.A1']
      : [
          'A1.enable U1.13',
          'F1.2 U1.23',
          'U1.24 A1.stop',
          'F1.2 U1.47',
          'U1.48 K1.A1',
          'F1.2 U1.57',
          'U1.58 K2.A1',
        ];
  return {
    elements: [
      ['S1 mushroom', 'Emergency stop', { nc: '2' }],
      ['S2 button', 'Start'],
      ...devices,
      [
        'U1 safety-relay',
        'Safety relay',
        { outputs: `${outputs}`, ...(late === undefined ? {} : { delayed: '2', delay: late }) },
      ],
      ...contactors(settings),
    ],
    runs: [
      'F1.2 U1.A1',
      'U1.A2 G1.minus',
      ...channel(1, behind.one),
      ...channel(2, behind.two),
      ...inPairs('U1.Ra', ['K1.51', 'K1.52', 'K2.51', 'K2.52', ...loop], 'S2.13'),
      'S2.14 U1.Rb',
      ...coils,
      'K1.A2 G1.minus',
      'K2.A2 G1.minus',
      ...BOTH_IN_A_ROW,
    ],
  };
}
