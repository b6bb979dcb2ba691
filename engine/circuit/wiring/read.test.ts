import { describe, expect, test } from 'vitest';
import type { Part, Wiring } from '../../refit/types.ts';
import { WIRING_KINDS } from './kinds/index.ts';
import { NATURES, natureSettings } from './natures.ts';
import { readWiring } from './read.ts';
import { readDevice } from './read-device.ts';
import { readSetting } from './setting.ts';
import { wired } from './wired.fixture.ts';

describe('reading', () => {
  test('derived: wires and metal inside join terminals into nets; a fuse does not', () => {
    const read = readWiring(
      wired(
        ['G1 supply', 'F1 fuse', 'X1 strip bridges=1-3', 'K1 relay'],
        ['G1.plus F1.1', 'F1.2 X1.1', 'X1.3 K1.A1'],
      ),
    );
    expect(read.problems).toEqual([]);
    expect(read.netOf.get('K1.A1')!.terminals).toEqual(['F1.2', 'K1.A1', 'X1.1', 'X1.2', 'X1.3']);
    expect(read.netOf.get('K1.A1')!.wires).toEqual(['w2', 'w3']);
    expect(read.netOf.get('G1.plus')!.terminals).toEqual(['F1.1', 'G1.plus']);
    const sum = read.nets.reduce((all, net) => all + net.terminals.length, 0);
    expect(sum).toBe(read.terminals.size);
  });

  test('derived: every kind gives terminals whose other ends and commons exist, with nothing typed and with every choice', () => {
    for (const kind of Object.values(WIRING_KINDS)) {
      const choices = Object.entries(kind.settings).flatMap(([name, spec]) =>
        spec.kind === 'choice' ? spec.options.map((option) => ({ [name]: option })) : [],
      );
      for (const settings of [{}, ...choices]) {
        const wiring = wired([`D1 ${kind.id}`], []);
        const read = readWiring({
          ...wiring,
          devices: { D1: { ...wiring.devices.D1!, settings: { ...settings, 'pulse-axes': 'X Z' } } },
        });
        const problems = read.problems.filter(({ where }) => !where.endsWith('pulse-axes'));
        expect(problems, `${kind.id} ${JSON.stringify(settings)}`).toEqual([]);
        const marks = [...read.terminals.values()].map(({ mark }) => mark);
        expect(new Set(marks).size).toBe(marks.length);
        for (const each of kind.terminals(read.devices.get('D1')!.settings, NONE)) {
          if (each.with) expect(marks, `${kind.id} ${each.mark}`).toContain(each.with);
          if (each.common) expect(marks, `${kind.id} ${each.mark}`).toContain(each.common);
        }
      }
    }
  });

  test('derived: a drive that is known to have safe torque off has its terminals, unless something else is typed', () => {
    const marksOf = (option: string | undefined, typed: Readonly<Record<string, string>> = {}) => {
      const { devices } = wired(['T1 drive'], []);
      const facts: Part['facts'] =
        option === undefined ? {} : { torqueOff: { value: { kind: 'choice', option }, basis: 'datasheet' } };
      const part: Part = { id: 'p', kind: 'drive', name: 'p', facts };
      const around = { parts: { p: part }, places: {}, chains: [] };
      const { terminals } = readDevice({ ...devices.T1!, part: 'p', settings: typed }, around);
      return terminals.map(({ mark }) => mark).filter((mark) => mark.startsWith('STO'));
    };
    expect(marksOf('two')).toEqual(['STO1', 'STO2']);
    expect(marksOf('one')).toEqual(['STO1']);
    for (const option of ['none', 'unknown', undefined]) expect(marksOf(option)).toEqual([]);
    expect(marksOf('two', { sto: '0' })).toEqual([]);
  });

  test('derived: every nature can be stated of a terminal', () => {
    for (const kind of Object.keys(NATURES)) {
      const wiring = wired(['D1 metal'], []);
      const read = readWiring({
        ...wiring,
        devices: { D1: { ...wiring.devices.D1!, terminals: { T: { kind, name: 'test', settings: {} } } } },
      });
      expect(read.problems).toEqual([]);
      expect(read.terminals.get('D1.T')!.nature.kind).toBe(kind);
      for (const [name, spec] of Object.entries(natureSettings(kind)))
        if (spec.usual !== '') expect(readSetting(spec, spec.usual).ok, `${kind} ${name}`).toBe(true);
    }
  });

  test('derived: what is stated of a terminal replaces only that', () => {
    const wiring = wired(['A1 control'], []);
    const read = readWiring({
      ...wiring,
      devices: {
        A1: {
          ...wiring.devices.A1!,
          terminals: { in1: { kind: 'input', name: '', settings: { 'on-level': '10 V' } } },
        },
      },
    });
    const input = read.terminals.get('A1.in1')!;
    expect(input.nature).toMatchObject({ kind: 'input', on: 10, off: 5, most: 30 });
    expect(input.common).toBe('A1.in-com');
  });
});

describe('hostile text', () => {
  const worst: Wiring = {
    devices: {
      K1: {
        id: 'K1',
        kind: 'constructor',
        name: '',
        part: '__proto__',
        where: '',
        settings: { toString: 'x' },
        terminals: { 'a.b': { kind: 'hasOwnProperty', name: '', settings: { on: '∞' } } },
        pins: {},
      },
      K2: {
        id: 'K2',
        kind: 'relay',
        name: '',
        part: null,
        where: '',
        settings: {
          no: '1e9',
          'coil-volts': '-24 V',
          'coil-current': 'NaN',
          constructor: '1',
          suppressor: 'dioed',
        },
        terminals: {},
        pins: {},
      },
    },
    wires: {
      w1: {
        id: 'w1',
        from: 'K2.A1',
        to: 'K2.A1',
        cable: 'nowhere',
        settings: { length: '3 kg', section: '0' },
      },
      w2: { id: 'w2', from: '', to: '…'.repeat(500), cable: null, settings: {} },
    },
    cables: { c: { id: 'c', name: '', settings: { cores: '-1', length: '1e400 m' } } },
    settings: {},
  };
  const read = readWiring(worst, { parts: {}, places: {}, chains: [] });

  test('derived: everything is kept, and every bad text is named with its place', () => {
    expect([...read.devices.keys()]).toEqual(['K1', 'K2']);
    expect(read.terminals.get('K1.a.b')!.nature.kind).toBe('unclear');
    expect(read.terminals.get('K2.A1')!.nature.kind).toBe('load');
    expect(read.problems.map(({ where }) => where)).toEqual([
      'wiring.devices.K1.kind',
      'wiring.devices.K1.terminals.a.b.kind',
      'wiring.devices.K2.settings.constructor',
      'wiring.devices.K2.settings.no',
      'wiring.devices.K2.settings.coil-volts',
      'wiring.devices.K2.settings.coil-current',
      'wiring.devices.K2.settings.suppressor',
      'wiring.cables.c.settings.cores',
      'wiring.cables.c.settings.length',
      'wiring.wires.w1.cable',
      'wiring.wires.w1.settings.section',
      'wiring.wires.w1.settings.length',
      'wiring.wires.w2.from',
      'wiring.wires.w2.to',
    ]);
    for (const { message } of read.problems) expect(message).toMatch(/^[A-Z“'].{10,}/);
  });

  test('derived: no number is NaN or endless', () => {
    const numbers: number[] = [];
    const walk = (value: unknown): void => {
      if (typeof value === 'number') numbers.push(value);
      else if (value instanceof Map) for (const each of value.values()) walk(each);
      else if (value && typeof value === 'object') for (const each of Object.values(value)) walk(each);
    };
    walk(read);
    expect(numbers.length).toBeGreaterThan(5);
    expect(numbers.every(Number.isFinite)).toBe(true);
  });
});

const NONE = { value: () => undefined, choice: () => undefined, choices: () => [] };
