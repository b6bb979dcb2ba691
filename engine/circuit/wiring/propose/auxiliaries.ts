/**
 * Turret, chuck, coolant and the like: their switches on inputs of the control, their valves, motors and locks on its
 * outputs. One that does not find room for all it asks is left out as a whole: half of one is of no use.
 */
import { andList } from '../../../quantity/words.ts';
import type { Terminal } from '../types.ts';
import type { AskedAuxiliary, AskedInput, AskedOutput } from './asked.ts';
import { inputName, outputName, signalCable } from './auxiliary-names.ts';
import type { Build } from './build.ts';
import type { Taker } from './mains.ts';
import { placeOutput } from './movers.ts';
import { feedSensor, joinContact, joinSensor } from './tellers.ts';
import type { Control } from './ways-in.ts';

const LONGEST_NAME = 40;

export interface Placed {
  /** Motors that need mains. */
  readonly takers: readonly Taker[];
  /** What was left out and why, in sentences. */
  readonly left: readonly string[];
}

export function proposeAuxiliaries(build: Build, control: Control, asked: readonly AskedAuxiliary[]): Placed {
  const takers: Taker[] = [];
  const left: string[] = [];
  for (const each of told(asked)) {
    const reason = noRoom(build, control, each);
    if (reason !== undefined) {
      left.push(reason);
      continue;
    }
    for (const input of each.inputs) placeInput(build, control, each, input);
    for (const output of each.outputs) {
      placeOutput(build, control, each, output, takers);
      left.push(...besideStop(build, each, output));
    }
  }
  return { takers, left };
}

/** Names of devices begin with that of the auxiliary: short enough to leave room, and no two the same. */
function told(asked: readonly AskedAuxiliary[]): readonly AskedAuxiliary[] {
  const short = (name: string) => name.slice(0, LONGEST_NAME);
  const often = new Map<string, number>();
  for (const { name } of asked) often.set(short(name), (often.get(short(name)) ?? 0) + 1);
  return asked.map((each) => ({
    ...each,
    name:
      often.get(short(each.name))! > 1 ? `${short(each.name)} (${each.id.slice(0, 20)})` : short(each.name),
  }));
}

/** A motor that moves something is put on the mains past the stop circuit: whether that may be is decided there. */
function besideStop(build: Build, of: AskedAuxiliary, output: AskedOutput): readonly string[] {
  const contactor = output.moves === 'motor' && output.id !== 'pump' ? worker(build, of, output) : undefined;
  const { stop } = build.refit;
  if (contactor === undefined || !stop || Object.hasOwn(stop.elements, contactor)) return [];
  return [
    `${outputName(of, output)}: its contactor ${contactor} stands outside the stop circuit. Whether the emergency stop must cut this motor too is decided there; draw it in before the machine runs.`,
  ];
}

/** The terminal by which a switch or sensor tells; undefined where there is none of that name yet. */
function teller(build: Build, of: AskedAuxiliary, input: AskedInput): Terminal | undefined {
  const name = inputName(of, input).slice(0, 100);
  const kind = input.sensor === 'switch' ? 'switch' : 'sensor';
  const device = [...build.devices.values()].find((each) => each.kind === kind && each.name === name);
  return device && build.terminal(`${device.id}.${kind === 'switch' ? '14' : 'BK'}`);
}

/** The terminal through which an output works; undefined where there is none of that name yet. */
function worker(build: Build, of: AskedAuxiliary, output: AskedOutput): string | undefined {
  const name = outputName(of, output).slice(0, 100);
  const device = [...build.devices.values()].find(
    (each) => each.name === name && ['relay', 'contactor', 'valve', 'locked-door'].includes(each.kind),
  );
  return device?.id;
}

function noRoom(build: Build, control: Control, of: AskedAuxiliary): string | undefined {
  const fives = of.outputs.filter(({ by }) => by === '5 V');
  if (fives.length > 0)
    return `${of.name}: it wants 5 V logic (${andList(fives.map(({ name }) => name))}), which has to be laid by hand.`;
  const inputs = of.inputs.filter((each) => {
    const there = teller(build, of, each);
    return !there || !build.taken(there.id);
  }).length;
  const open = of.outputs.filter((each) => {
    const there = worker(build, of, each);
    return there === undefined || !build.taken(`${there}.A1`);
  });
  const contacts = Math.min(open.filter(({ by }) => by === 'contact').length, control.freeContacts().length);
  const outputs = open.length - contacts;
  const [freeIn, freeOut] = [control.freeInputs().length, control.freeOutputs().length];
  // Where transistor outputs run out, free contacts can step in.
  const spare = control.freeContacts().length - contacts;
  const lacks = [
    ...(inputs > freeIn ? [asks(inputs, 'input', freeIn)] : []),
    ...(outputs > freeOut + spare
      ? [
          `${open.length} ${open.length === 1 ? 'output' : 'outputs'}, and ${freeOut + spare + contacts} are free`,
        ]
      : []),
  ];
  return lacks.length === 0
    ? undefined
    : `${of.name} is left out: it asks ${control.id} for ${andList(lacks)}. It needs a control with more, or switches by hand.`;
}

const asks = (wanted: number, what: string, free: number): string =>
  `${wanted} ${what}${wanted === 1 ? '' : 's'} where ${free === 0 ? 'none is' : free === 1 ? '1 is' : `${free} are`} free`;

function placeInput(build: Build, control: Control, of: AskedAuxiliary, input: AskedInput): void {
  const name = inputName(of, input);
  const known = teller(build, of, input);
  const done = known !== undefined && build.taken(known.id);
  const to = control.freeInputs()[0];
  if (!done && !to) return;
  if (input.sensor === 'switch') {
    const own = build.named('S', 'switch', name, { where: 'machine', settings: { no: '1', nc: '0' } });
    if (done) return;
    joinContact(build, control, [`${own}.13`, `${own}.14`], to!, signalCable(build, of));
    return;
  }
  const own = build.named('B', 'sensor', name, { where: 'machine', settings: { output: input.sensor } });
  const cable = signalCable(build, of);
  feedSensor(build, control, own, cable);
  if (!done) joinSensor(build, control, own, to!, cable);
}
