import { figure, found, type Rule } from '../check/rule.ts';
import { hertz, terminalName, volts } from '../check/say.ts';
import { trace } from '../check/trace.ts';
import type { View } from '../check/view.ts';
import type { Sensor, Terminal, WiringFinding } from '../types.ts';

const SAY: Readonly<Record<string, string>> = { exc: 'excitation', sin: 'sine', cos: 'cosine' };
const HABIT = 'common practice of makers of drives, no source';
/** A resolver stands an excitation this far off its own: common practice, no source. */
const STRAY = 0.2;

/** A pair of a resolver, asked at the plus end of what takes. */
export const resolver: Rule = {
  id: 'resolver',
  title: 'Is the resolver joined pair to pair, the right way round?',
  of: ['sensor'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const { side } = terminal.nature as Sensor;
    const [what, half] = [terminal.signal.slice(0, 3), terminal.signal.slice(3)];
    const other = terminal.with;
    if (side !== 'takes' || half !== '+' || !Object.hasOwn(SAY, what) || other === null) return [];
    const wired = [id, other].map((each) => view.wiresAt(each).length > 0);
    if (!wired[0] && !wired[1]) return [];
    const name = `the ${SAY[what]} (${id} and ${other})`;
    if (!wired[0] || !wired[1])
      return [
        found(
          resolver,
          [id, other],
          'fails',
          `Only one wire of ${name} is connected: no current flows in its winding.`,
          {
            remedy: `Connect ${wired[0] ? other : id} to the other half of the same pair.`,
          },
        ),
      ];
    const [one, two] = [id, other].map((each) => sender(view, each));
    if (!one || !two)
      return [
        found(resolver, [id, other], 'fails', `Nothing feeds ${name}.`, {
          remedy: `Connect both to the ${SAY[what]} at the other end.`,
        }),
      ];
    const about = [id, other, one.id, two.id];
    if (one.with !== two.id)
      return [
        found(
          resolver,
          about,
          'fails',
          `${terminalName(view, one.id)} and ${terminalName(view, two.id)} are halves of two different pairs, and both go to ${name}.`,
          { remedy: `Take ${one.id} and ${one.with}.` },
        ),
      ];
    const from = one.signal.slice(0, 3);
    if (from !== what)
      return [
        found(
          resolver,
          about,
          'fails',
          Object.hasOwn(SAY, from)
            ? `The ${SAY[from]} goes to ${name}: the drive reads a wrong angle, and a motor that is turned by it runs away.`
            : `${terminalName(view, one.id)} is no winding of a resolver.`,
          { remedy: 'Connect like to like.' },
        ),
      ];
    if (one.signal.endsWith('-'))
      return [
        found(
          resolver,
          about,
          'fails',
          `Plus and minus of ${name} are exchanged: the angle counts backwards or stands half a turn off, and a brushless motor runs away.`,
          { remedy: `Exchange the two wires at ${id} and ${other}.` },
        ),
      ];
    return [
      ...lines(view, terminal, about, name),
      ...(what === 'exc' ? excitation(view, terminal, one) : []),
    ];
  },
};

function sender(view: View, id: string): Terminal | undefined {
  const [path] = trace(view, id);
  return path && view.terminal(path.source);
}

/** Each pair twisted, in a shielded cable. */
function lines(
  view: View,
  { id }: Terminal,
  about: readonly string[],
  name: string,
): readonly WiringFinding[] {
  const cables = view.wiresAt(id).flatMap((wire) => view.wire(wire)!.cable ?? []);
  const plain = cables.find((each) => view.cable(each)?.twisted === false);
  const open = cables.find((each) => view.cable(each)?.shield === 'none');
  const bad = plain ?? open;
  return [
    found(
      resolver,
      bad === undefined ? about : [...about, bad],
      bad === undefined ? 'fits' : 'tight',
      bad === undefined
        ? `Both wires of ${name} are joined like to like.`
        : `${name[0]!.toUpperCase()}${name.slice(1)} is joined like to like, in a cable ${plain ? 'whose pairs are not twisted' : 'without a shield'}: what the motor radiates shows as angle.`,
      {
        source: HABIT,
        remedy:
          bad === undefined
            ? undefined
            : 'Take a cable of three twisted pairs under one shield, earthed at the drive.',
      },
    ),
  ];
}

function excitation(view: View, taker: Terminal, giver: Terminal): readonly WiringFinding[] {
  const [wants, gives] = [taker.nature as Sensor, giver.nature as Sensor];
  const needs = (['volts', 'hertz'] as const).flatMap((each) => [
    ...(wants[each] === undefined ? [`${taker.id}.${each}`] : []),
    ...(gives[each] === undefined ? [`${giver.id}.${each}`] : []),
  ]);
  const about = [taker.id, giver.id];
  if (needs.length > 0)
    return [
      found(
        resolver,
        about,
        'unknown',
        `Whether ${view.terminal(giver.id)!.device} excites ${taker.device} with the volts and the frequency it is made for is not known.`,
        { part: 'excitation', needs },
      ),
    ];
  const off = (each: 'volts' | 'hertz') => Math.abs(gives[each]! / wants[each]! - 1);
  const fits = off('volts') <= STRAY && off('hertz') <= STRAY;
  return [
    found(
      resolver,
      about,
      fits ? 'fits' : 'tight',
      `${giver.device} excites ${taker.device} with ${volts(gives.volts!)} at ${hertz(gives.hertz!)}; it is made for ${volts(wants.volts!)} at ${hertz(wants.hertz!)}.`,
      {
        part: 'excitation',
        figures: [figure('given', gives.volts!, 'V'), figure('made for', wants.volts!, 'V')],
        source: `${HABIT}: within a fifth`,
        remedy: fits
          ? undefined
          : 'Set the excitation at the drive, or ask its maker whether it reads this resolver.',
      },
    ),
  ];
}
