import { describe, expect, test } from 'vitest';
import { checkAuxiliary } from './check.ts';
import { patterns } from './codes.ts';
import { compile, faultsOf } from './compile.ts';
import { explore } from './explore.ts';
import { KINDS, kindOf } from './kinds/index.ts';
import type { Machine } from './machine.ts';
import { plainly } from './plain.fixture.ts';
import { readSettings } from './settings.ts';

const made = (id: string, typed: Record<string, string> = {}): Machine => {
  const kind = kindOf(id)!;
  const read = readSettings(kind.settings, typed);
  if (!read.ok) throw new Error(read.problem.message);
  return kind.make(read.value);
};
const checked = (id: string, typed: Record<string, string> = {}) =>
  checkAuxiliary(kindOf(id)!, made(id, typed)).findings;
const verdictOf = (id: string, typed: Record<string, string>, finding: string) =>
  checked(id, typed).find((each) => each.id === finding)?.verdict;

/** Each choice once away from what is usual, and some together. */
const variants = (id: string): Record<string, string>[] => [
  {},
  ...Object.entries(kindOf(id)!.settings).flatMap(([key, spec]) =>
    spec.kind === 'choice'
      ? spec.options.filter((each) => each !== spec.usual).map((each) => ({ [key]: each }))
      : spec.kind === 'quantity' && spec.instead
        ? [{ [key]: 'none' }]
        : [],
  ),
];
const SMALL = { positions: '3' };

describe.each(KINDS.map(({ id }) => id))('derived: %s against a plain enumeration', (id) => {
  test('the same states, hazards and hangs, with every fault, whatever is set', () => {
    for (const variant of variants(id)) {
      const machine = made(id, id === 'turret' ? { ...SMALL, ...variant } : variant);
      // The plain way is slow: all faults with what is usual, else none and a few.
      const faults = faultsOf(machine);
      const some = Object.keys(variant).length === 0 ? faults : faults.filter((_, n) => n % 7 === 3);
      for (const fault of [null, ...some]) {
        const quick = explore(compile(machine, fault));
        const slow = plainly(machine, fault);
        const at = `${id} ${JSON.stringify(variant)} ${JSON.stringify(fault)}`;
        expect(quick.whole, at).toBe(true);
        expect(quick.states, at).toBe(slow.states);
        expect([...quick.hazards.keys()].sort(), at).toEqual([...slow.hazards].sort());
        expect([...quick.hangs.keys()].sort(), at).toEqual(slow.hangs);
      }
    }
  }, 120_000);

  test('with every switch, time-out and interlock there is, nothing happens without a fault', () => {
    const best = Object.fromEntries(
      Object.entries(kindOf(id)!.settings).flatMap(([key, spec]) =>
        spec.kind === 'choice' && spec.options.includes('yes') && !['powered-tools', 'keyed'].includes(key)
          ? [[key, 'yes']]
          : [],
      ),
    );
    expect(checked(id, best).filter(({ verdict }) => verdict === 'fails')).toEqual([]);
  });

  test('hostile settings are refused with their name', () => {
    for (const [key, spec] of Object.entries(kindOf(id)!.settings))
      if (spec.kind !== 'text')
        for (const text of ['lots', '-1', '<b>2</b>', '1e400 s', 'NaN', '5 kg', '\u0000']) {
          const read = readSettings(kindOf(id)!.settings, { [key]: text });
          expect(read.ok, `${key} ${text}`).toBe(false);
          if (!read.ok) expect(read.problem.where).toBe(key);
        }
    const read = readSettings(kindOf(id)!.settings, { constructor: 'x' });
    expect(read.ok).toBe(false);
  });
});

test('derived: codes tell positions apart; parity doubles the distance; Gray closes an even ring with one change', () => {
  const apart = (a: readonly boolean[], b: readonly boolean[]): number =>
    a.filter((each, n) => each !== b[n]).length;
  for (let n = 2; n <= 24; n++)
    for (const from of [0, 1] as const)
      for (const code of ['binary', 'bcd', 'gray', 'each'] as const)
        for (const parity of ['none', 'odd', 'even'] as const) {
          const all = patterns(n, code, from, parity);
          for (let a = 0; a < n; a++)
            for (let b = 0; b < a; b++)
              expect(apart(all[a]!, all[b]!), `${code} ${n} ${from} ${parity}`).toBeGreaterThanOrEqual(
                parity === 'none' ? 1 : 2,
              );
          if (code === 'gray' && parity === 'none' && n % 2 === 0)
            for (let a = 0; a < n; a++) expect(apart(all[a]!, all[(a + 1) % n]!)).toBe(1);
        }
});

describe('derived: what must be found', () => {
  test('a turret without a time-out hangs while its motor turns', () => {
    const hang = checked('turret', { 'turn-limit': 'none' }).find((each) => each.id === 'hang forward.turn')!;
    expect(hang.verdict).toBe('fails');
    expect(hang.sentence).toContain('turn the turret');
    expect(hang.settings).toEqual(['turn-limit']);
    expect(hang.faults).toContain('the turret jams');
  });
  test('a clamped switch decides whether a loose turret may cut', () => {
    expect(verdictOf('turret', { 'clamped-switch': 'no' }, 'hazard loose')).toBe('fails');
    expect(verdictOf('turret', {}, 'hazard loose')).toBe('tight');
  });
  test('parity keeps a stuck bit from passing for another tool', () => {
    const wrong = (parity: string) =>
      checked('turret', { parity }).find((each) => each.id === 'hazard wrong-tool')?.faults ?? [];
    expect(wrong('none').filter((each) => each.includes('position'))).not.toEqual([]);
    expect(wrong('odd').filter((each) => each.includes('position'))).toEqual([]);
  });
  test('a memory that is trusted after a power cut takes a wrong tool', () => {
    expect(verdictOf('turret', { 'after-power': 'trusts' }, 'hazard wrong-tool')).toBe('fails');
  });
  test('a spindle only told to stop still turns when the chuck opens', () => {
    expect(verdictOf('chuck', { standstill: 'command' }, 'hazard opens-turning')).toBe('fails');
    expect(verdictOf('chuck', { standstill: 'switch' }, 'hazard opens-turning')).toBe('tight');
    expect(verdictOf('chuck', { valve: 'one', spring: 'opens' }, 'hazard opens-turning')).toBe('fails');
  });
  test('a lock that needs current lets go with the power', () => {
    expect(verdictOf('door', { lock: 'current' }, 'hazard open-turning')).toBe('fails');
    expect(verdictOf('door', { lock: 'spring' }, 'hazard open-turning')).toBe('tight');
  });
  test('a time-out shorter than the move is no use', () => {
    expect(verdictOf('gear-shift', { 'move-time': '6 s' }, 'time low.shift')).toBe('fails');
    expect(verdictOf('gear-shift', { 'move-time': '4 s' }, 'time low.shift')).toBe('tight');
  });
});

test('derived: a turret of 24 places that turns both ways is gone through to the end', () => {
  const { states, findings, whole } = checkAuxiliary(
    kindOf('turret')!,
    made('turret', { positions: '24', code: 'binary', directions: 'both', 'turn-limit': '30 s' }),
  );
  expect(states).toBeLessThanOrEqual(2_500_000);
  expect(whole).toBe(true);
  expect(findings.some(({ id }) => id === 'cut-short')).toBe(false);
}, 120_000);
