import { expect, test } from 'vitest';
import { blankRefit } from '../refit/blank.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { METHOD, recordEvidence } from './index.ts';

function lathe(): Refit {
  const made = blankRefit({ id: 'lathe', name: 'Lathe', machine: 'lathe', axes: ['X', 'Z'] });
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
}

const measured = (
  method: string,
  where: string,
  given: Record<string, string>,
  readings: Record<string, string[]>,
) => ({
  method: METHOD.get(method)!,
  where,
  given,
  readings,
  aside: [],
  note: '',
  when: '2024-03-01T10:00:00.000Z',
});

test('derived: the changes make one edit that applies, with a new part where none was', () => {
  const refit = lathe();
  const recorded = recordEvidence(
    refit,
    measured('holding-brake', 'X', { lever: '300 mm', coil: '' }, { slip: ['60', '62'] }),
  );
  if (!recorded.ok) throw new Error(recorded.problem.message);
  const { changes, paths, evidence } = recorded.value;
  expect(paths).toEqual(['X.brake.torque']);
  expect(evidence.given).toEqual({ lever: '300 mm' });
  const after = applyEdit(refit, { changes });
  if (!after.ok) throw new Error(after.problem.message);
  const part = after.value.parts[evidence.part!]!;
  expect(part.kind).toBe('brake');
  expect(part.facts.torque).toMatchObject({ basis: 'measured', evidence: evidence.id });
  expect(after.value.evidence[evidence.id]).toEqual(evidence);
});

test('derived: ids of evidence are never used again, and the input refit is not touched', () => {
  const refit = lathe();
  const frozen = JSON.stringify(refit);
  const one = recordEvidence(refit, measured('insulation', 'Z.motor', {}, { megohms: ['200'] }));
  if (!one.ok) throw new Error(one.problem.message);
  const next = applyEdit(refit, { changes: one.value.changes });
  if (!next.ok) throw new Error(next.problem.message);
  const two = recordEvidence(next.value, measured('insulation', 'Z.motor', {}, { megohms: ['210'] }));
  expect(two.ok && two.value.evidence.id).not.toBe(one.value.evidence.id);
  expect(JSON.stringify(refit)).toBe(frozen);
});
