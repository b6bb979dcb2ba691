/** Numbers of the motions: typed, brought, unknown; a load that pulls on while it coasts; pieces that can be left. */
import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, lookThrough } from './analyse.ts';
import { draw } from './draw.ts';
import * as iso from './iso-13849.ts';
import type { Offers } from './motion-numbers.ts';
import { runDown } from './run-down.ts';
import { sayStopping, stoppingVerdict } from './say-stopping.ts';
import { typeNumber, waitedFor } from './type-number.ts';

/** An emergency stop that takes the enable of a drive which lets go at once. */
const circuit = (
  settings: Readonly<Record<string, string>>,
  {
    brake = false,
    id = 'X',
    extra = {},
  }: { brake?: boolean; id?: string; extra?: Record<string, string> } = {},
): StopCircuit =>
  draw({
    pattern: null,
    elements: [
      ['G1 supply', ''],
      ['S1 mushroom', '', { nc: '1' }],
      ['D1 drive', '', { reaction: '0 s', ...extra }],
      ...(brake ? ([['Y1 brake', '', { engage: '100 ms', release: '100 ms' }]] as const) : []),
    ],
    runs: [
      'G1.plus S1.11',
      'S1.12 D1.EN',
      'D1.COM G1.minus',
      'G1.plus D1.L',
      'D1.N G1.minus',
      ...(brake ? ['S1.12 Y1.A1', 'Y1.A2 G1.minus'] : []),
    ],
    motions: [{ id, kind: 'axis', name: id, drive: 'D1', brake: brake ? 'Y1' : null, settings }],
  });

function look(of: StopCircuit, offers: Offers = {}) {
  const found = analyseStop(of, offers);
  if (!found.ok) throw new Error(`${found.problem.where}: ${found.problem.message}`);
  return found.value;
}
const stopped = (of: StopCircuit, offers?: Offers) =>
  look(of, offers).stops.find(({ role }) => role === 'emergency')!.stops[0]!;

const OFFERS: Offers = {
  X: {
    speed: { value: 0.1, from: 'the rapid' },
    lead: { value: 0.005, from: 'the screw' },
    inertia: { value: 1e-3, from: 'all that moves' },
    friction: { value: 0.5, from: 'the ways' },
  },
};

describe('derived: where the numbers come from', () => {
  test('brought numbers count as typed ones would', () => {
    const typed = stopped(
      circuit({ speed: '6 m/min', lead: '5 mm', inertia: '1e-3 kg·m²', friction: '0.5 N·m' }),
    );
    const brought = stopped(circuit({}), OFFERS);
    expect(brought.distance).toBeCloseTo(typed.distance!, 12);
    // v²·J/(2·T·r), r in metres a radian.
    const r = 0.005 / (2 * Math.PI);
    expect(brought.distance).toBeCloseTo((0.1 ** 2 * 1e-3) / (2 * 0.5 * r), 9);
  });

  test('what is typed comes first and what was brought is named beside it; offers for others, for nothing and no numbers count for nothing', () => {
    const found = look(circuit({ friction: '1 N·m' }), {
      ...OFFERS,
      Q: { speed: { value: 9, from: '' } },
      X: { ...OFFERS.X, viscous: { value: Number.NaN, from: 'nowhere' }, drag: { lacks: ['the resistor'] } },
    });
    const { read, rows } = found.base.model.motions[0]!.numbers;
    const row = (setting: string) => rows.find((each) => each.setting === setting)!;
    expect(read.friction).toBe(1);
    expect(row('friction')).toMatchObject({ origin: 'typed', over: '0.5 N·m' });
    expect(row('friction').from).toBe('typed here; the rest of the refit says 0.5 N·m (the ways)');
    expect(row('viscous')).toMatchObject({ origin: 'unknown', says: '' });
    expect(row('drag').from).toBe('enter the resistor, or type it into the stop circuit');
    for (const id of ['constructor', 'toString', '__proto__'])
      expect(analyseStop(circuit({}, { id: 'X' }), JSON.parse(`{"${id}":{"speed":{"value":1}}}`)).ok).toBe(
        true,
      );
  });

  test('without friction and inertia it is not known how it stops, whatever a drive that only lets go is told', () => {
    const stop = stopped(circuit({ speed: '6 m/min', lead: '5 mm' }));
    expect(stop.needs).toEqual(['inertia', 'friction']);
    expect(stop.time).toBeUndefined();
  });
});

describe('derived: a load that pulls on', () => {
  const base = {
    speed: '6 m/min',
    lead: '5 mm',
    inertia: '1e-3 kg·m²',
    friction: '0.5 N·m',
    vertical: 'yes',
  };
  const w0 = 0.1 / (0.005 / (2 * Math.PI));

  const r = 0.005 / (2 * Math.PI);

  test('friction larger than the weight does not hold it: it drops to its hard stop, by v² = v0² + 2·a·s', () => {
    const stop = stopped(circuit({ ...base, weight: '0.2 N·m', travel: '300 mm' }));
    expect(stop).toMatchObject({ load: 'drops', time: Number.POSITIVE_INFINITY });
    const a = (0.2 / 1e-3) * r;
    const end = Math.sqrt(0.1 ** 2 + 2 * a * 0.3);
    expect(stop.strikes!.speed).toBeCloseTo(end, 9);
    expect(stop.strikes!.time).toBeCloseTo((end - 0.1) / a, 9);
    expect(stop.strikes!.room).toBe(0.3);
    expect(stoppingVerdict(stop)).toBe('fails');
    expect(sayStopping(stop)).toMatch(
      /then it drops, nothing holds it.*runs into its hard stop after .* m\/min/,
    );
    // Nor is it said how fast while nothing is known of the travel or the weight.
    expect(sayStopping(stopped(circuit({ ...base, weight: '0.2 N·m' })))).toMatch(
      /until it lies at its lower end/,
    );
    expect(stoppingVerdict(stopped(circuit(base)))).toBe('fails');
    expect(sayStopping(stopped(circuit(base)))).toMatch(/how fast is not known \(weight\)/);
  });

  test('braked to a stand by its drive and then let go it drops from rest: s = a·t²/2', () => {
    const stop = stopped(
      circuit(
        { ...base, weight: '0.2 N·m', travel: '300 mm', deceleration: '2 m/s²' },
        { extra: { 'on-disable': 'brakes, then lets go' } },
      ),
    );
    // The power stays: the drive goes on holding.
    expect(stop).toMatchObject({ load: 'held', category: '2', strikes: undefined });
    const ran = runDown(
      0.1 / r,
      1e-3,
      [
        { lasts: 0.5, torque: 0, drag: 0, slows: 2 / r },
        { lasts: Number.POSITIVE_INFINITY, torque: -0.2, drag: 0 },
      ],
      0.3 / r,
    );
    const way = 0.3 - 0.1 ** 2 / 4;
    const a = (0.2 / 1e-3) * r;
    expect(ran.time).toBeCloseTo(0.5 + Math.sqrt((2 * way) / a), 9);
    expect(ran.strikes! * r).toBeCloseTo(Math.sqrt(2 * a * way), 9);
  });

  test('falling against what grows with speed it comes near weight / drag, and stands nowhere', () => {
    const ran = runDown(0, 1e-3, [{ lasts: Number.POSITIVE_INFINITY, torque: -0.2, drag: 0.01 }], 1e4);
    expect(ran.strikes).toBeCloseTo(20, 6);
    // x = v·t − v·J/b once the beginning has died away.
    expect(ran.time).toBeCloseTo((1e4 + 20 * 0.1) / 20, 6);
    expect(runDown(0, 1e-3, [{ lasts: Number.POSITIVE_INFINITY, torque: -0.2, drag: 0.01 }]).time).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  test('with a brake it gains speed by its whole weight until that has closed, and then stands by the brake', () => {
    const stop = stopped(circuit({ ...base, weight: '0.8 N·m', 'brake-torque': '2 N·m' }, { brake: true }));
    const w1 = w0 + (0.8 / 1e-3) * 0.1;
    expect(stop.time).toBeCloseTo(0.1 + (1e-3 * w1) / 1.2, 9);
    expect(stopped(circuit({ ...base, weight: '0.8 N·m' }, { brake: true })).needs).toEqual(['brake-torque']);
    // A brake weaker than the load does not end it.
    const weak = stopped(
      circuit({ ...base, weight: '0.8 N·m', 'brake-torque': '0.5 N·m', travel: '1 m' }, { brake: true }),
    );
    expect(weak.strikes!.speed).toBeGreaterThan(0.1);
    expect(stoppingVerdict(weak)).toBe('fails');
    expect(stopped(circuit(base)).needs).toEqual(['weight']);
  });

  test('run-on longer than the travel ends at the hard stop, and fails; a shorter one fits', () => {
    const level = { ...base, vertical: 'no', friction: '0.01 N·m' };
    const free = stopped(circuit(level));
    expect(free.strikes).toBeUndefined();
    const ends = stopped(circuit({ ...level, travel: '100 mm' }));
    expect(ends.distance).toBe(free.distance);
    expect(free.distance).toBeGreaterThan(0.1);
    // What is left of v²·J/2 after 100 mm of friction.
    expect(ends.strikes!.speed).toBeCloseTo(Math.sqrt(0.1 ** 2 - (2 * 0.01 * 0.1 * r) / 1e-3), 9);
    expect(stoppingVerdict(ends)).toBe('fails');
    expect(sayStopping(ends)).toMatch(/it runs into its hard stop after [\d.]+ s, 100 mm on, still at/);
    expect(stoppingVerdict(stopped(circuit({ ...level, travel: '10 m' })))).toBe('fits');
  });

  test('held by friction alone is tight; whether it drops is unknown where the refit cannot say', () => {
    const rubs = { ...base, vertical: 'friction just holds it', weight: '0.2 N·m', travel: '10 m' };
    const stop = stopped(circuit(rubs));
    expect(stop.time).toBeCloseTo((1e-3 * w0) / 0.3, 9);
    expect(stoppingVerdict(stop)).toBe('tight');
    expect(sayStopping(stop)).toMatch(/only friction holds its load then, which is not to be relied on/);
    const { vertical: _typed, ...silent } = base;
    const asked = circuit({ ...silent, weight: '0.2 N·m' });
    const { findings, stops } = look(asked, { X: { vertical: { lacks: ['the slope'] } } });
    expect(stops.every(({ stops: all }) => all.every((each) => stoppingVerdict(each) === 'unknown'))).toBe(
      true,
    );
    expect(findings.find(({ id }) => id === 'stop.power')!.verdict).toBe('unknown');
    expect(findings.find(({ id }) => id === 'stop.X.brake')).toMatchObject({
      verdict: 'unknown',
      sentence: expect.stringContaining('enter the slope'),
    });
  });

  test('what drops with nothing wrong has a finding of its own and is not held against every fault', () => {
    const { findings, faults } = look(circuit({ ...base, weight: '0.2 N·m' }));
    expect(findings.find(({ id }) => id === 'stop.X.brake')!.verdict).toBe('fails');
    expect(faults.some(({ judged }) => judged.happenings.some(({ kind }) => kind === 'drops'))).toBe(false);
  });
});

test('derived: looking through comes in pieces that say how far, and can be left at any of them', () => {
  const looking = lookThrough(circuit({}));
  const first = looking.next();
  expect(first.done).toBe(false);
  expect(first.value).toMatchObject({ doing: 'every single fault', done: 10 });
  expect(looking.return({ ok: false, problem: { code: 'out-of-domain', message: '' } }).done).toBe(true);
});

test('derived: every number of the standard names its clause, and says whether it is only recalled', () => {
  for (const clause of Object.values(iso.CLAUSES))
    expect(iso.sayClause(clause)).toMatch(
      /^ISO 13849-1:2015, .+ \((recalled, check the standard|value found quoted by a maker, clause recalled)\)$/,
    );
});

describe('derived: numbers are typed by their path', () => {
  test('what is typed is read with its unit, counts first, and is taken back by “unknown”', () => {
    const typed = typeNumber(circuit({}), 'X.friction', ' 1 N·m ');
    if (!typed.ok) throw new Error(typed.problem.message);
    expect(typed.value.circuit.motions.X!.settings.friction).toBe('1 N·m');
    expect(look(typed.value.circuit, OFFERS).base.model.motions[0]!.numbers.read.friction).toBe(1);
    const back = typeNumber(typed.value.circuit, 'X.friction', 'unknown');
    expect(back.ok && back.value.circuit.motions.X!.settings).toEqual({});
    const far = typeNumber(circuit({}), 'X.travel', '200 km');
    expect(far.ok && far.value.askBack).toMatch(/\?/);
  });

  test.each([
    ['Q.travel', '1 m', /“Q” is nothing that moves in the stop circuit; .*X/],
    ['X', '1 m', /no number of X/],
    ['X.travl', '1 m', /did you mean travel\?/],
    ['X.__proto__', '1 m', /no number of X/],
    ['constructor.name', '1 m', /nothing that moves/],
    ['X.travel', '5 kg', /hard stop/i],
    ['X.vertical', 'perhaps', /none of its answers/],
  ])('%s = %s is refused in words', (path, text, says) => {
    const typed = typeNumber(circuit({}), path, text);
    expect(typed.ok).toBe(false);
    if (!typed.ok) expect(typed.problem.message).toMatch(says);
  });

  test('what the answer waits for is named, and no more once it is typed', () => {
    const found = look(circuit({ speed: '6 m/min', lead: '5 mm', vertical: 'no' }));
    expect(
      waitedFor(found)
        .map(({ setting }) => setting)
        .slice(0, 2),
    ).toEqual(['inertia', 'friction']);
    const all = look(circuit({ speed: '6 m/min', lead: '5 mm', inertia: '1e-3 kg·m²', friction: '0.5 N·m' }));
    expect(waitedFor(all).map(({ setting }) => setting)).not.toContain('inertia');
  });
});
