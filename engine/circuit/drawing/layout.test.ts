import { expect, test } from 'vitest';
import { legendFile, marksOf, svgFile } from './index.ts';
import { type Diagrams, layOut } from './layout.ts';
import { libraryLayouter } from './library.ts';
import { overlaps } from './overlap.fixture.ts';
import { PAGE } from './pack.ts';
import { manyChains, PLUS } from './plan.fixture.ts';
import type { DrawnDevice, DrawnWire, Plan } from './types.ts';

const library = libraryLayouter();
const laid = async (plan: Plan, previous?: Diagrams): Promise<Diagrams> => {
  const found = await layOut(plan, library, { previous });
  if (!found) throw new Error('cancelled by nobody');
  return found;
};
const allOverlaps = ({ sheets }: Diagrams): readonly string[] =>
  sheets.flatMap(({ clusters }) => clusters.flatMap(({ laid: each }) => overlaps(each)));

/** Numbers from a fixed beginning, so that a failure comes again. */
function numbers(seed: number): () => number {
  let now = seed;
  return () => {
    now = (now * 1664525 + 1013904223) % 4294967296;
    return now / 4294967296;
  };
}

/** Devices of every shape, wired without any sense. */
function senseless(seed: number, count: number): Plan {
  const draw = numbers(seed);
  const devices: DrawnDevice[] = [];
  const terminals: string[] = [];
  for (let n = 0; n < count; n++) {
    const id = `D${n}`;
    const name = 'Some longer name of it'.slice(0, Math.floor(draw() * 22));
    const own = Array.from(
      { length: 2 + Math.floor(draw() * 12) },
      (_, at) => `${id}.${'abcdef'.slice(0, 1 + (at % 6))}${at}`,
    );
    terminals.push(...own);
    const shape = Math.floor(draw() * 3);
    if (shape === 0) devices.push({ id, name, groups: [{ symbol: 'drive', box: own }] });
    else if (shape === 1) devices.push({ id, name, groups: [{ symbol: 'terminal', points: own }] });
    else {
      const poles = own.flatMap((each, at) => (at % 2 === 1 ? [[own[at - 1]!, each] as const] : []));
      devices.push({
        id,
        name,
        groups: [
          { symbol: 'contact-make', poles },
          { symbol: 'box', box: own.length % 2 === 1 ? [own.at(-1)!] : [] },
        ],
      });
    }
  }
  const wires = Array.from({ length: count * 3 }, (_, at): DrawnWire => {
    const pick = () => terminals[Math.floor(draw() * terminals.length)]!;
    return {
      id: `w${at}`,
      from: pick(),
      to: pick(),
      label: `${at} · blue-white · 1.5 · W${at % 4}`,
      rail: draw() < 0.3 ? PLUS : null,
      circuit: draw() < 0.8 ? 'one' : 'two',
    };
  });
  return {
    circuits: [
      { id: 'one', title: 'One' },
      { id: 'two', title: 'Two' },
    ],
    devices,
    wires,
  };
}

test('derived: no device, flag or label of a wire lies on another, and no wire runs through a device', async () => {
  expect(allOverlaps(await laid(manyChains(40)))).toEqual([]);
  for (const seed of [1, 2, 3, 4, 5, 6, 7, 8])
    expect(allOverlaps(await laid(senseless(seed, 18))), `seed ${seed}`).toEqual([]);
}, 120_000);

test('derived: two texts moved onto each other are found', async () => {
  const { sheets } = await laid(manyChains(4));
  const cluster = sheets[0]!.clusters.find(({ laid: each }) => each.wires.length > 1)!.laid;
  const [first, second, ...rest] = cluster.wires;
  const moved = { ...cluster, wires: [{ ...first!, label: second!.label }, second!, ...rest] };
  expect(overlaps(moved)).toContain(`text ${first!.wire.id} on text ${second!.wire.id}`);
});

test('derived: every wire stands in the diagrams at both its ends, as a line or as two flags', async () => {
  for (const plan of [manyChains(20), senseless(9, 30)]) {
    const { sheets } = await laid(plan);
    const clusters = sheets.flatMap((sheet) => sheet.clusters.map(({ laid: each }) => ({ sheet, each })));
    for (const wire of plan.wires) {
      const lines = clusters.filter(({ each }) => each.wires.some((one) => one.wire === wire));
      const ends = clusters.flatMap(({ sheet, each }) =>
        sheet.circuit === wire.circuit
          ? each.flags.flatMap(({ flag }) =>
              flag.lines.flatMap((line) =>
                line.wire === wire.id ? [flag.at, ...(line.joint ? [line.joint] : [])] : [],
              ),
            )
          : [],
      );
      if (lines.length === 1) expect(lines[0]!.sheet.circuit).toBe(wire.circuit);
      else expect([wire.id, ...ends].sort()).toEqual([wire.id, ...new Set([wire.from, wire.to])].sort());
    }
  }
}, 60_000);

test('derived: a wire ends exactly where its terminals are', async () => {
  const { sheets } = await laid(manyChains(12));
  let looked = 0;
  for (const { laid: each } of sheets.flatMap(({ clusters }) => clusters)) {
    const ports = each.pieces.flatMap(({ x, y, ports: own }) =>
      own.map((port) => ({ terminal: port.terminal, x: x + port.x, y: y + port.y })),
    );
    for (const { wire, points } of each.wires)
      for (const [terminal, end] of [
        [wire.from, points[0]],
        [wire.to, points.at(-1)],
      ] as const) {
        const own = ports.filter((port) => port.terminal === terminal);
        const other = points[0] === end ? points.at(-1)! : points[0]!;
        const hits = own.some((port) =>
          [end!, other].some(({ x, y }) => Math.hypot(x - port.x, y - port.y) < 1),
        );
        expect(hits, `${wire.id} at ${terminal}`).toBe(true);
        looked++;
      }
  }
  expect(looked).toBeGreaterThan(40);
});

test('derived: an edit lays out again what it touched and nothing else; the rest is the same object', async () => {
  const plan = manyChains(64);
  const before = await laid(plan);
  const wires = plan.wires.map((wire) => (wire.id === 'w2' ? { ...wire, label: '2 · green · 2.5' } : wire));
  const after = await laid({ ...plan, wires }, before);
  expect(after.laidOut).toBe(1);
  expect(after.of).toBe(before.of);
  const old = new Set(before.sheets.flatMap(({ clusters }) => clusters.map(({ laid: each }) => each)));
  const fresh = after.sheets.flatMap(({ clusters }) => clusters).filter(({ laid: each }) => !old.has(each));
  expect(fresh).toHaveLength(1);
  const again = await laid({ ...plan, wires });
  expect(again.sheets).toEqual(after.sheets);
}, 60_000);

test('derived: long chains and crowds are cut, so that a sheet stays near A3 and nothing is lost', async () => {
  const devices: DrawnDevice[] = [];
  const wires: DrawnWire[] = [];
  for (let n = 0; n < 60; n++) {
    devices.push({ id: `F${n}`, name: '', groups: [{ symbol: 'fuse', poles: [[`F${n}.1`, `F${n}.2`]] }] });
    if (n > 0)
      wires.push({
        id: `w${n}`,
        from: `F${n - 1}.2`,
        to: `F${n}.1`,
        label: `${n} · red · 1.5`,
        rail: null,
        circuit: 'one',
      });
  }
  const { sheets } = await laid({ circuits: [{ id: 'one', title: 'One' }], devices, wires });
  const clusters = sheets.flatMap(({ clusters: own }) => own.map(({ laid: each }) => each));
  expect(clusters.length).toBeGreaterThan(5);
  for (const { width } of clusters) expect(width).toBeLessThan(PAGE.width * 1.3);
  expect(clusters.flatMap(({ pieces }) => pieces)).toHaveLength(60);
});

test('derived: cancelled, it keeps what is laid out and goes on from there to the same whole', async () => {
  const seen: (readonly [number, number])[] = [];
  const plan = manyChains(32);
  const whole = await layOut(plan, library, { onProgress: (...at) => seen.push(at) });
  expect(seen.at(-1)).toEqual([whole.of, whole.of]);
  expect(whole.done).toBe(whole.of);
  // Chains of one shape are worked out once; each shape is a cancel of its own here.
  let calls = 0;
  const part = await layOut(plan, library, { isCancelled: () => calls++ > 0 });
  expect(part.done).toBeGreaterThan(0);
  expect(part.done).toBeLessThan(part.of);
  expect(part.sheets.flatMap(({ clusters }) => clusters)).toHaveLength(part.done);
  const rest = await layOut(plan, library, { previous: part });
  expect(rest.laidOut).toBe(part.of - part.done);
  expect(rest.sheets).toEqual(whole.sheets);
  // Ended in the middle of its work, the library gives no answer; another fault of it is told.
  let ended = false;
  const end = () => {
    ended = true;
    return Promise.reject(new Error('ended'));
  };
  expect(await layOut(plan, end, { isCancelled: () => ended, previous: part })).toMatchObject({
    done: part.done,
  });
  await expect(layOut(plan, () => Promise.reject(new Error('broken')))).rejects.toThrow('broken');
}, 60_000);

test('derived: hostile names stay text in the file; findings are marked with a sign as well as a class', async () => {
  const plan = manyChains(1);
  const evil = '</svg><script>alert(1)</script>&"';
  const devices = plan.devices.map((device) => (device.id === 'S1' ? { ...device, name: evil } : device));
  const { sheets } = await laid({ ...plan, devices });
  const marks = marksOf([
    { verdict: 'unknown', about: ['w2'] },
    { verdict: 'fails', about: ['w2', 'K1.A1'] },
    { verdict: 'fits', about: ['S1.13'] },
  ]);
  expect([...marks]).toEqual([
    ['w2', 'fails'],
    ['K1.A1', 'fails'],
  ]);
  const file = svgFile(sheets[0]!, { marks });
  expect(file).not.toContain('<script');
  expect(file).toContain('&lt;/svg&gt;');
  expect(file).toMatch(/class="wire-group fails" data-wire="w2".*?✕/s);
  expect(file.match(/<svg/g)).toHaveLength(1);
  expect(legendFile(plan)).toContain('coil of a relay or contactor');
});
