import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../../samples/index.ts';
import { entries, sample, without } from '../../../samples/read.fixture.ts';
import { busExtremes } from '../../handbook/bus-extremes.ts';
import { dcMotor } from '../../handbook/dc-motor.ts';
import { ripple } from '../../handbook/ripple.ts';
import { stepper } from '../../handbook/stepper.ts';
import { blankRefit } from '../../refit/blank.ts';
import { applyEdit } from '../../refit/edit.ts';
import type { Refit } from '../../refit/types.ts';
import { evaluate } from '../../sheet/index.ts';
import { SCREW_ENDS } from '../../tables/screw-ends.ts';
import { type Assessment, assess } from '../assess.ts';
import { setPath } from '../set-policy.ts';
import { type ChartPicture, type Picture, pictures } from './index.ts';
import { numbers } from './sweep.ts';

const LATHE = sample('carriage-works-lathe');
const MILL = sample('boatyard-mill');

function edited(refit: Refit, ...changes: readonly (readonly [path: string, text: string])[]): Refit {
  let now = refit;
  for (const [path, text] of changes) {
    const got = setPath(now, path, text);
    if (!got.ok) throw new Error(got.problem.message);
    const next = applyEdit(now, got.value);
    if (!next.ok) throw new Error(next.problem.message);
    now = next.value;
  }
  return now;
}

const chart = (assessment: Assessment, id: string, axis = 'X'): ChartPicture => {
  const picture = pictures(assessment, axis).find((each) => each.id === id);
  if (picture?.kind !== 'chart') throw new Error(`no chart ${id}`);
  return picture;
};
const line = (picture: ChartPicture, name: string) =>
  picture.series.find((each) => each.name === name)!.points;
const finding = (assessment: Assessment, id: string) => assessment.findings.find((each) => each.id === id)!;

/** The line between its points. */
function read(points: readonly (readonly [number, number])[], x: number): number {
  const right = points.findIndex(([each]) => each >= x);
  const [x1, y1] = points[right]!;
  if (right === 0 || x1 === x) return y1;
  const [x0, y0] = points[right - 1]!;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

const steps = (points: readonly (readonly [number, number])[]): number[] =>
  points.slice(1).map(([, y], i) => y - points[i]![1]);

/** Every number of a picture. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === 'number') yield value;
  else if (value && typeof value === 'object')
    for (const each of Object.values(value)) yield* numbersIn(each);
}

function expectSound(all: readonly Picture[]): void {
  for (const picture of all) {
    expect(
      [...numbersIn(picture)].filter((number) => !Number.isFinite(number)),
      picture.id,
    ).toEqual([]);
    expect(picture.says, picture.id).not.toMatch(/NaN|undefined|Infinity|no finite value|\[object/);
    expect(picture.says).toMatch(/^\P{Ll}.*\.$/su);
    if (picture.kind !== 'chart') continue;
    const bare = picture.series.length === 0;
    if (picture.missing.length > 0) expect(bare).toBe(true);
    if (bare) continue;
    expect(new Set(picture.series.map(({ name }) => name)).size).toBe(picture.series.length);
    for (const { points } of picture.series)
      expect(steps(points.map(([x]) => [0, x])).every((d) => d > 0)).toBe(true);
    expect(picture.table.rows.every((row) => row.length === picture.series.length + 1)).toBe(true);
  }
}

const lathe = assess(LATHE);
const mill = assess(MILL);

describe.each(SAMPLES)('derived: pictures of $id', ({ id }) => {
  const refit = sample(id);
  test.each(refit.chains.map((chain) => chain.id))(
    'axis %s: nothing is missing, every number is one',
    (axis) => {
      const all = pictures(assess(refit), axis);
      expectSound(all);
      for (const picture of all)
        if (picture.kind === 'chart') expect(picture.series.length).toBeGreaterThan(1);
    },
  );

  test('whatever single fact is unknown, each picture is drawn or says what is missing', () => {
    const previous = assess(refit);
    for (const entry of entries(refit))
      expectSound(pictures(assess(without(refit, entry), { previous }), 'X'));
  });
});

describe('derived: the screw', () => {
  test('the lowest allowed speed along the screw is that of the finding, and both ends have it', () => {
    for (const [assessment, axis] of [
      [lathe, 'X'],
      [lathe, 'Z'],
      [mill, 'X'],
    ] as const) {
      const points = line(chart(assessment, 'whirl', axis), 'may turn before it whirls');
      const there = finding(assessment, `${axis}.whirl`).there!.value;
      expect(Math.min(...points.map(([, y]) => y))).toBeCloseTo(there, 9);
      expect(points[0]![1]).toBeCloseTo(there, 9);
      expect(points.at(-1)![1]).toBeCloseTo(there, 9);
      expect(read(line(chart(assessment, 'whirl', axis), 'asked at rapid'), 0)).toBe(
        finding(assessment, `${axis}.whirl`).asked!.value,
      );
    }
  });

  test.each(SCREW_ENDS.map((row) => row.id))(
    'ends %s: the bound lies under the beam with a support, second method',
    (ends) => {
      const assessment = assess(edited(LATHE, ['X.screw.ends', ends]));
      const points = line(chart(assessment, 'whirl'), 'may turn before it whirls');
      const worked = assessment.worked.get('X/whirl')!;
      const { lambda, L } = numbers(worked) as { lambda: number; L: number };
      // Speeds go with the square of the factor, so the drawn speed has a factor of its own.
      const whole = finding(assessment, 'X.whirl').there!.value;
      for (const [x, speed] of points) {
        if (x < 0.05 * L || x > 0.95 * L) continue;
        const drawn = lambda * Math.sqrt(speed / whole);
        expect(drawn).toBeLessThan(supportedBeam(ends, x / L) * 1.001);
        expect(drawn).toBeGreaterThan(lambda * 0.999);
      }
    },
  );

  test('allowed push: the finding at the far end, never rising away from the bearing', () => {
    const picture = chart(lathe, 'buckling');
    const points = line(picture, 'the screw stands');
    expect(points.at(-1)![1]).toBeCloseTo(finding(lathe, 'X.buckling').there!.value, 6);
    expect(picture.marks[0]!.y).toBe(finding(lathe, 'X.buckling').asked!.value);
    expect(Math.max(...steps(points))).toBeLessThanOrEqual(1e-9);
  });

  test('a nut that turns leaves whirling out', () => {
    const all = pictures(assess(edited(LATHE, ['X.screw.driven', 'nut'])), 'X');
    expect(all.map(({ id }) => id)).not.toContain('whirl');
  });
});

describe('derived: the servo motor', () => {
  const picture = chart(lathe, 'torque-speed');
  const worked = lathe.worked.get('X/servo-acceleration')!;
  const rapid = numbers(worked).w_req as number;

  test('the line at low mains is the sheet’s torque at every speed, bends included', () => {
    const points = line(picture, 'mains low');
    for (const share of [0, 0.2, 0.55, 0.8, 1]) {
      const w = share * points.at(-1)![0];
      const sheet = evaluate(dcMotor, { ...numbers(worked), w_req: w }).T_av;
      if (sheet.state !== 'known') throw new Error('no torque');
      expect(read(points, w)).toBeCloseTo(sheet.value, 8);
    }
    const knee = worked.results.get('w_knee');
    expect(points.map(([x]) => x)).toContain(knee?.state === 'known' && knee.value);
    expect(points.at(-1)![1]).toBeCloseTo(0, 8);
  });

  test('torque never rises with speed, and more mains is never less torque', () => {
    const [low, usual, high] = ['mains low', 'mains as usual', 'mains high'].map((name) =>
      line(picture, name),
    );
    for (const points of [low!, usual!, high!]) expect(Math.max(...steps(points))).toBeLessThanOrEqual(1e-9);
    for (const [x, y] of low!) {
      expect(read(usual!, x)).toBeGreaterThanOrEqual(y - 1e-9);
      expect(read(high!, x)).toBeGreaterThanOrEqual(read(usual!, x) - 1e-9);
    }
  });

  test('a mark lies under the line at low mains just where volts and drive both suffice', () => {
    for (const rapids of ['2 m/min', '4 m/min', '5 m/min', '5.5 m/min', '6 m/min', '7 m/min']) {
      const assessment = assess(edited(LATHE, ['X.duty.rapid', rapids]));
      const now = chart(assessment, 'torque-speed');
      const mark = now.marks.find(({ name }) => name === 'gaining speed')!;
      const points = line(now, 'mains low');
      const under = mark.x <= points.at(-1)![0] && mark.y <= read(points, mark.x);
      const { I_need, I_drive_peak } = {
        I_need: assessment.worked.get('X/servo-acceleration')!.results.get('I_need')!,
        I_drive_peak: assessment.worked.get('X/servo')!.results.get('I_drive_peak')!,
      };
      if (I_need.state !== 'known' || I_drive_peak.state !== 'known') throw new Error('unknown');
      const fits = finding(assessment, 'X.volts').margin! >= 1 && I_need.value <= I_drive_peak.value;
      expect(under, rapids).toBe(fits);
    }
  });

  test('volts at rapid are the finding’s, and rise with speed', () => {
    const now = chart(lathe, 'volts');
    const volts = finding(lathe, 'X.volts');
    expect(now.marks[0]!.y).toBe(volts.asked!.value);
    expect(read(line(now, 'mains low'), 0)).toBe(volts.there!.value);
    for (const name of ['needed gaining speed', 'needed running']) {
      expect(Math.min(...steps(line(now, name)))).toBeGreaterThan(0);
      expect(line(now, name).map(([x]) => x)).toContain(rapid);
    }
    expect(read(line(now, 'needed gaining speed'), rapid)).toBeCloseTo(volts.asked!.value, 9);
  });

  test('the bus at usual and high mains comes from the sheets with the tolerances at zero, second method', () => {
    const up = 0.1;
    const drive = (numbers(worked).duty as number) ?? Number.NaN;
    for (const [name, lift] of [
      ['mains as usual', 1],
      ['mains high', 1 + up],
    ] as const) {
      const bus = lathe.worked.get('machine/bus')!;
      const Vsec = (numbers(bus).Vsec as number) * lift;
      const peak = evaluate(busExtremes, { ...numbers(bus), Vsec, up: 0, down: 0 }).V_loaded_peak;
      if (peak.state !== 'known') throw new Error('no peak');
      // The current was reckoned with the bus of its own state of the mains: it falls as the bus rises.
      const valley = numbers(lathe.worked.get('machine/valley')!);
      const drawn = read(line(chart(lathe, 'volts'), name), 0) / drive;
      const heaviest = evaluate(ripple, { ...valley, Vp: peak.value }).V_valley;
      if (heaviest.state !== 'known') throw new Error('no valley');
      expect(drawn).toBeGreaterThan(heaviest.value);
      expect(drawn).toBeLessThan(peak.value);
      const same = (numbers(bus).Vsec as number) * lift;
      const reassessed = assess(
        edited(
          LATHE,
          ['supply.secondary', `${same} V`],
          ['policies.mains-low', '0 %'],
          ['policies.mains-high', '0 %'],
        ),
      );
      const there = finding(reassessed, 'X.volts').there!.value;
      expect(read(line(chart(lathe, 'volts'), name), 0)).toBeCloseTo(there, 9);
    }
  });
});

describe('derived: the stepper', () => {
  test('a measured curve is drawn through its own points, and its share may be used', () => {
    const picture = chart(mill, 'torque-speed');
    const curve = line(picture, 'stalls above, from its curve');
    const rpm = (n: number): number => (n * Math.PI) / 30;
    expect(read(curve, rpm(400))).toBeCloseTo(3.1, 9);
    expect(read(curve, rpm(550))).toBeCloseTo(2.7, 9);
    expect(curve.at(-1)![0]).toBeCloseTo(rpm(1000), 9);
    const there = finding(mill, 'X.pull-out').there!.value;
    expect(read(line(picture, 'may be counted on'), picture.marks[0]!.x)).toBeCloseTo(there, 9);
  });

  const worked = assess(edited(MILL, ['X.motor.pullOut', 'unknown']));
  test('without a curve it is worked at three buses, and the usable share is the finding’s', () => {
    const picture = chart(worked, 'torque-speed');
    const rapid = picture.marks[0]!.x;
    const there = finding(worked, 'X.pull-out').there!.value;
    expect(read(line(picture, 'may be counted on'), rapid)).toBeCloseTo(there, 9);
    const given = numbers(worked.worked.get('X/stepper-rapid')!);
    for (const [name, volts] of [
      ['mains low', 60 * 0.98],
      ['mains as usual', 60],
      ['mains high', 60 * 1.02],
    ] as const) {
      const torque = evaluate(stepper, { ...given, Vs: volts, w: rapid }).T_po;
      if (torque.state !== 'known') throw new Error('no torque');
      expect(read(line(picture, name), rapid)).toBeCloseTo(torque.value, 9);
      expect(Math.max(...steps(line(picture, name)))).toBeLessThanOrEqual(1e-9);
    }
  });

  test('a rapid beyond the curve is worked from the winding, as its finding is', () => {
    const assessment = assess(edited(MILL, ['X.duty.rapid', '12 m/min']));
    const picture = chart(assessment, 'torque-speed');
    const { x } = picture.marks[0]!;
    expect(x).toBeGreaterThan(line(picture, 'stalls above, from its curve').at(-1)![0]);
    const there = finding(assessment, 'X.pull-out').there!.value;
    expect(read(line(picture, 'may be counted on'), x)).toBeCloseTo(there, 9);
    expect(picture.note).toMatch(/Its curve ends at 1000 r\/min/);
  });

  test('there is no picture of volts for it', () => {
    expect(pictures(mill, 'X').map(({ id }) => id)).not.toContain('volts');
  });
});

describe('derived: where the pulses go', () => {
  test('every step carries its finding', () => {
    for (const [assessment, axis] of [
      [lathe, 'X'],
      [mill, 'X'],
    ] as const) {
      const picture = pictures(assessment, axis).find(({ id }) => id === 'pulses')!;
      if (picture.kind !== 'flow') throw new Error('no flow');
      expect(picture.steps.length).toBeGreaterThan(3);
      for (const step of picture.steps) {
        const own = finding(assessment, step.finding);
        expect([step.asked, step.there, step.margin, step.verdict]).toEqual([
          own.asked?.value ?? null,
          own.there?.value ?? null,
          own.margin ?? null,
          own.verdict,
        ]);
      }
    }
  });
});

test('derived: pictures are plain data, the same after being sent to another thread', () => {
  for (const picture of pictures(lathe, 'X')) expect(structuredClone(picture)).toEqual(picture);
});

describe('derived: what is missing', () => {
  test('a blank refit draws nothing and names what it wants', () => {
    const made = blankRefit({ id: 'new', name: 'New', machine: 'mill', axes: ['X'] });
    if (!made.ok) throw new Error(made.problem.message);
    const all = pictures(assess(made.value), 'X');
    expect(all.map(({ id }) => id)).toEqual(['torque-speed', 'volts', 'whirl', 'buckling', 'pulses']);
    expectSound(all);
    for (const picture of all) {
      expect(picture.verdict).toBe('unknown');
      expect(picture.missing.length).toBeGreaterThan(0);
      expect(picture.says).toMatch(/Not known yet/);
    }
    expect(all[2]!.missing).toContain('X.screw.root');
  });

  test('an axis that is not there has no pictures', () => {
    expect(pictures(lathe, 'Q')).toEqual([]);
  });

  test('inches change the units and the words, not the numbers', () => {
    const [metric, inch] = (['mm', 'in'] as const).map((system) => pictures(lathe, 'X', { system }));
    const whirl = inch!.find(({ id }) => id === 'whirl') as ChartPicture;
    expect(whirl.x.unit).toBe('in');
    expect(whirl.series).toEqual((metric!.find(({ id }) => id === 'whirl') as ChartPicture).series);
  });

  test('extreme but lawful facts never make a number that is none', () => {
    const texts = fc.constantFrom('1e-9', '0.001', '1', '1000', '1e9');
    const paths = entries(LATHE).filter(
      ({ fact, path }) => fact.value.kind === 'quantity' && /^X\.|^supply|^site/.test(path),
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(paths.length - 1), texts), { minLength: 1, maxLength: 4 }),
        (picks) => {
          let refit = LATHE;
          for (const [at, factor] of picks) {
            const { path, fact } = paths[at]!;
            if (fact.value.kind !== 'quantity') continue;
            const unit = fact.value.text.replace(/^[^a-zA-Z°%]*/, '');
            const got = setPath(refit, path, `${factor} ${unit}`.trim());
            const next = got.ok ? applyEdit(refit, got.value) : undefined;
            if (next?.ok) refit = next.value;
          }
          expectSound(pictures(assess(refit), 'X'));
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });
});

/**
 * First root of a beam with a hinged support at `share` of its length, by solving the Euler–Bernoulli equation in both
 * stretches: v = a·sin + b·cos + c·sinh + d·cosh of β·x, eight conditions, the lowest β·L where their determinant
 * changes sign. The second method against which the drawn bound is held.
 */
function supportedBeam(ends: string, share: number): number {
  const determinant = (z: number): number => {
    const shapes = (s: number) => {
      const [sin, cos, sinh, cosh] = [Math.sin(s), Math.cos(s), Math.sinh(s), Math.cosh(s)];
      return {
        v: [sin, cos, sinh, cosh],
        slope: [cos, -sin, cosh, sinh],
        moment: [-sin, -cos, sinh, cosh],
        shear: [-cos, sin, cosh, sinh],
      };
    };
    const none = [0, 0, 0, 0];
    const held = ends.split('-') as [string, string];
    const conditions = (how: string, at: ReturnType<typeof shapes>): number[][] =>
      how === 'fixed' ? [at.v, at.slope] : how === 'free' ? [at.moment, at.shear] : [at.v, at.moment];
    const [start, a] = [shapes(0), shapes(z * share)];
    const b = shapes(z * (1 - share));
    // The second stretch is measured from the far end, so its slope counts backwards.
    const rows = [
      ...conditions(held[0], start).map((row) => [...row, ...none]),
      ...conditions(held[1], start).map((row) => [...none, ...row]),
      [...a.v, ...none],
      [...none, ...b.v],
      [...a.slope, ...b.slope],
      [...a.moment, ...b.moment.map((each) => -each)],
    ];
    return detSign(rows);
  };
  let before = determinant(0.8);
  for (let z = 0.805; z < 12; z += 0.005) {
    const now = determinant(z);
    if (before !== 0 && now !== 0 && before !== now) return z;
    before = now;
  }
  throw new Error('no root');
}

/** The sign of a determinant by Gaussian elimination. */
function detSign(rows: number[][]): number {
  const m = rows.map((row) => [...row]);
  let sign = 1;
  for (let k = 0; k < m.length; k++) {
    let pivot = k;
    for (let r = k + 1; r < m.length; r++) if (Math.abs(m[r]![k]!) > Math.abs(m[pivot]![k]!)) pivot = r;
    if (m[pivot]![k] === 0) return 0;
    if (pivot !== k) {
      [m[k], m[pivot]] = [m[pivot]!, m[k]!];
      sign = -sign;
    }
    sign *= Math.sign(m[k]![k]!);
    for (let r = k + 1; r < m.length; r++) {
      const factor = m[r]![k]! / m[k]![k]!;
      for (let c = k; c < m.length; c++) m[r]![c]! -= factor * m[k]![c]!;
    }
  }
  return sign;
}
