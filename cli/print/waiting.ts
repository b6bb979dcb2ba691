/** Findings that cannot be judged yet, folded by what they wait for. */
import { type Finding, sayPath } from '../../engine/assess/index.ts';
import { factSpec } from '../../engine/parts/index.ts';
import { andList } from '../../engine/quantity/words.ts';
import { entering } from './enter.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';

export interface Waiting {
  /** The same fact of several axes; the first is asked for first. */
  readonly paths: readonly string[];
  readonly findings: readonly Finding[];
}

/** Groups shown with the command that enters the fact. */
const SHOWN = 8;
/** Names of axes and findings in one sentence. */
const MOST = 3;
const INDENT = '    ';

/** A fact without its axis: every axis asks for its kind of motor. */
const factOf = (path: string): string => path.split('.').slice(-2).join('.');

const isChoice = (key: string): boolean => {
  const [place = '', name = ''] = key.split('.');
  return factSpec(place, name)?.kind === 'choice';
};

/**
 * Each finding once, under the fact most of them wait for; of equals a choice first, since which further facts are asked
 * hangs on it. The largest groups first. Findings that wait for no fact are left out.
 */
export function foldWaiting(findings: readonly Finding[]): Waiting[] {
  const groups: Waiting[] = [];
  let open = findings.filter(({ missing }) => missing.length > 0);
  while (open.length > 0) {
    const counts = new Map<string, number>();
    for (const { missing } of open)
      for (const key of new Set(missing.map(factOf))) counts.set(key, (counts.get(key) ?? 0) + 1);
    const [[best]] = [...counts].sort(
      ([a, many], [b, more]) => more - many || Number(isChoice(b)) - Number(isChoice(a)),
    ) as [[string, number], ...[string, number][]];
    const own = open.filter(({ missing }) => missing.some((path) => factOf(path) === best));
    const paths = new Set(own.flatMap(({ missing }) => missing.filter((path) => factOf(path) === best)));
    groups.push({ paths: [...paths], findings: own });
    open = open.filter((finding) => !own.includes(finding));
  }
  return groups;
}

/** One group after another with how to enter what it waits for, the small ones in one sentence. */
export function printWaiting(page: Page, file: string, groups: readonly Waiting[]): void {
  for (const { paths, findings } of groups.slice(0, SHOWN)) {
    const few = findings.length <= MOST ? ` (${andList(findings.map(({ id }) => id))})` : '';
    page.prose(
      `${plural(findings.length, 'question waits', 'questions wait')} for: ${sayPaths(paths)}${few}.`,
      '',
      INDENT,
    );
    const { command, write } = entering(file, paths[0]!);
    page.line(`${INDENT}${command}`);
    page.prose(write, INDENT);
  }
  const rest = groups.slice(SHOWN);
  if (rest.length === 0) return;
  const count = rest.reduce((sum, { findings }) => sum + findings.length, 0);
  const facts = rest.slice(0, 2 * MOST).map(({ paths }) => sayPath(paths[0]!));
  page.prose(
    `${plural(count, 'more question waits', 'more questions wait')} for: ${facts.join('; ')}${rest.length > facts.length ? '; and others' : ''}.`,
    '',
    INDENT,
  );
}

const sayPaths = (paths: readonly string[]): string => {
  const names = paths.slice(0, MOST).map(sayPath);
  return paths.length > MOST ? `${names.join(', ')} and ${paths.length - MOST} more` : andList(names);
};
