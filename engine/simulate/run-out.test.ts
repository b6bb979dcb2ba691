import { describe, expect, test } from 'vitest';
import { changed } from './axis.fixture.ts';
import {
  type AxisModel,
  besideOf,
  coastIntoEnd,
  doesTheMove,
  headline,
  inWords,
  type Move,
  simulate,
  speedAfter,
} from './index.ts';
import { inertias, travelPerRadian } from './model.ts';
import { SHOP_SUPPLY } from './sampled.fixture.ts';

/** Rigid, dry friction alone, and a drive that lets go as soon as the bus falls. */
const PLAIN = changed(SHOP_SUPPLY, {
  motor: { coulomb: 0, viscous: 0 },
  transmission: { stiffness: Number.POSITIVE_INFINITY },
  slide: { staticFriction: 300, coulomb: 300, viscous: 0, fallSpeed: 0 },
  drive: { undervoltage: 62 },
});
const CUT: Move = { kind: 'power-cut', speed: 0.1, acceleration: 2, jerk: 0, cruise: 0.2 };
const said = (model: AxisModel, move: Move, travel?: number): string => {
  const run = simulate(model, move);
  return [headline(run, model), ...inWords(run, model, { travel }).map(({ sentence }) => sentence)].join(
    '\n',
  );
};

describe('after a power cut', () => {
  const run = simulate(PLAIN, CUT);
  const { motorSide, slideSide } = inertias(PLAIN);
  const mass = (motorSide + slideSide) / travelPerRadian(PLAIN) ** 2;
  const off = run.summary.runOut!.driveOff!;
  const rests = off.speed ** 2 / (2 * (300 / mass));

  test('derived: dry friction brings it to rest after v²/2a, and the run lasts until then', () => {
    expect(run.summary.runOut!.restAt).not.toBeNull();
    expect(run.summary.travelAfterOff! / rests).toBeCloseTo(1, 4);
    expect(run.summary.runOut!.restAt! - off.at).toBeCloseTo(off.speed / (300 / mass), 3);
    expect(run.until).toBeGreaterThan(run.summary.runOut!.restAt!);
  });

  test('derived: the peak is counted up to the moment the mains fail; the drive letting go after it is no fault', () => {
    const calm = simulate(PLAIN, { ...CUT, kind: 'ramp', speed: 0.1, duration: 0.1 } as unknown as Move);
    expect(calm.summary.peakFollowing).toBeGreaterThan(0);
    expect(run.summary.peakFollowing).toBeLessThan(1e-3);
    expect(run.summary.peakFollowingAt).toBeLessThanOrEqual(run.summary.runOut!.mainsOff!.at);
    expect(run.trips.length).toBeGreaterThan(0);
    expect(doesTheMove(run)).toBe(true);
    expect(headline(run, PLAIN)).toMatch(/^The mains fail at 6 m\/min: the axis runs on .* and stands /);
  });

  test('derived: the speed left at an end stop is that of v² − 2as, and the verdict turns where it comes to rest', () => {
    const { fromMains, fromDriveOff } = coastIntoEnd(run, PLAIN)!;
    expect(fromDriveOff! / rests).toBeCloseTo(1, 4);
    const before = fromMains - fromDriveOff!;
    const at = before + 0.4 * rests;
    expect(speedAfter(run, PLAIN, at) / (off.speed * Math.sqrt(0.6))).toBeCloseTo(1, 3);
    for (const [share, fits] of [
      [0.99, false],
      [1.01, true],
    ] as const) {
      const move = { ...CUT, room: fromMains * share } as Move;
      expect(doesTheMove(simulate(PLAIN, move))).toBe(fits);
      expect(said(PLAIN, move)).toMatch(
        fits ? /comes to rest .* before it/ : /runs into it, with .* left\. Nothing/,
      );
    }
  });

  test('derived: without the room, the stretch at the ends is said, with the travel or that it is lacking', () => {
    expect(said(PLAIN, CUT)).toMatch(/closer than .* to an end.*travel of this axis is not known/);
    expect(said(PLAIN, CUT, 0.3)).toMatch(/at either end of its 300 mm of travel/);
    expect(said(PLAIN, CUT, 0.01)).toMatch(/more than the whole travel of 10 mm/);
  });

  test('derived: on a slope the other way stands beside it, and runs on farther', () => {
    const slope = changed(PLAIN, { slide: { tilt: 0.1 } });
    const beside = besideOf(slope, CUT)!;
    expect(beside.name).toContain('its weight driving it on');
    const on = (model: AxisModel): number => coastIntoEnd(simulate(model, CUT), model)!.fromDriveOff!;
    const { mass: kg } = slope.slide;
    const speedOf = (model: AxisModel): number => simulate(model, CUT).summary.runOut!.driveOff!.speed;
    const weight = kg * 9.80665 * Math.sin(0.1);
    const wanted = (model: AxisModel, force: number): number => speedOf(model) ** 2 / (2 * (force / mass));
    expect(on(slope) / wanted(slope, 300 + weight)).toBeCloseTo(1, 3);
    expect(on(beside.model) / wanted(beside.model, 300 - weight)).toBeCloseTo(1, 3);
    expect(besideOf(PLAIN, CUT)).toBeNull();
  });
});

test('derived: after a trip it is said how far it ran on and where it came to rest, never that it comes back', () => {
  const model = changed(PLAIN, { drive: { followingLimit: 2e-5, undervoltage: 0 } });
  const move: Move = { kind: 'rapid', distance: 0.05, speed: 0.1, acceleration: 2, jerk: 0 };
  const run = simulate(model, move);
  expect(run.trips[0]!.sentence).toContain('behind its command');
  expect(run.summary.peakFollowing).toBeLessThan(4e-5);
  expect(run.summary.peakFollowingSide).toBe('behind');
  expect(run.summary.settled).toBeNull();
  const words = said(model, move);
  expect(words).toMatch(
    /runs on .*; it comes to rest .* from where it began, .* short of where the move ends/,
  );
  expect(words).not.toContain('comes back');
});

test('derived: a drop stands beside the same without its brake, which falls as gravity says, in the same time', () => {
  const model: AxisModel = {
    ...changed(PLAIN, {
      slide: { tilt: Math.PI / 2, staticFriction: 0, coulomb: 0 },
      drive: { undervoltage: 0 },
    }),
    brake: { torque: 50, delay: 0.06 },
  };
  const move: Move = { kind: 'drop', at: 0.05, brake: 'fitted' };
  const beside = besideOf(model, move)!;
  expect(beside.move).toMatchObject({ kind: 'drop', brake: 'none' });
  const [held, loose] = [simulate(model, move), simulate(beside.model, beside.move)];
  expect(held.until).toBe(loose.until);
  expect(held.summary.runOut!.restAt).not.toBeNull();
  expect(loose.summary.runOut!.restAt).toBeNull();
  const { motorSide, slideSide } = inertias(model);
  const mass = (motorSide + slideSide) / travelPerRadian(model) ** 2;
  const fall = 0.5 * ((model.slide.mass * 9.80665) / mass) * (loose.until - 0.05) ** 2;
  expect(-loose.summary.travelAfterOff! / fall).toBeCloseTo(1, 3);
  expect(headline(held, model)).toMatch(/falls .* before it is held/);
  expect(headline(loose, model)).toMatch(/Nothing holds the axis.*Prop/);
  expect(besideOf(model, beside.move)!.move).toMatchObject({ brake: 'fitted' });
});

test('derived: what a circle is out of round is the sum of lag, play and yielding; the weight at the start stays out', () => {
  const model = changed(PLAIN, {
    transmission: { stiffness: 3e7, backlash: 1e-5, damping: 3000 },
    slide: { tilt: 0, coulomb: 200, staticFriction: 200 },
    drive: { undervoltage: 0 },
  });
  const circle: Move = { kind: 'circle', radius: 0.02, turns: 1.25, speed: 0.02, acceleration: 1, jerk: 0 };
  const { roundness, parts } = simulate(model, circle).circle!;
  expect((parts.lag + parts.play + parts.yielding) / roundness).toBeCloseTo(1, 3);
  expect(parts.play).toBeGreaterThan(0);
  // Weight that no friction ever turns round bends the screw by the same all the way: the circle is only moved.
  const heavy = changed(model, { slide: { tilt: Math.PI / 2, coulomb: 0, staticFriction: 0 } });
  const calm = changed(model, {
    slide: { tilt: 0, coulomb: 0, staticFriction: 0 },
    transmission: { backlash: 0 },
  });
  const round = (first: AxisModel): number => simulate(first, circle, { second: calm }).circle!.roundness;
  expect(round(heavy)).toBeLessThan(round(calm) + 2e-6);
  const words = inWords(simulate(model, circle), model, { names: ['X', 'Y'] }).map(
    ({ sentence }) => sentence,
  );
  expect(words.filter((each) => /^(It |The current is)/.test(each))).toEqual([]);
  expect(words.join('\n')).toMatch(/Of these .* is play in the screws/);
});
