/** Findings by axis and spindle, with the whole machine last. */

import { sayChain } from '../engine/assess/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import { capital } from '../engine/quantity/words.ts';
import type { Refit } from '../engine/refit/index.ts';
import { shown } from './arguments.ts';
import { Refusal } from './refusal.ts';

export interface Group {
  readonly title: string;
  /** Whether a finding, or a question not asked, belongs here, by its id. */
  readonly holds: (each: { readonly id: string }) => boolean;
}

const MACHINE = 'machine';

const group = (name: string, title: string): Group => ({
  title,
  holds: ({ id }) => id.slice(0, id.indexOf('.')) === name,
});

export const groupsOf = ({ chains }: Refit): Group[] => [
  ...chains.map((chain) => group(chain.id, capital(sayChain(chain)))),
  group(MACHINE, 'The whole machine'),
];

/** The group an axis name means; capitals do not matter. */
export function chooseGroup(refit: Refit, text: string): Group {
  const names = [...refit.chains.map(({ id }) => id), MACHINE];
  const at = names.findIndex((name) => name.toLowerCase() === text.trim().toLowerCase());
  if (at >= 0) return groupsOf(refit)[at]!;
  const near = nearest(shown(text), names);
  throw new Refusal(
    `This refit has no axis or spindle “${shown(text)}”; it has ${names.join(', ')}.${near && text.length > 2 ? ` Did you mean ${near}?` : ''}`,
  );
}
