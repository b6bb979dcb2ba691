import { drivesOf } from '../check/drive.ts';
import { figure, found, type Rule } from '../check/rule.ts';
import { list, terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { AnalogueInput, AnalogueOutput } from '../types.ts';

/** ±10 V and 0–10 V commands. */
export const analogue: Rule = {
  id: 'analogue',
  title: 'Does the analogue input get the range it is made for?',
  of: ['analogue-input'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const input = terminal.nature as AnalogueInput;
    if (input.leg === 'minus' || view.wiresAt(id).length === 0) return [];
    const drives = drivesOf(view, id);
    const back = terminal.with ?? terminal.common;
    const name = terminalName(view, id);
    if (drives.length === 0 && back !== null && sends(view, back))
      return [
        found(
          analogue,
          [id, back],
          'fails',
          `Plus and minus of ${name} are exchanged: the ${terminal.signal.startsWith('tacho') ? 'drive is told the other direction than it turns, and runs away' : 'axis goes the other way, and runs away where the control holds its position'}.`,
          { remedy: `Exchange the two wires at ${id} and ${back}.` },
        ),
      ];
    if (drives.length === 0)
      return [
        found(
          analogue,
          [id],
          'fails',
          `${name} is connected, but nothing drives it: the axis creeps or runs away.`,
          { remedy: 'Connect it to an analogue output.' },
        ),
      ];
    const drive = drives[0]!;
    const source = drive.path.source;
    const output = view.terminal(source)!;
    if (output.nature.kind !== 'analogue-output')
      return [
        found(
          analogue,
          [id, source],
          'fails',
          `${terminalName(view, source)} is no analogue output, and ${name} wants a voltage between ${volts(input.low ?? 0)} and ${volts(input.high ?? 10)}.`,
          { remedy: 'Connect an analogue output.' },
        ),
      ];
    const reference = output.common;
    if (back !== null && sends(view, back))
      return [
        found(analogue, [id, source], 'fails', `Both ends of ${name} are driven.`, {
          remedy: 'Its minus goes to the 0 V of the output.',
        }),
      ];
    if (back === null || reference === null || !view.sameRail(back, reference))
      return [
        found(
          analogue,
          [id, source],
          'fails',
          `${name} has no return: ${back ?? 'its 0 V'} is not joined to ${reference ?? 'the 0 V of the output'}, so it sees a voltage that floats.`,
          {
            remedy:
              back !== null && reference !== null
                ? `Join ${back} to ${reference}, by the second core of the same cable.`
                : undefined,
          },
        ),
      ];
    const { low, high } = output.nature as AnalogueOutput;
    const needs = [
      ...(low === undefined ? [`${source}.low`] : []),
      ...(high === undefined ? [`${source}.high`] : []),
      ...(input.low === undefined ? [`${id}.low`] : []),
      ...(input.high === undefined ? [`${id}.high`] : []),
    ];
    if (low === undefined || high === undefined || input.low === undefined || input.high === undefined)
      return [
        found(
          analogue,
          [id, source],
          'unknown',
          `It cannot be said whether the ranges agree: ${list(needs)}.`,
          { needs },
        ),
      ];
    const figures = [figure('least given', low, 'V'), figure('most given', high, 'V')];
    if (input.most !== undefined && Math.max(Math.abs(low), Math.abs(high)) > input.most)
      return [
        found(
          analogue,
          [id, source],
          'fails',
          `${terminalName(view, source)} reaches ${volts(high)}; ${name} survives ${volts(input.most)}.`,
          {
            margin: input.most / Math.max(Math.abs(low), high),
            figures,
            remedy: 'Put a divider of two resistors between them.',
          },
        ),
      ];
    if (input.scaled === true)
      return [
        found(
          analogue,
          [id, source],
          'fits',
          `${name} takes up to ${volts(input.high)}, and ${source} gives up to ${volts(high)}: the drive is set to that.`,
          { margin: high > 0 ? input.high / high : undefined, figures },
        ),
      ];
    const equal = low === input.low && high === input.high;
    return [
      found(
        analogue,
        [id, source],
        equal ? 'fits' : 'tight',
        equal
          ? `${name} gets ${volts(low)} to ${volts(high)} from ${source}, the range it is made for.`
          : `${name} is made for ${volts(input.low)} to ${volts(input.high)}, and ${source} gives ${volts(low)} to ${volts(high)}: part of the range is never reached, or means nothing.`,
        { figures, remedy: equal ? undefined : 'Set the range at the drive, or scale it in the control.' },
      ),
    ];
  },
};

/** Whether an analogue output drives this terminal. */
const sends = (view: View, id: string): boolean =>
  drivesOf(view, id).some(({ path }) => view.terminal(path.source)?.nature.kind === 'analogue-output');
