/** Numbers of the motions as the refit brings them to the stop circuit, and run-on against the simulation in time. */
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { analyseStop, type Offer, type Stopping } from '../circuit/stop/index.ts';
import type { Refit, StopCircuit } from '../refit/types.ts';
import { type AxisModel, inertias, type Move, simulate, travelPerRadian } from '../simulate/index.ts';
import { axisModel } from './axis-model.ts';
import { stopOffers } from './stop-offers.ts';

const value = (offer: Offer | undefined): number => (offer && 'value' in offer ? offer.value : Number.NaN);

/** The circuit of a sample with nothing typed about its axes. */
function untyped(refit: Refit): StopCircuit {
  const circuit = refit.stop!;
  return {
    ...circuit,
    motions: Object.fromEntries(
      Object.entries(circuit.motions).map(([id, motion]) => [
        id,
        motion.kind === 'axis' ? { ...motion, settings: {} } : motion,
      ]),
    ),
  };
}

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const refit = sample(id);
  const assessment = assess(refit);
  const circuit = untyped(refit);
  const offers = stopOffers(assessment, circuit);
  const axes = refit.chains.filter(({ kind }) => kind === 'axis').map((chain) => chain.id);

  test('derived: second method: lead, inertia, brake and weight are those of the model for the simulation', () => {
    expect(Object.keys(offers).sort()).toEqual(Object.keys(circuit.motions).sort());
    for (const axis of axes) {
      const model = axisModel(assessment, axis).model!;
      const own = offers[axis]!;
      const { motorSide, slideSide } = inertias(model);
      expect(value(own.lead) / (2 * Math.PI * travelPerRadian(model))).toBeCloseTo(1, 9);
      // The simulation takes the rotor's own inertia and what sits on it; the sheet the same and the belt's pulleys.
      expect(value(own.inertia) / (motorSide + slideSide)).toBeCloseTo(1, 2);
      if (model.brake) expect(value(own['brake-torque'])).toBeCloseTo(model.brake.torque, 9);
      if (value(own.vertical) === 1)
        expect(value(own.weight)).toBeCloseTo(
          Math.abs(model.slide.mass * 9.80665 * Math.sin(model.slide.tilt) - model.slide.balance) *
            travelPerRadian(model),
          6,
        );
    }
  });

  test('derived: with nothing typed the axes stop in known times and distances; where from is said, with the basis', () => {
    const found = analyseStop(circuit, offers);
    if (!found.ok) throw new Error(found.problem.message);
    for (const { stops } of found.value.stops)
      for (const stop of stops.filter(({ kind }) => kind === 'axis'))
        expect(stop.needs, stop.motion).toEqual([]);
    for (const { id: axis, kind, numbers } of found.value.base.model.motions) {
      if (kind !== 'axis') continue;
      const speed = numbers.rows.find(({ setting }) => setting === 'speed')!;
      expect(speed).toMatchObject({ origin: 'refit', says: expect.stringMatching(/m\/min$/) });
      expect(speed.from).toContain(`rapid speed wanted of the ${axis} axis`);
      const inertia = numbers.rows.find(({ setting }) => setting === 'inertia')!;
      expect(inertia.from).toMatch(/; weakest basis: (measured|datasheet|plate|handbook|told|guess)$/);
    }
  });
});

test('derived: what is typed comes first, and what the refit says stands beside it; what is missing is named by its facts', () => {
  const refit = sample('carriage-works-lathe');
  const circuit = untyped(refit);
  const axis = refit.chains.find(({ id }) => id === 'Z')!;
  const slide = axis.places.slide!.chosen!;
  const { mass: _gone, ...facts } = refit.parts[slide]!.facts;
  const bare = { ...refit, parts: { ...refit.parts, [slide]: { ...refit.parts[slide]!, facts } } } as Refit;
  const typed: StopCircuit = {
    ...circuit,
    motions: { ...circuit.motions, Z: { ...circuit.motions.Z!, settings: { speed: '3 m/min' } } },
  };
  const found = analyseStop(typed, stopOffers(assess(bare), typed));
  if (!found.ok) throw new Error(found.problem.message);
  const { read, rows } = found.value.base.model.motions.find(({ id }) => id === 'Z')!.numbers;
  expect(read.speed).toBeCloseTo(0.05, 12);
  expect(rows.find(({ setting }) => setting === 'speed')!.from).toMatch(
    /^typed here; the rest of the refit says \d/,
  );
  expect(read.inertia).toBeUndefined();
  expect(rows.find(({ setting }) => setting === 'inertia')).toMatchObject({
    origin: 'unknown',
    from: 'enter moving mass of the Z slide, or type it into the stop circuit',
  });
  const stop = found.value.stops[0]!.stops.find(({ motion }) => motion === 'Z')!;
  expect(stop.time).toBeUndefined();
  expect(stop.needs).toEqual(expect.arrayContaining(['inertia', 'friction']));
});

/** One axis stopped by the emergency stop, with these numbers typed. */
function stopped(settings: Readonly<Record<string, string>>, onDisable: string): Stopping {
  const circuit: StopCircuit = {
    pattern: null,
    note: '',
    settings: {},
    elements: Object.fromEntries(
      [
        ['G1', 'supply', {}],
        ['S1', 'mushroom', { nc: '1' }],
        [
          'D1',
          'drive',
          { 'on-disable': onDisable, reaction: '0 s', 'hold-up': onDisable === 'lets go' ? '0 s' : '10 s' },
        ],
      ].map(([id, kind, own]) => [id, { id, kind, name: '', settings: own }]),
    ) as StopCircuit['elements'],
    wires: Object.fromEntries(
      [
        ['G1.plus', 'S1.11'],
        ['S1.12', 'D1.EN'],
        ['G1.minus', 'D1.COM'],
        ['G1.plus', 'D1.L'],
        ['G1.minus', 'D1.N'],
      ].map(([from, to], n) => [`w${n}`, { id: `w${n}`, from: from!, to: to!, cable: '' }]),
    ),
    motions: { X: { id: 'X', kind: 'axis', name: 'X', drive: 'D1', brake: null, settings } },
  };
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value.stops.find(({ role }) => role === 'emergency')!.stops[0]!;
}

describe('derived: second method: run-on in closed form against the simulation in time', () => {
  const setting = axisModel(assess(sample('carriage-works-lathe')), 'Z');
  /** The axis of the sample, stiff and without play, so that slide and motor are one. */
  const stiff: AxisModel = {
    ...setting.model!,
    transmission: { ...setting.model!.transmission, stiffness: Number.POSITIVE_INFINITY, backlash: 0 },
    slide: { ...setting.model!.slide, staticFriction: setting.model!.slide.coulomb },
    feedback: { ...setting.model!.feedback, countsPerTurn: 0 },
  };
  const r = travelPerRadian(stiff);
  const { motorSide, slideSide } = inertias(stiff);
  const numbers = (speed: number) => ({
    speed: `${speed} m/s`,
    lead: `${2 * Math.PI * r} m`,
    inertia: `${motorSide + slideSide} kg·m²`,
    friction: `${stiff.motor.coulomb + stiff.slide.coulomb * r} N·m`,
  });

  test.each([0.03, 0.06, 0.1])(
    'coasting from about %d m/s once the drive has let go: within 1 part in 100',
    (speed) => {
      // An undervoltage limit just below the bus: the drive lets go the moment the mains fail.
      const model: AxisModel = {
        ...stiff,
        supply: { ...stiff.supply, kind: 'constant', voltage: 70, capacitance: 1e-3, otherLoad: 200 },
        drive: {
          ...stiff.drive,
          undervoltage: 69.5,
          overvoltage: Number.POSITIVE_INFINITY,
          followingLimit: 1,
        },
      };
      const move: Move = { kind: 'power-cut', speed, acceleration: 1, jerk: 0, cruise: 0.4 };
      const run = simulate(model, move, { until: 1.5, points: 30_000 });
      const off = run.trips[0]!.at;
      const at = run.time.findIndex((time) => time >= off);
      const now = Math.abs(run.speed[at]!) * r;
      expect(now).toBeGreaterThan(0.8 * speed);
      const exact = stopped(numbers(now), 'lets go');
      expect(Math.abs(run.summary.travelAfterOff! / exact.distance! - 1)).toBeLessThan(0.01);
      const stands = run.time.find((time, n) => time > off && Math.abs(run.speed[n]!) * r < 1e-5)! - off;
      expect(Math.abs(stands / exact.time! - 1)).toBeLessThan(0.02);
    },
  );

  test.each([
    [0.05, 1],
    [0.1, 2],
  ])(
    'braked from %d m/s at %d m/s²: v²/2a and what the loop lags behind, within 2 parts in 100',
    (speed, stop) => {
      const model: AxisModel = { ...stiff, drive: { ...stiff.drive, followingLimit: 1, currentLimit: 200 } };
      const move: Move = { kind: 'brake-from-rapid', speed, acceleration: 1, jerk: 0, cruise: 0.5, stop };
      const run = simulate(model, move, { until: speed + 0.5 + speed / stop + 0.5 });
      const begins = speed / 1 + 0.5;
      const at = run.time.findIndex((time) => time >= begins);
      const ran = run.actual.at(-1)! - run.actual[at]!;
      const exact = stopped({ ...numbers(speed), deceleration: `${stop} m/s²` }, 'brakes, then lets go');
      expect(exact.category).toBe('2');
      expect(exact.distance).toBeCloseTo(speed ** 2 / (2 * stop), 9);
      // The slide comes to rest where the command does, and starts braking one following error behind it.
      const lag = run.commanded[at]! - run.actual[at]!;
      expect(Math.abs(ran / (exact.distance! + lag) - 1)).toBeLessThan(0.02);
    },
  );
});
