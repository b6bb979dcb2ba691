import { describe, expect, test } from 'vitest';
import { OPERATIONS } from './cut-shapes.ts';
import { cutOf } from './cuts.ts';
import { drillsFor, inchDrill, metricDrill } from './drills.ts';
import {
  basicSizes,
  boltProfile,
  chartOf,
  dimensionsOf,
  parseThread,
  passesOf,
  planTap,
  planThread,
  tapTorques,
  usualPasses,
} from './index.ts';

const RPM = Math.PI / 30;
const thread = (text: string) => {
  const read = parseThread(text);
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
};
const ALL = [
  'M10',
  'M3',
  'M64',
  'M20xPh6P2',
  '1/4-20 UNC',
  '5/16 BSW',
  'G 1/2',
  'R 1/2',
  'Rc 3/4',
  'Rp 1',
  '1/2-14 NPT',
  'Tr 40x14 (P7) LH',
  'Tr 8',
];

describe('every kind of thread', () => {
  for (const name of ALL)
    test(`derived: ${name} has finite sizes, a drawing, drills in it and passes that end at its depth`, () => {
      const t = thread(name);
      const basic = basicSizes(t);
      expect(basic.root).toBeLessThan(basic.pitchDiameter);
      expect(basic.pitchDiameter).toBeLessThan(basic.major);
      const rows = dimensionsOf(t);
      expect(rows.length).toBeGreaterThan(8);
      for (const { value, key } of rows) expect(Number.isFinite(value), key).toBe(true);
      const outline = boltProfile(t);
      expect(Math.max(...outline.map(([, r]) => r))).toBeLessThanOrEqual(basic.major / 2 + 1e-12);
      expect(Math.min(...outline.map(([, r]) => r))).toBeGreaterThanOrEqual(basic.root / 2 - 1e-12);
      for (const [at, [z]] of outline.entries())
        if (at > 0) expect(z).toBeGreaterThanOrEqual(outline[at - 1]![0] - 1e-9);
      for (const { diameter } of drillsFor(t)) {
        expect(diameter).toBeGreaterThan(basic.root * 0.95);
        expect(diameter).toBeLessThan(basic.major);
      }
      for (const side of ['external', 'internal'] as const) {
        const passes = passesOf(t, side, usualPasses(t), 0);
        expect(passes.at(-1)!.depth).toBeCloseTo(basic.depth[side], 12);
        let sum = 0;
        for (const { infeed } of passes) {
          expect(infeed).toBeGreaterThan(0);
          sum += infeed;
        }
        expect(sum).toBeCloseTo(basic.depth[side], 12);
      }
    });
});

test('derived: passes of M10 are those of the square-root rule', () => {
  const depths = passesOf(thread('M10'), 'external', 8, 0).map(({ depth }) => depth * 1e3);
  for (const [at, wanted] of [
    0.32532, 0.46008, 0.56348, 0.65065, 0.72744, 0.79687, 0.86072, 0.92015,
  ].entries())
    expect(depths[at]).toBeCloseTo(wanted, 4);
});

test('derived: too many passes are made fewer, none thinner than a chip can be', () => {
  const passes = passesOf(thread('M10'), 'external', 30, 0);
  expect(passes.length).toBeLessThan(30);
  for (const { infeed } of passes.slice(0, -1)) expect(infeed).toBeGreaterThanOrEqual(0.0306e-3);
  expect(passes.at(-1)!.depth).toBeCloseTo(0.92015e-3, 8);
});

/** Drills a published table lists. */
for (const [name, drill] of [
  ['M3', 2.5],
  ['M4', 3.3],
  ['M5', 4.2],
  ['M6', 5],
  ['M8', 6.8],
  ['M8x1', 7],
  ['M10', 8.5],
  ['M10x1', 9],
  ['M12x1', 11],
  ['M12x1.5', 10.5],
  ['M14', 12],
  ['M14x1.5', 12.5],
  ['M16', 14],
  ['M18x1.5', 16.5],
  ['M20', 17.5],
  ['M20x1.5', 18.5],
] as const)
  test(`published: tap drill of ${name} is ${drill} mm (a public list of metric tap drills; a metric internal thread chart)`, () => {
    const [first] = drillsFor(thread(name));
    expect(first!.diameter * 1e3).toBeCloseTo(drill, 9);
    expect(first!.inLimits).toBe(true);
  });
test('derived: drills by number, letter and fraction', () => {
  expect(inchDrill(0.2 * 0.0254)[0]).toBe('#7');
  expect(inchDrill(0.4231 * 0.0254)[0]).toBe('27/64 in');
  expect(inchDrill(0.3125 * 0.0254)[0]).toBe('5/16 in');
  expect(metricDrill(10.25e-3) * 1e3).toBeCloseTo(10.2, 9);
});

const machine = { rapid: 3 / 60, acceleration: 0.5, gain: 30 };
test('derived: the plan is held by the slowest limit and its run-in is that of the sheet', () => {
  const plan = planThread(
    thread('2-start pitch 1 mm ø16'),
    { ...machine, spindle: 500 * RPM },
    { side: 'external', length: 20e-3 },
  );
  expect(plan.speed / RPM).toBeCloseTo(500, 9);
  expect(plan.runIn * 1e3).toBeCloseTo(2.0313861, 6);
  expect(plan.limits.find(({ id }) => id === 'axis')!.speed / RPM).toBeCloseTo(1350, 9);
  expect(plan.starts.map(({ angle }) => (angle * 180) / Math.PI)).toEqual([0, 180]);
  expect(plan.starts[1]!.shift).toBeCloseTo(1e-3, 12);
});
test('derived: the room before the thread gives back the speed whose run-in fills it', () => {
  const plan = planThread(thread('2-start pitch 1 mm ø16'), machine, {
    side: 'external',
    length: 20e-3,
    room: 2.0313861e-3,
  });
  expect(plan.limits[0]!.id).toBe('run-in');
  expect(plan.speed / RPM).toBeCloseTo(500, 3);
});
test('derived: twice the starts take more than twice the time of one at the same speed', () => {
  const wish = { side: 'external', length: 20e-3 } as const;
  const one = planThread(thread('M16x2'), { ...machine, spindle: 100 * RPM }, wish);
  const two = planThread(thread('M16xPh4P2'), { ...machine, spindle: 100 * RPM }, wish);
  expect(two.time).toBeGreaterThan(one.time);
  expect(two.passes.length).toBe(one.passes.length);
});
test('derived: an unknown gain is said', () => {
  const plan = planThread(
    thread('M10'),
    { rapid: 0.05, acceleration: 0.5 },
    { side: 'internal', length: 0.02 },
  );
  expect(plan.assumed.join()).toContain('gain');
});

const spindle = {
  inertia: 0.015,
  torque: 15,
  baseSpeed: 1000 * RPM,
  delay: 0,
  highest: 3000 * RPM,
  gains: [30, 30],
} as const;
const hole = { thread: 20e-3, chamfer: 3, chips: 1e-3 };
test('derived: depth to drill by hand, and the highest speed gives that depth back', () => {
  const plan = planTap(thread('M10'), spindle, hole, 1000 * RPM);
  expect(plan.hole * 1e3).toBeCloseTo(26.809, 4);
  expect(plan.overrun * 1e3).toBeCloseTo(1.3089969, 6);
  const tight = planTap(thread('M10'), spindle, { ...hole, deepest: plan.hole }, 200 * RPM);
  expect(tight.highest / RPM).toBeCloseTo(1000, 3);
  const none = planTap(thread('M10'), spindle, { ...hole, deepest: 10e-3 }, 200 * RPM);
  expect(none.highest).toBeLessThan(1e-6);
});
test('derived: both torques of an M10 tap', () => {
  const both = tapTorques(thread('M10'), 8.5e-3, { byHole: 3900e6, byPitch: 2500e6 }, 1.15, 40);
  expect(both.byHole).toBeCloseTo(6.5544591, 6);
  expect(both.byPitch).toBeCloseTo(7.03125, 9);
});

test('derived: a turning cut in workshop words', () => {
  const cut = cutOf(
    'turning',
    { material: 'C45', diameter: '40mm', depth: '2mm', feed: '0.2mm', speed: '150m/min', wear: '1' },
    { power: 2000 },
  );
  if (!cut.ok) throw new Error(cut.problem.message);
  const power = cut.value.asked.find(({ id }) => id === 'power')!;
  expect(power.value).toBeCloseTo(2782.5347 / 0.8, 2);
  expect(power.margin).toBeLessThan(1);
  // The feed it names meets the limit exactly.
  const slower = cutOf('turning', {
    material: 'c45',
    diameter: '40mm',
    depth: '2mm',
    feed: `${power.feed! * 1e3} mm`,
    speed: '150m/min',
    wear: '1',
  });
  if (!slower.ok) throw new Error(slower.problem.message);
  expect(slower.value.asked.find(({ id }) => id === 'power')!.value).toBeCloseTo(2000, 4);
});
test('derived: a spindle speed may stand for the cutting speed', () => {
  const a = cutOf('turning', {
    material: 'steel',
    diameter: '40mm',
    depth: '2mm',
    feed: '0.2mm',
    speed: '1193.66207 r/min',
  });
  const b = cutOf('turning', {
    material: 'steel',
    diameter: '40mm',
    depth: '2mm',
    feed: '0.2mm',
    speed: '150 m/min',
  });
  if (!a.ok || !b.ok) throw new Error('refused');
  expect(a.value.asked[0]!.value / b.value.asked[0]!.value).toBeCloseTo(1, 7);
});
test('derived: threading and tapping take the thread', () => {
  const pass = cutOf('threading', { material: 'steel', thread: 'M10', speed: '60 m/min' });
  const tap = cutOf('tapping', { material: 'steel', thread: 'M10', speed: '400 r/min' });
  const alu = cutOf('tapping', { material: 'aluminium', thread: 'M10', speed: '400 r/min' });
  if (!pass.ok || !tap.ok || !alu.ok) throw new Error('refused');
  expect(tap.value.asked.find(({ id }) => id === 'torque')!.value).toBeCloseTo(6.5544591, 5);
  expect(alu.value.asked.find(({ id }) => id === 'torque')!.value).toBeCloseTo((800 * 2.25 * 10) / 8000, 9);
  expect(pass.value.asked.length).toBe(3);
});

const ODD = [
  '',
  ' ',
  '0',
  '-1 mm',
  '1e308',
  '1e999 m',
  'NaN',
  'words',
  '5 kg',
  '__proto__',
  'x'.repeat(100_000),
  '1,250 mm',
];
test('derived: whatever is typed for a cut, the answer is finite or a sentence that names the word', () => {
  for (const operation of OPERATIONS) {
    const whole: Record<string, string> = {
      material: 'steel',
      ...(operation === 'threading' || operation === 'tapping'
        ? { thread: 'M10' }
        : { diameter: '20 mm', feed: '0.1 mm' }),
      ...(operation === 'turning' || operation === 'boring' || operation === 'milling'
        ? { depth: '1 mm' }
        : {}),
      ...(operation === 'boring' ? { bar: '12 mm', overhang: '40 mm' } : {}),
      ...(operation === 'parting' || operation === 'milling' ? { width: '3 mm' } : {}),
      ...(operation === 'milling' ? { teeth: '4' } : {}),
      speed: '100 m/min',
    };
    const good = cutOf(operation, whole);
    if (!good.ok) throw new Error(`${operation}: ${good.problem.message}`);
    for (const { key, value } of [...good.value.given, ...good.value.found])
      expect(Number.isFinite(value), `${operation} ${key}`).toBe(true);
    for (const word of [...Object.keys(whole), 'nonsense'])
      for (const odd of ODD) {
        const got = cutOf(operation, { ...whole, [word]: odd });
        if (got.ok)
          for (const { value, key } of [...got.value.given, ...got.value.found])
            expect(Number.isFinite(value), `${operation} ${word}=${odd.slice(0, 9)} ${key}`).toBe(true);
        else {
          expect(got.problem.message.length).toBeLessThan(900);
          expect(got.problem.message).toMatch(/[.?]$/);
          expect(got.problem.message.replace(/“[^”]*”/g, '')).not.toMatch(/NaN|undefined/);
        }
      }
  }
}, 60_000);

test('derived: the chart is the axis limit where nothing else holds it, and the room is kept where it is short', () => {
  for (const { lead, axis, speed } of chartOf({ rapid: 0.05, acceleration: 0.5 })) {
    expect(speed).toBe(axis);
    expect((speed / (2 * Math.PI)) * lead).toBeCloseTo(0.045, 12);
  }
  for (const { speed, runIn } of chartOf({ rapid: 0.05, acceleration: 0.5, spindle: 2000 * RPM }, 3e-3)) {
    expect(runIn).toBeLessThanOrEqual(3e-3 + 1e-9);
    expect(speed).toBeLessThanOrEqual(2000 * RPM);
  }
});
