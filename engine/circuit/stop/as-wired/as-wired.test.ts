import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Refit, StopCircuit, Wiring, WiringWire } from '../../../refit/types.ts';
import { readWiring } from '../../wiring/index.ts';
import { compileStop } from '../compile.ts';
import { PATTERNS } from '../patterns/index.ts';
import { asWiredFinding, type Difference, differencesOf } from './index.ts';

const modelOf = (circuit: StopCircuit) => {
  const made = compileStop(circuit);
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
};
const differences = (
  refit: Refit,
  wiring: Wiring = refit.wiring,
  circuit = refit.stop!,
): readonly Difference[] => differencesOf(circuit, modelOf(circuit), readWiring(wiring, refit));
const wire = (id: string, from: string, to: string): WiringWire => ({
  id,
  from,
  to,
  cable: null,
  settings: {},
});
const laid = (refit: Refit, ...more: readonly WiringWire[]): Wiring => ({
  ...refit.wiring,
  wires: { ...refit.wiring.wires, ...Object.fromEntries(more.map((each) => [each.id, each])) },
});
const cut = (
  refit: Refit,
  joins: (from: string, to: string) => boolean,
  ...more: readonly WiringWire[]
): Wiring => {
  const wiring = laid(refit, ...more);
  const wires = Object.fromEntries(
    Object.entries(wiring.wires).filter(([id, { from, to }]) => id.startsWith('new') || !joins(from, to)),
  );
  expect(Object.keys(wires).length).toBeLessThan(Object.keys(wiring.wires).length);
  return { ...wiring, wires };
};

describe('stop circuit and wiring of the samples', () => {
  const lathe = sample('carriage-works-lathe');
  const mill = sample('boatyard-mill');

  test('derived: they agree in all', () => {
    expect(differences(lathe)).toEqual([]);
    expect(differences(mill)).toEqual([]);
  });

  test('derived: the spindle drawn on the d.c. of the axes is told: another source, and poles by the contactor', () => {
    const { stop } = lathe;
    const drawn = PATTERNS.find(({ id }) => id === 'two-contactors')!.make(
      Object.values(stop!.motions).map(({ id, kind, name }) => ({ id, kind, name })),
    );
    const found = differences(lathe, lathe.wiring, drawn).filter(({ about }) => about.includes('T3'));
    expect(found.map(({ kind }) => kind).toSorted()).toEqual(['poles', 'poles', 'source']);
    expect(found.find(({ kind }) => kind === 'source')!.says).toMatch(
      /feeds T3 from G2 \(direct current, 2 poles\); in the wiring it is fed from X0 \(mains, 3 poles\)/,
    );
    expect(found.find(({ kind }) => kind === 'poles')!.says).toMatch(
      /K1 cuts 2 of 2 poles .* in the stop circuit, and 3 of 3 in the wiring/,
    );
  });

  test.each([
    ['S1.11', 'S1.12', 'S1 11-12'],
    ['K1.1', 'K1.2', 'K1 1-2'],
    ['K3.51', 'K3.52', 'K3 51-52'],
  ])(
    'derived: a wire from %s to %s takes contact %s out of the circuit: fails, and the contact is named',
    (from, to, contact) => {
      const found = differences(lathe, laid(lathe, wire('new1', from, to)));
      const joined = found.find(({ kind }) => kind === 'joined')!;
      expect(joined.verdict).toBe('fails');
      expect(joined.says).toContain(
        `contact ${contact}, which the stop circuit counts on there, cuts nothing`,
      );
    },
  );

  test('derived: a spare contact wired beside a channel leads past it', () => {
    const found = differences(
      lathe,
      laid(lathe, wire('new1', 'S1.11', 'K11.13'), wire('new2', 'K11.14', 'S1.12')),
    );
    expect(
      found.some(
        ({ kind, verdict, about }) => kind === 'past' && verdict === 'fails' && about.includes('K11'),
      ),
    ).toBe(true);
  });

  test('derived: a contact of the wiring in the way of a conductor is to be drawn in; nothing is lost by it', () => {
    const found = differences(
      lathe,
      cut(
        lathe,
        (from, to) => from === 'A1.enable' && to === 'K3.51',
        wire('new1', 'A1.enable', 'S31.11'),
        wire('new2', 'S31.12', 'K3.51'),
      ),
    );
    expect(
      found.some(
        ({ kind, about, verdict }) => kind === 'in-the-way' && about.includes('S31') && verdict === 'tight',
      ),
    ).toBe(true);
  });

  test('derived: power led past a contactor fails, by all poles or by two of three', () => {
    const around = (poles: readonly (readonly [string, string])[]) => {
      const [first] = poles;
      return cut(
        lathe,
        (from, to) =>
          poles.some(([a, b]) => (from === a && to === b) || (from === b && to === a)) && first !== undefined,
        ...poles.map(([a], n) => wire(`new${n}`, a, `K2.${6 + 2 * n}`)),
      );
    };
    const links = [
      ['K1.6', 'K2.5'],
      ['K1.8', 'K2.7'],
      ['K1.10', 'K2.9'],
    ] as const;
    const all = differences(lathe, around(links)).filter(({ kind }) => kind === 'contactor');
    expect(all[0]!.says).toMatch(
      /counts on K2 to cut the power of T3; in the wiring none of its main contacts/,
    );
    const two = differences(lathe, around(links.slice(0, 2))).filter(({ kind }) => kind === 'contactor');
    expect(two[0]!.says).toMatch(
      /K2 cuts 1 of 3 poles of the power of T3; by the other 2 current still flows/,
    );
    const one = differences(lathe, around(links.slice(0, 1)));
    expect(one.filter(({ kind }) => kind === 'contactor')).toEqual([]);
    expect(one.find(({ kind, about }) => kind === 'poles' && about.includes('K2'))!.says).toMatch(
      /3 of 3 .* 2 of 3/,
    );
  });

  test('derived: what is not wired, or not there, is not known', () => {
    const none = asWiredFinding(
      lathe.stop!,
      modelOf(lathe.stop!),
      readWiring({ ...lathe.wiring, devices: {}, wires: {} }, lathe),
    );
    expect(none).toMatchObject({ id: 'stop.as-wired', verdict: 'unknown' });
    expect(none.sentence).toMatch(/not laid yet/);
    const { S2: _gone, ...devices } = lathe.wiring.devices;
    const wires = Object.fromEntries(
      Object.entries(lathe.wiring.wires).filter(
        ([, { from, to }]) => !from.startsWith('S2.') && !to.startsWith('S2.'),
      ),
    );
    const found = differences(lathe, { ...lathe.wiring, devices, wires });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ kind: 'missing', verdict: 'unknown', about: ['S2'] });
    const unlaid = differences(
      lathe,
      cut(lathe, (from, to) => [from, to].includes('A1.stop')),
    );
    expect(unlaid).toHaveLength(1);
    expect(unlaid[0]).toMatchObject({ kind: 'unlaid', verdict: 'unknown' });
  });

  test('derived: the same name on something else is told', () => {
    const k3 = lathe.wiring.devices.K3!;
    const wiring = {
      ...lathe.wiring,
      devices: { ...lathe.wiring.devices, K3: { ...k3, kind: 'button', settings: {} } },
    };
    expect(
      differences(lathe, wiring).some(({ kind, verdict }) => kind === 'other-kind' && verdict === 'fails'),
    ).toBe(true);
  });
});
