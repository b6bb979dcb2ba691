import { found, type Rule } from '../check/rule.ts';
import { list, terminalName } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Earth, WiringFinding } from '../types.ts';

const SOURCE = 'IEC 60204-1, clause 8: protective bonding (from memory)';
/** A conductor to the bar may pass a plug or two. */
const FAR = 12;

/** Protective earth: one star, every metal part with a conductor of its own. */
export const earth: Rule = {
  id: 'earth',
  title: 'Is everything that can be touched bonded to one earth point?',
  of: ['earth'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const { role } = terminal.nature as Earth;
    if (role === 'passes') return [];
    if (role === 'bar') return bar(view, id, terminal.device);
    const reached = reach(view, id);
    const name = `${terminal.device} (${terminal.name})`;
    if (role === 'source')
      return reached.bar
        ? [
            found(
              earth,
              [id, reached.bar],
              'fits',
              `The protective conductor of the mains ends on ${reached.bar}.`,
              { source: SOURCE },
            ),
          ]
        : [
            found(
              earth,
              [id],
              'fails',
              `The protective conductor of the mains at ${name} does not reach the earth bar: nothing that is bonded there is protected.`,
              {
                source: SOURCE,
                remedy:
                  'Bring it to a screw of its own on the earth bar. Work on fixed mains wiring is for a licensed electrician.',
              },
            ),
          ];
    if (reached.bar)
      return [
        found(earth, [id, reached.bar], 'fits', `${name} has its own conductor to ${reached.bar}.`, {
          source: SOURCE,
        }),
      ];
    if (reached.through.length > 0)
      return [
        found(
          earth,
          [id, ...reached.through],
          'tight',
          `${name} is earthed only by way of ${list(reached.through.map((each) => terminalName(view, each)))}: when that is taken off, this one is bare too.`,
          {
            source: SOURCE,
            remedy: 'Give it a conductor of its own to the earth bar.',
          },
        ),
      ];
    const exposed = view.device(terminal.device)?.exposed === true || role === 'metal';
    return [
      found(
        earth,
        [id],
        'fails',
        `${name} has no protective conductor${exposed ? ': with a fault inside, whoever touches it stands under mains voltage' : ''}.`,
        {
          source: SOURCE,
          remedy:
            'Connect it to a screw of its own on the earth bar, green-and-yellow, and measure the joint.',
        },
      ),
    ];
  },
};

/** Asked once a bar: what hangs on one that no protective conductor of the mains reaches is bonded to nothing. */
function bar(view: View, id: string, device: string): readonly WiringFinding[] {
  const screws = view.device(device)!.terminals;
  if (screws[0] !== id || screws.every((each) => view.wiresAt(each).length === 0)) return [];
  const net = view.net(id)!;
  const fed = view
    .inNet(net, 'earth')
    .some((each) => (view.terminal(each)!.nature as Earth).role === 'source');
  return fed
    ? []
    : [
        found(
          earth,
          [id],
          'fails',
          `No protective conductor of the mains reaches the earth bar ${device}: what is bonded there is not protected.`,
          {
            source: SOURCE,
            remedy:
              'Join it to the bar on which the protective conductor of the mains ends: one star, one point.',
          },
        ),
      ];
}

/** The bar, over wires and joints only; or the other devices' earths that lie on the way. */
function reach(view: View, from: string): { readonly bar?: string; readonly through: readonly string[] } {
  const through = new Set<string>();
  const seen = new Set([from]);
  for (const at of seen) {
    for (const { to } of view.neighbours(at)) {
      if (seen.has(to) || seen.size > FAR) continue;
      const nature = view.terminal(to)?.nature;
      if (nature?.kind === 'earth' && nature.role === 'bar') return { bar: to, through: [] };
      if (nature?.kind === 'earth' && nature.role !== 'passes') through.add(to);
      else if (nature?.kind === 'joint' || nature?.kind === 'earth') seen.add(to);
    }
  }
  return { through: [...through].sort() };
}
