import { expect, test } from 'vitest';
import { seeded } from '../edits.fixture.ts';
import type { Load } from '../loads.ts';
import { NEUTRAL } from '../sources.ts';
import { conducting, type Meeting, type Part, partsAround } from './diodes.ts';
import type { Link } from './forest.ts';

/** Some islands of links, sources, loads and diodes at random, some of them on the neutral of the mains. */
function drawn(random: () => number): Part {
  const part = { links: new Set<Link>(), loads: new Set<Load>(), diodes: new Set<Link>() };
  for (const island of ['a', 'b', 'c', 'd']) {
    const nodes = [
      ...Array.from({ length: 5 }, (_, n) => `${island}${n}`),
      ...(random() < 0.5 ? [NEUTRAL] : []),
    ];
    const two = () => {
      const a = nodes[Math.floor(random() * nodes.length)]!;
      const others = nodes.filter((each) => each !== a);
      return [a, others[Math.floor(random() * others.length)]!] as const;
    };
    for (let n = 0; n < 4; n++) {
      const [a, b] = two();
      part.links.add({ id: `wire ${island}${n}`, a, b, rank: 0, ohms: 0.01 + random() });
    }
    for (let n = 0; n < 2; n++) {
      const [a, b] = two();
      const lifts = { re: (1 + 23 * random()) * 1e6, im: 0 };
      part.links.add({ id: `source ${island}${n}`, a, b, rank: 3, ohms: 1, lifts });
    }
    for (let n = 0; n < 2; n++) {
      const [from, to] = two();
      part.loads.add({ id: `load ${island}${n}`, from, to } as Load);
    }
    for (let n = 0; n < 3; n++) {
      const [a, b] = two();
      part.diodes.add({ id: `diode ${island}${n}`, a, b, rank: 1, ohms: 0.001 });
    }
  }
  return part;
}

const at =
  ({ links, loads, diodes }: Part) =>
  (terminal: string): Meeting => ({
    links: [...links].filter(({ a, b }) => a === terminal || b === terminal),
    loads: [...loads].filter(({ from, to }) => from === terminal || to === terminal),
    diodes: [...diodes].filter(({ a, b }) => a === terminal || b === terminal),
  });

test('derived: part by part diodes stand as in the whole, whatever comes first', () => {
  const random = seeded(7);
  let conducts = 0;
  for (let round = 0; round < 60; round++) {
    const whole = drawn(random);
    const terminals = [...whole.links, ...whole.diodes].flatMap(({ a, b }) => [a, b]);
    const parts = partsAround([...terminals].reverse(), at(whole));
    expect(parts.length).toBeGreaterThan(3);
    const diodes = parts.flatMap((part) => [...part.diodes]);
    expect(new Set(diodes)).toEqual(whole.diodes);
    expect(diodes.length).toBe(whole.diodes.size);
    const names = (open: Iterable<Link>) => [...open].map(({ id }) => id).sort();
    const together = names(conducting(whole, []));
    // A whole that has no answer says nothing of any of its parts.
    if (together.length === 0) continue;
    conducts++;
    expect(names(parts.flatMap((part) => [...conducting(part, [])]))).toEqual(together);
  }
  expect(conducts).toBeGreaterThan(30);
});

test('derived: a part without a diode is none; the neutral of the mains parts what hangs on it', () => {
  const link = (id: string, a: string, b: string): Link => ({ id, a, b, rank: 0, ohms: 0.1 });
  const part: Part = {
    links: new Set([link('1', 'a', NEUTRAL), link('2', 'b', NEUTRAL), link('3', 'c', 'd')]),
    loads: new Set(),
    diodes: new Set([link('D1', 'a', 'e'), link('D2', 'b', 'f')]),
  };
  const parts = partsAround(['a', 'b', 'c', 'e', NEUTRAL, 'gone'], (terminal) =>
    terminal === 'gone' ? undefined : at(part)(terminal),
  );
  expect(parts.map(({ diodes }) => [...diodes].map(({ id }) => id))).toEqual([['D1'], ['D2']]);
});
