import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { applyEdit } from '../../refit/edit.ts';
import type { Refit, WiringDevice } from '../../refit/types.ts';
import { withUsual } from '../../refit/usual.ts';
import { wired } from '../wiring/wired.fixture.ts';
import { lookThrough, stateAll, terminalSheet, usualHere, WiringLook } from './index.ts';

/** Two relays on two outputs and a sensor; what a relay and the sensor take is only taken as usual. */
function bench(): Refit {
  const wiring = wired(
    [
      'A1 control output-level=24v pulse-axes=X volts=24_V output-current=0.1_A',
      'G1 supply volts=24_V current=5_A',
      'K1 relay coil-volts=24_V suppressor=diode',
      'K2 relay coil-volts=24_V coil-current=20_mA suppressor=diode',
      'B1 sensor output=PNP',
    ],
    [
      'G1.plus A1.plus',
      'G1.minus A1.minus',
      'A1.out1 K1.A1',
      'K1.A2 G1.minus',
      'A1.out2 K2.A1',
      'K2.A2 G1.minus',
      'G1.plus B1.BN',
      'G1.minus B1.BU',
    ],
  );
  const taken = (id: string, settings: Readonly<Record<string, string>>): WiringDevice =>
    withUsual(wiring.devices[id]!, settings);
  return {
    ...sample('carriage-works-lathe'),
    wiring: {
      ...wiring,
      devices: {
        ...wiring.devices,
        K1: taken('K1', { 'coil-current': '40 mA' }),
        B1: taken('B1', { current: '15 mA' }),
      },
    },
  };
}

describe('what rests on usual values', () => {
  test('derived: a finding rests on a value just where it is another without it; the rest says nothing of it', () => {
    const refit = bench();
    const looked = lookThrough(refit);
    const resting = looked.resting!;
    const of = (about: string) =>
      looked.findings.filter((each) => each.about[0] === about).flatMap(({ id }) => resting.get(id) ?? []);
    expect(of('A1.out1')).toContain('the usual current of the coil, 40 mA, of K1');
    expect(of('A1.out2')).toEqual([]);
    expect(of('K2.A1')).toEqual([]);
    expect(of('G1.plus').some((each) => /^the usual .*, 15 mA, of B1$/.test(each))).toBe(true);
    // By hand: each value left out by itself, asked from the start.
    for (const [id, setting, said] of [
      ['K1', 'coil-current', /40 mA/],
      ['B1', 'current', /15 mA/],
    ] as const) {
      const { [setting]: _, ...settings } = refit.wiring.devices[id]!.settings;
      const devices = { ...refit.wiring.devices, [id]: { ...refit.wiring.devices[id]!, settings } };
      const without = new Map(
        lookThrough({ ...refit, wiring: { ...refit.wiring, devices } }).findings.map((each) => [
          each.id,
          JSON.stringify(each),
        ]),
      );
      const other = looked.findings
        .filter((each) => without.get(each.id) !== JSON.stringify(each))
        .map((each) => each.id);
      expect(other.length).toBeGreaterThan(0);
      const rests = [...resting].filter(([, words]) => words.some((each) => said.test(each)));
      expect(rests.map(([finding]) => finding).sort()).toEqual(other.sort());
    }
  });

  test('derived: asking what rests on them leaves everything as it was; once looked at, nothing rests on it any more', () => {
    const refit = bench();
    const look = new WiringLook();
    const before = look.look(refit);
    look.resting(refit);
    expect(look.look(refit)).toEqual(before);
    expect(
      usualHere(refit).map(({ name, value, places }) => [name, value, places.map(({ id }) => id)]),
    ).toEqual([
      ['current of the coil', '40 mA', ['K1']],
      [expect.any(String), '15 mA', ['B1']],
    ]);
    const done = stateAll(
      refit,
      usualHere(refit).flatMap(({ places, value }) => places.map((place) => [place, value] as const)),
    );
    if (!done.ok) throw new Error(done.problem.message);
    expect(done.value.length).toBe(2);
    const said = applyEdit(refit, { changes: [...done.value] });
    if (!said.ok) throw new Error(said.problem.message);
    expect(usualHere(said.value)).toEqual([]);
    expect(lookThrough(said.value).resting!.size).toBe(0);
    expect(look.look(said.value).findings).toEqual(before.findings);
  });

  test('derived: where a terminal has a value from says that nobody has looked at it', () => {
    const froms = terminalSheet(bench(), 'K1', 'A1')!.fields.map(({ from }) => from);
    expect(froms.some((each) => /current of the coil.*, usual value, not looked at yet/.test(each))).toBe(
      true,
    );
  });
});
