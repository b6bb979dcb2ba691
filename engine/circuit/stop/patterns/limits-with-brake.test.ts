/** An axis that drops, driven onto its limit switch and off it again: every act a person has, contact by contact. */
import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../../refit/types.ts';
import { act, actsOf, standingOf } from '../acts.ts';
import { analyseStop, type StopAnalysis } from '../analyse.ts';
import { StopOrder } from '../order.ts';
import { copyState, type State } from '../state.ts';
import { limitsWithBrake } from './limits-with-brake.ts';
import type { MotionWanted } from './pattern.ts';

const X: MotionWanted = {
  id: 'X',
  kind: 'axis',
  name: 'X axis',
  settings: {
    speed: '6 m/min',
    lead: '5 mm',
    inertia: '1.276e-3 kg·m²',
    friction: '0.25 N·m',
    deceleration: '2 m/s²',
  },
};
const SPINDLE: MotionWanted = { id: 'spindle', kind: 'spindle', name: 'spindle' };
const { make } = limitsWithBrake;

const look = (circuit: StopCircuit): StopAnalysis => {
  const found = analyseStop(circuit);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value;
};

describe('derived: limit switches that cut the power behind a brake', () => {
  const { base, stops, faults, truth } = look(make([X, SPINDLE]));
  const { model, simulation } = base;
  const x = 0;
  const doIt = (state: State, says: string): StopOrder => {
    const found = actsOf(model).find((each) => each.says === says);
    if (!found) throw new Error(`no act ${says}`);
    const order = new StopOrder(model, state);
    act(simulation, state, found, order.watch);
    return order;
  };
  const starts = (state: State): void => {
    for (const says of ['press S2', 'let go of S2', 'start a program at A1', 'let go of A1'])
      doIt(state, says);
  };

  test('onto either end: braked, held by the brake before the power goes, category 1, no drop; on a power cut too', () => {
    for (const says of [
      'run onto S11 (X, lower end)',
      'run onto S12 (X, upper end)',
      'switch the power off',
    ]) {
      const stop = stops
        .find(({ act: { says: is } }) => is === says)!
        .stops.find(({ motion }) => motion === 'X')!;
      if (says !== 'switch the power off') expect(stop.category).toBe('1');
      expect(stop.brakeOn, says).toBeLessThan(stop.torqueOff);
      expect(stop.drop).toBe(0);
    }
  });

  test('it cannot be started there but with the key on and the button held; letting go of either stops it, brake first', () => {
    for (const release of ['let go of S4', 'turn S3 off', 'press S1']) {
      const state = copyState(base.running);
      doIt(state, 'run onto S11 (X, lower end)');
      expect(standingOf(model, state, x)).toMatchObject({ torque: false, open: false });
      for (const first of ['', 'turn S3 on']) {
        if (first) doIt(state, first);
        starts(state);
        expect(standingOf(model, state, x), `after “${first}”`).toMatchObject({ driven: false, open: false });
      }
      doIt(state, 'press S4');
      expect(standingOf(model, state, x), 'nothing starts by holding it').toMatchObject({
        driven: false,
        torque: false,
      });
      starts(state);
      expect(standingOf(model, state, x)).toMatchObject({ driven: true, open: true });
      const order = doIt(state, release);
      expect(standingOf(model, state, x), release).toMatchObject({ torque: false, open: false });
      expect(order.brakeOn[x]!, release).toBeLessThan(order.letGo[x]!);
    }
  });

  test('off the switch with both held it runs on; with key and button back it starts as ever', () => {
    const state = copyState(base.running);
    for (const says of ['run onto S12 (X, upper end)', 'turn S3 on', 'press S4']) doIt(state, says);
    starts(state);
    for (const says of ['come off S12 (X, upper end)', 'let go of S4', 'turn S3 off']) doIt(state, says);
    expect(standingOf(model, state, x).driven).toBe(true);
    doIt(state, 'press S1');
    doIt(state, 'pull S1 out');
    starts(state);
    expect(standingOf(model, state, x).driven).toBe(true);
  });

  test('a key left on and a button that sticks are not dangerous, and are noticed at the next start', () => {
    for (const id of ['S3 stays on', 'S4 stuck pressed'])
      expect(faults.find(({ fault }) => fault.id === id)!.judged, id).toMatchObject({ verdict: 'stops' });
    expect(truth.rows.some(({ from }) => /S3 on; S4 pressed; on S11;.* X\b.* driven$/.test(from))).toBe(true);
  });

  test('without an axis there is nothing to override, and every axis that drops gets its brake', () => {
    expect(make([SPINDLE]).elements).not.toHaveProperty('S3');
    const drawn = make([
      X,
      { ...X, id: 'Z', name: 'head', drops: true },
      { ...X, id: 'W', name: 'knee', settings: { vertical: 'friction just holds it' } },
      { ...X, id: 'V', name: 'quill', drops: true, settings: { vertical: 'no' } },
      SPINDLE,
    ]);
    expect(Object.values(drawn.motions).map(({ id, brake }) => `${id} ${brake}`)).toEqual([
      'X null',
      'Z Y2',
      'W Y3',
      'V null',
      'spindle null',
    ]);
  });
});
