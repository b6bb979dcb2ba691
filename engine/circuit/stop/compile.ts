/** A stop circuit made into a model, or a refusal that names the element, setting or terminal. */

import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import { nearest } from '../../refit/nearest.ts';
import type { StopCircuit, StopElement } from '../../refit/types.ts';
import { Build } from './build.ts';
import { isKind, KINDS, type Kind, kindSpec } from './kinds.ts';
import type { ControlUnit, Doing, DriveUnit, Model, MotionUnit, SafetyUnit, Source } from './model.ts';
import { MOTION_SETTINGS } from './motion.ts';
import { type Read, readSettings } from './settings.ts';

/** Bits of potentials: two for each supply, two for the test signals of each safety relay. */
const MOST_BITS = 30;

interface Gathered {
  readonly build: Build;
  readonly sources: Source[];
  readonly safety: SafetyUnit[];
  readonly controls: ControlUnit[];
  readonly drives: DriveUnit[];
  readonly locks: { lock: number; door: number }[];
}

export function compileStop(circuit: StopCircuit): Result<Model> {
  const gathered: Gathered = {
    build: new Build(),
    sources: [],
    safety: [],
    controls: [],
    drives: [],
    locks: [],
  };
  const { build } = gathered;
  const elements = Object.values(circuit.elements);
  const supplies = elements.filter(({ kind }) => kind === 'supply').length;
  const units = elements.filter(({ kind }) => kind === 'safety-relay').length;
  if (2 * supplies + 2 * units > MOST_BITS)
    return refuse(
      problem('stop.elements', `There can be at most ${MOST_BITS / 2} supplies and safety relays together.`),
    );
  let bit = 2 * supplies;
  for (const element of elements) {
    const where = `stop.elements.${element.id}`;
    if (!isKind(element.kind)) {
      const near = nearest(element.kind, Object.keys(KINDS));
      return refuse(
        problem(
          `${where}.kind`,
          `There is no kind of element “${element.kind}”; ${near ? `did you mean ${near}?` : `there are: ${Object.keys(KINDS).join(', ')}.`}`,
        ),
      );
    }
    const read = readSettings(kindSpec(element.kind).settings, element.settings, `${where}.settings`);
    if (!read.ok) return read;
    addElement(gathered, element, element.kind, read.value, bit);
    if (element.kind === 'safety-relay') bit += 2;
  }
  const wires = [];
  for (const { id, from, to, cable } of Object.values(circuit.wires)) {
    for (const [end, name] of [
      ['from', from],
      ['to', to],
    ] as const)
      if (!build.byName.has(name)) return refuse(noTerminal(build, `stop.wires.${id}.${end}`, name));
    wires.push({ id, a: build.byName.get(from)!, b: build.byName.get(to)!, cable });
  }
  const motions: MotionUnit[] = [];
  for (const motion of Object.values(circuit.motions)) {
    const where = `stop.motions.${motion.id}`;
    const read = readSettings(MOTION_SETTINGS[motion.kind], motion.settings, `${where}.settings`);
    if (!read.ok) return read;
    const drive = gathered.drives.findIndex(({ element }) => element === motion.drive);
    if (drive < 0) return refuse(problem(`${where}.drive`, `${motion.drive} is no drive and no inverter.`));
    const brake = build.movers.findIndex(
      ({ element, kind }) =>
        element === motion.brake && kind === 'coil' && circuit.elements[element]!.kind === 'brake',
    );
    if (motion.brake !== null && brake < 0)
      return refuse(problem(`${where}.brake`, `${motion.brake} is no brake.`));
    motions.push({ id: motion.id, drive, brake, vertical: read.value.vertical === 1 });
  }
  const frame = build.nodes.push('the frame') - 1;
  return ok({
    nodes: build.nodes,
    frame,
    movers: build.movers,
    contacts: build.contacts,
    wires,
    motions,
    sources: gathered.sources,
    safety: gathered.safety,
    controls: gathered.controls,
    drives: gathered.drives,
    locks: gathered.locks,
  });
}

/** Terminals that an element of this kind has, in words for choosing among them. */
export function terminalsOf(element: StopElement): readonly string[] {
  if (!isKind(element.kind)) return [];
  const read = readSettings(kindSpec(element.kind).settings, element.settings, '');
  if (!read.ok) return [];
  const build = new Build();
  addElement(
    { build, sources: [], safety: [], controls: [], drives: [], locks: [] },
    element,
    element.kind,
    read.value,
    0,
  );
  return build.nodes;
}

function addElement(into: Gathered, { id }: StopElement, kind: Kind, read: Read, bit: number): void {
  const { build } = into;
  const coil = (pickUp: number, dropOut: number, a = 'A1', b = 'A2', name = id) =>
    build.mover({
      id: name,
      element: id,
      kind: 'coil',
      a: build.node(id, a),
      b: build.node(id, b),
      pickUp,
      dropOut,
    });
  switch (kind) {
    case 'supply':
      into.sources.push({
        element: id,
        plus: build.node(id, 'plus'),
        minus: build.node(id, 'minus'),
        earthed: read.earthed === 0,
      });
      return;
    case 'fuse':
      build.contact(id, '1', '2', -1, 1, { fuse: true });
      return;
    case 'button':
    case 'mushroom':
    case 'door':
    case 'limit':
    case 'key':
      build.contactsOf(id, build.hand(id, doing(kind, id, read)), kind === 'key' ? { no: read.no } : read, 1);
      return;
    case 'locked-door': {
      const lock = coil(read.release!, 0.05, 'A1', 'A2', `${id} lock`);
      const door = build.hand(id, { ...doing('door', id, read), needs: lock });
      build.contactsOf(id, door, read, 1);
      into.locks.push({ lock, door });
      return;
    }
    case 'contactor': {
      const mover = coil(read['pick-up']!, read['drop-out']!);
      const linked = read.linked === 0;
      for (let n = 0; n < read.main!; n++)
        build.contact(id, `${2 * n + 1}`, `${2 * n + 2}`, mover, 1, { main: true, linked });
      // A mirror contact answers for the main contacts; the other auxiliaries stand alone.
      build.contactsOf(id, mover, { no: read.no }, 5);
      build.contactsOf(id, mover, { nc: read.nc }, 5, { linked });
      return;
    }
    case 'relay':
      build.contactsOf(id, coil(read['pick-up']!, read['drop-out']!), read, 5, { linked: read.linked === 0 });
      return;
    case 'delayed-relay':
      build.contactsOf(id, coil(read['pick-up']!, read.delay!), read, 5, { linked: read.linked === 0 });
      return;
    case 'safety-relay':
      addSafetyRelay(into, id, read, bit);
      return;
    case 'drive':
    case 'inverter':
      addDrive(into, id, read);
      return;
    case 'brake':
      coil(read.release!, read.engage!);
      return;
    case 'control':
      addControl(into, id, read);
      return;
  }
}

function addSafetyRelay({ build, safety }: Gathered, id: string, read: Read, bit: number): void {
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

function addDrive({ build, drives }: Gathered, id: string, read: Read): void {
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
  const power = build.mover({
    id: `${id} power`,
    element: id,
    kind: 'input',
    a: build.node(id, 'L'),
    b: build.node(id, 'N'),
    pickUp: 0,
    dropOut: read['hold-up']!,
  });
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
  drives.push({ element: id, power, enable, sto, brakes: read['on-disable'] === 1, output });
}

function addControl({ build, controls }: Gathered, id: string, read: Read): void {
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

function doing(kind: 'button' | 'mushroom' | 'door' | 'limit' | 'key', id: string, read: Read): Doing {
  const common = { springsBack: false, normal: 0 as const, needs: -1, direct: read.direct === 0 };
  switch (kind) {
    case 'button':
      return {
        ...common,
        role: (['start', 'stop', 'other'] as const)[read.role!]!,
        on: `press ${id}`,
        off: `let go of ${id}`,
        springsBack: true,
        direct: false,
      };
    case 'mushroom':
      return {
        ...common,
        role: 'emergency',
        on: `press ${id}`,
        off: `pull ${id} out`,
        springsBack: read.latching === 1,
      };
    case 'door':
      return { ...common, role: 'door', on: `open the door ${id}`, off: `close the door ${id}` };
    case 'limit':
      return { ...common, role: 'limit', on: `run onto ${id}`, off: `come off ${id}` };
    case 'key':
      return { ...common, role: 'key', on: `turn ${id} on`, off: `turn ${id} off`, normal: 1, direct: false };
  }
}

const problem = (where: string, message: string): Problem => ({ code: 'out-of-domain', message, where });

function noTerminal(build: Build, where: string, name: string): Problem {
  const [element] = name.split('.');
  const has = build.nodes.filter((each) => each.startsWith(`${element}.`));
  return {
    code: 'unknown-name',
    message: `${element} has no terminal ${name.slice(0, 40)}; it has: ${has.slice(0, 40).join(', ')}.`,
    where,
  };
}
