import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { setPath } from '../assess/set-policy.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import type { Auxiliary } from '../refit/types.ts';
import { chartSvg, chartsOf, checkAuxiliaries, compareControls, openAuxiliary } from './index.ts';
import { share } from './share.ts';

const lathe = sample('carriage-works-lathe');
const report = (refit: Refit) => compareControls(assess(refit));
const changed = (refit: Refit, path: string, text: string): Refit => {
  const set = setPath(refit, path, text);
  if (!set.ok) throw new Error(set.problem.message);
  const after = applyEdit(refit, { changes: set.value.changes });
  if (!after.ok) throw new Error(after.problem.message);
  return after.value;
};
const row = (refit: Refit, candidate: string, id: string) =>
  report(refit)
    .candidates.find(({ part }) => part.id === candidate)!
    .rows.find((each) => each.id === id)!;
const aux = (id: string, kind: string, settings: Record<string, string> = {}): Auxiliary => ({
  id,
  kind,
  name: id,
  settings,
});
const withAux = (...all: Auxiliary[]): Refit => ({
  ...lathe,
  auxiliaries: Object.fromEntries(all.map((each) => [each.id, each])),
});

test('derived: a taper thread asks for taper threading, and only a control that says no lacks it', () => {
  const need = report(lathe).needs.needs.find(({ id }) => id === 'threading-taper')!;
  expect(need.why).toEqual(['for the wanted R 1/2']);
  expect(row(lathe, 'control', 'threading-taper').verdict).toBe('fails');
  expect(row(lathe, 'control-2', 'threading-taper').verdict).toBe('fits');
  const { 'thread-4': _taper, ...rest } = lathe.work;
  expect(report({ ...lathe, work: rest }).needs.needs.some(({ id }) => id === 'threading-taper')).toBe(false);
});

test('derived: what nobody answered is unknown and asked of the seller, never taken for yes', () => {
  const asked = report(lathe).candidates.find(({ part }) => part.id === 'control-2')!;
  expect(asked.verdict).toBe('unknown');
  expect(asked.ask).toContain('drives powered tools');
  const after = changed(lathe, 'control@control-2.powered-tools', 'yes');
  const now = report(after).candidates.find(({ part }) => part.id === 'control-2')!;
  // The wiring was drawn for a control that pulls to minus; this one gives plus.
  expect(now.verdict).toBe('tight');
  expect(now.rows.filter(({ verdict }) => verdict !== 'fits').map(({ id }) => id)).toEqual(['outputs-give']);
  expect(now.ask).toBe('');
});

test('derived: a person adds a need and does without another', () => {
  const added = changed(lathe, 'job.control-wanted', 'networking');
  expect(row(added, 'control-2', 'networking').verdict).toBe('unknown');
  const waived = changed(added, 'job.control-waived', 'networking, powered-tools');
  expect(row(waived, 'control-2', 'networking').waived).toBe(true);
  expect(report(waived).candidates.find(({ part }) => part.id === 'control-2')!.verdict).toBe('tight');
});

test('derived: spares are a habit that can be changed', () => {
  const inputs = (refit: Refit) => row(refit, 'control-2', 'switch-24v').verdict;
  expect(inputs(lathe)).toBe('fits');
  expect(inputs(changed(lathe, 'policies.control-spares', '50 %'))).toBe('tight');
  expect(inputs(changed(lathe, 'control@control-2.inputs-24v', '23'))).toBe('fails');
});

test('derived: every input and output of the machine is in the census once, a standstill signal shared', () => {
  const refit = withAux(aux('a', 'chuck'), aux('b', 'tailstock'));
  const standstill = report(refit).needs.census.signals.filter(({ from }) => from.endsWith('spindle stands'));
  expect(standstill).toHaveLength(1);
});

test('derived: sharing serves as much as trying every way does', () => {
  let seed = 7;
  const random = (below: number): number => {
    seed = (seed * 48271) % 2147483647;
    return seed % below;
  };
  const most = (demands: number[], supplies: number[], serves: number[][]): number => {
    const go = (d: number, left: number[]): number => {
      if (d === demands.length) return 0;
      let best = 0;
      const give = (k: number, open: number, now: number[]): void => {
        const s = serves[d]![k];
        if (s === undefined) {
          best = Math.max(best, demands[d]! - open + go(d + 1, now));
          return;
        }
        for (let n = 0; n <= Math.min(open, now[s]!); n++)
          give(
            k + 1,
            open - n,
            now.map((each, at) => (at === s ? each - n : each)),
          );
      };
      give(0, demands[d]!, left);
      return best;
    };
    return go(0, supplies);
  };
  for (let round = 0; round < 300; round++) {
    const demands = Array.from({ length: 3 }, () => random(4));
    const supplies = Array.from({ length: 3 }, () => random(4));
    const serves = demands.map(() => [0, 1, 2].filter(() => random(2) === 1));
    const given = share(demands, supplies, serves);
    expect(given.flat().reduce((a, b) => a + b, 0)).toBe(most(demands, supplies, serves));
    supplies.forEach((each, s) => {
      expect(given.reduce((sum, line) => sum + line[s]!, 0)).toBeLessThanOrEqual(each);
    });
  }
});

test('derived: two that wait for each other without end are told, and a time-out or refusing mends it', () => {
  const pair = (settings: Record<string, string>) =>
    checkAuxiliaries(
      withAux(
        aux('chuck', 'chuck', { 'only-when': 'open: quill back', ...settings }),
        aux('quill', 'tailstock', { 'only-when': 'back: chuck closed', ...settings }),
      ),
    ).together.map(({ id }) => id);
  expect(pair({ otherwise: 'waits', 'wait-limit': 'none' })).toEqual([
    'deadlock chuck open',
    'deadlock quill back',
  ]);
  expect(pair({ otherwise: 'waits', 'wait-limit': '10 s' })).toEqual([]);
  expect(pair({ otherwise: 'refuses' })).toEqual([]);
});

test('derived: a move that no order of commands allows is told', () => {
  const { together } = checkAuxiliaries(
    withAux(
      aux('chuck', 'chuck', { 'only-when': 'open: quill forward' }),
      aux('quill', 'tailstock', { 'only-when': 'forward: chuck open' }),
    ),
  );
  expect(together.map(({ id }) => id)).toEqual(['never chuck open', 'never quill forward']);
});

test('derived: what cannot be read is named, and the rest is still looked through', () => {
  const { each } = checkAuxiliaries(
    withAux(
      aux('a', 'rocket'),
      aux('b', 'turret', { positions: '1e9' }),
      aux('c', 'coolant', { 'only-when': 'on: moon full' }),
      aux('d', 'door'),
    ),
  );
  const of = (id: string) => each.find(({ auxiliary }) => auxiliary.id === id)!;
  expect(of('a').problem?.message).toContain('no kind of auxiliary');
  expect(of('b').problem?.where).toBe('b.positions');
  expect(of('c').problem?.where).toBe('c.only-when');
  expect(of('d').checked?.findings.length).toBeGreaterThan(0);
});

test('derived: a chart holds every step and escapes what people typed', () => {
  const opened = openAuxiliary(aux('t', 'turret', { 'turn-limit': 'none' }));
  if (!opened.ok) throw new Error(opened.problem.message);
  const [chart] = chartsOf(opened.value.machine);
  for (const width of [280, 720]) {
    const svg = chartSvg({ ...chart!, title: '<script>"' }, width);
    expect(svg).not.toContain('<script');
    for (const { n } of chart!.rows) expect(svg).toContain(`class="chart-number">${n}<`);
    expect(svg).toContain('no time-out');
  }
});

test('derived: old loads that share a wire ask which pole the outputs switch, and the largest how much', () => {
  const ids = (refit: Refit) => report(refit).needs.needs.map(({ id }) => id);
  const bare = { ...lathe, wiring: { devices: {}, wires: {}, cables: {}, settings: {} } };
  expect(ids(bare)).not.toContain('outputs-give');
  const shared = changed(changed(lathe, 'job.outputs-must', 'plus'), 'job.output-load', '0.25 A');
  expect(ids(shared)).toEqual(expect.arrayContaining(['outputs-give', 'output-current']));
  // One pulls to minus and switches 0.1 A; the other gives plus, and nobody asked how much.
  expect(row(shared, 'control', 'outputs-give')).toMatchObject({ verdict: 'fails', says: 'pulls to minus' });
  expect(row(shared, 'control', 'output-current').verdict).toBe('fails');
  expect(row(shared, 'control-2', 'outputs-give').verdict).toBe('fits');
  expect(row(shared, 'control-2', 'output-current').verdict).toBe('unknown');
  expect(report(shared).candidates.find(({ part }) => part.id === 'control-2')!.ask).toMatch(
    /How much current does one 24 V output switch.*I need 0\.25 A/,
  );
  const other = changed(shared, 'job.outputs-must', 'minus');
  expect(row(other, 'control', 'outputs-give').verdict).toBe('fits');
  expect(row(other, 'control-2', 'outputs-give').verdict).toBe('fails');
  const relays = changed(
    changed(other, 'control@control-2.outputs-24v', '0'),
    'control@control-2.outputs-relay',
    '16',
  );
  expect(row(relays, 'control-2', 'outputs-give')).toMatchObject({
    verdict: 'fits',
    says: 'free contacts, either way',
  });
  for (const [amps, verdict] of [
    ['0.1 A', 'tight'],
    ['0.09 A', 'fits'],
    ['0.11 A', 'fails'],
  ] as const)
    expect(row(changed(shared, 'job.output-load', amps), 'control', 'output-current').verdict).toBe(verdict);
});
