/** Refits to try advice on: a sample with some facts set otherwise. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PARTS } from '../parts/index.ts';
import { applyEdit, type Condition, type Refit, readRefit } from '../refit/index.ts';
import { set } from '../refit/set.ts';

export function sample(id: string): Refit {
  const text = readFileSync(join(import.meta.dirname, '..', '..', 'samples', `${id}.json`), 'utf8');
  const read = readRefit(text, Object.keys(PARTS));
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

/** Facts by their path; each as if measured. */
export function having(refit: Refit, facts: Readonly<Record<string, string>>): Refit {
  let now = refit;
  for (const [path, text] of Object.entries(facts)) {
    const setting = set(now, path, text, { basis: 'measured' });
    if (!setting.ok) throw new Error(setting.problem.message);
    const applied = applyEdit(now, { changes: setting.value.changes });
    if (!applied.ok) throw new Error(applied.problem.message);
    now = applied.value;
  }
  return now;
}

export const inCondition = (refit: Refit, part: string, condition: Condition): Refit => ({
  ...refit,
  parts: { ...refit.parts, [part]: { ...refit.parts[part]!, condition } },
});

/** Without any price, and with nothing said of the job as a whole. */
export function unpriced(refit: Refit): Refit {
  const { job: _, ...places } = refit.places;
  const parts = Object.entries(refit.parts).flatMap(([id, part]) =>
    part.kind === 'job'
      ? []
      : [
          [
            id,
            {
              ...part,
              facts: Object.fromEntries(
                Object.entries(part.facts).filter(([name]) => !/price|cost/i.test(name)),
              ),
            },
          ],
        ],
  );
  return { ...refit, places, parts: Object.fromEntries(parts), survey: {} };
}
