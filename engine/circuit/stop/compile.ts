/** A stop circuit made into a model, or a refusal that names the element, setting or terminal. */

import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import { nearest } from '../../refit/nearest.ts';
import type { StopCircuit, StopElement } from '../../refit/types.ts';
import { Build } from './build.ts';
import { addElement, type Gathered } from './elements.ts';
import { isKind, KINDS, kindSpec } from './kinds.ts';
import type { Model, MotionUnit } from './model.ts';
import { MOTION_SETTINGS } from './motion.ts';
import { readSettings } from './settings.ts';

/** Bits of potentials: two for each supply, two for the test signals of each safety relay. */
const MOST_BITS = 30;

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
