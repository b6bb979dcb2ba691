/** Runs a method on what was typed. */
import { ok, type Result, refuse } from '../quantity/index.ts';
import { note } from './outcome.ts';
import { readTaken } from './read.ts';
import { type Method, type Outcome, type Read, Senseless, type Taken, type Verdict } from './types.ts';

/**
 * Results, verdicts and working, or one sentence naming the entry or row that makes no sense. Pure; never throws for anything
 * a person may type, and no result is NaN.
 */
export function runMethod(method: Method, taken: Taken): Result<Outcome> {
  const read = readTaken(method, taken);
  if (!read.ok) return read;
  try {
    const { results, verdicts, candidates, questions = [] } = method.run(read.value);
    const lost = results.find(
      (each) => each.kind === 'quantity' && !Number.isFinite(each.value + each.expanded),
    );
    if (lost)
      return refuse({
        code: 'not-finite',
        where: lost.key,
        message: `The ${lost.name} comes out beyond all numbers; look for a reading with a wrong power of ten.`,
      });
    return ok({
      results,
      verdicts: [...verdicts, ...unstated(method, taken, read.value)],
      ...(candidates ? { candidates } : {}),
      questions,
      working: read.value.lines,
    });
  } catch (fault) {
    if (!(fault instanceof Senseless)) throw fault;
    return refuse({ code: 'undefined-result', where: fault.where, message: fault.message });
  }
}

/** What the ± cannot know, since nobody said it. */
function unstated({ given, columns }: Method, taken: Taken, read: Read): Verdict[] {
  const used = (key: string): boolean =>
    Boolean(taken.given[key]?.trim()) || (taken.readings[key] ?? []).some((text) => text.trim() !== '');
  const silent = given.filter(
    (entry) => entry.kind === 'accuracy' && !entry.usual && !used(entry.key) && entry.of.some(used),
  );
  const bare = given.filter(
    (entry) =>
      entry.kind === 'quantity' &&
      !entry.whole &&
      !entry.exact &&
      used(entry.key) &&
      read.maybe(entry.key)?.parts.length === 0,
  );
  const names = (entries: typeof given): string =>
    entries.map(({ name, key }) => `${name} (${key})`).join(' and ');
  return [
    ...(silent.length > 0
      ? [
          note(
            `Not stated: ${names(silent)}. The ± then knows only the scatter and the last digit of the readings, and the instrument may be wrong by more.`,
          ),
        ]
      : []),
    ...(bare.length > 0 ? [note(`Taken as exact, since no ± was given: ${names(bare)}.`)] : []),
    ...(columns.length > 0 && read.rows.length === 1
      ? [note('There is one row only, so a slip of the eye would not show. Two more cost a minute.')]
      : []),
  ];
}
