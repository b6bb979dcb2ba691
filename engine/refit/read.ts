/** Reads refit.json: a refit, or a refusal that names the place in the file and what would be right. */
import { ok, type Result, refuse } from '../quantity/types.ts';
import { hasOldFeedMarks, withTodaysFeedMarks } from './feed-marks.ts';
import { parseJson } from './json.ts';
import { LIMITS } from './limits.ts';
import { inOrder } from './order.ts';
import { referenceProblem } from './references.ts';
import { editSchema, refitSchema } from './schema.ts';
import { checkShape } from './shape.ts';
import type { Edit, Refit } from './types.ts';
import { upgrade } from './upgrade.ts';

/** Reads a refit from the text of refit.json; kinds of part are checked against `knownKinds` where given. */
export function readRefit(text: string, knownKinds?: readonly string[]): Result<Refit> {
  const parsed = parseJson(text, 'refit.json', LIMITS.refitFile);
  return parsed.ok ? parseRefit(parsed.value, knownKinds) : parsed;
}

/** Reads a refit that has no history from parsed JSON. Its chains come in their usual order whatever the order in the file. */
export function parseRefit(value: unknown, knownKinds?: readonly string[]): Result<Refit> {
  const refit = parseState(value, knownKinds);
  return refit.ok && hasOldFeedMarks(value) ? ok(withTodaysFeedMarks(refit.value)) : refit;
}

/** Reads a state to which edits lead, or from which they begin: nothing of it is put in other words. */
export function parseState(value: unknown, knownKinds?: readonly string[]): Result<Refit> {
  const current = upgrade(value);
  if (!current.ok) return current;
  const shaped = checkShape(refitSchema, current.value);
  if (!shaped.ok) return shaped;
  const problem = referenceProblem(shaped.value, knownKinds);
  return problem ? refuse(problem) : ok({ ...shaped.value, chains: inOrder(shaped.value.chains) });
}

/** Reads one edit from parsed JSON; `within` names where it came from in refusals. */
export function parseEdit(value: unknown, within = ''): Result<Edit> {
  return checkShape(editSchema, value, within);
}

/** Reads edits.jsonl, one edit a line, numbered without a gap. */
export function readEdits(text: string): Result<readonly Edit[]> {
  const edits: Edit[] = [];
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const what = `edits.jsonl line ${index + 1}`;
    const parsed = parseJson(line, what, LIMITS.refitFile);
    if (!parsed.ok) return parsed;
    const edit = parseEdit(parsed.value, what);
    if (!edit.ok) return refuse({ ...edit.problem, where: `line ${index + 1}: ${edit.problem.where}` });
    const before = edits.at(-1);
    if (before && edit.value.number !== before.number + 1)
      return refuse({
        code: 'malformed',
        message: `${what}: number must be ${before.number + 1}, one more than the edit before.`,
        where: `line ${index + 1}: number`,
      });
    edits.push(edit.value);
  }
  return ok(edits);
}
