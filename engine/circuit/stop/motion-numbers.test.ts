/** Numbers of the motions: typed, brought, unknown; a load that pulls on while it coasts; pieces that can be left. */
import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop, lookThrough } from './analyse.ts';
import { draw } from './draw.ts';
import * as iso from './iso-13849.ts';
import type { Offers } from './motion-numbers.ts';

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
    expect(row('drag').from).toBe('not known: type it, or enter the resistor');
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

  test('it coasts on friction less weight', () => {
    const stop = stopped(circuit({ ...base, weight: '0.2 N·m' }));
    expect(stop.time).toBeCloseTo((1e-3 * w0) / 0.3, 9);
  });

  test('heavier than friction it gains speed until the brake has closed, and then stands by the brake', () => {
    const stop = stopped(circuit({ ...base, weight: '0.8 N·m', 'brake-torque': '2 N·m' }, { brake: true }));
    const w1 = w0 + (0.3 / 1e-3) * 0.1;
    expect(stop.time).toBeCloseTo(0.1 + (1e-3 * w1) / 1.7, 9);
    expect(stopped(circuit({ ...base, weight: '0.8 N·m' }, { brake: true })).needs).toEqual(['brake-torque']);
    expect(stopped(circuit({ ...base, weight: '0.8 N·m' })).time).toBe(Number.POSITIVE_INFINITY);
    expect(stopped(circuit(base)).needs).toEqual(['weight']);
  });

  test('what drops with nothing wrong has a finding of its own and is not held against every fault', () => {
    const { findings, faults } = look(circuit({ ...base, weight: '0.2 N·m' }));
    expect(findings.find(({ id }) => id === 'X.brake')!.verdict).toBe('fails');
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
      /^ISO 13849-1:2015, .+ \((recalled, check the standard|value quoted in a catalogue, clause recalled)\)$/,
    );
});
