/** What a person types for a policy, as a change. Facts and places are set in the refit room, which knows no policies. */
import { POLICIES, POLICY, type Policy } from '../checks/policies.ts';
import { askBack } from '../quantity/ask-back.ts';
import { formatQuantity, ok, parseQuantity, type Result, refuse } from '../quantity/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { type SetOptions, type Setting, set } from '../refit/set.ts';
import type { Refit } from '../refit/types.ts';

const PREFIX = 'policies.';
const USUAL = 'usual';

/** What a policy with this value would break, in words, or undefined. */
export function policyFault(policy: Policy, value: number): string | undefined {
  const words = { positive: 'above zero', fraction: 'between 0 and 1', 'not negative': 'zero or more' };
  const lawful =
    policy.domain === 'positive' ? value > 0 : value >= 0 && (policy.domain !== 'fraction' || value <= 1);
  return lawful
    ? undefined
    : `The policy “${policy.name}” must be ${words[policy.domain]}; usual is ${policy.usual}.`;
}

/** What to ask a person who typed a number far from what is usual of a policy; undefined where there is nothing to ask. */
export function askBackOfPolicy(id: string, text: string): string | undefined {
  const policy = POLICY.get(id);
  const read = policy && parseQuantity(text, policy.unit);
  return read?.ok && policyFault(policy!, read.value.value) === undefined
    ? askBack({ ...policy!, mayBeNought: policy!.domain !== 'positive' }, read.value.value, read.value)
    : undefined;
}

/** The change that gives a policy (by its id) another value; 'usual' takes it back. */
export function setPolicy(refit: Refit, id: string, text: string): Result<Setting> {
  const wanted = id.trim().toLowerCase();
  const policy = POLICY.get(wanted);
  const where = `${PREFIX}${wanted.slice(0, 60)}`;
  if (!policy) {
    const names = POLICIES.map((each) => each.id);
    const near = nearest(wanted.slice(0, 60), names);
    return refuse({
      code: 'unknown-name',
      where,
      message: `There is no policy called “${id.slice(0, 60)}”. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ')}.`,
      ...(near ? { suggestion: near } : {}),
    });
  }
  const old = refit.policies[policy.id] ?? null;
  const change = (now: string | null): Setting => ({
    changes: now === old ? [] : [{ do: 'policy', policy: policy.id, old, new: now }],
    notes: [],
    questions: [],
  });
  if (text.trim().toLowerCase() === USUAL) return ok(change(null));
  const read = parseQuantity(text, policy.unit);
  if (!read.ok) return refuse({ ...read.problem, where });
  const fault = policyFault(policy, read.value.value);
  if (fault) return refuse({ code: 'out-of-domain', where, message: fault });
  const said = formatQuantity(read.value.value, policy.unit);
  const asked = askBackOfPolicy(policy.id, text);
  return ok({
    ...change(text.trim()),
    notes: [...read.value.notes, `${policy.name}: ${said}`],
    ...(asked === undefined ? {} : { askBack: asked }),
  });
}

/** The changes that record a text for any path: a fact, a place, or 'policies.whirl'. */
export function setPath(refit: Refit, path: string, text: string, options: SetOptions = {}): Result<Setting> {
  const trimmed = path.trim();
  return trimmed.toLowerCase().startsWith(PREFIX)
    ? setPolicy(refit, trimmed.slice(PREFIX.length), text)
    : set(refit, path, text, options);
}
