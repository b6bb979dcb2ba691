/** What may be joined to a terminal, best first, and why the rest may not. */
import type { Refit, WiringWire } from '../../refit/types.ts';
import type { Nature, ReadWiring, Terminal, Verdict, WiringFinding } from '../wiring/index.ts';
import type { WiringLook } from './look.ts';

export interface Fit {
  readonly terminal: string;
  /** What joining them would bring. */
  readonly verdict: Verdict;
  readonly why: string;
}

/** At most so many are tried one after another; the rest is said to be there. */
const TRIED = 400;

const ORDER: readonly Verdict[] = ['fits', 'tight', 'unknown', 'fails'];

/** What passes something on may be joined to anything that is no short circuit. */
const THROUGH: readonly Nature['kind'][] = ['joint', 'protection', 'contact', 'resistor', 'diode'];

/** What goes together at all; the rules say whether it does so well. */
const PARTNERS: Readonly<Record<Nature['kind'], readonly Nature['kind'][]>> = {
  output: ['input', 'load', 'common', 'feed', ...THROUGH],
  input: ['output', 'supply', 'common', 'differential-output', ...THROUGH],
  'differential-output': ['differential-input', 'input', 'joint', 'resistor'],
  'differential-input': ['differential-output', 'output', 'joint', 'resistor'],
  'analogue-output': ['analogue-input', 'joint', 'resistor'],
  'analogue-input': ['analogue-output', 'common', 'supply', 'joint', 'resistor'],
  supply: ['feed', 'common', 'load', 'input', 'supply', 'earth', ...THROUGH],
  feed: ['supply', 'feed', 'common', 'output', 'rectifier', 'winding', ...THROUGH],
  common: ['supply', 'feed', 'common', 'output', 'input', 'earth', ...THROUGH],
  load: ['output', 'supply', 'load', 'mains', 'winding', ...THROUGH],
  contact: [
    'output',
    'input',
    'supply',
    'feed',
    'common',
    'load',
    'mains',
    'winding',
    'rectifier',
    'motor-phase',
    'sensor',
    ...THROUGH,
  ],
  'motor-phase': ['motor-phase', 'contact', 'joint', 'resistor', 'protection'],
  mains: ['mains', 'winding', 'load', 'feed', 'rectifier', 'protection', 'contact', 'joint'],
  earth: ['earth', 'shield', 'supply', 'common', 'joint'],
  shield: ['shield', 'earth', 'common', 'joint'],
  joint: [
    'output',
    'input',
    'differential-output',
    'differential-input',
    'analogue-output',
    'analogue-input',
    'supply',
    'feed',
    'common',
    'load',
    'motor-phase',
    'mains',
    'earth',
    'shield',
    'winding',
    'rectifier',
    'sensor',
    'unclear',
    ...THROUGH,
  ],
  protection: [
    'supply',
    'feed',
    'mains',
    'winding',
    'rectifier',
    'load',
    'motor-phase',
    'input',
    'common',
    ...THROUGH,
  ],
  winding: ['mains', 'rectifier', 'feed', 'load', 'protection', 'contact', 'joint'],
  rectifier: ['winding', 'mains', 'feed', 'common', 'resistor', 'protection', 'contact', 'joint'],
  resistor: [
    'output',
    'input',
    'supply',
    'feed',
    'common',
    'differential-input',
    'differential-output',
    'rectifier',
    'analogue-input',
    'analogue-output',
    'motor-phase',
    'load',
    ...THROUGH,
  ],
  diode: ['output', 'supply', 'load', 'common', 'input', ...THROUGH],
  sensor: ['sensor', 'contact', 'joint'],
  unclear: [],
};

/** Ordered: what fits, then what is tight, not known, and what does not fit. */
export function whatFits(look: WiringLook, refit: Refit, from: string): readonly Fit[] {
  const { read } = look.look(refit);
  const own = read.terminals.get(from);
  if (!own) return [];
  const net = read.netOf.get(from);
  const others = [...read.terminals.values()].filter(
    (each) => each.device !== own.device && read.netOf.get(each.id) !== net,
  );
  const could = others
    .filter((each) => PARTNERS[own.nature.kind].includes(each.nature.kind))
    .sort((a, b) => nearness(own, b, read) - nearness(own, a, read));
  const tried = could.slice(0, TRIED).map((each) => fitOf(look, refit, own, each));
  const untried = could.slice(TRIED).map(
    ({ id }): Fit => ({
      terminal: id,
      verdict: 'unknown',
      why: `Not tried: ${could.length} terminals could be joined, and ${TRIED} nearer ones were tried.`,
    }),
  );
  const never = others
    .filter((each) => !PARTNERS[own.nature.kind].includes(each.nature.kind))
    .map((each): Fit => ({ terminal: each.id, ...notAtAll(own, each) }));
  const at = new Map(could.map(({ id }, index) => [id, index]));
  return [
    ...[...tried, ...untried].sort(
      (a, b) =>
        ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict) || at.get(a.terminal)! - at.get(b.terminal)!,
    ),
    ...never,
  ];
}

function fitOf(look: WiringLook, refit: Refit, own: Terminal, other: Terminal): Fit {
  const wire: WiringWire = { id: 'tried', from: own.id, to: other.id, cable: null, settings: {} };
  const said = look.tryWire(refit, wire).filter(({ rule }) => !OF_THE_WIRE.has(rule));
  const worst = [...said].sort((a, b) => ORDER.indexOf(b.verdict) - ORDER.indexOf(a.verdict))[0];
  return worst
    ? { terminal: other.id, verdict: worst.verdict, why: reason(worst) }
    : { terminal: other.id, verdict: 'fits', why: 'No rule is against it.' };
}

/** A wire that is only tried has no section and no colour yet; that says nothing of the two terminals. */
const OF_THE_WIRE: ReadonlySet<string> = new Set(['line', 'shield', 'separation']);

const reason = ({ sentence, remedy }: WiringFinding): string =>
  remedy ? `${sentence} What would make it right: ${remedy}` : sentence;

/** The same signal before others, what is free before what is taken. */
function nearness(own: Terminal, other: Terminal, read: ReadWiring): number {
  const isSame = own.signal !== '' && own.signal === other.signal;
  const isFree = (read.netOf.get(other.id)?.wires.length ?? 0) === 0;
  const isThrough = THROUGH.includes(other.nature.kind);
  return (isSame ? 8 : 0) + (isThrough ? 0 : 2) + (isFree ? 1 : 0);
}

function notAtAll({ nature }: Terminal, other: Terminal): Pick<Fit, 'verdict' | 'why'> {
  if (nature.kind === 'unclear' || other.nature.kind === 'unclear')
    return { verdict: 'unknown', why: 'Nobody has said yet what one of the two is.' };
  return {
    verdict: 'fails',
    why: `${capital(WORDS[nature.kind])} and ${WORDS[other.nature.kind]} do not belong together.`,
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const WORDS: Readonly<Record<Nature['kind'], string>> = {
  output: 'an output',
  input: 'an input',
  'differential-output': 'a pair that sends',
  'differential-input': 'a pair that receives',
  'analogue-output': 'an analogue voltage',
  'analogue-input': 'an input for an analogue voltage',
  supply: 'the pole of a supply',
  feed: 'what feeds a device',
  common: 'a common',
  load: 'a coil, lamp or motor',
  contact: 'a contact',
  'motor-phase': 'the winding of a motor',
  mains: 'the mains',
  earth: 'protective earth',
  shield: 'the shield of a cable',
  joint: 'a joint',
  protection: 'a fuse or breaker',
  winding: 'the winding of a transformer',
  rectifier: 'a rectifier',
  resistor: 'a resistor',
  diode: 'a diode',
  sensor: 'the signal of a sensor',
  unclear: 'what nobody has said yet',
};
