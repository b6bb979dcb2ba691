/** What a rule of the supply is. */
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import type { Drops } from '../drops.ts';

/** What a rule asks, asked of each. */
export type SubjectKind = 'whole' | 'wire' | 'load' | 'fuse' | 'source' | 'device' | 'primary';

export interface Judged<Open = never> {
  readonly findings: readonly WiringFinding[];
  /** Left to one question for all that are open. */
  readonly open?: Open;
}

export const NOTHING: { readonly findings: readonly WiringFinding[] } = { findings: [] };

export interface SupplyRule<Open = never> {
  readonly id: string;
  readonly of: SubjectKind;
  /** Those that need no currents are asked even where none can be worked out. */
  readonly needs: 'currents' | 'nothing';
  readonly judge: (context: PowerContext, subject: string, drops: Drops) => Judged<Open>;
  /** One answer for all that are open, in this order; asked after all subjects. */
  readonly gather?: {
    readonly order: (a: Open, b: Open) => number;
    readonly judge: (context: PowerContext, open: readonly Open[]) => readonly WiringFinding[];
  };
}
