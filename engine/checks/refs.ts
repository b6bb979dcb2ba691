/** Where a value comes from: a fact of a place, a result of a working, a policy, or one of several by choice. */
import type { FactId, PlaceId } from '../parts/index.ts';

export type Ref =
  | { readonly kind: 'fact'; readonly place: PlaceId; readonly fact: string }
  /** A number that goes with a choice, from a published table. */
  | {
      readonly kind: 'table';
      readonly place: PlaceId;
      readonly fact: string;
      /** Text with unit for each option, e.g. `3.927`, `0.1 ± 0.05`. */
      readonly rows: Readonly<Record<string, string>>;
      readonly unit: string;
      readonly source: string;
    }
  | { readonly kind: 'result'; readonly working: string; readonly symbol: string }
  | { readonly kind: 'policy'; readonly policy: string }
  /** A stated number, shown with its reason. */
  | { readonly kind: 'stated'; readonly text: string; readonly unit: string; readonly source: string }
  /** The first that is known; if none is, the first one's facts are what is missing. */
  | { readonly kind: 'first'; readonly of: readonly Ref[] }
  /** By an option of a choice. An option without a case makes the value inapplicable, with the reason given. */
  | {
      readonly kind: 'when';
      readonly place: PlaceId;
      readonly fact: string;
      readonly cases: Readonly<Record<string, Ref>>;
      readonly otherwise?: Ref;
      readonly inapplicable?: string;
    }
  /** By whether the place has a part at all. */
  | { readonly kind: 'fitted'; readonly place: PlaceId; readonly yes: Ref; readonly no: Ref }
  /** Over all axes of the machine. */
  | { readonly kind: 'axes'; readonly how: 'sum' | 'least'; readonly of: Ref }
  /** The number as it is entered, without its doubt: what somebody types into a control is exact, whatever the machine is. */
  | { readonly kind: 'exact'; readonly of: Ref }
  | { readonly kind: 'inapplicable'; readonly reason: string };

export const fact = <P extends PlaceId>(place: P, name: FactId<P>): Ref => ({
  kind: 'fact',
  place,
  fact: name,
});

export const table = <P extends PlaceId>(
  place: P,
  name: FactId<P>,
  unit: string,
  rows: Readonly<Record<string, string>>,
  source: string,
): Ref => ({ kind: 'table', place, fact: name, unit, rows, source });

export const policy = (id: string): Ref => ({ kind: 'policy', policy: id });
export const stated = (text: string, unit: string, source: string): Ref => ({
  kind: 'stated',
  text,
  unit,
  source,
});
export const first = (...of: Ref[]): Ref => ({ kind: 'first', of });
export const exact = (of: Ref): Ref => ({ kind: 'exact', of });
export const inapplicable = (reason: string): Ref => ({ kind: 'inapplicable', reason });
export const fitted = (place: PlaceId, yes: Ref, no: Ref): Ref => ({ kind: 'fitted', place, yes, no });
export const sumOfAxes = (of: Ref): Ref => ({ kind: 'axes', how: 'sum', of });
export const leastOfAxes = (of: Ref): Ref => ({ kind: 'axes', how: 'least', of });

export const when = <P extends PlaceId>(
  place: P,
  name: FactId<P>,
  cases: Readonly<Record<string, Ref>>,
  rest: { otherwise?: Ref; inapplicable?: string } = {},
): Ref => ({ kind: 'when', place, fact: name, cases, ...rest });
