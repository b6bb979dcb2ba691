/** What the comparison of stop circuit and wiring comes to. */
import type { Verdict } from '../../../quantity/verdict.ts';

/**
 * 'missing': an element that the wiring has not. 'other-kind': of the same name and another kind. 'in-the-way': a contact of
 * the wiring that the stop circuit has not, in the way of a conductor. 'apart': joined in the stop circuit only. 'joined':
 * joined in the wiring only. 'past': a contact that the stop circuit has not leads past others. 'source', 'contactor', 'poles':
 * of the power of a drive. 'unlaid': no wire there yet.
 */
export type DifferenceKind =
  | 'missing'
  | 'other-kind'
  | 'in-the-way'
  | 'apart'
  | 'joined'
  | 'past'
  | 'source'
  | 'contactor'
  | 'poles'
  | 'unlaid';

export interface Difference {
  readonly kind: DifferenceKind;
  /** 'fails' where what the stop circuit counts on does not cut; 'tight' where nothing of it is lost. */
  readonly verdict: Exclude<Verdict, 'fits'>;
  /** Elements, devices and terminals it is about. */
  readonly about: readonly string[];
  readonly says: string;
  /** What to change. */
  readonly change: string;
}
