import { figure, found, type Rule } from '../check/rule.ts';
import { list } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Cable, Nature } from '../types.ts';

const EMC = 'common practice of electromagnetic compatibility, no source';

/** What a cable carries, by the terminals its cores end on. */
type Carries = 'mains' | 'motor' | 'power' | 'switched' | 'analogue' | 'signal';

function carriesOf(nature: Nature): Carries | undefined {
  switch (nature.kind) {
    case 'mains':
    case 'winding':
      return 'mains';
    case 'motor-phase':
      return 'motor';
    case 'load':
      return 'switched';
    case 'feed':
      return nature.role === 'power' ? 'power' : undefined;
    case 'analogue-input':
    case 'analogue-output':
      return 'analogue';
    case 'input':
    case 'output':
    case 'differential-input':
    case 'differential-output':
      return 'signal';
    default:
      return undefined;
  }
}

interface Contents {
  readonly carries: ReadonlySet<Carries>;
  /** Wires that end on a shield, with how many of their ends are earthed. */
  readonly shields: readonly { readonly wire: string; readonly earthed: number; readonly ends: number }[];
}

function contentsOf(view: View, cable: Cable): Contents {
  const carries = new Set<Carries>();
  const shields: Contents['shields'][number][] = [];
  for (const id of cable.wires) {
    const wire = view.wire(id)!;
    let earthed = 0;
    let ends = 0;
    for (const end of [wire.from, wire.to]) {
      const terminal = view.terminal(end);
      if (!terminal) continue;
      const { nature } = terminal;
      // Millivolts of a resolver; the test loops of a safety relay are no signal.
      const what = nature.kind === 'sensor' && terminal.signal !== '' ? 'analogue' : carriesOf(nature);
      if (what) carries.add(what);
      if (nature.kind === 'shield') {
        ends++;
        if (nature.earthed) earthed++;
      }
    }
    if (ends > 0) shields.push({ wire: id, earthed, ends });
  }
  return { carries, shields };
}

/** The shield of a cable: joined where it must be. */
export const shield: Rule = {
  id: 'shield',
  title: 'Is the shield joined at the right ends?',
  of: 'cable',
  judge: (view, id) => {
    const cable = view.cable(id)!;
    const { carries, shields } = contentsOf(view, cable);
    if (carries.size === 0) return [];
    const about = [id, ...shields.map(({ wire }) => wire)];
    const name = cable.name === '' ? id : cable.name;
    const wanted = carries.has('motor')
      ? 'motor'
      : carries.has('analogue')
        ? 'analogue'
        : carries.has('signal')
          ? 'signal'
          : undefined;
    if (!wanted) return [];
    const fast = cable.wires.some((wire) => {
      const read = view.wire(wire)!;
      return [read.from, read.to].some(
        (end) => view.terminal(end)?.nature.kind.startsWith('differential') === true,
      );
    });
    if (cable.shield === 'none' || cable.shield === 'unknown') {
      if (wanted === 'signal' && !fast) return [];
      const why =
        wanted === 'motor'
          ? 'The drive switches thousands of times a second, and an open motor cable radiates that into every signal.'
          : wanted === 'analogue'
            ? 'A few millivolts picked up are speed.'
            : 'Pulses picked up are counted.';
      return [
        found(
          shield,
          about,
          cable.shield === 'none' ? 'tight' : 'unknown',
          `${name} ${cable.shield === 'none' ? 'has no shield' : 'is not said to have a shield or none'}. ${why}`,
          {
            source: EMC,
            remedy: 'Take a shielded cable.',
            ...(cable.shield === 'unknown' ? { needs: [`${id}.shield`] } : {}),
          },
        ),
      ];
    }
    const earthed = shields.reduce((sum, each) => sum + each.earthed, 0);
    if (earthed === 0)
      return [
        found(
          shield,
          about,
          'tight',
          `The shield of ${name} is joined to earth at no end: it does nothing.`,
          {
            source: EMC,
            remedy:
              wanted === 'motor'
                ? 'Clamp it all round at the drive and at the motor.'
                : 'Clamp it all round where the signal is read.',
          },
        ),
      ];
    if (wanted === 'motor' && earthed < 2)
      return [
        found(
          shield,
          about,
          'tight',
          `The shield of ${name} is earthed at one end only; against what a drive radiates it must be clamped all round at both.`,
          { source: EMC, remedy: 'Clamp it at the other end too.' },
        ),
      ];
    if (wanted !== 'motor' && earthed > 1)
      return [
        found(
          shield,
          about,
          wanted === 'analogue' ? 'tight' : 'fits',
          wanted === 'analogue'
            ? `The shield of ${name} is earthed at both ends: current between the two earths then flows along it and hums in the signal.`
            : `The shield of ${name} is earthed at both ends; that is right for fast signals where both ends stand on the same earth.`,
          {
            source: EMC,
            remedy: wanted === 'analogue' ? 'Cut it back and insulate it at the end that sends.' : undefined,
          },
        ),
      ];
    return [
      found(
        shield,
        about,
        'fits',
        `The shield of ${name} is earthed ${wanted === 'motor' ? 'at both ends' : 'where the signal is read'}.`,
        { source: EMC },
      ),
    ];
  },
};

/** Mains, motors and signals that share a jacket or a way. */
export const separation: Rule = {
  id: 'separation',
  title: 'Are mains and motors kept away from signals?',
  of: 'cable',
  judge: (view, id) => {
    const cable = view.cable(id)!;
    const { carries } = contentsOf(view, cable);
    const loud = (['mains', 'motor', 'power'] as const).filter((each) => carries.has(each));
    const quiet = (['analogue', 'signal'] as const).filter((each) => carries.has(each));
    const name = cable.name === '' ? id : cable.name;
    const made = [];
    if (loud.length > 0 && quiet.length > 0)
      made.push(
        found(
          separation,
          [id],
          'fails',
          `${name} carries ${list(loud.map(sayCarries))} and ${list(quiet.map(sayCarries))} in one jacket: the signals pick up what the others radiate${loud.includes('mains') ? ', and a nick in the insulation puts mains on the control' : ''}.`,
          { source: EMC, remedy: 'Lay the signals in a cable of their own.' },
        ),
      );
    if (loud.includes('mains') && loud.includes('motor'))
      made.push(
        found(separation, [id], 'tight', `${name} carries mains and a motor in one jacket.`, {
          part: 'mains',
          source: EMC,
          remedy: 'Lay them apart.',
        }),
      );
    if (cable.route !== '' && quiet.length > 0 && loud.length === 0) {
      const mates = view.cablesOnRoute(cable.route).filter((other) => {
        if (other === id) return false;
        const { carries: theirs } = contentsOf(view, view.cable(other)!);
        return theirs.has('mains') || theirs.has('motor') || theirs.has('power');
      });
      if (mates.length > 0)
        made.push(
          found(
            separation,
            [id, ...mates],
            'tight',
            `${name} lies on the same way (${cable.route}) as ${list(mates)}, which carry power.`,
            {
              part: 'route',
              figures: [figure('wanted apart', 0.2, 'mm')],
              source: EMC,
              remedy: 'Keep 200 mm between them; where they must cross, cross at a right angle.',
            },
          ),
        );
    }
    return made;
  },
};

const SAY: Readonly<Record<Carries, string>> = {
  mains: 'mains',
  motor: 'a motor',
  power: 'power of the drives',
  switched: 'coils',
  analogue: 'an analogue signal',
  signal: 'signals',
};
const sayCarries = (what: Carries): string => SAY[what];
