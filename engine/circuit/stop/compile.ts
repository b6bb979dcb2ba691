/** A stop circuit made into a model, or a refusal that names the element, setting or terminal. */

import { nearest } from '../../quantity/nearest.ts';
import { own } from '../../quantity/own.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import type { StopCircuit, StopElement } from '../../refit/types.ts';
import { Build } from './build.ts';
import { addElement, type Gathered, sourcesIn } from './elements.ts';
import { ENDS, isKind, KINDS, kindSpec } from './kinds.ts';
import type { LimitSwitch, Model, MotionUnit, Mover } from './model.ts';
import { DROPS } from './motion.ts';
import { motionNumbers, type Offers } from './motion-numbers.ts';
import { readSettings } from './settings.ts';

/** Bits of potentials: two for each supply, two for the test signals of each safety relay. */
const MOST_BITS = 30;

/** `offers`: numbers of the motions from outside the circuit; what is typed in it comes first. */
export function compileStop(circuit: StopCircuit, offers: Offers = {}): Result<Model> {
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
  const supplies = elements
    .filter(({ kind }) => kind === 'supply')
    .map(({ settings }) => readSettings(kindSpec('supply').settings, settings, ''))
    .reduce((sum, read) => sum + sourcesIn(read.ok ? read.value : {}), 0);
  const units = elements.filter(({ kind }) => kind === 'safety-relay').length;
  if (2 * supplies + 2 * units > MOST_BITS)
    return refuse(
      problem(
        'stop.elements',
        `There can be at most ${MOST_BITS / 2} supplies and safety relays together; one with three phases counts six times.`,
      ),
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
    const numbers = motionNumbers(motion, `${where}.settings`, offers);
    if (!numbers.ok) return numbers;
    const drive = gathered.drives.findIndex(({ element }) => element === motion.drive);
    if (drive < 0) return refuse(problem(`${where}.drive`, `${motion.drive} is no drive and no inverter.`));
    const brake = build.movers.findIndex(
      ({ element, kind }) =>
        element === motion.brake && kind === 'coil' && circuit.elements[element]!.kind === 'brake',
    );
    if (motion.brake !== null && brake < 0)
      return refuse(problem(`${where}.brake`, `${motion.brake} is no brake.`));
    motions.push({
      id: motion.id,
      kind: motion.kind,
      name: motion.name,
      numbers: numbers.value,
      drive,
      brake,
      vertical: numbers.value.read.vertical !== DROPS.no,
    });
  }
  const onAxis = switchesOf(circuit, build.movers);
  if (!onAxis.ok) return onAxis;
  const frame = build.nodes.push('the frame') - 1;
  return ok({
    nodes: build.nodes,
    frame,
    movers: build.movers,
    contacts: build.contacts,
    wires,
    motions,
    ...onAxis.value,
    sources: gathered.sources,
    safety: gathered.safety,
    controls: gathered.controls,
    drives: gathered.drives,
    locks: gathered.locks,
  });
}

/** Limit and home switches with the axis each is said to stand on. */
function switchesOf(circuit: StopCircuit, movers: readonly Mover[]): Result<Pick<Model, 'limits' | 'homes'>> {
  const limits: LimitSwitch[] = [];
  const homes: Model['homes'][number][] = [];
  for (const { id, kind, settings } of Object.values(circuit.elements)) {
    if (kind !== 'limit' && kind !== 'home') continue;
    const axis = (Object.hasOwn(settings, 'axis') ? settings.axis! : '').trim();
    const motion = own(circuit.motions, axis);
    if (axis !== '' && motion?.kind !== 'axis') {
      const axes = Object.values(circuit.motions).filter((each) => each.kind === 'axis');
      return refuse(
        problem(
          `stop.elements.${id}.settings.axis`,
          `“${axis.slice(0, 40)}” is no axis of this circuit; there are: ${axes.map((each) => each.id).join(', ') || 'none'}.`,
        ),
      );
    }
    if (kind === 'home') homes.push({ element: id, axis });
    else {
      const at = ENDS.findIndex((each) => each === (settings.end ?? '').trim().toLowerCase());
      limits.push({
        element: id,
        mover: movers.findIndex(({ element }) => element === id),
        axis,
        end: ENDS[at] ?? 'either',
      });
    }
  }
  return ok({ limits, homes });
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
