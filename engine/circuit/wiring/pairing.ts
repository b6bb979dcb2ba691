/** Whether two terminals may be joined by a wire, from what they are: before any rule is asked. */
import { capital } from '../../quantity/words.ts';
import type { Nature, Terminal } from './types.ts';

export interface Pairing {
  readonly fits: boolean;
  /** Higher is better: 3 made for each other, 2 usual, 1 possible. */
  readonly rank: 0 | 1 | 2 | 3;
  readonly why: string;
}

const yes = (rank: 1 | 2 | 3, why: string): Pairing => ({ fits: true, rank, why });
const no = (why: string): Pairing => ({ fits: false, rank: 0, why });

/** In words, for sentences. */
export function sayNature(nature: Nature): string {
  switch (nature.kind) {
    case 'output':
      return nature.stage === 'sinking'
        ? 'an output that pulls to minus'
        : nature.stage === 'sourcing'
          ? 'an output that gives plus'
          : 'an output';
    case 'input':
      return 'an input';
    case 'differential-output':
      return `the ${nature.half} half of a differential output`;
    case 'differential-input':
      return `the ${nature.half} half of a differential input`;
    case 'analogue-output':
      return 'an analogue output';
    case 'analogue-input':
      return 'an analogue input';
    case 'supply':
      return nature.pole === 'plus' ? 'plus of a supply' : '0 V of a supply';
    case 'feed':
      return nature.pole === 'plus' ? 'a terminal that is fed with plus' : 'the 0 V of a device';
    case 'common':
      return 'a common';
    case 'load':
      return nature.what === 'other' ? 'a load' : `a ${nature.what}`;
    case 'contact':
      return 'a contact';
    case 'motor-phase':
      return nature.side === 'gives' ? 'a motor output of a drive' : 'a motor lead';
    case 'mains':
      return nature.pole === 'N' ? 'mains, neutral' : 'mains, phase';
    case 'earth':
      return 'protective earth';
    case 'shield':
      return 'a shield';
    case 'joint':
      return 'a joint';
    case 'protection':
      return 'a fuse or switch';
    case 'winding':
      return `a ${nature.side} winding`;
    case 'rectifier':
      return 'a rectifier';
    case 'resistor':
      return 'a resistor';
    case 'diode':
      return 'a diode';
    case 'sensor':
      return 'a test signal';
    case 'unclear':
      return 'a terminal nobody has described';
  }
}

type Judge = (a: Terminal, b: Terminal) => Pairing | undefined;

/** Asked in this order, both ways round; the first answer counts. */
const JUDGES: readonly Judge[] = [
  earth,
  shield,
  joint,
  mains,
  motor,
  differential,
  analogue,
  output,
  input,
  supply,
  rest,
];

export function pairing(a: Terminal, b: Terminal): Pairing {
  if (a.id === b.id) return no('A wire from a terminal to itself joins nothing.');
  for (const judge of JUDGES) {
    const found = judge(a, b) ?? judge(b, a);
    if (found) return found;
  }
  return no(`${capital(sayNature(a.nature))} and ${sayNature(b.nature)} are not made for each other.`);
}

function earth({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'earth') return undefined;
  if (b.kind === 'earth')
    return (a.role === 'bar') !== (b.role === 'bar')
      ? yes(3, 'A protective conductor of its own, to the bar.')
      : yes(1, 'Earth to earth; each part should have its own conductor to the bar.');
  if (b.kind === 'supply' && b.pole === 'minus') return yes(1, '0 V is earthed, once.');
  if (b.kind === 'shield') return yes(1, 'A shield on earth.');
  if (b.kind === 'joint') return yes(1, 'By way of a terminal strip.');
  return no(`Protective earth carries no current in normal work; ${sayNature(b)} does not belong on it.`);
}

function shield({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'shield') return undefined;
  if (b.kind === 'shield') return yes(3, 'The two ends of one shield.');
  if (b.kind === 'joint') return yes(1, 'By way of a plug.');
  return no('A shield is joined only to earth or to the other end of itself.');
}

function joint({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'joint') return undefined;
  return yes(1, `By way of a terminal strip or plug${b.kind === 'joint' ? '' : `: ${sayNature(b)}`}.`);
}

function mains({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'mains' && !(a.kind === 'winding' && a.side === 'primary')) return undefined;
  switch (b.kind) {
    case 'mains':
      if (a.kind === 'mains' && a.pole !== b.pole && (a.pole === 'N') !== (b.pole === 'N'))
        return no('Phase and neutral: a short circuit, or a device that stays live when it is off.');
      return a.kind === 'mains' && a.side === b.side
        ? yes(1, 'The same pole of the mains.')
        : yes(3, 'Mains, pole to pole.');
    case 'protection':
      return yes(2, 'Mains through a fuse or switch.');
    case 'contact':
      return b.role === 'main'
        ? yes(2, 'Mains through a main contact.')
        : yes(1, 'Mains through a contact, if it is rated for it.');
    case 'winding':
      return b.side === 'primary'
        ? yes(3, 'Mains on a primary.')
        : no('Mains on a secondary would come out of the primary as hundreds of volts more.');
    case 'load':
      return b.supply === 'dc' ? no('It is made for d.c., and mains are a.c.') : yes(1, 'A load for a.c.');
    default:
      return no(`Mains on ${sayNature(b)} destroy it, and put mains where a hand may be.`);
  }
}

function motor({ nature: a, signal }: Terminal, { nature: b, signal: other }: Terminal): Pairing | undefined {
  if (a.kind !== 'motor-phase') return undefined;
  if (b.kind !== 'motor-phase') return no('A motor lead goes to its drive and to nothing else.');
  if (a.side === b.side)
    return no(
      a.side === 'gives'
        ? 'Outputs of drives must never meet.'
        : 'Two motors on one drive pull against each other.',
    );
  if (a.of !== b.of) return no('The drive is made for another kind of motor.');
  return signal === other
    ? yes(3, 'The same lead at drive and motor.')
    : yes(1, 'The leads would be exchanged.');
}

function differential({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'differential-output' && a.kind !== 'differential-input') return undefined;
  if (b.kind === 'resistor') return yes(1, 'A termination across the pair.');
  if (a.kind === 'differential-output' && b.kind === 'differential-input')
    return a.half === b.half
      ? yes(3, 'The same half of a pair.')
      : no('The halves of the pair would be exchanged: the signal arrives upside down.');
  if (a.kind === 'differential-output' && b.kind === 'input' && b.form === 'opto' && b.leg !== 'only')
    return (b.leg === 'plus') === (a.half === 'plus')
      ? yes(1, 'A pair can drive an opto input, if its voltage is enough.')
      : no('Plus and minus would be exchanged.');
  if (a.kind === 'differential-input' && b.kind === 'differential-output') return undefined;
  return no(
    `${capital(sayNature(a))} belongs to the same half of a differential ${a.kind === 'differential-output' ? 'input' : 'output'}; ${sayNature(b)} is a single line.`,
  );
}

function analogue({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind === 'analogue-output') {
    if (b.kind === 'analogue-input')
      return b.leg === 'minus'
        ? no('Its minus goes to the 0 V of the output.')
        : yes(3, 'An analogue command.');
    return no(`An analogue output drives an analogue input; ${sayNature(b)} is none.`);
  }
  if (a.kind !== 'analogue-input') return undefined;
  if (b.kind === 'analogue-output') return undefined;
  return b.kind === 'common' && a.leg === 'minus'
    ? yes(3, 'The return of the command.')
    : no(`An analogue input wants an analogue output; ${sayNature(b)} is none.`);
}

function output({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'output') return undefined;
  switch (b.kind) {
    case 'input':
      if (a.stage === 'sinking' && (b.form === 'sinking' || (b.form === 'opto' && b.leg === 'plus')))
        return no('The output pulls to minus (NPN), and the input wants to be given plus.');
      if (a.stage === 'sourcing' && (b.form === 'sourcing' || (b.form === 'opto' && b.leg === 'minus')))
        return no('The output gives plus (PNP), and the input wants to be pulled to minus.');
      return yes(3, 'An output for an input.');
    case 'load':
      if (b.leg === 'plus' && a.stage === 'sinking')
        return no('The output pulls to minus; it belongs at the other end of the load.');
      if (b.leg === 'minus' && a.stage === 'sourcing')
        return no('The output gives plus; it belongs at the other end of the load.');
      return yes(2, 'The output switches the load.');
    case 'output':
      return a.stage === b.stage && a.stage !== 'push-pull'
        ? yes(1, 'Outputs that only let go or pull may share a wire.')
        : no('Two outputs on one wire work against each other.');
    case 'resistor':
    case 'diode':
    case 'contact':
      return yes(1, 'Possible.');
    case 'supply':
      return no('An output joined straight to a supply is shorted when it switches.');
    case 'common':
    case 'feed':
      return no('That is what its voltages count against, or what feeds it; the output would be shorted.');
    default:
      return undefined;
  }
}

function input({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'input') return undefined;
  switch (b.kind) {
    case 'supply': {
      const wantsPlus = a.form === 'opto' ? a.leg !== 'minus' : a.form === 'sinking';
      if (a.most !== undefined && b.pole === 'plus' && b.volts !== undefined && b.volts > a.most)
        return no(`${b.volts} V are more than it survives (${Number(a.most.toPrecision(3))} V).`);
      return a.leg === 'only' && (b.pole === 'plus') === wantsPlus
        ? yes(1, 'It would be on for good.')
        : yes(2, 'One end held; the output switches the other.');
    }
    case 'contact':
      return yes(2, 'A switch for an input.');
    case 'common':
      return yes(1, 'The return of the input.');
    case 'resistor':
      return yes(1, 'A pull-up or a series resistor.');
    case 'input':
      return yes(1, 'Two inputs that read the same.');
    default:
      return undefined;
  }
}

function supply({ nature: a }: Terminal, { nature: b }: Terminal): Pairing | undefined {
  if (a.kind !== 'supply') return undefined;
  const plus = a.pole === 'plus';
  switch (b.kind) {
    case 'feed': {
      if ((b.pole === 'plus') !== plus) return no('Plus and minus would be exchanged.');
      if (!plus || a.volts === undefined) return yes(3, plus ? 'It is fed from here.' : 'Its 0 V.');
      const least = b.least ?? (b.volts === undefined ? undefined : b.volts * 0.9);
      const most = b.most ?? (b.volts === undefined ? undefined : b.volts * 1.1);
      if (most !== undefined && a.volts > most)
        return no(`${a.volts} V are more than it stands (${Number(most.toPrecision(3))} V).`);
      if (least !== undefined && a.volts < least)
        return no(`${a.volts} V are less than it needs (${Number(least.toPrecision(3))} V).`);
      return yes(3, 'It is fed from here.');
    }
    case 'supply':
      if (plus && b.pole === 'plus') return no('Two supplies on one rail fight each other.');
      return plus === (b.pole === 'plus')
        ? yes(1, '0 V of both, joined once.')
        : no('Plus to minus: in series at best, a short circuit at worst.');
    case 'load':
      if (b.supply === 'ac') return no('It is made for a.c.');
      return b.leg === 'either' || (b.leg === 'plus') === plus
        ? yes(2, plus ? 'Fed from here.' : 'Its 0 V.')
        : yes(1, 'The output would have to switch the other end.');
    case 'common':
      return plus
        ? b.of === 'inputs'
          ? yes(1, 'Common at plus: for NPN sensors.')
          : no('That common is a 0 V.')
        : yes(2, 'Common at 0 V.');
    case 'protection':
    case 'contact':
      return plus
        ? yes(2, 'Through a fuse or contact.')
        : yes(1, 'Possible; plus is the pole that is fused and switched.');
    case 'resistor':
    case 'diode':
      return yes(1, 'Possible.');
    default:
      return undefined;
  }
}

/** Pieces that lie in a line of others. */
const PASSIVE: ReadonlySet<Nature['kind']> = new Set([
  'contact',
  'protection',
  'resistor',
  'diode',
  'load',
  'feed',
  'common',
  'unclear',
  'sensor',
]);

function rest(one: Terminal, other: Terminal): Pairing | undefined {
  const [a, b] = [one.nature, other.nature];
  if (a.kind === 'winding' && a.side === 'secondary' && b.kind === 'rectifier')
    return b.leg === 'ac'
      ? yes(3, 'The secondary feeds the rectifier.')
      : no('A.c. belongs on the a.c. side of the rectifier.');
  if (a.kind === 'sensor' && b.kind === 'sensor' && one.signal !== '' && other.signal !== '')
    return a.side === b.side
      ? undefined
      : one.signal === other.signal
        ? yes(3, 'The same winding of the resolver.')
        : no('Another winding, or its other end: the angle would be read wrong.');
  if (a.kind === 'sensor' && b.kind === 'sensor')
    return a.side !== b.side ? yes(1, 'A loop closed straight away.') : undefined;
  if (PASSIVE.has(a.kind) && PASSIVE.has(b.kind))
    return yes(a.kind === 'contact' || b.kind === 'contact' ? 2 : 1, 'Possible.');
  if (a.kind === 'winding' && a.side === 'secondary' && (b.kind === 'protection' || b.kind === 'load'))
    return yes(2, 'Fed from the secondary.');
  return undefined;
}
