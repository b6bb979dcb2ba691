/** What tells a control something: contacts and sensors on its inputs. */
import type { Terminal } from '../types.ts';
import type { Build } from './build.ts';
import type { Control } from './ways-in.ts';

/** A contact between its two ends, laid to an input. */
export function joinContact(
  build: Build,
  control: Control,
  [from, to]: readonly [string, string],
  input: Terminal,
  cable: string,
): void {
  build.wire(control.other(input), from, cable);
  build.wire(to, input.id, cable);
}

/** Supply of a sensor with three wires, named brown, blue and black. */
export function feedSensor(build: Build, { rails }: Control, sensor: string, cable: string): void {
  build.wire(rails.plus24, `${sensor}.BN`, cable);
  build.wire(rails.zero, `${sensor}.BU`, cable);
}

/** Output of a sensor to an input: straight where it takes it, else through an opto board. */
export function joinSensor(
  build: Build,
  control: Control,
  sensor: string,
  input: Terminal,
  cable: string,
): void {
  const output = build.terminal(`${sensor}.BK`)!;
  if (control.takes(output, input)) build.wire(output.id, input.id, cable);
  else throughBoard(build, control, output, input, cable);
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
