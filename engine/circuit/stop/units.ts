/** Bought units as the simulation wants them: safety relay, drive, control. */
import type { Gathered } from './elements.ts';
import type { Read } from './settings.ts';

export function addSafetyRelay({ build, safety }: Gathered, id: string, read: Read, bit: number): void {
  const supply = build.mover({
    id: `${id} supply`,
    element: id,
    kind: 'input',
    a: build.node(id, 'A1'),
    b: build.node(id, 'A2'),
    pickUp: 0,
    dropOut: 0,
  });
  const channels = Array.from({ length: read.channels! }, (_, n) => n + 1);
  const logic = (name: string, dropOut: number) =>
    build.mover({ id: name, element: id, kind: 'logic', a: -1, b: -1, pickUp: read['pick-up']!, dropOut });
  const now = logic(id, read['drop-out']!);
  for (let n = 1; n <= read.outputs!; n++) build.contact(id, `${n}3`, `${n}4`, now, 1, { doubled: true });
  const outputs = [now];
  if (read.delayed! > 0) {
    const late = logic(`${id} late`, read.delay!);
    for (let n = 0; n < read.delayed!; n++)
      build.contact(id, `${4 + n}7`, `${4 + n}8`, late, 1, { doubled: true });
    outputs.push(late);
  }
  safety.push({
    element: id,
    supply,
    fed: channels.map((n) => build.node(id, `C${n}a`)),
    back: channels.map((n) => build.node(id, `C${n}b`)),
    crossFault: read['cross-fault'] === 0,
    bits: channels.map((_, n) => 1 << (bit + n)),
    loop: build.node(id, 'Rb'),
    // The start loop is fed from the unit's own plus.
    plus: build.node(id, 'Ra'),
    edge: read.reset === 0,
    outputs,
  });
}

export function addDrive({ build, drives }: Gathered, id: string, read: Read): void {
  const input = (name: string, a: string, b: string, dropOut: number) =>
    build.mover({
      id: `${id} ${name}`,
      element: id,
      kind: 'input',
      a: build.node(id, a),
      b: build.node(id, b),
      pickUp: dropOut,
      dropOut,
    });
  const three = ['L1', 'L2', 'L3'] as const;
  // On two of three phases it goes on turning for a while.
  const pairs =
    read.phases === 1 ? three.map((each, n) => [each, three[(n + 1) % 3]!] as const) : [['L', 'N'] as const];
  const powers = pairs.map(([a, b]) =>
    build.mover({
      id: pairs.length === 1 ? `${id} power` : `${id} power ${a}–${b}`,
      element: id,
      kind: 'input',
      a: build.node(id, a),
      b: build.node(id, b),
      pickUp: 0,
      dropOut: read['hold-up']!,
    }),
  );
  const enable = read.enable === 0 ? input('enable', 'EN', 'COM', read.reaction!) : -1;
  const sto = Array.from({ length: read.sto! }, (_, n) =>
    input(`STO${n + 1}`, `STO${n + 1}`, 'COM', read['sto-reaction']!),
  );
  let output = -1;
  if (read['brake-output'] === 1) {
    output = build.mover({
      id: `${id} brake output`,
      element: id,
      kind: 'logic',
      a: -1,
      b: -1,
      pickUp: 0.02,
      dropOut: 0.02,
    });
    build.contact(id, '33', '34', output, 1);
  }
  drives.push({ element: id, powers, enable, sto, brakes: read['on-disable'] === 1, output });
}

export function addControl({ build, controls }: Gathered, id: string, read: Read): void {
  const supply = build.mover({
    id: `${id} supply`,
    element: id,
    kind: 'input',
    a: build.node(id, 'plus'),
    b: build.node(id, 'minus'),
    pickUp: 0,
    dropOut: 0,
  });
  const stop =
    read['stop-input'] === 0
      ? build.mover({
          id: `${id} stop input`,
          element: id,
          kind: 'input',
          a: build.node(id, 'stop'),
          b: build.node(id, 'minus'),
          pickUp: 0.01,
          dropOut: 0.01,
        })
      : -1;
  for (let n = 1; n <= read.homes!; n++) build.node(id, `home${n}`);
  const start = build.hand(
    id,
    {
      role: 'program',
      on: `start a program at ${id}`,
      off: `let go of ${id}`,
      springsBack: true,
      normal: 0,
      needs: -1,
      direct: false,
    },
    `${id} program start`,
  );
  const enable = build.mover({
    id: `${id} enable`,
    element: id,
    kind: 'logic',
    a: -1,
    b: -1,
    pickUp: 0.01,
    dropOut: 0.01,
  });
  build.contact(id, 'plus', 'enable', enable, 1);
  controls.push({ element: id, supply, stop, start, enable, resumes: read.restart === 1 });
}
