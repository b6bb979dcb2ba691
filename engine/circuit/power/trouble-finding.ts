/** What is said where the currents of a supply have no answer: a short circuit, with what might only look like one. */
import { andList } from '../../quantity/words.ts';
import type { Root, WiringFinding } from '../wiring/types.ts';
import type { PowerContext } from './context.ts';
import { finding } from './say.ts';

export function troubleFinding(context: PowerContext): readonly WiringFinding[] {
  const { trouble } = context.flow;
  if (!trouble) return [];
  const both = bothWays(context, trouble.contacts ?? []);
  const root = both === '' ? rootOf(context, trouble.nodes) : undefined;
  return [
    trouble.kind === 'source-loop'
      ? finding('short', trouble.elements, 'Short circuit', 'fails', trouble.sentence, 'Kirchhoff’s laws', {
          ...(root ? { root } : {}),
          remedy: `${both}Find the wire that is on the wrong terminal; currents are worked out once it is off.`,
        })
      : finding(
          'currents',
          trouble.elements,
          'Currents of the wiring',
          'unknown',
          `The currents could not be worked out: ${trouble.sentence}`,
          'Kirchhoff’s laws',
        ),
  ];
}

/** Two poles of the source that is shorted. */
function rootOf({ flow }: PowerContext, [live, other]: readonly string[]): Root | undefined {
  const source = flow.sources.find((each) => live !== undefined && each.live.includes(live));
  const there = source && (other !== undefined && source.live.includes(other) ? other : source.back[0]);
  return live === undefined || there === undefined
    ? undefined
    : { ends: [live, there], harm: 'short', throughContacts: true };
}

/** Two contactors that turn a motor both ways look like a short circuit until one of them is said to rest meanwhile. */
function bothWays({ wiring }: PowerContext, contacts: readonly string[]): string {
  const contactors = [...new Set(contacts.flatMap((id) => wiring.terminals.get(id)?.device ?? []))].filter(
    (id) => {
      const device = wiring.devices.get(id);
      return device?.kind === 'contactor' && device.settings.reverses !== 'yes';
    },
  );
  return contactors.length < 2
    ? ''
    : `Where ${andList(contactors)} turn one motor both ways, by exchanging two phases or plus and minus, they are never in together: set “turns a motor the other way” of the one that exchanges them to yes (${contactors.map((id) => `${id}.reverses`).join(' or ')}). Otherwise: `;
}
