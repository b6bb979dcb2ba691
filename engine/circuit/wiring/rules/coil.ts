import { coilSuppression } from '../../../handbook/coil-suppression.ts';
import { evaluate } from '../../../sheet/index.ts';
import { type Drive, drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { seconds, terminalName, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Load, Terminal, WiringFinding } from '../types.ts';

/** Coils, valves, lamps and fans: fed right, and their spike swallowed. Asked at the first of both ends. */
export const coil: Rule = {
  id: 'load',
  title: 'Does the coil or lamp get what it is made for?',
  of: ['load'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as Load;
    const other = terminal.with;
    if (other === null || other < id || nature.leg === 'minus') return [];
    if (view.wiresAt(id).length === 0 || view.wiresAt(other).length === 0) return [];
    const [one, two] = [drivesOf(view, id), drivesOf(view, other)];
    const fed = meetLoad(view, terminal, nature, one, two);
    return [...fed, ...suppression(view, terminal, nature, other, [...one, ...two])];
  },
};

const name = (terminal: Terminal) => `${terminal.device} (${terminal.name.replace(/, plus$/, '')})`;

function meetLoad(
  view: View,
  terminal: Terminal,
  nature: Load,
  one: readonly Drive[],
  two: readonly Drive[],
): readonly WiringFinding[] {
  const other = terminal.with!;
  if (one.length === 0 || two.length === 0) {
    const dead = one.length === 0 ? terminal.id : other;
    return [
      found(
        coil,
        [terminal.id, other],
        'fails',
        `${name(terminal)} never gets current: from ${dead} no supply and no output is reached.`,
        {
          remedy: `Follow the wire from ${dead}; something on the way is not connected.`,
        },
      ),
    ];
  }
  const [up, down] = rising(one[0]!) >= rising(two[0]!) ? [one[0]!, two[0]!] : [two[0]!, one[0]!];
  const reversed = up === two[0] && one[0] !== two[0];
  const about = [terminal.id, up.path.source, down.path.source];
  const current = nature.amps;
  for (const contact of new Set([...up.path.contacts, ...down.path.contacts])) {
    view.give({ to: `contact:${contact}`, amps: current });
    if (nature.inductive) view.give({ to: `coils:${contact}`, amps: current });
  }
  giveToSupply(view, up, down, current);
  const ac = [up, down].find(({ how }) => how === 'ac');
  if (ac && nature.supply === 'dc')
    return [
      found(
        coil,
        about,
        'fails',
        `${name(terminal)} is made for d.c. and gets a.c. from ${terminalName(view, ac.path.source)}.`,
        { remedy: 'Feed it from a d.c. supply, or take one with a coil for a.c.' },
      ),
    ];
  if (!ac && nature.supply === 'ac')
    return [
      found(
        coil,
        about,
        'fails',
        `${name(terminal)} is made for a.c. and gets d.c. from ${terminalName(view, up.path.source)}: without the reactance of its coil it burns.`,
        { remedy: 'Take one with a coil for d.c.' },
      ),
    ];
  if (!ac && (up.against === undefined || up.against !== down.against))
    return [
      found(
        coil,
        about,
        'fails',
        `${name(terminal)} lies between ${up.path.source} and ${down.path.source}, which have no 0 V in common: no current flows.`,
        { remedy: 'Join the 0 V of both, once, or take both poles of one supply.' },
      ),
    ];
  if (
    reversed &&
    !ac &&
    nature.leg === 'plus' &&
    nature.suppressor !== undefined &&
    nature.suppressor !== 'none'
  )
    return [
      found(
        coil,
        about,
        'fails',
        `${name(terminal)} is connected the wrong way round, and the diode or clamp across it then shorts whatever switches it.`,
        { remedy: `Exchange ${terminal.id} and ${other}.` },
      ),
    ];
  const low = down.how === 'fixed' ? (down.high ?? 0) : (down.low ?? 0);
  const there = up.high === undefined ? undefined : up.high - low;
  const most = up.top === undefined ? undefined : up.top;
  if (there === undefined || nature.volts === undefined)
    return [
      found(coil, about, 'unknown', `Whether ${name(terminal)} gets its voltage cannot be said.`, {
        needs: [
          ...(there === undefined ? [`${up.path.source}.volts`] : []),
          ...(nature.volts === undefined ? [`${terminal.id}.volts`] : []),
        ],
      }),
    ];
  // IEC 60947-4-1: a contactor must work between 85 and 110 % of its coil voltage (from memory).
  const margin = Math.min(there / (0.85 * nature.volts), (1.1 * nature.volts) / (most ?? there));
  return [
    found(
      coil,
      about,
      verdictOf(margin, 1),
      margin >= 1
        ? `${name(terminal)} is made for ${volts(nature.volts)} and gets ${volts(there)}.`
        : there < 0.85 * nature.volts
          ? `${name(terminal)} is made for ${volts(nature.volts)}, pulls in from ${volts(0.85 * nature.volts)}, and gets ${volts(there)}.`
          : `${name(terminal)} is made for ${volts(nature.volts)} and gets up to ${volts(most ?? there)}: it overheats.`,
      {
        margin,
        figures: [figure('made for', nature.volts, 'V'), figure('gets', there, 'V')],
        source: 'IEC 60947-4-1: 85 to 110 % of the coil voltage, from memory',
        remedy:
          margin >= 1
            ? undefined
            : 'Take one for the voltage that is there, or feed it from a supply of its own voltage.',
        ...(current === undefined ? { needs: [`${terminal.id}.current`] } : {}),
      },
    ),
  ];
}

/** Which end lies higher when it is on. */
const rising = (drive: Drive): number =>
  drive.how === 'sinking' ? -1 : (drive.high ?? (drive.how === 'fixed' ? 0 : 1));

/** The current comes from the supply itself, or from the one that feeds the device whose output gives it. */
function giveToSupply(view: View, up: Drive, down: Drive, current: number | undefined): void {
  const giver = up.how === 'fixed' ? up : down.how === 'fixed' && down.high !== 0 ? down : undefined;
  if (giver) {
    view.give({ to: `supply:${giver.path.source}`, amps: current });
    return;
  }
  giveBehind(view, up, current);
}

/** What an output lifts to plus comes from the supply that feeds its device. */
export function giveBehind(view: View, up: Drive, current: number | undefined): void {
  const source = view.terminal(up.path.source);
  const minus = source?.common ? view.terminal(source.common) : undefined;
  if (minus?.nature.kind !== 'feed' || minus.with === null) return;
  const behind = drivesOf(view, minus.with).find(({ how }) => how === 'fixed');
  if (behind) view.give({ to: `supply:${behind.path.source}`, amps: current });
}

function suppression(
  view: View,
  terminal: Terminal,
  nature: Load,
  other: string,
  drives: readonly Drive[],
): readonly WiringFinding[] {
  if (!nature.inductive || nature.what === 'fan') return [];
  const outside = diodeAcross(view, terminal.id, other);
  const title = `${name(terminal)}`;
  const part = 'spike';
  if (outside === 'reversed')
    return [
      found(
        coil,
        [terminal.id, other],
        'fails',
        `The diode across ${title} lies the wrong way round: it shorts what switches the coil.`,
        { part, remedy: 'Its ring (cathode) goes to plus.' },
      ),
    ];
  const suppressor = outside === 'right' ? 'diode' : nature.suppressor;
  const transistor = drives.find(({ how }) => how === 'sinking' || how === 'sourcing' || how === 'push-pull');
  if (suppressor === undefined)
    return [
      found(
        coil,
        [terminal.id, other],
        'unknown',
        `Whether anything swallows the spike of ${title} when it is switched off is not known.`,
        { part, needs: [`${terminal.id}.suppressor`] },
      ),
    ];
  if (suppressor === 'none')
    return [
      found(
        coil,
        [terminal.id, other],
        transistor ? 'fails' : 'tight',
        transistor
          ? `Nothing swallows the spike of ${title}, and ${terminalName(view, transistor.path.source)} switches it: hundreds of volts hit the output, and sooner or later it dies.`
          : `Nothing swallows the spike of ${title}: it wears the contacts and disturbs the control.`,
        {
          part,
          remedy:
            nature.supply === 'ac'
              ? 'Put a resistor and capacitor, or a varistor, across it.'
              : 'Put a diode with a clamp (or a bidirectional suppressor diode) across it.',
        },
      ),
    ];
  if (nature.supply === 'ac' && (suppressor === 'diode' || suppressor === 'clamp'))
    return [
      found(
        coil,
        [terminal.id, other],
        'fails',
        `${title} runs on a.c., and a diode across it is a short circuit every half wave.`,
        { part, remedy: 'Take a varistor, or a resistor and capacitor.' },
      ),
    ];
  return [release(terminal, nature, suppressor, part)];
}

function release(
  terminal: Terminal,
  nature: Load,
  suppressor: NonNullable<Load['suppressor']>,
  part: string,
): WiringFinding {
  const { volts: coilVolts, ohms, henries } = nature;
  const slow = suppressor === 'diode' && (nature.what === 'coil' || nature.what === 'brake');
  const worked =
    coilVolts !== undefined && ohms !== undefined && henries !== undefined
      ? evaluate(coilSuppression, {
          V: coilVolts,
          R: ohms,
          L: henries,
          Vc: suppressor === 'clamp' ? (nature.clamp ?? coilVolts) : 0.7,
          // Contactors let go at about this share of their current; common practice, no source.
          drop: 0.15,
        })
      : undefined;
  const time = worked?.t.state === 'known' ? worked.t.value : undefined;
  const figures = time === undefined ? [] : [figure('current dies in', time, 'ms')];
  const lasts = time === undefined ? '' : ` Its current takes ${seconds(time)} to die.`;
  return slow
    ? found(
        coil,
        [terminal.id],
        'tight',
        `A plain diode swallows the spike of ${name(terminal)}, and lets it hang on for longer.${lasts} Where it stops something, that costs way.`,
        {
          part,
          figures,
          source: 'derived: current of a coil against a constant voltage',
          remedy: 'Take a diode with a clamp of about the coil’s own voltage.',
        },
      )
    : found(
        coil,
        [terminal.id],
        'fits',
        `The spike of ${name(terminal)} is swallowed (${suppressor.replace('-', ' and ')}).${lasts}`,
        {
          part,
          figures,
          source:
            time === undefined
              ? 'common practice, no source'
              : 'derived: current of a coil against a constant voltage',
        },
      );
}

/** A loose diode across the two ends: its cathode must lie at the plus end. */
function diodeAcross(view: View, plus: string, minus: string): 'right' | 'reversed' | undefined {
  const [up, down] = [view.net(plus), view.net(minus)];
  if (!up || !down) return undefined;
  // On a rail there are many diodes; the end that is switched has its own.
  const [near, far] = view.inNet(up, 'supply').length === 0 ? [up, down] : [down, up];
  for (const each of view.inNet(near, 'diode')) {
    const diode = view.terminal(each)!;
    if (diode.with === null || view.net(diode.with) !== far || diode.nature.kind !== 'diode') continue;
    return (diode.nature.leg === 'cathode') === (near === up) ? 'right' : 'reversed';
  }
  return undefined;
}
