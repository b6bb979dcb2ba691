/** Changing a stop circuit by words: elements, wires, motions and their settings, each a new circuit or a refusal. */
import { nearest } from '../../quantity/nearest.ts';
import { own } from '../../quantity/own.ts';
import { askBackOfSetting } from '../../quantity/read-setting.ts';
import type { SettingSpecs } from '../../quantity/settings.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';
import type { StopCircuit } from '../../refit/types.ts';
import { CIRCUIT_SETTINGS } from './answers.ts';
import { compileStop, terminalsOf } from './compile.ts';
import { isKind, KINDS, kindSpec } from './kinds.ts';
import { readSettings } from './settings.ts';
import { type Typed, typeNumber } from './type-number.ts';

export const EMPTY_CIRCUIT: StopCircuit = {
  pattern: null,
  note: '',
  elements: {},
  wires: {},
  motions: {},
  settings: {},
};

const NAME = /^[A-Za-z][A-Za-z0-9-]{0,19}$/;
const MOTIONS = ['axis', 'spindle'] as const;
/** Settings of the whole are reached under this. */
const WHOLE = 'stop';
/** Longest name in words. */
const LONGEST = 100;

/** An element of this kind; or, for 'axis' and 'spindle', something that moves, which still has to be given its drive. */
export function addElement(circuit: StopCircuit, id: string, kind: string): Result<StopCircuit> {
  if (!NAME.test(id))
    return no(
      id,
      `“${short(id)}” is no name for an element; write a letter, then letters and digits, such as K9.`,
    );
  if (Object.hasOwn(circuit.elements, id) || Object.hasOwn(circuit.motions, id) || id === WHOLE)
    return no(id, `There is ${id} already.`);
  if (kind === 'axis' || kind === 'spindle')
    return ok({
      ...circuit,
      motions: { ...circuit.motions, [id]: { id, kind, name: id, drive: '', brake: null, settings: {} } },
    });
  if (!isKind(kind)) return no(id, unknown('kind of element', kind, [...Object.keys(KINDS), ...MOTIONS]));
  return ok({ ...circuit, elements: { ...circuit.elements, [id]: { id, kind, name: '', settings: {} } } });
}

/** An element with its wires, or something that moves. A drive that something still hangs on stays. */
export function removeElement(circuit: StopCircuit, id: string): Result<StopCircuit> {
  if (own(circuit.motions, id)) {
    const { [id]: _gone, ...motions } = circuit.motions;
    return ok({ ...circuit, motions });
  }
  if (!own(circuit.elements, id))
    return no(
      id,
      unknown('element', id, [...Object.keys(circuit.elements), ...Object.keys(circuit.motions)]),
    );
  const moved = Object.values(circuit.motions).filter(({ drive }) => drive === id);
  if (moved[0])
    return no(
      id,
      `${id} moves ${moved[0].id}; give ${moved[0].id} another drive (${moved[0].id}.drive=…) or take it out first.`,
    );
  const { [id]: _gone, ...elements } = circuit.elements;
  const wires = Object.fromEntries(
    Object.entries(circuit.wires).filter(
      ([, { from, to }]) => elementOf(from) !== id && elementOf(to) !== id,
    ),
  );
  const motions = Object.fromEntries(
    Object.entries(circuit.motions).map(([at, each]) => [
      at,
      each.brake === id ? { ...each, brake: null } : each,
    ]),
  );
  return ok({ ...circuit, elements, wires, motions });
}

/** A wire between two terminals; `cable`: '' where it lies alone. */
export function joinTerminals(
  circuit: StopCircuit,
  from: string,
  to: string,
  cable = '',
): Result<StopCircuit> {
  for (const end of [from, to]) {
    const element = own(circuit.elements, elementOf(end));
    if (!element) return no(end, unknown('element', elementOf(end), Object.keys(circuit.elements)));
    const terminals = terminalsOf(element);
    if (!terminals.includes(end)) return no(end, unknown('terminal', end, terminals));
  }
  if (from === to) return no(from, 'A wire needs two different terminals.');
  const there = Object.values(circuit.wires).find(
    (each) => (each.from === from && each.to === to) || (each.from === to && each.to === from),
  );
  if (there) return no(from, `Wire ${there.id} joins ${from} and ${to} already.`);
  let number = 1;
  while (Object.hasOwn(circuit.wires, `w${number}`)) number++;
  const id = `w${number}`;
  return ok({
    ...circuit,
    wires: { ...circuit.wires, [id]: { id, from, to, cable: cable.trim().slice(0, LONGEST) } },
  });
}

/** By its id, or by its two ends: 'K1.52 K2.51'. */
export function cutWire(circuit: StopCircuit, which: string): Result<StopCircuit> {
  const ends = which.split(/[\s,]+/);
  const found =
    own(circuit.wires, which) ??
    Object.values(circuit.wires).find(
      ({ from, to }) => ends.length === 2 && ends.includes(from) && ends.includes(to),
    );
  if (!found) return no(which, unknown('wire', which, Object.keys(circuit.wires)));
  const { [found.id]: _gone, ...wires } = circuit.wires;
  return ok({ ...circuit, wires });
}

/**
 * 'K1.linked', 'yes'; a number or the drive, brake or name of what moves; the cable of a wire; 'stop.test-months' of the whole.
 * 'usual' and nothing take back what was typed.
 */
export function setPlace(circuit: StopCircuit, path: string, typed: string): Result<Typed> {
  const dot = path.indexOf('.');
  const [id, name] = dot < 0 ? [path, ''] : [path.slice(0, dot), path.slice(dot + 1)];
  const text = typed.trim();
  const taken = text === '' || text.toLowerCase() === 'usual';
  if (id === WHOLE) {
    const made = setting(CIRCUIT_SETTINGS, circuit.settings, name, text, taken, path);
    return made.ok
      ? ok({ circuit: { ...circuit, settings: made.value.settings }, askBack: made.value.askBack })
      : made;
  }
  const motion = own(circuit.motions, id);
  if (motion) {
    const put = (change: Partial<typeof motion>): Result<Typed> =>
      ok({
        circuit: { ...circuit, motions: { ...circuit.motions, [id]: { ...motion, ...change } } },
        askBack: undefined,
      });
    if (name === 'drive') return put({ drive: text });
    if (name === 'brake') return put({ brake: taken || text === 'none' ? null : text });
    if (name === 'name') return put({ name: text.slice(0, LONGEST) || id });
    return typeNumber(circuit, path, taken ? '' : typed);
  }
  const element = own(circuit.elements, id);
  if (element) {
    const put = (change: Partial<typeof element>, askBack?: string): Result<Typed> =>
      ok({
        circuit: { ...circuit, elements: { ...circuit.elements, [id]: { ...element, ...change } } },
        askBack,
      });
    if (name === 'name') return put({ name: text.slice(0, LONGEST) });
    if (!isKind(element.kind)) return no(path, unknown('kind of element', element.kind, Object.keys(KINDS)));
    const made = setting(kindSpec(element.kind).settings, element.settings, name, text, taken, path);
    return made.ok ? put({ settings: made.value.settings }, made.value.askBack) : made;
  }
  const wire = own(circuit.wires, id);
  if (wire) {
    if (name !== 'cable') return no(path, `Of a wire only its cable is set: ${id}.cable=W1.`);
    const cable = taken || text === 'none' ? '' : text.slice(0, LONGEST);
    return ok({
      circuit: { ...circuit, wires: { ...circuit.wires, [id]: { ...wire, cable } } },
      askBack: undefined,
    });
  }
  const all = [...Object.keys(circuit.elements), ...Object.keys(circuit.motions), WHOLE];
  return no(path, `“${short(id)}” is nothing in the stop circuit; ${near(id, all)}`);
}

/** The circuit once more, or why it cannot be read: what is recorded can always be looked through. */
export function wholeCircuit(circuit: StopCircuit): Result<StopCircuit> {
  const bare = Object.values(circuit.motions).find(({ drive }) => drive === '');
  if (bare) return no(bare.id, `Nothing moves ${bare.id} yet; say its drive: ${bare.id}.drive=T1.`);
  const made = compileStop(circuit);
  return made.ok ? ok(circuit) : made;
}

function setting(
  specs: SettingSpecs,
  before: Readonly<Record<string, string>>,
  name: string,
  text: string,
  taken: boolean,
  path: string,
): Result<{ readonly settings: Readonly<Record<string, string>>; readonly askBack: string | undefined }> {
  const spec = own(specs, name);
  if (!spec) return no(path, unknown(`setting of ${path.split('.')[0]}`, name, Object.keys(specs)));
  const { [name]: _before, ...rest } = before;
  const settings = taken ? rest : { ...rest, [name]: text };
  const read = readSettings(specs, settings, path.slice(0, path.indexOf('.')));
  if (!read.ok) return read;
  return ok({ settings, askBack: taken ? undefined : askBackOfSetting(spec, text) });
}

const elementOf = (terminal: string): string => terminal.split('.')[0]!;
const short = (word: string): string => word.slice(0, 40);

const unknown = (what: string, word: string, all: readonly string[]): string =>
  `There is no ${what} “${short(word)}”; ${near(word, all)}`;

function near(word: string, all: readonly string[]): string {
  const like = nearest(short(word), all);
  return like ? `did you mean ${like}?` : `there are: ${all.slice(0, 40).join(', ') || 'none'}.`;
}

const no = <T = never>(where: string, message: string): Result<T> =>
  refuse({ code: 'unknown-name', message, where: short(where) });
