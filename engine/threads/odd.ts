/** Numbers typed for threads and cuts that are hardly what was meant: usual spans of each word, and what is asked back. */
import { factSpec } from '../parts/index.ts';
import { askBack } from '../quantity/ask-back.ts';
import { parseQuantity } from '../quantity/index.ts';
import { own } from '../quantity/own.ts';
import { askOutside, type Span } from '../quantity/plausible.ts';
import { LONGEST } from './text.ts';

export interface OddWord {
  readonly word: string;
  /** A question, whole sentences. */
  readonly sentence: string;
  /** So far outside that a slip of the hand is likelier: nothing is done with it until the person says so. */
  readonly isFar: boolean;
}

interface Usual {
  readonly name: string;
  /** The unit it is typed in, and what is usual in it; several where it may be said several ways. */
  readonly ways: readonly (readonly [unit: string, span: Span])[];
}

const usual = (name: string, unit: string, low: string, high: string): Usual => ({
  name,
  ways: [[unit, [low, high]]],
});

/** What the parts call plausible for the same thing. */
function asFact(name: string, place: string, fact: string): Usual {
  const spec = factSpec(place, fact);
  if (spec?.kind !== 'quantity') throw new TypeError(`${place}.${fact} is no quantity`);
  return { name, ways: [[spec.unit, spec.plausible]] };
}

const SPINDLE_SPEED = ['r/min', ['5 r/min', '40000 r/min']] as const;

/** By the word it is typed for; common practice of small machines, no source, where the parts do not say it. */
const USUAL: Readonly<Record<string, Usual>> = {
  rapid: asFact('fastest speed of the axis', 'duty', 'rapid'),
  accel: asFact('acceleration of the axis', 'duty', 'acceleration'),
  gain: usual('gain of the position loop', '1/s', '2 1/s', '300 1/s'),
  spindle: { name: 'spindle speed', ways: [SPINDLE_SPEED] },
  speed: { name: 'speed', ways: [SPINDLE_SPEED, ['m/min', ['1 m/min', '2000 m/min']]] },
  base: { name: 'speed above which the torque falls', ways: [SPINDLE_SPEED] },
  inertia: usual('inertia of the spindle', 'kg·m²', '1e-5 kg·m²', '20 kg·m²'),
  torque: usual('torque of the spindle', 'N·m', '0.1 N·m', '2000 N·m'),
  power: usual('power of the spindle motor', 'kW', '0.05 kW', '40 kW'),
  force: asFact('force of the axis', 'duty', 'cutForce'),
  length: usual('length of thread', 'mm', '1 mm', '1000 mm'),
  room: usual('free length before the thread', 'mm', '0.5 mm', '500 mm'),
  lead: usual('travel of one turn', 'mm', '0.2 mm', '100 mm'),
  cutter: usual('diameter of the thread mill', 'mm', '1 mm', '100 mm'),
  depth: usual('depth', 'mm', '0.02 mm', '200 mm'),
  hole: usual('depth or diameter of the hole', 'mm', '1 mm', '500 mm'),
  float: usual('float of the holder', 'mm', '0.1 mm', '30 mm'),
  diameter: usual('diameter of work or tool', 'mm', '0.5 mm', '1000 mm'),
  width: usual('width of cut or blade', 'mm', '0.1 mm', '200 mm'),
  infeed: usual('infeed of one pass', 'mm', '0.01 mm', '5 mm'),
  feed: usual('feed', 'mm', '0.003 mm', '3 mm'),
  bar: usual('diameter of the boring bar', 'mm', '3 mm', '100 mm'),
  overhang: usual('length the bar stands out', 'mm', '5 mm', '600 mm'),
  wear: usual('wear of the tool', '1', '1', '3'),
  edge: usual('angle of the edge', 'deg', '15 deg', '120 deg'),
  point: usual('point angle of the drill', 'deg', '60 deg', '180 deg'),
  grip: usual('diameter the jaws grip', 'mm', '3 mm', '1000 mm'),
};

/** What is to be asked back of words as typed. What cannot be read is left to whoever reads it. */
export const oddWords = (typed: Readonly<Record<string, string>>): readonly OddWord[] =>
  Object.entries(typed).flatMap(([word, text]) => {
    const odd = oddWord(word, text);
    return odd ? [odd] : [];
  });

function oddWord(word: string, text: string): OddWord | undefined {
  const found = own(USUAL, word);
  if (!found || text.length > LONGEST) return undefined;
  for (const [unit, plausible] of found.ways) {
    const read = parseQuantity(text, unit);
    if (!read.ok) continue;
    const { value } = read.value;
    // Nought and less are refused where they are read.
    if (!(value > 0)) return undefined;
    const far = askBack({ name: found.name, unit, plausible }, value, read.value);
    const sentence = far ?? askOutside(found.name, value, plausible, unit);
    return sentence === undefined ? undefined : { word, sentence, isFar: far !== undefined };
  }
  return undefined;
}
