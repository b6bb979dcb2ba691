import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { blankRefit } from '../../refit/blank.ts';
import type { Fact, Refit } from '../../refit/types.ts';
import { proposeWiring } from '../wiring/index.ts';
import { assumedOf, restingOf, settledOf, wireGroupsOf } from './index.ts';

const blank = (): Refit => {
  const made = blankRefit({ id: 'old', name: 'Old', machine: 'lathe', axes: ['X', 'Z'], spindle: false });
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
};
const choice = (option: string): Fact => ({ value: { kind: 'choice', option }, basis: 'plate' });
const placesOf = (refit: Refit) =>
  assumedOf(proposeWiring(refit), refit).map(({ otherwise }) => otherwise.places.join(' '));

/** With a fact of the part that fills a place of the whole machine. */
function withFact(refit: Refit, kind: string, name: string, fact: Fact): Refit {
  const part = Object.values(refit.parts).find((each) => each.kind === kind)!;
  return {
    ...refit,
    parts: { ...refit.parts, [part.id]: { ...part, facts: { ...part.facts, [name]: fact } } },
  };
}

describe('a proposal, as it is shown', () => {
  test('derived: what is taken for granted is said as long as nobody says otherwise', () => {
    const refit = blank();
    expect(placesOf(refit)).toEqual(['T1.feed T2.feed', 'supply.type', 'site.phases', '']);
    expect(placesOf(withFact(refit, 'supply', 'type', choice('transformer')))).not.toContain('supply.type');
    expect(placesOf(withFact(refit, 'site', 'phases', choice('three')))).not.toContain('site.phases');
    // Said of the drives, the proposal follows: they get the mains, and the direct voltage goes nowhere.
    const { wiring } = proposeWiring(refit);
    const devices = Object.fromEntries(
      ['T1', 'T2'].map((id) => [id, { ...wiring.devices[id]!, settings: { feed: 'mains' } }]),
    );
    const told = { ...refit, wiring: { ...refit.wiring, devices } };
    expect(placesOf(told)).not.toContain('T1.feed T2.feed');
    const { wiring: now, findings } = proposeWiring(told);
    const ends = Object.values(now.wires).map(({ from, to }) => `${from} ${to}`);
    for (const mark of ['T1.L', 'T1.N', 'T2.L', 'T2.N'])
      expect(
        ends.some((each) => each.split(' ').includes(mark)),
        mark,
      ).toBe(true);
    expect(ends.join(' ')).not.toContain('.DC+');
    expect(findings.filter(({ rule }) => rule === 'connected')).toEqual([]);
  });

  test.each(['carriage-works-lathe', 'boatyard-mill'] as const)(
    'derived: %s: each wire stands in one group, and what the group has in common is true of each',
    (id) => {
      const refit: Refit = { ...sample(id), wiring: { devices: {}, wires: {}, cables: {}, settings: {} } };
      const proposal = proposeWiring(refit);
      const groups = wireGroupsOf(proposal, refit);
      const laid = proposal.changes.filter((each) => each.do === 'wire').map((each) => each.id);
      expect(groups.flatMap(({ wires }) => wires.map((each) => each.id)).sort()).toEqual([...laid].sort());
      for (const { title, common, because, wires } of groups) {
        for (const part of common === '' ? [] : common.split(', '))
          for (const { settings } of wires) expect(Object.values(settings), title).toContain(part);
        expect(new Set(wires.map(({ cable }) => cable)).size, title).toBe(1);
        const reasoned = wires.filter((each) => proposal.reasons[each.id] !== undefined);
        expect(
          because.reduce((sum, each) => sum + each.wires, 0),
          title,
        ).toBe(reasoned.length);
      }
    },
  );

  test('derived: what is found of it names the usual values it would be another without', () => {
    const refit = blank();
    const settled = settledOf(proposeWiring(refit), refit);
    expect(settled.taken.map(({ question }) => question.id).sort()).toEqual([
      'T1.enable-current',
      'T2.enable-current',
    ]);
    const resting = restingOf(settled, refit);
    expect(resting.get('supply-current:G1.plus')).toEqual([
      'the usual current of its enable input, 10 mA, of T1 and T2',
    ]);
    expect(resting.get('mains:G1.L')).toBeUndefined();
  });
});
