/** `fettle cut`: what a cut asks of spindle and axes. */

import { parseQuantity } from '../../engine/quantity/index.ts';
import { type Capacity, cutOf, OPERATIONS, type Operation } from '../../engine/threads/index.ts';
import { shown } from '../arguments.ts';
import { assignment } from '../assignment.ts';
import type { Call, Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { cutJson } from '../json/cut.ts';
import { printCut } from '../print/cut.ts';
import { pageOn } from '../print/page.ts';
import { need, Refusal } from '../refusal.ts';
import { askBack } from '../words-asked.ts';

export const cut: Command = {
  name: 'cut',
  summary: 'force, power and torque of a cut, and what it asks of the machine',
  usage: ['cut OPERATION WORD=VALUE … [--power POWER] [--torque TORQUE] [--force FORCE] [--anyway] [--json]'],
  about: `OPERATION is ${OPERATIONS.join(', ')}. Each takes its words, such as material=steel diameter=60mm depth=2mm feed=0.2mm speed=120m/min; what is missing is asked by name, and what was taken as usual is said. With what the machine has (power of the motor, torque of the spindle, force of the axis) it says whether that is enough and up to which feed. The exit code is 1 when something is not enough.`,
  options: {
    power: { takes: 'a power', says: 'of the spindle motor' },
    torque: { takes: 'a torque', says: 'of the spindle at that speed' },
    force: { takes: 'a force', says: 'the feeding axis can push with' },
    anyway: { says: 'reckon with a number although it is far outside what is plausible' },
    json: { says: 'as JSON' },
  },
  examples: [
    'cut turning material=steel diameter=60mm depth=2mm feed=0.2mm speed=120m/min',
    'cut drilling material=mild-steel diameter=12mm feed=0.2mm speed=20m/min --force 2kN',
    'cut tapping material=steel thread=M10 speed=200rpm',
  ],
  words: [1],
  run: (call) => {
    const { io, words, has } = call;
    const typed: Record<string, string> = Object.create(null);
    for (const word of words.slice(1)) {
      const [name, value] = assignment(word, 'word=value, such as feed=0.2mm');
      const key = name.toLowerCase();
      if (key in typed) throw new Refusal(`${shown(key)} was given twice; give it once.`);
      typed[key] = value;
    }
    const capacity = capacityOf(call);
    const cutting = cutOf(words[0]!, typed, capacity);
    if (!cutting.ok && cutting.problem.code === 'empty')
      throw new Refusal(`${cutting.problem.message} All of it, for example: ${exampleFor(words[0]!)}`);
    const worked = need(cutting);
    const questions = [
      ...askBack(typed, has('anyway')),
      ...askBack(capacityTyped(call), has('anyway'), (word) => `--${word}`),
    ];
    const answer = { ...worked, notes: [...questions, ...worked.notes] };
    if (has('json')) io.out(`${JSON.stringify(cutJson(answer), null, 2)}\n`);
    else printCut(pageOn(io), answer);
    return answer.asked.some(({ margin }) => margin !== undefined && margin < 1) ? EXIT.fails : EXIT.fine;
  },
};

/** Invented. */
const WORDS: Readonly<Record<Operation, string>> = {
  turning: 'material=steel diameter=60mm depth=2mm feed=0.2mm speed=120m/min',
  boring: 'material=steel diameter=60mm depth=1mm feed=0.1mm speed=100m/min bar=20mm overhang=80mm',
  parting: 'material=steel diameter=40mm width=3mm feed=0.08mm speed=80m/min',
  drilling: 'material=steel diameter=12mm feed=0.2mm speed=20m/min',
  milling: 'material=steel diameter=16mm teeth=4 depth=3mm width=8mm feed=0.05mm speed=100m/min',
  threading: 'material=steel thread=M20x1.5 speed=60m/min',
  tapping: 'material=steel thread=M10 speed=200rpm',
};

/** A whole line for an operation that the book has. */
const exampleFor = (operation: string): string => {
  const name = operation.trim().toLowerCase() as Operation;
  return `fettle cut ${name} ${WORDS[name]}`;
};

const CAPACITIES = ['power', 'torque', 'force'] as const;

const capacityTyped = ({ text }: Call): Readonly<Record<string, string>> =>
  Object.fromEntries(CAPACITIES.flatMap((key) => (text(key) === undefined ? [] : [[key, text(key)!]])));

function capacityOf({ text }: Call): Capacity {
  const units = { power: 'kW', torque: 'N·m', force: 'N' } as const;
  const found: { -readonly [K in keyof Capacity]: Capacity[K] } = {};
  for (const key of CAPACITIES) {
    const typed = text(key);
    if (typed === undefined) continue;
    const { value } = need(parseQuantity(typed, units[key]), `--${key}: `);
    if (!(value > 0)) throw new Refusal(`--${key} must be above zero.`);
    found[key] = value;
  }
  return found;
}
