/** Every axis of the samples as a model, and every move of it in words. */
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { assess, withFact } from '../assess/index.ts';
import { DROPS } from '../circuit/stop/index.ts';
import { blankRefit } from '../refit/blank.ts';
import { weightTorque } from '../simulate/constants.ts';
import {
  type AxisModel,
  checkModel,
  headline,
  inWords,
  MOVE_KINDS,
  type Move,
  readMove,
  simulate,
} from '../simulate/index.ts';
import { axisModel, type MoveSetting } from './axis-model.ts';
import { stopOffers } from './stop-offers.ts';

function moveOf(setting: MoveSetting, kind: Move['kind']): Move {
  const read = readMove(kind, setting.usual[kind] ?? {});
  if (!read.ok) throw new Error(`${kind}: ${read.problems.map(({ message }) => message).join(' ')}`);
  return read.value;
}

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const assessment = assess(sample(id));
  test.each(assessment.refit.chains.filter(({ kind }) => kind === 'axis').map((chain) => chain.id))(
    'derived: the %s axis makes every move; energy adds up, and words hold no number that is none',
    (chain) => {
      const setting = axisModel(assessment, chain);
      expect(setting.missing).toEqual([]);
      const model = setting.model!;
      expect(checkModel(model)).toEqual([]);
      // Every move on the first axis; on the others the two that differ most.
      const isFirst = chain === assessment.refit.chains[0]!.id;
      const kinds = MOVE_KINDS.filter((each) =>
        isFirst ? each !== 'circle' : ['rapid', 'drop'].includes(each),
      );
      for (const kind of kinds) {
        const run = simulate(model, moveOf(setting, kind), { points: 200, settleBand: setting.settleBand });
        expect(Math.abs(run.summary.energy!.relative), kind).toBeLessThan(1e-6);
        const says = inWords(run, model, { continuousCurrent: setting.continuousCurrent });
        expect(says.length, kind).toBeGreaterThan(1);
        for (const { sentence } of says) expect(sentence).not.toMatch(/NaN|Infinity|undefined|no finite/);
      }
    },
    60_000,
  );
});

test('derived: the lathe’s X axis that has too few volts falls behind at rapid, and a slower rapid keeps up', () => {
  const setting = axisModel(assess(sample('carriage-works-lathe')), 'X');
  const model = setting.model!;
  const rapid = moveOf(setting, 'rapid') as Extract<Move, { kind: 'rapid' }>;
  const fast = simulate(model, { ...rapid, distance: 0.2 });
  expect(fast.trips.length).toBeGreaterThan(0);
  expect(inWords(fast, model)[0]!.level).toBe('bad');
  const slow = simulate(model, { ...rapid, distance: 0.2, speed: 0.6 * rapid.speed });
  expect(slow.trips).toEqual([]);
  expect(inWords(slow, model).some(({ level }) => level === 'bad')).toBe(false);
});

describe('derived: a load that nothing but friction holds is never said to be held', () => {
  const lathe = sample('carriage-works-lathe');
  const setting = axisModel(assess(lathe), 'X');
  const model = setting.model!;
  const words = (of: AxisModel, kind: Move['kind'], until?: number): string => {
    const run = simulate(of, moveOf(setting, kind), { points: 200, ...(until ? { until } : {}) });
    return [headline(run, of), ...inWords(run, of).map(({ sentence }) => sentence)].join(' ');
  };

  test('the sloping X of the lathe stands by friction in the model; the caution is said, and no length that is none', () => {
    for (const kind of ['drop', 'power-cut'] as const) {
      const said = words(model, kind);
      expect(said).toMatch(/In this model friction just holds the axis.*do not rely on it.*Prop the axis/);
      expect(said).not.toMatch(/makes the move within its limits|10⁻/);
    }
    expect(words(model, 'drop')).toContain('does not move');
  });

  test('with less friction it drops; with a brake, on the level, or with the drive on nothing is said of it', () => {
    const loose: AxisModel = {
      ...model,
      motor: { ...model.motor, coulomb: 0 },
      slide: { ...model.slide, coulomb: 1, staticFriction: 1 },
    };
    expect(words(loose, 'drop', 0.4)).toMatch(/Nothing holds the axis once the drive is off: it drops.*Prop/);
    const caution = /Prop the axis/;
    expect(words({ ...model, brake: { torque: 5, delay: 0.05 } }, 'drop')).not.toMatch(caution);
    expect(words({ ...model, slide: { ...model.slide, tilt: 0 } }, 'drop')).not.toMatch(caution);
    expect(words(model, 'step')).not.toMatch(caution);
    // A trip on the way lets go as well.
    expect(words(model, 'rapid')).toMatch(caution);
  });

  test('a screw that its load cannot turn takes that load: it holds, as the check of staying put says', () => {
    const refit = withFact(lathe, 'X.screw.type', { kind: 'choice', option: 'acme' });
    const judged = assess(refit);
    const { model: locking } = axisModel(judged, 'X');
    expect(judged.findings.find(({ id }) => id === 'X.stays')!.verdict).toBe('fits');
    expect(locking!.motor.coulomb).toBeGreaterThan(Math.abs(weightTorque(locking!)));
    expect(words(locking!, 'drop')).not.toMatch(/Prop the axis/);
    const circuit = { ...refit.stop!, motions: refit.stop!.motions };
    expect(stopOffers(judged, circuit).X!.vertical).toMatchObject({ value: DROPS.no });
    expect(stopOffers(assess(lathe), circuit).X!.vertical).toMatchObject({ value: DROPS.yes });
  });
});

test('an axis of which nothing is known names what it lacks; no such axis has no model', () => {
  const made = blankRefit({ id: 'blank', name: 'Blank', machine: 'lathe', axes: ['X', 'Z'] });
  if (!made.ok) throw new Error(made.problem.message);
  const blank = assess(made.value);
  const { model, missing } = axisModel(blank, 'X');
  expect(model).toBeUndefined();
  expect(missing.map(({ path }) => path)).toContain('X.motor.type');
  expect(axisModel(blank, 'Q').model).toBeUndefined();
});

test('a number that is in doubt carries its doubt into the model', () => {
  const refit = withFact(sample('carriage-works-lathe'), 'X.motor.resistance', {
    kind: 'quantity',
    text: '1.3 ± 0.26 ohm',
  });
  const { spread } = axisModel(assess(refit), 'X');
  expect(spread.find(({ path }) => path === 'motor.resistance')?.share).toBeGreaterThan(0.05);
});
