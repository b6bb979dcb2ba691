import { figure, found, type Rule } from '../check/rule.ts';
import { list, terminalName, volts } from '../check/say.ts';
import type { Output, Supply } from '../types.ts';

/** Outputs on one wire. */
export const outputsJoined: Rule = {
  id: 'outputs-joined',
  title: 'Does only one output drive this wire?',
  of: ['output', 'differential-output', 'analogue-output'],
  judge: (view, id) => {
    const net = view.net(id);
    if (!net) return [];
    const outputs = ['output', 'differential-output', 'analogue-output'].flatMap((kind) =>
      view.inNet(net, kind),
    );
    // Two outputs that only pull down may share a wire: either of them pulls it down. So may two that only lift it.
    const all = outputs.map((each) => view.terminal(each)!.nature);
    const made = [];
    if (outputs.length > 1 && outputs.toSorted()[0] === id) {
      const stages = new Set(
        all.map((each) => (each.kind === 'output' ? (each as Output).stage : each.kind)),
      );
      const shared = stages.size === 1 && (stages.has('sinking') || stages.has('sourcing'));
      const names = list(outputs.map((each) => terminalName(view, each)));
      made.push(
        shared
          ? found(
              outputsJoined,
              outputs.toSorted(),
              'fits',
              `${names} share a wire; any of them switches it. That is allowed with outputs that only ${stages.has('sinking') ? 'pull down' : 'lift up'}.`,
            )
          : found(
              outputsJoined,
              outputs.toSorted(),
              'fails',
              `${names} drive the same wire: where one goes high and another low, they work against each other and one of them dies.`,
              {
                remedy: 'Leave one of them on the wire.',
              },
            ),
      );
    }
    const poles = view.inNet(net, 'supply');
    const nature = view.terminal(id)!.nature;
    for (const pole of poles) {
      const supply = view.terminal(pole)!.nature as Supply;
      const lets =
        nature.kind === 'output' &&
        ((nature.stage === 'sinking' && supply.pole === 'minus') ||
          (nature.stage === 'sourcing' && supply.pole === 'plus'));
      made.push(
        found(
          outputsJoined,
          [id, pole],
          'fails',
          lets
            ? `${terminalName(view, id)} is joined to ${terminalName(view, pole)}: the wire is held there already, and switching changes nothing.`
            : `${terminalName(view, id)} is joined straight to ${terminalName(view, pole)}: when it switches, it shorts the supply and dies.`,
          { part: pole, remedy: 'Take that wire off; something that takes current belongs between.' },
        ),
      );
    }
    return made;
  },
};

/** Supplies on one rail. */
export const suppliesJoined: Rule = {
  id: 'supplies-joined',
  title: 'Is each supply on a rail of its own?',
  of: ['supply'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const own = terminal.nature as Supply;
    const rail = view.rail(id);
    if (own.pole !== 'plus' || !rail) return [];
    const made = [];
    if (terminal.with !== null && view.rail(terminal.with) === rail)
      made.push(
        found(
          suppliesJoined,
          [id, terminal.with],
          'fails',
          `Plus and minus of ${terminal.device} are joined: a short circuit. Everything on them stands without its voltage, and what has no fuse gets hot.`,
          {
            part: 'short',
            title: 'A supply is shorted',
            root: { ends: [id, terminal.with], harm: 'short' },
            remedy: 'Find the wire that joins them, and take it off before anything is switched on.',
          },
        ),
      );
    for (const pole of view.inRail(rail, 'supply')) {
      const other = view.terminal(pole)!;
      const nature = other.nature as Supply;
      if (pole === id || nature.pole !== 'plus' || pole < id) continue;
      // Two plus terminals of one device are one supply.
      if (other.device === terminal.device && other.with === terminal.with) continue;
      const equal = own.volts !== undefined && own.volts === nature.volts;
      const known = own.volts !== undefined && nature.volts !== undefined;
      made.push(
        found(
          suppliesJoined,
          [id, pole],
          known && !equal ? 'fails' : 'tight',
          known && !equal
            ? `${volts(own.volts!)} of ${id} and ${volts(nature.volts!)} of ${pole} are joined: the higher one feeds into the lower, and what is made for ${volts(Math.min(own.volts!, nature.volts!))} gets up to ${volts(Math.max(own.volts!, nature.volts!))}.`
            : `${id} and ${pole} are joined: two supplies share a load only where their makers say so, otherwise one of them does all the work.`,
          {
            part: pole,
            ...(known && !equal
              ? {
                  title: 'Two supplies of different voltage are joined',
                  root: { ends: [id, pole] as const, harm: 'volts' as const },
                }
              : {}),
            figures: [
              ...(own.volts === undefined ? [] : [figure(id, own.volts, 'V')]),
              ...(nature.volts === undefined ? [] : [figure(pole, nature.volts, 'V')]),
            ],
            remedy: 'Give each its own rail, before anything is switched on; join only their 0 V.',
          },
        ),
      );
    }
    return made;
  },
};
