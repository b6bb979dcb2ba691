/** Encoders, analogue commands, spindle directions and home switches, as the control reads and gives them. */
import { chosenPart } from '../../../refit/place.ts';
import type { Refit, Wiring } from '../../../refit/types.ts';
import { pairing } from '../pairing.ts';
import { partFacts } from '../part-facts.ts';
import { choice, type SettingSpecs } from '../setting.ts';
import { proposeEncoder } from './axes.ts';
import type { Build } from './build.ts';
import type { Question } from './questions.ts';

const HOMES = ['PNP sensors', 'NPN sensors', 'switches', 'none'] as const;

/** Answers about the whole that the proposal asks for; they stand in the settings of the wiring. */
export const PROPOSAL_SETTINGS: SettingSpecs = {
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

export function proposeHomes(
  build: Build,
  control: string,
  axes: readonly string[],
  plus24: string,
  zero: string,
): void {
  const answer = HOMES.find((each) => each === build.refit.wiring.settings.homes);
  if (answer === undefined || answer === 'none') return;
  for (const [n, axis] of axes.entries()) {
    const input = build.has(`${control}.in${n + 1}`) ? `in${n + 1}` : `p${n + 1}`;
    if (!build.has(`${control}.${input}`)) return;
    const cable = build.cable(`WH-${axis}`, `Home of ${axis}`, {
      cores: '3',
      section: '0.5 mm²',
      shield: 'none',
      route: 'signals',
      laid: 'moved',
    });
    if (answer === 'switches') {
      const own = build.device(`S${21 + n}`, 'home', `Home of ${axis}`, { where: 'machine' });
      const five = input.startsWith('p');
      const sinking = build.terminal(`${control}.${input}`)!.nature;
      const from = five
        ? `${control}.GND`
        : sinking.kind === 'input' && sinking.form === 'sourcing'
          ? zero
          : plus24;
      build.wire(from, `${own}.13`, cable);
      build.wire(`${own}.14`, `${control}.${input}`, cable);
      continue;
    }
    if (input.startsWith('p')) return;
    const own = build.device(`B${21 + n}`, 'sensor', `Home of ${axis}`, {
      where: 'machine',
      settings: { output: answer.slice(0, 3) },
    });
    build.wire(plus24, `${own}.BN`, cable);
    build.wire(zero, `${own}.BU`, cable);
    // A sensor of the wrong kind is shown, and left for a person to exchange.
    if (pairing(build.terminal(`${own}.BK`)!, build.terminal(`${control}.${input}`)!).fits)
      build.wire(`${own}.BK`, `${control}.${input}`, cable);
  }
}

export function homesQuestion(refit: Refit): readonly Question[] {
  if (HOMES.some((each) => each === refit.wiring.settings.homes)) return [];
  return [
    {
      id: 'wiring.homes',
      asks: 'What tells the control where zero of each axis is?',
      place: { of: 'wiring', setting: 'homes' },
      options: HOMES,
    },
  ];
}
