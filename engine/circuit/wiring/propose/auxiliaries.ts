/**
 * Turret, chuck, coolant and the like: their switches on inputs of the control, their valves, motors and locks on its
 * outputs. One that does not find room for all it asks is left out as a whole: half of one is of no use.
 */
import { andList } from '../../../quantity/words.ts';
import type { Terminal } from '../types.ts';
import type { AskedAuxiliary, AskedInput, AskedOutput } from './asked.ts';
import type { Build } from './build.ts';
import type { Taker } from './mains.ts';
import type { Control } from './ways-in.ts';

/** A valve takes more than this at 24 V, in A: common practice, no source. Weaker outputs switch it by a relay. */
const VALVE_AMPS = 1;
/** The coil of a small contactor takes up to this, in A: common practice, no source. */
const CONTACTOR_AMPS = 0.3;

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

const inputName = (of: AskedAuxiliary, { name, shared }: AskedInput): string =>
  shared ? name[0]!.toUpperCase() + name.slice(1) : `${of.name}: ${name}`;
const outputName = (of: AskedAuxiliary, { name }: AskedOutput): string => `${of.name}: ${name}`;

/** One cable for the switches of each auxiliary, and one for its valves. */
const signalCable = (build: Build, { id, name }: AskedAuxiliary): string =>
  build.cable(`WA-${id}`.slice(0, 50), `Switches of ${name}`.slice(0, 100), {
    section: '0.5 mm²',
    shield: 'none',
    route: 'signals',
  });
const valveCable = (build: Build, { id, name }: AskedAuxiliary): string =>
  build.cable(`WV-${id}`.slice(0, 50), `Valves of ${name}`.slice(0, 100), {
    section: '0.75 mm²',
    shield: 'none',
    route: 'coils',
  });

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
  const { plus24, zero } = control.rails;
  const known = teller(build, of, input);
  const done = known !== undefined && build.taken(known.id);
  const to = control.freeInputs()[0];
  if (!done && !to) return;
  if (input.sensor === 'switch') {
    const own = build.named('S', 'switch', name, { where: 'machine', settings: { no: '1', nc: '0' } });
    if (done) return;
    const cable = signalCable(build, of);
    build.wire(control.other(to!), `${own}.13`, cable);
    build.wire(`${own}.14`, to!.id, cable);
    return;
  }
  const own = build.named('B', 'sensor', name, { where: 'machine', settings: { output: input.sensor } });
  const cable = signalCable(build, of);
  build.wire(plus24, `${own}.BN`, cable);
  build.wire(zero, `${own}.BU`, cable);
  if (done) return;
  const output = build.terminal(`${own}.BK`)!;
  if (control.takes(output, to!)) build.wire(output.id, to!.id, cable);
  else throughBoard(build, control, output, to!, cable);
}

/** A sensor of the other sort goes through an opto board, which gives what the input takes. */
function throughBoard(
  build: Build,
  control: Control,
  sensor: Terminal,
  input: Terminal,
  cable: string,
): void {
  const { plus24, zero } = control.rails;
  const five = input.mark.startsWith('p');
  const collector = five || control.pulled;
  const board = build.named('A', 'opto-board', five ? 'Opto board of 5 V inputs' : 'Opto board of sensors', {
    settings: {
      input: '24 V',
      output: collector ? 'open collector' : '24 V, PNP',
      channels: '8',
    },
  });
  const common = five ? `${control.id}.GND` : zero;
  let n = 1;
  while (build.taken(`${board}.O${n}`)) n++;
  build.atLeast(board, 'channels', n);
  const npn = sensor.nature.kind === 'output' && sensor.nature.stage === 'sinking';
  build.wire(npn ? plus24 : sensor.id, `${board}.I${n}+`, npn ? null : cable);
  build.wire(npn ? sensor.id : zero, `${board}.I${n}-`, npn ? cable : null);
  build.wire(`${board}.O${n}`, input.id);
  build.wire(`${board}.0V`, common);
  if (!collector) build.wire(plus24, `${board}.V+`);
}

/**
 * The coil that an output of the control switches, with its two ends in place.
 *
 * @param through the contactor that must rest for this one to pull in
 */
function switchCoil(
  build: Build,
  control: Control,
  coil: string,
  by: AskedOutput['by'],
  { through, cable = null }: { readonly through?: string | undefined; readonly cable?: string | null } = {},
): void {
  if (build.taken(`${coil}.A1`)) return;
  const { plus24, zero } = control.rails;
  const plus = (from: string) => {
    if (through === undefined) build.wire(from, `${coil}.A1`, cable);
    else {
      build.wire(from, `${through}.51`);
      build.wire(`${through}.52`, `${coil}.A1`);
    }
  };
  const output = control.freeOutputs()[0];
  const contact = control.freeContacts()[0];
  if (contact && (by === 'contact' || !output)) {
    build.wire(plus24, contact.id);
    plus(contact.id.replace(/a$/, 'b'));
    build.wire(`${coil}.A2`, zero, cable);
    return;
  }
  if (!output) return;
  const sinking = output.nature.kind === 'output' && output.nature.stage === 'sinking';
  plus(sinking ? plus24 : output.id);
  build.wire(`${coil}.A2`, sinking ? output.id : zero, cable);
}

function placeOutput(
  build: Build,
  control: Control,
  of: AskedAuxiliary,
  output: AskedOutput,
  takers: Taker[],
): void {
  const name = outputName(of, output);
  const { plus24, zero } = control.rails;
  switch (output.moves) {
    case 'motor': {
      placeMotor(build, control, of, output, takers);
      return;
    }
    case 'relay': {
      const relay = build.named('K', 'relay', name, { settings: { no: '1', nc: '0' } });
      switchCoil(build, control, relay, output.by);
      return;
    }
    default: {
      const lock = output.moves === 'lock';
      const strong = strengthOf(control) >= VALVE_AMPS && output.by === '24 V';
      if (strong) {
        const own = lock
          ? build.named('S', 'locked-door', name, { where: 'door', settings: { nc: '0' } })
          : build.named('Y', 'valve', name, { where: 'machine' });
        switchCoil(build, control, own, output.by, { cable: valveCable(build, of) });
        return;
      }
      const relay = build.named('K', 'relay', name, { settings: { no: '1', nc: '0' } });
      switchCoil(build, control, relay, output.by);
      const own = lock
        ? build.named('S', 'locked-door', `${name}, its lock`, { where: 'door', settings: { nc: '0' } })
        : build.named('Y', 'valve', `${name}, its valve`, { where: 'machine' });
      build.wire(plus24, `${relay}.13`);
      const cable = valveCable(build, of);
      build.wire(`${relay}.14`, `${own}.A1`, cable);
      build.wire(`${own}.A2`, zero, cable);
    }
  }
}

/** What one output of the control can give; nothing said counts as little. */
function strengthOf(control: Control): number {
  const nature = control.freeOutputs()[0]?.nature;
  return nature?.kind === 'output' ? (nature.gives ?? nature.swallows ?? 0) : 0;
}

const contactorFor = (build: Build, of: AskedAuxiliary, output: AskedOutput): string =>
  build.named('K', 'contactor', outputName(of, output), {
    settings: {
      main: '3',
      no: '1',
      nc: '1',
      reverses: output.against === undefined ? undefined : 'yes',
    },
  });

function placeMotor(
  build: Build,
  control: Control,
  of: AskedAuxiliary,
  output: AskedOutput,
  takers: Taker[],
): void {
  const name = outputName(of, output);
  const reverse = output.against !== undefined;
  const pair = reverse || of.outputs.some(({ against }) => against === output.id);
  const contactor = contactorFor(build, of, output);
  const partner = pair
    ? of.outputs.find((each) => (reverse ? each.id === output.against : each.against === output.id))
    : undefined;
  const other = partner && contactorFor(build, of, partner);
  if (output.by === '24 V' && strengthOf(control) < CONTACTOR_AMPS && !build.taken(`${contactor}.A1`)) {
    const relay = build.named('K', 'relay', `${name}, its relay`, { settings: { no: '1', nc: '0' } });
    switchCoil(build, control, relay, output.by);
    build.wire(control.rails.plus24, `${relay}.13`);
    // Closed while the other one rests, so that both never pull in together.
    if (other !== undefined) {
      build.wire(`${relay}.14`, `${other}.51`);
      build.wire(`${other}.52`, `${contactor}.A1`);
    } else build.wire(`${relay}.14`, `${contactor}.A1`);
    build.wire(`${contactor}.A2`, control.rails.zero);
  } else switchCoil(build, control, contactor, output.by, { through: other });
  const motor = build.named('M', 'mains-motor', reverse ? outputName(of, partner!) : name, {
    where: 'machine',
    settings: { phases: build.threePhase ? 'three' : 'one' },
  });
  if (!reverse) {
    const marks = build.has(`${motor}.U`) ? ['U', 'V', 'W'] : ['L', 'N'];
    takers.push({
      device: motor,
      marks,
      contactors: [contactor],
      name,
      ...(other ? { reversing: other } : {}),
    });
  }
}
