import { expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { WiringDevice } from '../../../refit/types.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import { fieldOf, NATURES } from '../natures.ts';
import { readWiring } from '../read.ts';
import type { SettingSpec } from '../setting.ts';
import type { WiringFinding } from '../types.ts';
import { questionsFrom } from './questions.ts';

const refit = sample('carriage-works-lathe');
const of = (kind: string, settings: Readonly<Record<string, string>> = {}): WiringDevice => ({
  id: 'D1',
  kind,
  name: '',
  part: null,
  where: 'cabinet',
  settings,
  terminals: {},
  pins: {},
});
const wiringOf = (device: WiringDevice) => ({
  devices: { D1: device },
  wires: {},
  cables: {},
  settings: {},
});
const needing = (need: string): WiringFinding =>
  ({ id: 'x', rule: 'mains', verdict: 'unknown', about: [], sentence: '', needs: [need] }) as never;

/** Everything a kind of device may be, choice by choice. */
const shapesOf = (kind: string): readonly Readonly<Record<string, string>>[] => [
  {},
  ...Object.entries(WIRING_KINDS[kind]!.settings).flatMap(([name, spec]) =>
    spec.kind === 'choice' ? spec.options.map((each) => ({ [name]: each })) : [],
  ),
];

const exampleOf = (spec: SettingSpec, other: boolean): string =>
  spec.kind === 'choice'
    ? spec.options.at(other ? 0 : -1)!
    : spec.kind === 'quantity'
      ? `${other ? 7 : 3} ${spec.unit === '1' ? '' : spec.unit}`.trim()
      : '2';

test('derived: an answer arrives where it was missing: for every kind of device, terminal and field', () => {
  let asked = 0;
  for (const kind of Object.keys(WIRING_KINDS)) {
    // The same terminal in another shape of its device is asked the same.
    const seen = new Set<string>();
    for (const shape of shapesOf(kind)) {
      const wiring = wiringOf(of(kind, shape));
      const read = readWiring(wiring, refit);
      for (const terminal of read.terminals.values())
        for (const field of Object.keys(NATURES[terminal.nature.kind]?.fields ?? {})) {
          const key = `${terminal.mark.replace(/\d+/, '#')} ${terminal.nature.kind} ${field}`;
          if (fieldOf(terminal.nature, field) !== undefined || seen.has(key)) continue;
          seen.add(key);
          const [question] = questionsFrom([needing(`${terminal.id}.${field}`)], wiring, read);
          expect(question, `${kind} ${terminal.mark}.${field}`).toBeDefined();
          const { place } = question!;
          // What no setting of its device gives is asked of the terminal itself.
          if (place.of !== 'device') {
            expect(place).toMatchObject({ of: 'terminal', mark: terminal.mark, setting: field });
            continue;
          }
          asked++;
          const specs = WIRING_KINDS[kind]!.settings;
          const value = (other: boolean) => {
            // A current in a rating says nothing without its voltage.
            const volts = place.setting.replace(/(coil-)?amps$/, 'volts');
            const rated = Object.hasOwn(specs, volts) ? { [volts]: '24 V' } : {};
            const settings = { ...shape, ...rated, [place.setting]: exampleOf(specs[place.setting]!, other) };
            const after = readWiring(wiringOf(of(kind, settings)), refit).terminals.get(terminal.id);
            return after && fieldOf(after.nature, field);
          };
          const [one, two] = [value(false), value(true)];
          expect(one, `${kind} ${terminal.mark}.${field} by ${place.setting}`).toBeDefined();
          expect(two).not.toEqual(one);
        }
    }
  }
  expect(asked).toBeGreaterThan(150);
});

test('derived: a drive’s missing mains current is asked as its current, not as its voltage', () => {
  const wiring = wiringOf(of('inverter'));
  const read = readWiring(wiring, refit);
  const ask = (need: string) => questionsFrom([needing(need)], wiring, read)[0]!.place;
  expect(ask('D1.L.current')).toEqual({ of: 'device', id: 'D1', setting: 'supply-current' });
  expect(ask('D1.L.volts')).toEqual({ of: 'device', id: 'D1', setting: 'volts' });
});
