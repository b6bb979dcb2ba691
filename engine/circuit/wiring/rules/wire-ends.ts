import { nearest } from '../../../quantity/nearest.ts';
import { found, type Rule } from '../check/rule.ts';
import { list } from '../check/say.ts';

/** Whether a wire goes anywhere. */
export const wireEnds: Rule = {
  id: 'wire',
  title: 'Does the wire go somewhere?',
  of: 'wire',
  judge: (view, id) => {
    const { from, to } = view.wire(id)!;
    const lost = [...new Set([from, to])].filter((end) => !view.terminal(end));
    if (lost.length > 0) {
      const device = view.device(lost[0]!.split('.')[0]!);
      const near = device && nearest(lost[0]!, device.terminals);
      return [
        found(
          wireEnds,
          [id],
          'fails',
          `Wire ${id} goes to ${list(lost.map((end) => (end === '' ? 'nothing' : end.slice(0, 60))))}, and there is no such terminal.`,
          {
            remedy: near
              ? `Did you mean ${near}?`
              : device
                ? `${device.id} has: ${list(
                    device.terminals.map((each) => each.slice(device.id.length + 1)),
                    12,
                  )}.`
                : 'Choose a terminal that is there.',
          },
        ),
      ];
    }
    if (from === to)
      return [
        found(wireEnds, [id], 'fails', `Wire ${id} goes from ${from} to itself.`, {
          remedy: 'Choose its other end.',
        }),
      ];
    const twins = view.twins(view.wire(id)!);
    // The first of them speaks for all.
    if (twins.length > 1 && twins[0] === id)
      return [
        found(
          wireEnds,
          twins,
          'fits',
          `${list(twins)} lie beside each other between ${from} and ${to}; they share the current.`,
        ),
      ];
    return [];
  },
};

/** More conductors in a terminal than it holds. */
export const holding: Rule = {
  id: 'holding',
  title: 'Does the terminal hold its conductors?',
  of: 'terminal',
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const wires = view.wiresAt(id);
    if (wires.length <= terminal.holds) return [];
    return [
      found(
        holding,
        [id, ...wires.slice(0, 100)],
        'tight',
        `${wires.length} conductors are to go into ${id} (${terminal.name}), which holds ${terminal.holds}: the loosest one heats and falls out.`,
        {
          remedy:
            terminal.nature.kind === 'earth'
              ? 'Every protective conductor needs a screw of its own: take a larger earth bar.'
              : 'Bring them together on a bridged terminal strip, and take one wire from there.',
        },
      ),
    ];
  },
};
