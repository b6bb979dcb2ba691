import { found, type Rule } from '../check/rule.ts';
import { trace } from '../check/trace.ts';
import type { View } from '../check/view.ts';
import type { Contact, WiringFinding } from '../types.ts';

/** Two contactors that exchange two phases: neither may pull in while the other is in. Asked of the one that reverses. */
export const reversing: Rule = {
  id: 'reversing',
  title: 'Can the two contactors of a motor never be in together?',
  of: 'device',
  judge: (view, id) => {
    const device = view.device(id)!;
    if (device.settings.reverses !== 'yes') return unsaid(view, id, device.terminals);
    const partner = partnerOf(view, id, device.terminals);
    if (partner === undefined) return [];
    const coils = [id, partner].map((each) => `${each}.A1`);
    // What is not wired yet is told elsewhere.
    if (coils.some((each) => view.terminal(each) === undefined || view.wiresAt(each).length === 0)) return [];
    const open = [
      ...(held(view, id, partner) ? [] : [[id, partner] as const]),
      ...(held(view, partner, id) ? [] : [[partner, id] as const]),
    ];
    const source = 'IEC 60204-1, 9.3.4: interlocks between contrary motions (recalled, check the standard)';
    return [
      open.length === 0
        ? found(
            reversing,
            [id, partner],
            'fits',
            `${id} and ${partner} turn one motor both ways; the coil of each is fed through a contact of the other that opens, so that they are never in together.`,
            { source },
          )
        : found(
            reversing,
            [id, partner],
            'fails',
            `${open.map(([own, other]) => `${own} can pull in while ${other} is in`).join(', and ')}: both together are a short circuit between two phases.`,
            {
              source,
              remedy: `Feed the coil of ${open[0]![0]} through a contact of ${open[0]![1]} that opens; a mechanical interlock between the two comes on top.`,
            },
          ),
    ];
  },
};

/** Two contactors that exchange phases, and neither is said to reverse: both count as in together, which is a short circuit. */
function unsaid(view: View, id: string, terminals: readonly string[]): readonly WiringFinding[] {
  const partner = partnerOf(view, id, terminals);
  // Asked of the one that comes later.
  if (partner === undefined || partner > id || view.device(partner)?.settings.reverses === 'yes') return [];
  if (!exchanged(view, id, partner)) return [];
  return [
    found(
      reversing,
      [id, partner],
      'fails',
      `${partner} and ${id} exchange two phases. Until one of them is said to turn the motor the other way, both count as in together, which is a short circuit.`,
      {
        remedy: `Set “turns a motor the other way, beside another contactor” of ${id} to yes (${id}.reverses), and feed the coil of each through a contact of the other that opens. Where they do not turn one motor both ways, put its phases in the same order.`,
      },
    ),
  ];
}

/** Whether what comes in on one phase goes out on another, against the partner. */
function exchanged(view: View, id: string, partner: string): boolean {
  const ways = (of: string): readonly (readonly [string, string])[] =>
    [1, 3, 5, 7, 9].flatMap((mark) => {
      const [into, out] = [view.net(`${of}.${mark}`), view.net(`${of}.${mark + 1}`)];
      return into && out ? [[String(into.number), String(out.number)] as const] : [];
    });
  const own = ways(id);
  const others = new Map(ways(partner));
  return own.some(([into, out]) => {
    const straight = others.get(into);
    return straight !== undefined && straight !== out && own.some(([, each]) => each === straight);
  });
}

/** Another contactor whose main contacts share wires with those of this one, on both sides. */
function partnerOf(view: View, id: string, terminals: readonly string[]): string | undefined {
  const shared = new Map<string, Set<string>>();
  for (const each of terminals) {
    const { nature, mark } = view.terminal(each)!;
    const net = nature.kind === 'contact' && nature.role === 'main' ? view.net(each) : undefined;
    if (!net) continue;
    for (const end of view.inNet(net, 'contact')) {
      const far = view.terminal(end)!;
      if (far.device === id || (far.nature as Contact).role !== 'main') continue;
      const sides = shared.get(far.device) ?? new Set();
      shared.set(far.device, sides.add(Number(mark) % 2 === 0 ? 'behind' : 'before'));
    }
  }
  return [...shared].find(([, sides]) => sides.size === 2)?.[0];
}

/** Whether the coil of the one loses its current when the other pulls in. */
function held(view: View, own: string, other: string): boolean {
  return ['A1', 'A2'].some((mark) =>
    trace(view, `${own}.${mark}`).some(({ contacts }) =>
      contacts.some((each) => {
        const contact = view.terminal(each);
        return contact?.device === other && (contact.nature as Contact).closes === 'when-off';
      }),
    ),
  );
}
