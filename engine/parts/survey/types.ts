/** What a survey asks of a machine beside its parts: auxiliaries, marks of wear, and what the old control still knows. */

import type { Span } from '../../quantity/plausible.ts';

interface Asked {
  /** Plain name: 'supply voltage'. */
  readonly name: string;
}

export type SurveyQuestion =
  | (Asked & {
      readonly kind: 'quantity';
      readonly unit: string;
      /** What such things have as a rule; far outside it a person is asked whether it is right. */
      readonly plausible?: Span;
    })
  | (Asked & { readonly kind: 'choice'; readonly options: Readonly<Record<string, string>> })
  | (Asked & { readonly kind: 'text'; readonly like: string });

export interface SurveyItemSpec {
  readonly id: string;
  /** An auxiliary does something at a command; a mark tells how good the machine is. */
  readonly group: 'auxiliary' | 'mark';
  readonly name: string;
  /** Where to look and what to see, in one to three sentences. */
  readonly look: string;
  /** Stands before `look` where looking can hurt. */
  readonly caution?: string;
  /** Machines that have such a thing; all when absent. */
  readonly machines?: readonly ('lathe' | 'mill' | 'other')[];
  readonly sketch?: string;
  readonly questions: Readonly<Record<string, SurveyQuestion>>;
}

/** One thing to save from the old control before anything is taken off. */
export interface KeepSpec {
  readonly id: string;
  readonly what: string;
  /** What it is good for later. */
  readonly why: string;
  readonly how: string;
  readonly caution?: string;
}

/** A line drawing of where to look: strokes in a box of 200 × 120, and words beside them. */
export interface Sketch {
  readonly says: string;
  /** SVG path data. */
  readonly strokes: readonly string[];
  readonly labels: readonly (readonly [x: number, y: number, text: string])[];
}
