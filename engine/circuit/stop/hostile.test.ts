/** Circuits as nobody should draw them: whatever is wired to whatever, it is answered, and soon. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSetting } from '../../quantity/read-setting.ts';
import type { SettingSpec } from '../../quantity/settings.ts';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop } from './analyse.ts';
import { CIRCUIT_SETTINGS } from './answers.ts';
import { compileStop, terminalsOf } from './compile.ts';
import { KINDS } from './kinds.ts';
import { MOTION_SETTINGS } from './motion.ts';
import { PATTERNS } from './patterns/index.ts';

const MOTIONS = [{ id: 'X', kind: 'axis' as const, name: 'X' }];
const pattern = PATTERNS.find(({ id }) => id === 'safety-relay')!.make(MOTIONS);

/** The pattern with some wires gone and others from anywhere to anywhere. */
const wild: fc.Arbitrary<StopCircuit> = fc
  .record({
    base: fc.constantFrom(...PATTERNS.map(({ make }) => make(MOTIONS))),
    gone: fc.array(fc.nat(60), { maxLength: 6 }),
    extra: fc.array(fc.tuple(fc.nat(200), fc.nat(200), fc.constantFrom('', 'W1', 'W2')), { maxLength: 8 }),
  })
  .map(({ base, gone, extra }) => {
    const terminals = Object.values(base.elements).flatMap(terminalsOf);
    const kept = Object.values(base.wires).filter((_, at) => !gone.includes(at));
    const added = extra.map(([from, to, cable], at) => ({
      id: `e${at}`,
      from: terminals[from % terminals.length]!,
      to: terminals[to % terminals.length]!,
      cable,
    }));
    return { ...base, wires: Object.fromEntries([...kept, ...added].map((wire) => [wire.id, wire])) };
  });

describe('hostile', () => {
  test('derived: random wiring is always answered in plain values', () => {
    fc.assert(
      fc.property(wild, (circuit) => {
        const begun = performance.now();
        const found = analyseStop(circuit);
        if (!found.ok) throw new Error(found.problem.message);
        const { findings, faults, stops } = found.value;
        const said = JSON.stringify([
          findings,
          faults.map(({ says, catches }) => [says, catches]),
          stops.map(({ act }) => act.says),
        ]);
        expect(said).not.toMatch(/NaN|undefined|\[object/);
        expect(findings.length).toBeGreaterThan(0);
        expect(performance.now() - begun).toBeLessThan(20_000);
      }),
      { numRuns: 25, seed: 3 },
    );
  }, 240_000);

  test('derived: every kind stands by itself, with every setting at its usual value', () => {
    for (const kind of Object.keys(KINDS)) {
      const circuit: StopCircuit = {
        pattern: null,
        note: '',
        wires: {},
        motions: {},
        settings: {},
        elements: { E1: { id: 'E1', kind, name: '', settings: {} } },
      };
      expect(compileStop(circuit).ok, kind).toBe(true);
      expect(analyseStop(circuit).ok, kind).toBe(true);
    }
  });

  test.each([
    [
      'an unknown kind',
      { elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, kind: 'contacter' } } },
      'stop.elements.K1.kind',
      /did you mean contactor/,
    ],
    [
      'a kind every object has',
      { elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, kind: 'constructor' } } },
      'stop.elements.K1.kind',
      /no kind of element/,
    ],
    [
      'an unknown setting',
      { elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, settings: { colour: 'red' } } } },
      'stop.elements.K1.settings.colour',
      /no setting “colour”/,
    ],
    [
      'a time that is a mass',
      {
        elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, settings: { 'drop-out': '5 kg' } } },
      },
      'stop.elements.K1.settings.drop-out',
      /kg/,
    ],
    [
      'a time without end',
      {
        elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, settings: { 'drop-out': '1e9 s' } } },
      },
      'stop.elements.K1.settings.drop-out',
      /from 0 s to 600 s/,
    ],
    [
      'too many contacts',
      { elements: { ...pattern.elements, K1: { ...pattern.elements.K1!, settings: { no: '99' } } } },
      'stop.elements.K1.settings.no',
      /whole number from 0 to 4/,
    ],
    [
      'a terminal there is not',
      { wires: { w1: { id: 'w1', from: 'K1.A9', to: 'K1.A1', cable: '' } } },
      'stop.wires.w1.from',
      /K1 has no terminal K1.A9; it has: K1.A1/,
    ],
    [
      'a drive that is a fuse',
      { motions: { X: { ...pattern.motions.X!, drive: 'F1' } } },
      'stop.motions.X.drive',
      /F1 is no drive/,
    ],
    [
      'a brake that is a contactor',
      { motions: { X: { ...pattern.motions.X!, brake: 'K1' } } },
      'stop.motions.X.brake',
      /K1 is no brake/,
    ],
    [
      'a speed below zero',
      { motions: { X: { ...pattern.motions.X!, settings: { speed: '-5 m/min' } } } },
      'stop.motions.X.settings.speed',
      /above zero/,
    ],
  ] as const)('derived: %s is refused with its place', (_what, change, where, message) => {
    const made = compileStop({ ...pattern, ...change } as StopCircuit);
    expect(made.ok ? 'accepted' : made.problem.where).toBe(where);
    expect(made.ok ? 'accepted' : made.problem.message).toMatch(message);
  });

  test('derived: every unit that is asked for can be typed', () => {
    const asked: SettingSpec[] = [
      ...Object.values(KINDS).flatMap(({ settings }): SettingSpec[] => Object.values(settings)),
      ...Object.values(MOTION_SETTINGS).flatMap((settings) => Object.values(settings)),
      ...Object.values(CIRCUIT_SETTINGS),
    ];
    for (const spec of asked)
      if (spec.kind === 'quantity') {
        const read = readSetting(spec, spec.unit === '1' ? '12' : `12 ${spec.unit}`);
        expect(read.ok, `${spec.name}: ${spec.unit}`).toBe(true);
      }
  });

  test('derived: twenty supplies are too many potentials, and that is said', () => {
    const elements = Object.fromEntries(
      Array.from({ length: 20 }, (_, n) => [
        `G${n}`,
        { id: `G${n}`, kind: 'supply', name: '', settings: {} },
      ]),
    );
    const made = compileStop({ pattern: null, note: '', wires: {}, motions: {}, settings: {}, elements });
    expect(made.ok ? '' : made.problem.message).toMatch(/at most 15/);
  });
});
