import { describe, expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import type { Refit, Work } from '../refit/types.ts';
import { type JudgedWork, judgeOne } from './judge.ts';
import { type WorkMachine, workMachine } from './machine.ts';
import { RPM, SPINDLE } from './spindle.fixture.ts';
import type { SpindleModel } from './types.ts';

/** The lathe with a control that says what it can. */
function lathe(abilities: Readonly<Record<string, 'yes' | 'no'>> = {}): Refit {
  const refit = sample('carriage-works-lathe');
  const id = refit.places.control!.chosen!;
  const facts = Object.fromEntries(
    Object.entries(abilities).map(([name, option]) => [
      name,
      { value: { kind: 'choice', option }, basis: 'datasheet' } as const,
    ]),
  );
  const { facts: before, ...part } = refit.parts[id]!;
  // Only what a test says is known of what it can.
  const known = Object.fromEntries(
    Object.entries(before).filter(([name]) => !/thread|tapping|powered/.test(name)),
  );
  return {
    ...refit,
    work: {},
    // The spindle of these tests is the fixture's, and its chuck nobody has looked at.
    chains: refit.chains.filter(({ kind }) => kind === 'axis'),
    parts: { ...refit.parts, [id]: { ...part, facts: { ...known, ...facts } } },
  };
}

const ABLE = {
  'threading-straight': 'yes',
  'threading-multi-start': 'yes',
  'rigid-tapping': 'yes',
  'threading-taper': 'no',
} as const;

const machine = (spindle: SpindleModel | null = SPINDLE, abilities = ABLE): WorkMachine =>
  workMachine(assess(lathe(abilities)), spindle);

const MACHINE = machine();

const work = (kind: Work['kind'], settings: Readonly<Record<string, string>>): Work => ({
  id: 'w1',
  kind,
  name: '',
  settings,
});
const judge = (
  kind: Work['kind'],
  settings: Readonly<Record<string, string>>,
  on: WorkMachine = MACHINE,
): JudgedWork => judgeOne(on, work(kind, settings));
/** No number of an answer is none. */
function everyNumber(of: unknown): void {
  if (typeof of === 'number') expect(Number.isFinite(of)).toBe(true);
  else if (typeof of === 'object' && of !== null) for (const each of Object.values(of)) everyNumber(each);
}
const finding = (of: JudgedWork, check: string) => of.findings.find((each) => each.check === check);

describe('threads', () => {
  test('derived: the axis allows 0.9 v/lead, and the plan stands at the lowest link', () => {
    const found = judge('thread', { thread: 'Tr 40x14 (P7)' });
    const detail = found.detail;
    if (detail?.kind !== 'thread') throw new Error('no thread');
    const axis = detail.limits.find(({ id }) => id === 'axis-speed')!;
    // 8 m/min of rapid over 14 mm, nine tenths of it.
    expect(axis.speed! / RPM).toBeCloseTo((0.9 * 8000) / 14, 6);
    expect(detail.limits[0]!.speed).toBe(detail.speed);
    expect(detail.plan!.starts.map(({ angle }) => angle)).toEqual([0, Math.PI]);
    // 100 kHz on 1024 lines.
    expect(detail.limits.find(({ id }) => id === 'feedback')!.speed! / RPM).toBeCloseTo(5859.375, 3);
  });

  test('derived: pulses limit the axis where the drive is led by them', () => {
    const found = judge('thread', { thread: 'M20' });
    if (found.detail?.kind !== 'thread') throw new Error('no thread');
    const pulses = found.detail.limits.find(({ id }) => id === 'pulses')!;
    // 125 kHz of 10 mm / (4000 × 1.25) a pulse is 0.25 m/s; 0.9 of it over 2.5 mm.
    expect(pulses.speed! / RPM).toBeCloseTo((0.9 * 0.25 * 60) / 2.5e-3, 3);
  });

  test('a fitting thread says which link gives way first', () => {
    const found = judge('thread', {
      thread: 'M20x1.5',
      length: '30 mm',
      material: 'c45',
      speed: '500 r/min',
    });
    expect(found.verdict).toBe('fits');
    expect(found.summary).toMatch(/gives way first/);
  });

  test('derived: a tap names the stopping distance where it gives way before every link, at a speed that just fits', () => {
    const settings = { thread: 'M8', depth: '16 mm', hole: '26 mm', float: '5 mm', holder: 'floating' };
    const found = judge('tap', { ...settings, speed: '250 r/min' });
    if (found.detail?.kind !== 'tap') throw new Error('no tap');
    const first = found.detail.limits[0]!;
    expect(found.summary).toContain(`the ${first.name} gives way first`);
    expect(first.id).toBe('turning-back');
    const at = (share: number) =>
      judge('tap', { ...settings, speed: `${(first.speed! / RPM) * share} r/min` }).verdict;
    expect(at(0.999)).not.toBe('fails');
    expect(at(1.01)).toBe('fails');
  });

  test('derived: what hole and holder leave for the overrun is one answer on every line of a tap', () => {
    const settings = { thread: 'M8', depth: '16 mm', hole: '26 mm', float: '5 mm', holder: 'floating' };
    const first = (() => {
      const { detail } = judge('tap', { ...settings, speed: '250 r/min' });
      if (detail?.kind !== 'tap') throw new Error('no tap');
      return detail.limits[0]!;
    })();
    for (const [share, verdict] of [
      [0.999, 'fits'],
      [1.01, 'fails'],
    ] as const) {
      const found = judge('tap', { ...settings, speed: `${(first.speed! / RPM) * share} r/min` });
      const speed = finding(found, 'speed')!;
      expect(speed.verdict).toBe(verdict);
      expect(speed.sentence).toContain(first.name);
      expect(speed.there!.value / first.speed!).toBeCloseTo(1, 6);
      expect(finding(found, 'spindle-stop')!.verdict).toBe(verdict);
      const both = [finding(found, 'hole')!, finding(found, 'float')!].map((each) => each.verdict);
      expect(both.includes('fails')).toBe(verdict === 'fails');
    }
  });

  test('a taper thread the control cannot do has ways round with limits', () => {
    const found = judge('thread', { thread: 'R 1/2', speed: '300 r/min' });
    expect(finding(found, 'threading-taper')?.verdict).toBe('fails');
    expect(found.ways.length).toBeGreaterThan(2);
    for (const way of found.ways) expect(way.limits.length).toBeGreaterThan(20);
  });

  test('what the control can do and nobody has asked is not known, with its path', () => {
    const found = judge('thread', { thread: 'Tr 40x14 (P7)' }, machine(SPINDLE, {} as typeof ABLE));
    expect(finding(found, 'threading-multi-start')).toMatchObject({
      verdict: 'unknown',
      needs: ['control.threading-multi-start'],
    });
  });
});

describe('bad input becomes a finding that explains itself', () => {
  test.each([
    ['the pitch for the lead', { thread: 'Tr 40x14 (P7)', lead: '7 mm' }, 'lead', /is the pitch.*14/],
    ['a foreign lead', { thread: 'M10', lead: '2 mm' }, 'lead', /not the lead/],
    ['no speed', { thread: 'M10', speed: '0 r/min' }, 'standing', /speed is 0/],
    ['longer than the travel', { thread: 'M10', length: '700 mm' }, 'travel', /more than the/],
    ['too fast', { thread: 'M20', speed: '5000 r/min' }, 'speed', /too fast/],
    ['too little room', { thread: 'M20', speed: '900 r/min', room: '0.5 mm' }, 'run-in', /wrong lead/],
    ['another axis', { thread: 'M20', axis: 'Q' }, 'setting-axis', /no axis “Q”/],
    ['a word nobody knows', { thread: 'M20', lenght: '3 mm' }, 'setting-lenght', /Did you mean length/],
    ['no length', { thread: 'M20', length: 'long' }, 'setting-length', /Length of thread/],
    ['no thread at all', {}, 'setting-thread', /missing/],
    ['no such thread', { thread: 'banana' }, 'setting-thread', /./],
    ['no such material', { thread: 'M10', material: 'cheese' }, 'setting-material', /no “cheese”/],
  ] as const)('%s', (_, settings, check, words) => {
    const found = judge('thread', settings);
    expect(found.verdict).toBe('fails');
    expect(finding(found, check)).toMatchObject({ verdict: 'fails' });
    expect(finding(found, check)!.sentence).toMatch(words);
  });

  const withFeedback = (feedback: SpindleModel['feedback']): WorkMachine => machine({ ...SPINDLE, feedback });

  test('one pulse a turn', () => {
    const on = withFeedback({
      lines: 1,
      turns: { encoder: 1, spindle: 1 },
      index: true,
      highestFrequency: null,
    });
    const found = finding(judge('thread', { thread: 'M20' }, on), 'one-pulse')!;
    expect(found.verdict).toBe('fails');
    expect(found.sentence).toMatch(/one pulse/);
  });

  test('derived: an index on a geared encoder comes at as many angles as it has whole turns', () => {
    const on = withFeedback({
      lines: 1000,
      turns: { encoder: 5, spindle: 4 },
      index: true,
      highestFrequency: null,
    });
    const found = finding(judge('thread', { thread: 'M20' }, on), 'geared-index')!;
    expect(found.verdict).toBe('fails');
    expect(found.sentence).toMatch(/5 different angles/);
    expect(found.because[0]).toMatch(/5000 counts/);
    const odd = withFeedback({
      lines: 1000,
      turns: { encoder: 13, spindle: 7 },
      index: true,
      highestFrequency: null,
    });
    expect(finding(judge('thread', { thread: 'M20' }, odd), 'geared-index')!.because[0]).toMatch(/not whole/);
    const slow = withFeedback({
      lines: 1000,
      turns: { encoder: 1, spindle: 2 },
      index: true,
      highestFrequency: null,
    });
    expect(finding(judge('thread', { thread: 'M20' }, slow), 'index')!.verdict).toBe('fits');
  });

  test('no index', () => {
    const on = withFeedback({
      lines: 1000,
      turns: { encoder: 1, spindle: 1 },
      index: false,
      highestFrequency: null,
    });
    expect(finding(judge('thread', { thread: 'M20' }, on), 'index')!.verdict).toBe('fails');
  });

  test('a chuck nobody knows is no permission', () => {
    const on = machine({
      ...SPINDLE,
      limits: [
        { by: 'chuck', speed: null },
        { by: 'motor', speed: 2400 * RPM },
      ],
    });
    const found = judge('thread', { thread: 'M20', speed: '300 r/min' }, on);
    expect(found.verdict).toBe('unknown');
    expect(finding(found, 'limit-chuck')).toMatchObject({ verdict: 'unknown', needs: ['S.chuck.topSpeed'] });
  });

  test('no spindle at all is unknown, not a fault', () => {
    for (const [kind, settings] of [
      ['thread', { thread: 'M20' }],
      ['tap', { thread: 'M8' }],
      [
        'cut',
        {
          operation: 'turning',
          material: 'c45',
          diameter: '60 mm',
          depth: '2 mm',
          feed: '0.2 mm',
          speed: '120 m/min',
        },
      ],
    ] as const) {
      const found = judge(kind, settings, machine(null));
      expect(finding(found, 'spindle')?.verdict).toBe('unknown');
    }
  });
});

describe('taps', () => {
  test('derived: overrun in the better range is Jω²/2(T + drag) and the delay, at constant torque', () => {
    const found = judge('tap', { thread: 'M8', depth: '16 mm', speed: '200 r/min' });
    if (found.detail?.kind !== 'tap') throw new Error('no tap');
    const low = SPINDLE.ranges[0]!;
    const w = 200 * RPM;
    const angle = (low.inertia * w * w) / (2 * (80 + 1.5)) + 0.02 * w;
    expect(found.detail.reversal!.range).toBe('low range');
    expect(found.detail.reversal!.angle).toBeCloseTo(angle, 9);
    expect(found.detail.reversal!.overrun).toBeCloseTo((angle / (2 * Math.PI)) * 1.25e-3, 9);
  });

  test('derived: the highest speed just fills the hole', () => {
    const settings = { thread: 'M8', depth: '16 mm', hole: '21.5 mm', holder: 'rigid' };
    const fast = judge('tap', { ...settings, speed: '700 r/min' });
    if (fast.detail?.kind !== 'tap') throw new Error('no tap');
    expect(finding(fast, 'hole')!.verdict).toBe('fails');
    const highest = fast.detail.reversal!.highest!;
    const at = judge('tap', { ...settings, speed: `${(highest / RPM) * 0.999} r/min` });
    expect(finding(at, 'hole')!.verdict).toBe('fits');
    expect(finding(at, 'hole')!.margin!).toBeLessThan(1.01);
  });

  test('a spindle that only runs down spoils the hole, and there are ways round', () => {
    const coasting: SpindleModel = {
      ...SPINDLE,
      ranges: SPINDLE.ranges.map((each) => ({ ...each, braking: [{ speed: 0, torque: 0 }] })),
    };
    const found = judge('tap', { thread: 'M8', depth: '8 mm', speed: '300 r/min' }, machine(coasting));
    expect(finding(found, 'spindle-stop')?.verdict).toBe('fails');
    expect(found.ways.map(({ name }) => name)).toContain('self-reversing tapping head');
    const still: SpindleModel = {
      ...coasting,
      ranges: coasting.ranges.map((each) => ({ ...each, drag: 0 })),
    };
    expect(
      finding(judge('tap', { thread: 'M8', speed: '300 r/min' }, machine(still)), 'spindle-stop')!.sentence,
    ).toMatch(/never comes to rest/);
  });

  test('a powered tool on a control without them', () => {
    const found = judge(
      'tap',
      { thread: 'M6', 'turned-by': 'tool' },
      machine(SPINDLE, { ...ABLE, 'powered-tools': 'no' } as never),
    );
    expect(found.verdict).toBe('fails');
    expect(found.ways.length).toBeGreaterThan(1);
  });

  test('bigger taps go slower, by torque at the latest', () => {
    const found = judge('tap', { thread: 'M8', speed: '200 r/min' });
    if (found.detail?.kind !== 'tap') throw new Error('no tap');
    const speeds = found.detail.sizes.map(({ byTorque }) => byTorque);
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    expect(found.detail.sizes.length).toBeGreaterThan(6);
  });
});

describe('cuts', () => {
  const TURNING = {
    operation: 'turning',
    material: 'c45',
    diameter: '60 mm',
    depth: '2 mm',
    feed: '0.2 mm',
    speed: '120 m/min',
    wear: '1',
  };

  test('derived: the first link gives way at the depth where its margin is one', () => {
    const found = judge('cut', TURNING);
    if (found.detail?.kind !== 'cut') throw new Error('no cut');
    const [first] = found.detail.links;
    expect(first).toBeDefined();
    expect(found.detail.links.every(({ margin }) => margin >= first!.margin)).toBe(true);
    // Force is straight with depth, and with feed to the power 1 − 0.14.
    const torque = found.detail.links.find(({ id }) => id === 'spindle')!;
    expect(torque.depth! / 2e-3).toBeCloseTo(torque.margin, 5);
    expect(torque.feed! / 0.2e-3).toBeCloseTo(torque.margin ** (1 / 0.86), 4);
    // The speed lies above the base speed of the better range: the power gives way, not the torque.
    expect(torque.name).toMatch(/power|torque/);
  });

  test('a cut that is too deep fails at the link it names', () => {
    const found = judge('cut', { ...TURNING, depth: '12 mm', feed: '0.6 mm' });
    expect(found.verdict).toBe('fails');
    expect(found.summary).toMatch(/but the/);
  });

  test('no chuck known: the grip is asked for', () => {
    expect(finding(judge('cut', TURNING), 'grip')).toMatchObject({ verdict: 'unknown' });
  });

  test.each([
    [{}, /operation is missing/],
    [{ operation: 'knitting', material: 'c45' }, /not a cut/],
    [{ ...TURNING, feed: 'much' }, /feed/],
    [{ ...TURNING, speed: '0 r/min' }, /speed is 0/],
    [{ ...TURNING, colour: 'red' }, /no “colour”/],
    [{ ...TURNING, diameter: '-3 mm' }, /diameter/],
  ] as const)('hostile settings %#', (settings, words) => {
    const found = judge('cut', settings as Readonly<Record<string, string>>);
    expect(found.verdict).toBe('fails');
    expect(found.findings.map(({ sentence }) => sentence).join(' ')).toMatch(words);
  });

  test.each(['drilling', 'parting', 'milling', 'boring', 'threading', 'tapping'] as const)(
    '%s is judged without a number that is none',
    (operation) => {
      const found = judge('cut', {
        operation,
        material: 'mild-steel',
        ...(operation === 'threading' || operation === 'tapping'
          ? { thread: 'M16' }
          : { diameter: '20 mm', feed: '0.1 mm' }),
        ...(operation === 'milling' ? { teeth: '4', width: '10 mm', depth: '2 mm' } : {}),
        ...(operation === 'boring' ? { depth: '1 mm', bar: '12 mm', overhang: '60 mm' } : {}),
        ...(operation === 'parting' ? { width: '3 mm' } : {}),
        speed: operation === 'tapping' ? '200 r/min' : '30 m/min',
      });
      everyNumber(found);
      expect(found.detail?.kind).toBe('cut');
    },
  );
});
