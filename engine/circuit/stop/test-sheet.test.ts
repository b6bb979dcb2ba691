/** The test sheet: blocks first, nothing to sign that must fail, the numbers of the speed it names, the wires as they are wired. */
import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { stopBuilt } from '../../advice/stop-built.ts';
import { stopOffers } from '../../advice/stop-offers.ts';
import { supplyDrawn } from '../../advice/supply-drawn.ts';
import { assess } from '../../assess/index.ts';
import type { Refit } from '../../refit/types.ts';
import { wireList } from '../lists/wires.ts';
import { type Looked, WiringLook } from '../whole/index.ts';
import { analyseStop, type StopAnalysis } from './analyse.ts';
import { stoppingVerdict } from './say-stopping.ts';
import { stoppingOf } from './stops.ts';
import { testSheetHtml, testSheetText } from './test-paper.ts';
import { addMonths, type TestSheet, testSheet } from './test-sheet.ts';
import { slowModel, slowSpeed } from './test-slow.ts';

interface Whole {
  readonly refit: Refit;
  readonly found: StopAnalysis;
  readonly wired: Looked;
  readonly sheet: TestSheet;
}

function wholeOf(refit: Refit): Whole {
  const assessed = assess(refit);
  const made = analyseStop(refit.stop!, stopOffers(assessed, refit.stop!));
  if (!made.ok) throw new Error(made.problem.message);
  const wired = new WiringLook().look(refit, supplyDrawn(assessed));
  const sheet = testSheet(refit.name, refit.stop!, made.value, '2026-01-31', stopBuilt(wired));
  return { refit, found: made.value, wired, sheet };
}
const lathe = wholeOf(sample('carriage-works-lathe'));
const mill = wholeOf(sample('boatyard-mill'));
const BOTH = [
  ['lathe', lathe],
  ['mill', mill],
] as const;

describe.each(BOTH)('derived: %s', (_name, { found, sheet: { lines } }) => {
  const { model } = found.base;
  test('every axis that can drop is blocked before anything else is done', () => {
    const drops = model.motions.filter(({ kind, vertical }) => kind === 'axis' && vertical);
    expect(drops.length).toBeGreaterThan(0);
    expect(lines.slice(0, drops.length).map(({ act }) => /^Put a block under (\S+)/.exec(act)?.[1])).toEqual(
      drops.map(({ id }) => id),
    );
  });

  test('no line that is signed expects a fall, a hard stop or something that goes on', () => {
    for (const { act, expected, barred } of lines)
      if (!barred) expect(expected, act).not.toMatch(/drops|hard stop|never stands|does not stop|goes on/);
  });

  test('no name of the drawing alone stands for a wire', () => {
    for (const { act } of lines) expect(act).not.toMatch(/\bw\d+\b/);
  });

  test('lines are short', () => {
    for (const { act, expected, barred } of lines) {
      expect(act.length, act).toBeLessThan(190);
      if (!barred) expect(expected.length, expected).toBeLessThan(330);
    }
  });
});

describe('derived: numbers of the speed that is named', () => {
  test('the slow speed is at most a tenth, of one figure; what coasts against friction alone takes a tenth of the time, a hundredth of the way', () => {
    const { base } = lathe.found;
    const at = base.model.motions.findIndex(({ id }) => id === 'spindle');
    const unit = base.model.motions[at]!;
    const [slow, top] = [slowSpeed(unit)!, unit.numbers.read.speed!];
    expect(slow / top).toBeCloseTo(0.1, 9);
    const demand = base.demands.find(({ role }) => role === 'power')!;
    const [long, short] = [base.model, slowModel(base.model)].map((model) =>
      stoppingOf(model, at, demand.order),
    );
    // The same deceleration; the moments until the power has gone are the same at both speeds.
    const dead = demand.order.enableOff[at]!;
    const rate = top / (long!.time! - dead);
    expect(short!.time! - dead).toBeCloseTo(slow / rate, 6);
    expect(short!.distance! - slow * dead).toBeCloseTo(slow ** 2 / (2 * rate), 6);
  });

  test('the sheet says them with the speed, and those of the highest speed only where that is named', () => {
    const press = lathe.sheet.lines.find(({ act }) => act.endsWith('Press S1.'))!;
    expect(press.act).toMatch(/Z at 0\.8 m\/min and spindle at 200 r\/min; X stands still on its block/);
    expect(press.expected).not.toMatch(/26 s|432|22\.7/);
    const top = lathe.sheet.lines.filter(({ part }) => part === 'Run-on from the highest speed');
    expect(top.map(({ act }) => act).join()).toMatch(/spindle at 2000 r\/min/);
    expect(top.find(({ act }) => act.startsWith('spindle'))!.expected).toMatch(/26 s/);
    expect(top.every(({ expected }) => /Measured: _+ s/.test(expected))).toBe(true);
  });

  test('a spindle braked by its drive is braked as hard at the slow speed', () => {
    const { base } = mill.found;
    const slow = slowModel(base.model);
    const at = base.model.motions.findIndex(({ kind }) => kind === 'spindle');
    const rate = ({ numbers: { read } }: (typeof slow.motions)[number]) => read.speed! / read.deceleration!;
    expect(rate(slow.motions[at]!)).toBeCloseTo(rate(base.model.motions[at]!), 9);
    const demand = base.demands.find(({ role }) => role === 'emergency')!;
    expect(stoppingVerdict(stoppingOf(slow, at, demand.order, demand.act.mover))).toBe('fits');
  });
});

describe('derived: what would fail is not tried', () => {
  const barred = lathe.sheet.lines.filter((line) => line.barred);
  test('the axis that drops is left out of each stop, with the finding to mend', () => {
    expect(barred.length).toBe(lathe.found.stops.length);
    for (const { act } of barred)
      expect(act).toMatch(/Do not do this test with X until .*\(stop\.X\.brake\)/);
    expect(mill.sheet.lines.some((line) => line.barred)).toBe(false);
  });

  test('it has no room to sign', () => {
    const html = testSheetHtml(lathe.sheet);
    expect(html.match(/class="sign"/g)).toHaveLength(lathe.sheet.lines.length - barred.length);
    const text = testSheetText(lathe.sheet);
    expect(text.match(/signature: _/g)).toHaveLength(lathe.sheet.lines.length - barred.length);
  });
});

describe('derived: as it is wired', () => {
  test('a wire to take off is one of the wire list, with its number and its ends', () => {
    for (const { sheet, wired } of [lathe, mill]) {
      const rows = wireList(wired.read).groups.flatMap((group) => group.rows.map(({ cells }) => cells));
      const taken = sheet.lines.filter(({ part }) => part === 'Each channel by itself');
      expect(taken.length).toBeGreaterThan(1);
      for (const { act } of taken) {
        const [, number, from, to, off] = /^Take wire (\S+) \((\S+)–(\S+)\) off (\S+)\. /.exec(act) ?? [];
        expect(to, act).toBe(off);
        expect(
          rows.some(([near, its, far]) => near === to && its === number && far === from),
          act,
        ).toBe(true);
      }
    }
  });

  test('the way past a strip is found; where none is, terminals are named', () => {
    const built = stopBuilt(lathe.wired)!;
    expect(built.wireAt('S2.13', 'F1.2')).toEqual({ number: '3', from: 'X3.2', to: 'S2.13' });
    expect(built.wireAt('F1.2', 'S2.13')).toEqual({ number: '3', from: 'X3.1', to: 'F1.2' });
    // A contact is no joint: nothing leads through S1.
    expect(built.wireAt('F1.2', 'S1.12')).toBeUndefined();
    expect(built.wireAt('S99.1', 'F1.2')).toBeUndefined();
    const bare = testSheet('', lathe.refit.stop!, lathe.found, '2026-01-31').lines;
    expect(bare.find(({ part }) => part === 'Each channel by itself')!.act).toMatch(
      /^Take the wire off S1\.\d+ that leads to \S+\. /,
    );
    expect(stopBuilt({ ...lathe.wired, read: { ...lathe.wired.read, wires: new Map() } })).toBeUndefined();
  });

  test('the wait is that of the plate, the fall that of the power room', () => {
    const finding = lathe.wired.findings.find(({ rule }) => rule === 'stored-charge')!;
    const wait = /wait (\d+) s/.exec(finding.remedy!)![1];
    const line = lathe.sheet.lines.find(({ part }) => part === 'Stored charge')!;
    expect(line.act).toContain(`wait ${wait} s`);
    expect(lathe.sheet.before.join(' ')).toContain(`wait ${wait} s`);
    expect(line.expected).toMatch(/60 V after 7\.9 s/);
    // Nobody has said what bleeds that of the mill.
    expect(mill.sheet.lines.find(({ part }) => part === 'Stored charge')!.expected).toMatch(
      /Time to 60 V: _/,
    );
  });
});

test('derived: A4, with machine, day, due day and who; a name is text and nothing else', () => {
  const html = testSheetHtml({ ...lathe.sheet, machine: '</title><script>alert(1)</script>' });
  expect(html).toMatch(/@page\{size:A4/);
  for (const words of ['Machine', '2026-01-31', '2027-01-31', 'Tested by', 'Tested on'])
    expect(html).toContain(words);
  expect(html).not.toMatch(/<script/);
});

test('derived: due after whole months, at the end of a shorter one', () => {
  expect(addMonths('2026-01-31', 1)).toBe('2026-02-28');
  expect(addMonths('2024-01-31', 1)).toBe('2024-02-29');
  expect(addMonths('2026-11-30', 12)).toBe('2027-11-30');
});
