/** Inputs that hang in the air, are never lifted, or get what they give themselves. */
import type { Met } from '../check/across.ts';
import { drivesOf } from '../check/drive.ts';
import { figure, found } from '../check/rule.ts';
import { ohms, terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { pullUpFor } from '../levels.ts';
import type { Input, Terminal, WiringFinding } from '../types.ts';
import { LEVELS } from './levels-head.ts';

/** A logic input that is let go and has nothing that brings it back, or something that holds it where it was. */
export function floats(
  view: View,
  terminal: Terminal,
  input: Input,
  met: Extract<Met, { kind: 'met' }>,
): WiringFinding | undefined {
  if (input.form !== 'logic' || met.always || met.across.off !== null) return undefined;
  const about = [terminal.id, met.by.path.source, ...met.by.path.contacts];
  const name = terminalName(view, terminal.id);
  const what = met.contacts ? 'the contact opens' : `${met.by.path.source} is off`;
  if (input.pull && input.pull.to > 0)
    return found(
      LEVELS,
      about,
      'fails',
      `${name} is pulled up inside, and ${met.by.path.source} only gives plus as well: it reads on whether ${what} or not.`,
      { remedy: 'Let the contact or output pull it to 0 V instead.' },
    );
  const rests = drivesOf(view, terminal.id).some(
    ({ how, ohms: through, path }) => how === 'fixed' && through > 0 && path.contacts.length === 0,
  );
  return rests || input.pull
    ? undefined
    : found(
        LEVELS,
        about,
        'fails',
        `When ${what}, nothing holds ${name}: it floats, and reads what it picks up.`,
        {
          remedy: `Put a resistor of some kilohms (10 kΩ are usual) from ${terminal.id} to its 0 V.`,
        },
      );
}

export function noPullUp(view: View, terminal: Terminal, input: Input, source: string): WiringFinding {
  const output = view.terminal(source)!.nature;
  if (input.form === 'sinking' || input.form === 'opto') return sameWay(view, terminal, input, source);
  const supply = input.rated;
  const window =
    output.kind === 'output' &&
    supply !== undefined &&
    input.on !== undefined &&
    output.swallows !== undefined
      ? pullUpFor({
          supply,
          on: input.on,
          low: output.low ?? 0.4,
          leaks: output.leaks ?? 1e-4,
          swallows: output.swallows,
        })
      : undefined;
  return found(
    LEVELS,
    [terminal.id, source],
    'fails',
    `${terminalName(view, source)} can only pull the line down; nothing lifts it up again, so ${terminalName(view, terminal.id)} never reads high.`,
    {
      figures: window
        ? [figure('smallest pull-up', window.least, 'Ω'), figure('largest pull-up', window.most, 'Ω')]
        : [],
      source: 'derived: voltages round the loop',
      remedy: window
        ? `Put a resistor of ${ohms(window.ohms)} from ${terminal.id} to ${volts(supply!)}; ${ohms(window.least)} to ${ohms(window.most)} will do.`
        : `Put a pull-up resistor from ${terminal.id} to ${supply === undefined ? 'the supply of the input' : volts(supply)}.`,
    },
  );
}

export function sameWay(view: View, terminal: Terminal, input: Input, source: string): WiringFinding {
  const output = view.terminal(source)!.nature;
  const pulls = output.kind === 'output' && output.stage === 'sinking';
  const says = pulls
    ? `${terminalName(view, source)} pulls to minus (NPN), and ${terminalName(view, terminal.id)} wants to be given plus: neither brings the current, so the input never switches on.`
    : `${terminalName(view, source)} gives plus (PNP), and ${terminalName(view, terminal.id)} gives its own current out and wants to be pulled to minus: nothing changes when the output switches.`;
  const common = terminal.common;
  return found(LEVELS, [terminal.id, source], 'fails', says, {
    source:
      'common practice: sourcing outputs go with sinking inputs and sinking outputs with sourcing inputs',
    remedy:
      input.form === 'opto' && common !== null
        ? `Join ${common} to ${pulls ? 'plus' : '0 V'} if every sensor of this group is ${pulls ? 'NPN' : 'PNP'}; otherwise take a ${pulls ? 'PNP' : 'NPN'} sensor.`
        : pulls
          ? 'Take a PNP sensor, or an input that gives current (sourcing).'
          : 'Take an NPN sensor, or an input that takes current (sinking).',
  });
}
