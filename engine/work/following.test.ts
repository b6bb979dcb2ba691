import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { threadRunIn } from '../handbook/thread-run-in.ts';
import { AX1 } from '../simulate/axis.fixture.ts';
import { work as evaluated } from '../threads/dimensions.ts';
import { USUAL_LEAD_ERROR } from '../threads/plan.ts';
import { judgeDrawn } from './drawn.ts';
import { FOLLOWING_DRAWS, followingDrawn, inTimeOf } from './following.ts';
import { judgeOne } from './judge.ts';
import { workMachineOf } from './machine.ts';

const known = (value: number) => ({ value, needs: [] });
const LANES = [...Array(FOLLOWING_DRAWS).keys()];

const axisOf = (spread: Parameters<typeof inTimeOf>[0]['spread']) => {
  const [acceleration, rapid] = [known(1), known(0.1)];
  const inTime = inTimeOf({ model: AX1, spread, missing: [] }, acceleration, rapid, 1e-3);
  return { inTime, acceleration, rapid };
};
const drawnOf = (loop: number, spread: Parameters<typeof inTimeOf>[0]['spread'] = []) => {
  const { inTime, acceleration, rapid } = axisOf(spread);
  const { gain, lag, gainSays, model } = inTime;
  return followingDrawn(
    { gain, lag, gainSays, model, spread, acceleration, rapid },
    { look: 1e-3, loop, seed: 1, number: 0 },
  );
};

test('derived: an axis without any doubt follows alike in every draw', () => {
  const { inTime } = axisOf([]);
  const drawn = drawnOf(0);
  for (const lane of [0, 7, FOLLOWING_DRAWS + 3]) {
    expect(drawn(lane).gain.value).toBe(inTime.gain.value);
    expect(drawn(lane).lag.value).toBe(inTime.lag.value);
  }
});

test('derived: the lag of a loop without forward gains is one over its position gain, drawn as far as that is', () => {
  const { inTime } = axisOf([]);
  const share = 0.3;
  const drawn = drawnOf(share);
  const gains = LANES.map((lane) => drawn(lane).gain.value!);
  const lags = LANES.map((lane) => drawn(lane).lag.value!);
  const base = inTime.gain.value!;
  // Evenly within ±30 % of the position gain; the speed loop below adds a little of its own.
  for (const gain of gains) {
    expect(gain / base).toBeGreaterThan(1 - share - 0.1);
    expect(gain / base).toBeLessThan(1 + share + 0.1);
  }
  expect(Math.max(...gains) / Math.min(...gains)).toBeGreaterThan(1.3);
  // What follows harder trails less.
  const order = LANES.toSorted((a, b) => gains[a]! - gains[b]!);
  const [softest, hardest] = [order[0]!, order.at(-1)!];
  expect(lags[softest]!).toBeGreaterThan(lags[hardest]!);
  // Later draws take them in turn.
  expect(drawn(FOLLOWING_DRAWS + 5).gain.value).toBe(gains[5]);
});

test('derived: the chance of a run-in is the share of the drawn axes that settle in the room there is', () => {
  const lathe = sample('carriage-works-lathe');
  const machine = workMachineOf(assess(lathe));
  const axis = machine.axes.get('Z')!;
  const speed = (400 * Math.PI) / 30;
  const lead = 1.5e-3;
  const runIn = (Kv: number): number =>
    evaluated(threadRunIn, { n: speed, Ph: lead, Kv, a: axis.acceleration.value!, e: USUAL_LEAD_ERROR }).L_in;
  const number = [...machine.axes.keys()].indexOf('Z');
  const drawn = followingDrawn(axis, {
    look: machine.habits.look.value,
    loop: machine.habits.loop.value,
    seed: 1,
    number,
  });
  const each = LANES.map((lane) => runIn(drawn(lane).gain.value!)).toSorted((a, b) => a - b);
  expect(each.at(-1)! / each[0]!).toBeGreaterThan(1.1);
  // Between the eleventh and the twelfth of them.
  const room = (each[10]! + each[11]!) / 2;
  const refit = {
    ...lathe,
    work: {
      'thread-1': {
        id: 'thread-1',
        kind: 'thread' as const,
        name: '',
        settings: { thread: 'M20x1.5', length: '20 mm', room: `${room * 1e3} mm`, speed: '400 r/min' },
      },
    },
  };
  const assessment = assess(refit);
  const own = workMachineOf(assessment);
  const [one] = judgeDrawn(assessment, own, [judgeOne(own, refit.work['thread-1'])], {
    lanes: 4 * FOLLOWING_DRAWS,
  });
  const found = one!.findings.find(({ check }) => check === 'run-in')!;
  expect(found.chance).toBeCloseTo(11 / FOLLOWING_DRAWS, 9);
});
