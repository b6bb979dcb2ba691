import { expect, test } from 'vitest';
import { POLICIES } from '../checks/policies.ts';
import { blankRefit } from '../refit/blank.ts';
import { applyEdit } from '../refit/edit.ts';
import type { Refit } from '../refit/types.ts';
import { assess } from './assess.ts';
import { setPath, setPolicy } from './set-policy.ts';

function blank(): Refit {
  const made = blankRefit({ id: 'bench', name: 'Bench', machine: 'lathe', axes: ['X'] });
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
}

function after(refit: Refit, path: string, text: string): Refit {
  const setting = setPath(refit, path, text);
  if (!setting.ok) throw new Error(setting.problem.message);
  const edited = applyEdit(refit, setting.value);
  if (!edited.ok) throw new Error(edited.problem.message);
  return edited.value;
}

test('derived: a policy set as typed is what the assessment reads, and “usual” takes it back', () => {
  const changed = after(blank(), 'Policies.Whirl', '70 %');
  expect(changed.policies).toEqual({ whirl: '70 %' });
  expect(assess(changed).problems).toEqual([]);
  expect(after(changed, 'policies.whirl', 'usual').policies).toEqual({});
  const nothing = setPolicy(blank(), 'whirl', 'usual');
  expect(nothing.ok && nothing.value.changes).toEqual([]);
});

test.each([
  ['whirl', '0.7 mm'],
  ['whirl', '1.2'],
  ['whirl', '-0.1'],
  ['margin', '0'],
  ['margin', 'lots'],
  ['margin', ''],
  ['drop', '1'],
  ['wirl', '0.5'],
  ['__proto__', '1'],
])('derived: policies.%s = “%s” is refused', (id, text) => {
  const setting = setPolicy(blank(), id, text);
  expect(setting.ok).toBe(false);
  if (!setting.ok) expect(setting.problem.message).toMatch(/\.$/);
});

test('derived: every policy takes its own usual value, and the assessment has nothing against it', () => {
  for (const { id, usual, unit } of POLICIES) {
    const text = unit === '1' || /[^\d.]/.test(usual) ? usual : `${usual} ${unit}`;
    expect(assess(after(blank(), `policies.${id}`, text)).problems, id).toEqual([]);
  }
});
