import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import { applyEdit } from '../../../refit/edit.ts';
import type { Change, Fact, Refit, Wiring } from '../../../refit/types.ts';
import { compileStop, differencesOf } from '../../stop/index.ts';
import { readWiring } from '../read.ts';
import { proposeWiring } from './index.ts';
import { strandsOf } from './strands.ts';

const EMPTY: Wiring = { devices: {}, wires: {}, cables: {}, settings: {} };
const bare = (id: string, settings: Record<string, string> = {}): Refit => ({
  ...sample(id),
  wiring: { ...EMPTY, settings },
});
const choice = (option: string): Fact => ({ value: { kind: 'choice', option }, basis: 'plate' });

function withFacts(refit: Refit, part: string, facts: Record<string, Fact>): Refit {
  const own = refit.parts[part]!;
  return { ...refit, parts: { ...refit.parts, [part]: { ...own, facts: { ...own.facts, ...facts } } } };
}

function record(refit: Refit, changes: readonly Change[]): Refit {
  const done = applyEdit(refit, { changes: [...changes] });
  if (!done.ok) throw new Error(done.problem.message);
  return done.value;
}

const fails = (refit: Refit) =>
  proposeWiring(refit)
    .findings.filter(({ verdict }) => verdict === 'fails')
    .map(({ id, sentence }) => `${id}: ${sentence}`);

describe('a wiring proposed', () => {
  for (const id of ['carriage-works-lathe', 'boatyard-mill'])
    test(`derived: ${id}: nothing fails, everything that must be is connected, and it can be recorded`, () => {
      const refit = bare(id, { homes: 'switches' });
      const { changes, findings, wiring, questions } = proposeWiring(refit);
      expect(fails(refit)).toEqual([]);
      expect(findings.filter(({ rule }) => rule === 'connected')).toEqual([]);
      expect(findings.filter(({ verdict }) => verdict === 'tight').map((each) => each.sentence)).toEqual([]);
      const recorded = record(refit, changes);
      expect(recorded.wiring).toEqual(wiring);
      expect(proposeWiring(recorded).changes).toEqual([]);
      // Every wire has a number and a colour or lies in a cable.
      const read = readWiring(wiring, refit);
      expect(read.problems).toEqual([]);
      for (const wire of read.wires.values()) {
        expect(wire.number, wire.id).not.toBe('');
        if (wire.cable === null) expect(wire.colour, wire.id).not.toBe('');
      }
      // Nothing that copper joins without earth bears two numbers.
      const strands = strandsOf(read);
      const numbers = new Map<unknown, string>();
      for (const wire of read.wires.values()) {
        const strand = strands.of(wire);
        expect(numbers.get(strand) ?? wire.number, wire.id).toBe(wire.number);
        numbers.set(strand, wire.number);
      }
      for (const question of questions) expect(question.asks).toMatch(/\?$/);
    });

  test('derived: elements and wires of the stop circuit come over under their own names', () => {
    const refit = bare('carriage-works-lathe');
    const { wiring } = proposeWiring(refit);
    for (const { id, kind } of Object.values(refit.stop!.elements))
      expect(wiring.devices[id]?.kind, id).toBe(id === 'G2' ? 'bus' : id === 'X0' ? 'mains-inlet' : kind);
    const read = readWiring(wiring, refit);
    for (const { id, from, to } of Object.values(refit.stop!.wires)) {
      // The mains of the spindle drive are laid with the other mains, through main switch and breaker.
      if ([from, to].some((end) => /^(X0|T3)\.L\d$|^K\d\.([5-9]|10)$/.test(end))) continue;
      expect(wiring.wires[id], id).toBeDefined();
      // What the stop circuit calls L and N of a drive is the plus and minus of its bus.
      const fed = to.replace(/^(T\d)\.L$/, '$1.DC+').replace(/^(T\d)\.N$/, '$1.DC-');
      expect(read.netOf.get(from), `${from} ${to}`).toBe(read.netOf.get(fed));
      expect(read.netOf.get(from), from).toBeDefined();
    }
    expect(readWiring(wiring, refit).devices.get('T3')!.part).toBe('s-spindle-drive');
    const made = compileStop(refit.stop!);
    expect(made.ok && differencesOf(refit.stop!, made.value, read)).toEqual([]);
  });

  test('derived: what a person made stays, and only what is missing is added', () => {
    const refit = bare('boatyard-mill', { homes: 'switches' });
    const first = proposeWiring(refit);
    const { K1 } = first.wiring.devices;
    const { w20: _, ...wires } = first.wiring.wires;
    const own = { id: 'mine', from: 'S2.13', to: 'U1.Ra', cable: null, settings: { colour: 'pink' } };
    const changed: Refit = {
      ...refit,
      wiring: {
        ...first.wiring,
        devices: {
          ...first.wiring.devices,
          K1: { ...K1!, name: 'Mine', settings: { ...K1!.settings, suppressor: 'varistor' } },
          P9: { ...K1!, id: 'P9', kind: 'lamp', settings: {} },
        },
        wires: { ...wires, mine: own },
      },
    };
    const again = proposeWiring(changed);
    expect(again.wiring.devices.K1).toEqual(changed.wiring.devices.K1);
    expect(again.wiring.wires.mine).toEqual(own);
    expect(again.changes.map((change) => (change.do === 'wire' ? change.id : change.do))).toEqual(['w20']);
    for (const change of again.changes) expect(change.old).toBeNull();
  });

  test('derived: another drive in a place is wired where the old one was taken out', () => {
    const refit = bare('boatyard-mill', { homes: 'none' });
    const first = record(refit, proposeWiring(refit).changes);
    const { T1, ...devices } = first.wiring.devices;
    expect(T1!.part).toBe('x-drive');
    const wires = Object.fromEntries(
      Object.entries(first.wiring.wires).filter(
        ([, { from, to }]) => !/^T1\./.test(from) && !/^T1\./.test(to),
      ),
    );
    const again = proposeWiring({ ...first, wiring: { ...first.wiring, devices, wires } });
    expect(again.wiring.devices.T1).toBeDefined();
    expect(again.findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
    expect(again.findings.filter(({ rule }) => rule === 'connected')).toEqual([]);
  });

  test('derived: every level of the control with every input of a drive: either a way that fits, or none at all', () => {
    const seen: string[] = [];
    for (const level of ['logic-3v3', 'ttl-5v', 'open-collector', 'differential', '24v'])
      for (const input of ['ttl-5v', 'opto-5v', 'opto-24v', 'differential']) {
        let refit = withFacts(bare('boatyard-mill', { homes: 'none' }), 'control', {
          outputLevel: choice(level),
        });
        for (const drive of ['x-drive', 'y-drive', 'z-drive'])
          refit = withFacts(refit, drive, { inputLevel: choice(input) });
        const { findings, wiring } = proposeWiring(refit);
        expect(
          findings.filter(({ verdict }) => verdict === 'fails').map(({ sentence }) => sentence),
          `${level} → ${input}`,
        ).toEqual([]);
        const wired = Object.values(wiring.wires).some(
          ({ from, to }) => /^T1\.STEP/.test(from) || /^T1\.STEP/.test(to),
        );
        seen.push(`${level} → ${input}: ${wired ? 'wired' : 'not'}`);
      }
    expect(seen.filter((each) => each.endsWith('wired')).length).toBeGreaterThanOrEqual(10);
    expect(seen).toContain('ttl-5v → opto-5v: wired');
    expect(seen).toContain('open-collector → opto-24v: wired');
    expect(seen).toContain('differential → differential: wired');
    expect(seen).toContain('24v → ttl-5v: not');
    expect(seen).toContain('ttl-5v → differential: wired');
    // Twenty whole proposals, on a machine that may be busy.
  }, 120_000);

  test('derived: sensors of the wrong kind are asked about, not wired', () => {
    const { findings, wiring } = proposeWiring(bare('carriage-works-lathe', { homes: 'PNP sensors' }));
    expect(findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
    expect(Object.values(wiring.wires).some(({ from, to }) => `${from} ${to}`.includes('B21.BK'))).toBe(
      false,
    );
    expect(findings.find(({ id }) => id === 'connected:B21')!.about).toContain('B21.BK');
  });

  test('derived: with nothing known, with no stop circuit, with no part chosen', () => {
    const refit = bare('boatyard-mill');
    expect(fails({ ...refit, stop: null })).toEqual([]);
    const nobody: Refit = {
      ...refit,
      stop: null,
      parts: Object.fromEntries(
        Object.entries(refit.parts).map(([id, part]) => [id, { ...part, facts: {} }]),
      ),
    };
    expect(fails(nobody)).toEqual([]);
    const empty = proposeWiring({ ...refit, stop: null, chains: [], places: {}, parts: {} });
    expect(empty.findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
    expect(empty.questions[0]!.id).toBe('wiring.homes');
  });
});
