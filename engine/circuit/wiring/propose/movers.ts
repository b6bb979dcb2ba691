/** What the outputs of a control switch: valves, locks, relays, and motors by contactors. */
import type { AskedAuxiliary, AskedOutput } from './asked.ts';
import { outputName, valveCable } from './auxiliary-names.ts';
import type { Build } from './build.ts';
import type { Taker } from './mains.ts';
import type { Control } from './ways-in.ts';

/** A valve takes more than this at 24 V, in A: common practice, no source. Weaker outputs switch it by a relay. */
const VALVE_AMPS = 1;
/** The coil of a small contactor takes up to this, in A: common practice, no source. */
const CONTACTOR_AMPS = 0.3;

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

export function placeOutput(
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
