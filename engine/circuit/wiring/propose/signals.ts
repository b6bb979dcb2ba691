/** Encoders, analogue commands, spindle directions and home switches, as the control reads and gives them. */
import { chosenPart } from '../../../refit/place.ts';
import type { Wiring } from '../../../refit/types.ts';
import { partFacts } from '../part-facts.ts';
import { choice, type SettingSpecs } from '../setting.ts';
import { proposeEncoder } from './axes.ts';
import type { Build } from './build.ts';

export const HOMES = ['PNP sensors', 'NPN sensors', 'switches', 'none'] as const;

export const LIMITS = ['switches to the control', 'in the stop circuit', 'none'] as const;
export const YES_NO = ['yes', 'no'] as const;

/** Answers about the whole that the proposal asks for; they stand in the settings of the wiring. */
export const PROPOSAL_SETTINGS: SettingSpecs = {
  limits: choice('how the end of each way is watched', LIMITS),
  'spindle-filter': choice('a mains filter for the spindle drive', YES_NO),
  homes: choice('what tells the control where zero of each axis is', HOMES),
};

export function proposeFeedback(
  build: Build,
  chain: string,
  number: number,
  drive: string,
  part: string,
  control: string | undefined,
  spindle: boolean,
): void {
  const motor = chosenPart(build.refit, chain, spindle ? 'spindle-motor' : 'motor');
  const speed = motor ? partFacts(motor).value('topSpeed') : undefined;
  const lines = partFacts(build.refit.parts[part]!).choice('output');
  const words = lines === 'single' ? 'single-ended' : lines === 'open-collector' ? 'open collector' : lines;
  if (spindle || !build.has(`${drive}.E-5V`)) {
    // Read by the control, where it has an input for it.
    const facts = chosenPart(build.refit, null, 'control');
    const inputs = facts ? (partFacts(facts).value('encoder-inputs') ?? 0) : 0;
    if (!control || inputs < 1) return;
    build.addName(control, 'encoders', spindle ? 'S' : chain);
    build.settle(control, { 'encoder-lines': words });
    proposeEncoder(build, chain, number, control, spindle ? 'S-' : `${chain}-`, part, speed);
    return;
  }
  build.settle(drive, { feedback: words });
  proposeEncoder(build, chain, number, drive, 'E-', part, speed);
}

export function proposeVolts(build: Build, axis: string, drive: string, control: string): void {
  const cable = build.cable(`WC-${axis}`, `Command of ${axis}`, {
    cores: '2',
    section: '0.25 mm²',
    shield: 'foil',
    twisted: 'yes',
    route: 'signals',
  });
  build.wire(`${control}.${axis}-cmd+`, `${drive}.CMD+`, cable);
  build.wire(`${control}.${axis}-cmd0`, `${drive}.CMD-`, cable);
  // The shield ends where the command is read; at the other end it is cut back.
  build.devices.set(control, withShield(build.devices.get(control)!, `${axis}-cmdSH`));
  build.wire(`${drive}.CMD-SH`, `${control}.${axis}-cmdSH`, cable);
}

/** A place for the end of a shield that is insulated. */
function withShield(device: Wiring['devices'][string], mark: string): Wiring['devices'][string] {
  if (Object.hasOwn(device.terminals, mark)) return device;
  return {
    ...device,
    terminals: {
      ...device.terminals,
      [mark]: { kind: 'shield', name: 'end of the shield, insulated', settings: { earthed: 'no' } },
    },
  };
}

/** Forward and reverse by relays, which suit outputs of either kind. */
export function proposeDirections(
  build: Build,
  drive: string,
  control: string,
  zero: string,
  plus24: string,
): void {
  if (!build.has(`${drive}.FWD`) || !build.has(`${control}.out2`)) return;
  for (const [n, mark] of ['FWD', 'REV'].entries()) {
    const output = build.terminal(`${control}.out${n + 1}`)!;
    const sinking = output.nature.kind === 'output' && output.nature.stage === 'sinking';
    const relay = build.device(
      `K${11 + n}`,
      'relay',
      mark === 'FWD' ? 'Spindle forward' : 'Spindle reverse',
      { settings: { no: '1', nc: '0' } },
    );
    build.wire(sinking ? plus24 : output.id, `${relay}.A1`);
    build.wire(sinking ? output.id : zero, `${relay}.A2`);
    build.wire(plus24, `${relay}.13`);
    build.wire(`${relay}.14`, `${drive}.${mark}`);
  }
  build.wire(`${drive}.COM`, zero);
}
