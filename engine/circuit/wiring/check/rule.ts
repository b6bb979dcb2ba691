/** What a rule is. */
import type { Figure, Nature, Root, Verdict, WiringFinding } from '../types.ts';
import type { View } from './view.ts';

export type SubjectOf = 'terminal' | 'wire' | 'cable' | 'device' | 'net';

export interface Rule {
  readonly id: string;
  /** What it asks, in words. */
  readonly title: string;
  /** Natures of the terminals it is asked of, or what else. */
  readonly of: readonly Nature['kind'][] | SubjectOf;
  /** Reads what other rules gave: is asked after them. */
  readonly sums?: true;
  /** Answers about one subject, none where the question does not arise. Reads through the view only. */
  readonly judge: (view: View, subject: string) => readonly WiringFinding[];
}

export const PRACTICE = 'common practice, no source';

/** Below this margin a verdict is tight: a quarter in hand. */
export const TIGHT = 1.25;

export const verdictOf = (margin: number, tight = TIGHT): Verdict =>
  margin < 1 ? 'fails' : margin < tight ? 'tight' : 'fits';

export const figure = (name: string, value: number, unit: string): Figure => ({ name, value, unit });

/** A finding of a rule; `part` tells several about one subject apart. */
export function found(
  rule: { readonly id: string; readonly title: string },
  about: readonly string[],
  verdict: Verdict,
  sentence: string,
  more: {
    readonly part?: string;
    readonly margin?: number | undefined;
    readonly figures?: readonly Figure[];
    readonly source?: string;
    readonly remedy?: string | undefined;
    readonly needs?: readonly string[];
    /** In place of the title of the rule. */
    readonly title?: string;
    readonly root?: Root;
  } = {},
): WiringFinding {
  const { part, margin, figures = [], source = PRACTICE, remedy, needs, title = rule.title, root } = more;
  return {
    id: `${rule.id}:${about[0]}${part === undefined ? '' : `:${part}`}`,
    rule: rule.id,
    about: [...new Set(about)],
    title,
    verdict,
    sentence,
    figures,
    source,
    ...(margin === undefined ? {} : { margin }),
    ...(remedy === undefined ? {} : { remedy }),
    ...(needs === undefined || needs.length === 0 ? {} : { needs }),
    ...(root ? { root } : {}),
  };
}
