import { describe, expect, test } from 'vitest';
import { assess } from '../assess.ts';
import { FACTS, refitWith } from '../spindle.fixture.ts';
import { type ChartPicture, pictures } from './index.ts';

const RPM = Math.PI / 30;
const whole = refitWith(FACTS);
const assessment = assess(whole);
const RATED = 2200 / (1430 * RPM);

const chart = (id: string, of = assessment): ChartPicture => {
  const picture = pictures(of, 'S').find((each) => each.id === id);
  if (picture?.kind !== 'chart') throw new Error(`no chart ${id}`);
  return picture;
};
const at = (picture: ChartPicture, name: string, x: number): number => {
  const { points } = picture.series.find((each) => each.name === name)!;
  return points.reduce((a, b) => (Math.abs(b[0] - x) < Math.abs(a[0] - x) ? b : a))[1];
};

test('a spindle has its own pictures, an axis keeps its own', () => {
  expect(pictures(assessment, 'S').map(({ id }) => id)).toEqual([
    'spindle-torque',
    'spindle-power',
    'jaw-grip',
    'spindle-times',
  ]);
  expect(pictures(assessment, 'X').map(({ id }) => id)).not.toContain('spindle-torque');
});

test('derived: torque and power by range, between the lowest useful and the highest speed', () => {
  const torque = chart('spindle-torque');
  expect(torque.series.map(({ name }) => name)).toEqual([
    'first range',
    'second range',
    'best range, for seconds',
  ]);
  expect(at(torque, 'first range', 500 * RPM)).toBeCloseTo(RATED * 2 * 0.94, 6);
  const [from, to] = [torque.series[0]!.points[0]![0], torque.series[0]!.points.at(-1)![0]];
  expect(from / RPM).toBeCloseTo((0.06 * 1430) / 2, 3);
  expect(to / RPM).toBeCloseTo(2030 / 2, 3);
  const power = chart('spindle-power');
  expect(at(power, 'second range', (1430 / 0.75) * RPM)).toBeCloseTo(2200 * 0.94, 3);
  expect(at(power, 'second range', 2700 * RPM) / (2200 * 0.94)).toBeCloseTo(1, 6);
  expect(torque.marks.map(({ name }) => name)).toEqual(['heaviest cut']);
  expect(torque.table.rows.length).toBeGreaterThan(4);
});

test('demands from elsewhere are marked with their verdict', () => {
  const demands = [{ name: 'facing', speed: 300 * RPM, torque: 20, verdict: 'fits' as const }];
  const [torque, power] = pictures(assessment, 'S', { demands }) as ChartPicture[];
  expect(torque!.marks.at(-1)).toMatchObject({ name: 'facing', y: 20, verdict: 'fits' });
  expect(power!.marks.at(-1)!.y).toBeCloseTo(20 * 300 * RPM, 9);
});

test('derived: the jaws lose their grip with the square of the speed', () => {
  const grip = chart('jaw-grip');
  const thrown = (w: number): number => 3 * 0.45 * 0.055 * w * w;
  const { points } = grip.series.find(({ name }) => name === 'grip left')!;
  for (const [w, force] of points) expect(force).toBeCloseTo(30e3 - thrown(w), 6);
  expect(grip.says).toContain('4968 r/min');
  const bare = assess(refitWith({ 'S.chuck.type': 'collet' }, whole));
  expect(pictures(bare, 'S').map(({ id }) => id)).not.toContain('jaw-grip');
  const none = assess(refitWith({ 'S.chuck': 'none' }, whole));
  expect(pictures(none, 'S').map(({ id }) => id)).not.toContain('jaw-grip');
});

test('derived: starting and stopping end where the findings say', () => {
  const times = chart('spindle-times');
  const t = (id: string) => assessment.findings.find((each) => each.id === `S.${id}`)!.asked!.value;
  const mark = (name: string) => times.marks.find((each) => each.name === name)!;
  expect(mark('at top speed').x).toBeCloseTo(t('run-up'), 6);
  expect(mark('stands').x).toBeCloseTo(t('spindle-stop'), 4);
  const speeds = times.series.find(({ name }) => name === 'starting')!.points.map(([, w]) => w);
  for (let k = 1; k < speeds.length; k++) expect(speeds[k]!).toBeGreaterThanOrEqual(speeds[k - 1]!);
});

describe('what is not known', () => {
  test('a blank spindle draws nothing and names what it waits for', () => {
    for (const picture of pictures(assess(refitWith({})), 'S')) {
      expect(picture.verdict).toBe('unknown');
      expect(picture.missing.length, picture.id).toBeGreaterThan(0);
      expect(picture.says).toContain('Not known yet');
    }
  });
  test.each(Object.keys(FACTS).filter((path) => path.startsWith('S.')))(
    'without %s no number is odd',
    (path) => {
      const less = assess(refitWith({ [path]: 'unknown' }, whole), { previous: assessment });
      for (const picture of pictures(less, 'S')) {
        expect(picture.says).not.toMatch(/NaN|undefined|Infinity/);
        if (picture.kind !== 'chart') continue;
        for (const { points } of picture.series)
          for (const point of points) expect(point.every(Number.isFinite), picture.id).toBe(true);
        for (const { x, y } of picture.marks) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
      }
    },
  );
});
