/** An axis that drops is never said to stop without the caution to prop it, unless a brake holds it that is known to hold. */
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../../samples/index.ts';
import { sample } from '../../../samples/read.fixture.ts';
import { stopOffers } from '../../advice/stop-offers.ts';
import { assess } from '../../assess/index.ts';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, type StopAnalysis } from './analyse.ts';
import { sayStopAnswer, stopAnswer } from './answer.ts';
import { draw } from './draw.ts';
import { PATTERNS } from './patterns/index.ts';
import { testSheet } from './test-sheet.ts';

type Settings = Readonly<Record<string, string>>;
const HEAVY: Settings = {
  speed: '3 m/min',
  lead: '5 mm',
  inertia: '1e-3 kg·m²',
  friction: '0.2 N·m',
  deceleration: '1 m/s²',
  vertical: 'yes',
  weight: '1 N·m',
  'brake-torque': '2 N·m',
};

const look = (circuit: StopCircuit): StopAnalysis => {
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value;
};
const laid = (id: string, settings: Settings = HEAVY): StopCircuit =>
  PATTERNS.find((each) => each.id === id)!.make([{ id: 'Z', kind: 'axis', name: 'head', settings }]);
/** What answers a stop or the power going, and whether its brake holds. */
const answers = ({ findings }: StopAnalysis) =>
  findings.filter(({ id }) => /^stop\.(act\..*|power|Z\.brake)$/.test(id));
const cautions = (found: StopAnalysis) => [...new Set(answers(found).map(({ caution }) => caution))];

describe('derived: the caution of the prop', () => {
  test.each(PATTERNS.map(({ id }) => id))('%s: on every stop of an axis that drops, or nowhere', (id) => {
    const found = look(laid(id));
    const braked = id === 'vertical-axis' || id === 'limits-with-brake';
    expect(answers(found).length).toBeGreaterThan(2);
    for (const { id: finding, caution } of answers(found))
      if (braked) expect(caution, finding).toBeUndefined();
      else
        expect(caution, finding).toMatch(
          /^Before the power goes, .*prop or block Z from below: Z has no brake\.$/,
        );
    const answer = stopAnswer(found);
    expect(answer.caution === undefined).toBe(braked);
    if (answer.caution) expect(sayStopAnswer(answer)).toContain(answer.caution);
  });

  test.each<[string, Settings, RegExp | undefined]>([
    ['an axis that does not drop', { ...HEAVY, vertical: 'no' }, undefined],
    ['a brake as strong as the load', { ...HEAVY, 'brake-torque': '1 N·m' }, undefined],
    ['a brake weaker than the load', { ...HEAVY, 'brake-torque': '0.99 N·m' }, /too weak for its load/],
    [
      'a brake of unknown strength',
      { ...HEAVY, 'brake-torque': '' },
      /not known whether it is strong enough/,
    ],
    ['a load that is not known', { ...HEAVY, weight: '' }, /not known whether it is strong enough/],
    [
      'friction that holds it today',
      { ...HEAVY, vertical: 'friction just holds it', 'brake-torque': '0.5 N·m' },
      /too weak/,
    ],
  ])('%s', (_title, settings, wanted) => {
    const circuit = laid('vertical-axis', settings);
    const [only, ...more] = cautions(look(circuit));
    expect(more).toEqual([]);
    if (wanted) expect(only).toMatch(wanted);
    else expect(only).toBeUndefined();
  });

  test('a brake that closes late, one that stays open, a drive that alone holds it', () => {
    const circuit = laid('vertical-axis');
    const y1 = circuit.elements.Y1!;
    const late = look({
      ...circuit,
      elements: { ...circuit.elements, Y1: { ...y1, settings: { engage: '900 ms' } } },
    });
    expect(cautions(late)).toEqual([expect.stringMatching(/closes only after its drive has let go/)]);
    // The brake is fed past everything: only a power cut closes it.
    const fed = look({
      ...circuit,
      wires: {
        ...circuit.wires,
        a: { id: 'a', from: 'F1.2', to: 'Y1.A1', cable: '' },
        b: { id: 'b', from: 'Y1.A2', to: 'G1.minus', cable: '' },
      },
    });
    const of = (id: string) => fed.findings.find((each) => each.id === id)!.caution;
    expect(of('stop.act.S1')).toMatch(/brake that does not close/);
    expect(of('stop.power')).toBeUndefined();
    expect(of('stop.Z.brake')).toMatch(/does not close/);
  });

  test('a drive that is only told to stop goes on holding: that is no brake', () => {
    expect(cautions(look(laid('asks-the-control')))).toHaveLength(1);
    const circuit = laid('limits-with-release');
    const held = look({
      ...circuit,
      elements: { ...circuit.elements, Y9: { id: 'Y9', kind: 'brake', name: '', settings: {} } },
      wires: {
        ...circuit.wires,
        a: { id: 'a', from: 'F1.2', to: 'Y9.A1', cable: '' },
        b: { id: 'b', from: 'Y9.A2', to: 'G1.minus', cable: '' },
      },
      motions: { Z: { ...circuit.motions.Z!, brake: 'Y9' } },
    });
    const onto = held.findings.find(({ title }) => /run onto S11/.test(title))!;
    expect(onto.caution).toMatch(/Z is held by its drive alone\.$/);
  });

  test('an axis that cannot be started, so that no stop of it is seen, gets it too; and where nothing runs at all', () => {
    const circuit = laid('vertical-axis');
    const { w1: _first, ...wires } = circuit.wires;
    const dead = look({ ...circuit, wires });
    expect(dead.base.runs).toEqual([]);
    expect(dead.findings[0]!.caution).toMatch(/Z was not seen to be held by its brake/);
    expect(stopAnswer(dead).caution).toBe(dead.findings[0]!.caution);
    // Another axis runs, and this one’s drive has no power: a power cut changes nothing of it.
    const half = look(
      draw({
        pattern: null,
        elements: [
          ['G1 supply', ''],
          ['S1 mushroom', '', { nc: '1' }],
          ['D1 drive', ''],
          ['D2 drive', ''],
        ],
        runs: [
          'G1.plus S1.11',
          'S1.12 D1.EN D2.EN',
          'D1.COM G1.minus D2.COM',
          'G1.plus D1.L',
          'D1.N G1.minus',
        ],
        motions: [
          {
            id: 'X',
            kind: 'axis',
            name: '',
            drive: 'D1',
            brake: null,
            settings: { ...HEAVY, vertical: 'no' },
          },
          { id: 'Z', kind: 'axis', name: '', drive: 'D2', brake: null, settings: HEAVY },
        ],
      }),
    );
    for (const id of ['stop.runs', 'stop.power', 'stop.act.S1', 'stop.Z.brake'])
      expect(half.findings.find((each) => each.id === id)!.caution, id).toMatch(/prop or block Z from below/);
  });

  test('the test sheet begins with a block, and what would drop is not tried', () => {
    const sheet = (id: string) => testSheet('Mill', laid(id), look(laid(id)), '2026-01-31').lines;
    for (const id of ['safety-relay', 'vertical-axis'])
      expect(sheet(id)[0]!.act).toMatch(/^Put a block under Z/);
    const isStop = ({ act }: { readonly act: string }) => /(Press S1|power off)\.$/.test(act);
    expect(sheet('safety-relay').filter(isStop)).toEqual([]);
    const barred = sheet('safety-relay').filter((line) => line.barred);
    expect(barred.length).toBeGreaterThan(1);
    for (const { act } of barred) expect(act).toMatch(/Do not do this test with Z until .*stop\.Z\.brake/);
    const runs = sheet('vertical-axis').filter(isStop);
    expect(runs.length).toBeGreaterThan(1);
    for (const { act, caution } of runs) expect(caution, act).toMatch(/Z blocked from below/);
  });

  test.each(SAMPLES.map(({ id }) => id))(
    '%s: no stop of an axis that can drop is without it or a brake that holds',
    (id) => {
      const refit = sample(id);
      const made = analyseStop(refit.stop!, stopOffers(assess(refit), refit.stop!));
      if (!made.ok) throw new Error(made.problem.message);
      const { base, stops, findings } = made.value;
      const drops = base.model.motions.filter(({ kind, vertical }) => kind === 'axis' && vertical);
      expect(drops.length).toBeGreaterThan(0);
      for (const { act, stops: own } of stops) {
        const name = act.mover < 0 ? 'stop.power' : `stop.act.${base.model.movers[act.mover]!.id}`;
        const { caution } = findings.find((each) => each.id === name)!;
        for (const { id: axis, numbers } of drops) {
          const stop = own.find(({ motion }) => motion === axis);
          if (!stop) continue;
          const { read } = numbers;
          const holds =
            Number.isFinite(stop.brakeOn) && stop.drop! <= 1e-3 && read['brake-torque']! >= read.weight!;
          expect(caution?.includes(axis) ?? false, `${name} ${axis}`).toBe(!holds);
        }
      }
    },
  );
});
