import { describe, expect, test } from 'vitest';
import { drop, runDown } from './run-down.ts';

const close = (value: number, wanted: number, relative = 1e-6) =>
  expect(Math.abs(value / wanted - 1), `${value} against ${wanted}`).toBeLessThan(relative);

/** Steps far smaller than anything in the closed form, by the middle of each step. */
function stepped(speed: number, J: number, T: number, b: number): { time: number; angle: number } {
  const dt = 2e-6;
  let [w, time, angle] = [speed, 0, 0];
  for (;;) {
    const half = w - ((T + b * w) / J) * (dt / 2);
    const next = w - ((T + b * half) / J) * dt;
    if (next <= 0)
      return { time: time + (dt * w) / (w - next), angle: angle + (w * (dt * w)) / (w - next) / 2 };
    angle += ((w + next) / 2) * dt;
    w = next;
    time += dt;
  }
}

describe('running on', () => {
  const lead = 0.005 / (2 * Math.PI);
  const speed = 0.1 / lead;

  test('derived: 0.1 m/s, 50 ms until it obeys, 2 m/s²: 7.5 mm in 0.1 s', () => {
    const ran = runDown(speed, 1, [
      { lasts: 0.05, torque: 0, drag: 0, drives: true },
      { lasts: Number.POSITIVE_INFINITY, torque: 0, drag: 0, slows: 2 / lead },
    ]);
    close(ran.angle * lead, 0.0075);
    close(ran.time, 0.1);
  });

  test('derived: coasting by closed form against small steps, alone and with the armature shorted', () => {
    for (const [J, T, b] of [
      [8e-4, 0.12, 2e-4],
      [1.2e-3, 0.25, 0.0722],
      [0.12, 1.5, 0],
    ] as const) {
      const exact = runDown(speed, J, [{ lasts: Number.POSITIVE_INFINITY, torque: T, drag: b }]);
      const slow = stepped(speed, J, T, b);
      close(exact.time, slow.time, 1e-4);
      close(exact.angle, slow.angle, 1e-4);
    }
  });

  test('derived: axis of 120 kg on a 5 mm screw: 24.222753 mm coasting, 1.573873 mm with the armature shorted', () => {
    const J = 1.2e-3 + 120 * lead * lead;
    const coast = runDown(speed, J, [{ lasts: Number.POSITIVE_INFINITY, torque: 0.25, drag: 1e-3 }]);
    close(coast.time, 0.51962614);
    close(coast.angle * lead, 24.222753e-3);
    const shorted = runDown(speed, J, [
      { lasts: Number.POSITIVE_INFINITY, torque: 0.25, drag: 1e-3 + 0.35 ** 2 / 1.7 },
    ]);
    close(shorted.time, 0.063403758);
    close(shorted.angle * lead, 1.573873e-3);
  });

  test('derived: spindle at 1500 r/min, 0.12 kg·m², 1.5 N·m: 12.5663706 s', () => {
    const ran = runDown((1500 * 2 * Math.PI) / 60, 0.12, [
      { lasts: Number.POSITIVE_INFINITY, torque: 1.5, drag: 0 },
    ]);
    close(ran.time, 12.5663706);
  });

  test('derived: without friction it never stands, and that is said', () => {
    expect(runDown(1, 1, [{ lasts: Number.POSITIVE_INFINITY, torque: 0, drag: 0 }]).time).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  test('derived: stretches join: the same whether cut in two or not', () => {
    const whole = { torque: 0.12, drag: 2e-4 };
    const one = runDown(200, 8e-4, [{ lasts: Number.POSITIVE_INFINITY, ...whole }]);
    const two = runDown(200, 8e-4, [
      { lasts: 0.3, ...whole },
      { lasts: Number.POSITIVE_INFINITY, ...whole },
    ]);
    close(two.time, one.time, 1e-12);
    close(two.angle, one.angle, 1e-12);
  });

  test('derived: 90 kg on 5 mm lead falls 0.80035571 mm in 60 ms, 0.57244763 mm with 0.20 N·m of friction', () => {
    const J = 1.2e-3 + 90 * lead * lead;
    const torque = 90 * 9.80665 * lead;
    close(torque, 0.70234957);
    close(drop(0.06, torque, J, lead), 0.80035571e-3);
    close(drop(0.06, torque - 0.2, J, lead), 0.57244763e-3);
    const long = 0.02 / (2 * Math.PI);
    close(drop(0.06, 90 * 9.80665 * long - 0.2, 1.2e-3 + 90 * long * long, long), 7.0793205e-3);
  });
});
