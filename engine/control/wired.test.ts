import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { setPath } from '../assess/set-policy.ts';
import { wired } from '../circuit/wiring/wired.fixture.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { compareControls } from './index.ts';
import { outputsAsDrawn, wiredAt } from './wired.ts';

const DEVICES = [
  'A1 control outputs=3 output-form=sourcing inputs=4 input-form=either_way enable-output=no stop-input=no',
  'G1 supply volts=24_V',
  'F1 fuse current=2_A',
  'Y1 valve coil-current=0.4_A',
  'Y2 valve coil-volts=24_V coil-resistance=120_ohm',
  'Y3 valve',
  'B1 sensor output=PNP',
  'B2 sensor output=NPN',
  'S1 button',
];
/** Y1 alone on the first output, Y2 behind a fuse on the second; their other ends at 0 V. */
const VALVES = ['A1.out1 Y1.A1', 'Y1.A2 G1.minus', 'A1.out2 F1.1', 'F1.2 Y2.A1', 'Y2.A2 G1.minus'];

const mill = sample('boatyard-mill');
const withWiring = (wires: readonly string[], devices = DEVICES): Refit => ({
  ...mill,
  wiring: wired(devices, ['A1.plus G1.plus', 'A1.minus G1.minus', ...wires]),
});
const stated = (refit: Refit, path: string, text: string): Refit => {
  const set = setPath(refit, path, text);
  if (!set.ok) throw new Error(set.problem.message);
  const after = applyEdit(refit, { changes: set.value.changes });
  if (!after.ok) throw new Error(after.problem.message);
  return after.value;
};
const needs = (refit: Refit) => compareControls(assess(refit)).needs;
const need = (refit: Refit, id: string) => needs(refit).needs.find((each) => each.id === id);

test('derived: an output carries what its coils take by Ohm’s law, and lies on the other pole than they', () => {
  const refit = withWiring(VALVES);
  expect(wiredAt(refit).outputs).toMatchObject([
    { terminal: 'A1.out1', amps: 0.4, gives: 'plus' },
    { terminal: 'A1.out2', amps: 24 / 120, gives: 'plus' },
  ]);
  expect(need(refit, 'output-current')).toMatchObject({ asked: 0.4, by: 'wiring' });
  expect(need(refit, 'outputs-give')).toMatchObject({ codes: ['plus'], by: 'wiring' });
});

test('derived: two coils on one output add up, and the largest output counts', () => {
  const refit = withWiring([...VALVES, 'A1.out2 Y1.A1']);
  expect(need(refit, 'output-current')!.asked).toBeCloseTo(0.4 + 24 / 120, 12);
});

test('derived: the other ends at plus ask for outputs that pull to minus; ends at both poles ask for nothing', () => {
  const atPlus = withWiring(['A1.out1 Y1.A1', 'Y1.A2 G1.plus']);
  expect(need(atPlus, 'outputs-give')!.codes).toEqual(['minus']);
  const both = withWiring([...VALVES.slice(0, 2), 'A1.out2 Y2.A1', 'Y2.A2 G1.plus']);
  expect(outputsAsDrawn(wiredAt(both)).gives).toBeUndefined();
  expect(need(both, 'outputs-give')).toBeUndefined();
});

test('derived: what is stated wins over what is drawn, and the difference is said', () => {
  const refit = stated(stated(withWiring(VALVES), 'job.output-load', '0.15 A'), 'job.outputs-must', 'minus');
  expect(need(refit, 'output-current')).toMatchObject({ asked: 0.15, by: 'refit' });
  expect(need(refit, 'outputs-give')).toMatchObject({ codes: ['minus'], by: 'refit' });
  const said = needs(refit).unsure.join(' ');
  expect(said).toMatch(/must switch 150 mA at most, but as drawn, .* hangs on A1\.out1 and takes 400 mA/);
  expect(said).toMatch(/must pull to minus, but as drawn, what hangs on A1\.out1 and A1\.out2 .* at minus/);
  const same = stated(withWiring(VALVES), 'job.output-load', '0.4 A');
  expect(needs(same).unsure.join(' ')).not.toMatch(/You say/);
});

test('derived: a coil of unknown current leaves the need open and says where', () => {
  const refit = withWiring(['A1.out3 Y3.A1', 'Y3.A2 G1.minus']);
  expect(wiredAt(refit).outputs[0]!.amps).toBeUndefined();
  expect(need(refit, 'output-current')).toBeUndefined();
  expect(needs(refit).unsure.join(' ')).toMatch(/What A1\.out3 carries is not known/);
});

test('derived: a home switch drawn as a sensor is counted as that sensor, others as habit has them', () => {
  const { wiring } = withWiring(['B1.BK A1.in1', 'B1.BN G1.plus', 'B1.BU G1.minus', 'A1.in-com G1.minus']);
  const named = {
    ...wiring,
    devices: { ...wiring.devices, B1: { ...wiring.devices.B1!, name: 'Home of X' } },
  };
  const { signals } = needs({ ...mill, wiring: named }).census;
  expect(signals.find(({ from }) => from === 'X axis: home switch')).toMatchObject({
    sort: 'pnp-24v',
    by: 'wiring',
  });
  expect(signals.find(({ from }) => from === 'Y axis: home switch')).toMatchObject({
    sort: 'switch-24v',
    by: 'habit',
  });
});

test('derived: sensors drawn that nobody counted are said, and change no count', () => {
  const wires = ['B2.BK A1.in2', 'B2.BN G1.plus', 'B2.BU G1.minus', 'A1.in-com G1.plus'];
  const [drawn, without] = [needs(withWiring(wires)), needs(withWiring([]))];
  expect(drawn.unsure.join(' ')).toMatch(
    /has 1 of “24 V input for an NPN sensor” \(B2\), and none is counted/,
  );
  expect(drawn.census.signals).toEqual(without.census.signals);
});

test('derived: without a control in the wiring, or with wires that lead nowhere, nothing is taken from it', () => {
  expect(wiredAt(withWiring(['A1.out1 Y9.A1', 'Q.1 A1.out2'], ['A1 control', 'G1 supply']))).toEqual({
    outputs: [],
    inputs: [],
  });
  expect(wiredAt({ ...mill, wiring: wired([], []) })).toEqual({ outputs: [], inputs: [] });
});
