import { expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { readWiring } from '../wiring/index.ts';
import { sayAbout } from './say-about.ts';

test('derived: a wire is told by its number and both ends; what is nothing in the wiring has no name', () => {
  const read = readWiring(sample('carriage-works-lathe').wiring);
  const [wire] = read.wires.values();
  expect(sayAbout(read, wire!.id)).toBe(
    `wire ${wire!.number} from ${wire!.from} to ${wire!.to} (${wire!.id})`,
  );
  expect(sayAbout(read, wire!.from)).toBe(wire!.from);
  const [cable] = read.cables.keys();
  expect(sayAbout(read, cable!)).toBe(`cable ${cable}`);
  for (const none of ['unsaid', 'constructor', '']) expect(sayAbout(read, none)).toBeUndefined();
});
