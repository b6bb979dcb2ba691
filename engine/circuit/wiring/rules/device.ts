import { found, type Rule } from '../check/rule.ts';
import { list } from '../check/say.ts';

/** A device whose part has gone out of the machine. */
export const partGone: Rule = {
  id: 'part',
  title: 'Is the part still in the machine?',
  of: 'device',
  judge: (view, id) => {
    const device = view.device(id)!;
    if (device.partThere !== false) return [];
    const wired = device.terminals.filter((each) => view.wiresAt(each).length > 0);
    return [
      found(
        partGone,
        [id, ...wired],
        wired.length > 0 ? 'fails' : 'tight',
        `${id} stands for a part (${device.part}) that fills no place of the machine any more${wired.length > 0 ? `, and is still wired at ${list(wired)}` : ''}.`,
        {
          remedy: 'Let it stand for the part that took its place, or take it out with its wires.',
        },
      ),
    ];
  },
};

/** Terminals that must be connected and are not. */
export const notConnected: Rule = {
  id: 'connected',
  title: 'Is everything connected that must be?',
  of: 'device',
  judge: (view, id) => {
    const device = view.device(id)!;
    const open = device.terminals.filter((each) => {
      const terminal = view.terminal(each)!;
      // Earth has a rule of its own.
      if (!terminal.needed || terminal.nature.kind === 'earth') return false;
      return view.wiresAt(each).length === 0;
    });
    if (open.length === 0) return [];
    return [
      found(
        notConnected,
        [id, ...open],
        'unknown',
        `${list(open, 6)} ${open.length === 1 ? 'has' : 'have'} no wire yet; ${device.kindName} ${id} does not work without.`,
        { needs: open },
      ),
    ];
  },
};
