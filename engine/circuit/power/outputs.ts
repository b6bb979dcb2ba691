/** Outputs that switch on: to the plus or the minus of their device. */
import type { Element } from '../network/index.ts';
import type { Output, ReadWiring, Terminal } from '../wiring/types.ts';
import { CONTACT_OHMS } from './conductors.ts';

export function outputElements(wiring: ReadWiring): Element[] {
  const elements: Element[] = [];
  const feedOf = (terminal: Terminal, pole: 'plus' | 'minus'): string | undefined => {
    const own = (wiring.devices.get(terminal.device)?.terminals ?? [])
      .map((id) => wiring.terminals.get(id)!)
      .filter(({ nature }) => (nature.kind === 'feed' || nature.kind === 'supply') && nature.pole === pole);
    return (own.find(({ group }) => group === terminal.group) ?? own[0])?.id;
  };
  for (const terminal of wiring.terminals.values()) {
    if (terminal.nature.kind !== 'output') continue;
    const output: Output = terminal.nature;
    const end =
      output.stage === 'sourcing'
        ? feedOf(terminal, 'plus')
        : output.stage === 'sinking'
          ? (terminal.common ?? feedOf(terminal, 'minus'))
          : undefined;
    if (end === undefined || end === terminal.id) continue;
    elements.push({
      kind: 'resistor',
      id: `output ${terminal.id}`,
      a: terminal.id,
      b: end,
      ohms: CONTACT_OHMS,
    });
  }
  return elements;
}
