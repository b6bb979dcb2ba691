import { expect, test } from 'vitest';
import { lengthNeed } from './inside-length.ts';
import { readWiring } from './read.ts';
import { wired } from './wired.fixture.ts';

const inCabinet = [
  'G1 supply volts=24_V current=5_A',
  'K1 relay coil-volts=24_V',
  'K2 relay coil-volts=24_V',
];

const laid = (said: Record<string, string>, own: Record<string, string> = {}) => {
  const { devices, wires } = wired(inCabinet, ['G1.plus K1.A1', 'G1.plus K2.A1']);
  const [first, second] = Object.values(wires);
  return readWiring({
    devices: { ...devices, K2: { ...devices.K2!, where: 'machine' } },
    wires: { [first!.id]: { ...first!, settings: own }, [second!.id]: second! },
    cables: {},
    settings: said,
  });
};

test('derived: the length said for the cabinet is that of wires between its parts, and of no other', () => {
  const [inside, outside] = [...laid({ 'cabinet-wire-length': '150 cm' }).wires.values()];
  expect(inside).toMatchObject({ length: 1.5, atMost: true, isInside: true });
  expect(outside).toMatchObject({ atMost: false, isInside: false });
  expect(outside!.length).toBeUndefined();
});

test('derived: a length of its own comes first, and is meant as it stands', () => {
  const [inside] = [...laid({ 'cabinet-wire-length': '150 cm' }, { length: '3 m' }).wires.values()];
  expect(inside).toMatchObject({ length: 3, atMost: false });
});

test('derived: what cannot be read is no length, and each wire says what is missing', () => {
  const [inside, outside] = [...laid({ 'cabinet-wire-length': 'short' }).wires.values()];
  expect(inside!.length).toBeUndefined();
  expect(lengthNeed(inside!)).toBe('settings.cabinet-wire-length');
  expect(lengthNeed(outside!)).toBe(`${outside!.id}.length`);
});
