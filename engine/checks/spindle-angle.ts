/** Spindle feedback: does the control know the spindle's angle well enough for the threads that are wanted. */
import { gearTurns } from '../handbook/gear-turns.ts';
import { spindleCounts } from '../handbook/spindle-counts.ts';
import { type Check, type Facts, ifChoice, ifKnown } from './check.ts';
import { fact, inapplicable, policy, stated, when } from './refs.ts';
import { steps } from './spindle-chain.ts';
import { spindleWorking } from './working.ts';

const gears = spindleWorking('encoder-gears', 'Turns of the encoder', gearTurns, {
  z_s: fact('spindle-feedback', 'spindleTeeth'),
  z_e: fact('spindle-feedback', 'encoderTeeth'),
});

/** Encoder turns for one turn of the spindle. */
export const ENCODER_TURNS = when('spindle-feedback', 'driven', {
  spindle: stated('1', '1', 'straight on the spindle'),
  toothed: gears.get('u'),
  'v-belt': inapplicable('A V-belt slips: its counts belong to no angle of the spindle.'),
  motor: steps.get('i_fast'),
});

const counts = spindleWorking('spindle-counts', 'Counts of the spindle’s encoder', spindleCounts, {
  N: fact('spindle-feedback', 'lines'),
  u: ENCODER_TURNS,
  n: fact('spindle-duty', 'topSpeed'),
  P: fact('spindle-duty', 'threadPitch'),
});

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** Turns of encoder and spindle after which both stand as before, in lowest terms; undefined for what is no count of teeth. */
export function wholeTurns(
  spindleTeeth: number,
  encoderTeeth: number,
): { readonly encoder: number; readonly spindle: number } | undefined {
  const [a, b] = [Math.round(spindleTeeth), Math.round(encoderTeeth)];
  if (a < 1 || b < 1 || Math.abs(a - spindleTeeth) > 1e-6 || Math.abs(b - encoderTeeth) > 1e-6)
    return undefined;
  const common = greatestCommon(a, b);
  return { encoder: a / common, spindle: b / common };
}

const no = (sentence: string) => ({ answer: 'no' as const, sentence });
const tight = (sentence: string) => ({ answer: 'tight' as const, sentence });
const yes = (sentence: string) => ({ answer: 'yes' as const, sentence });

const follows = (facts: Facts) => {
  const wants = facts.choice('spindle-duty', 'threading');
  const there = facts.fitted('spindle-feedback');
  if (there === false)
    return no(
      'Nothing tells the control where the spindle stands. Threads with a single point need an encoder on it, with an index.',
    );
  const type = facts.choice('spindle-feedback', 'type');
  if (wants === undefined || type === undefined) return undefined;
  if (type === 'tacho')
    return no('A tachogenerator tells the speed and no angle: no thread can be cut by it. Fit an encoder.');
  if (type === 'pulse')
    return wants === 'tapping'
      ? no(
          'One pulse a turn tells the control the speed only once a turn. Rigid tapping must follow the spindle all the time, also while it turns round: that needs an encoder with many lines.',
        )
      : tight(
          'One pulse a turn starts each pass at the same angle, but between two pulses the control only assumes the speed. When the tool bites and the spindle sags, the first turns of the thread get a wrong pitch. Light passes only; an encoder is the cure.',
        );
  const driven = facts.choice('spindle-feedback', 'driven');
  if (driven === undefined) return undefined;
  if (driven === 'v-belt')
    return no(
      'A V-belt or round belt slips a little at every turn: the thread drifts away from its groove. Drive the encoder by a toothed belt or gears, one to one.',
    );
  if (driven === 'motor') {
    const belts = facts.choice('belts', 'type');
    if (belts === undefined) return undefined;
    if (belts === 'v-belt')
      return no(
        'The encoder sits on the motor, and a V-belt slips between it and the spindle: the thread drifts away from its groove. The encoder belongs on the spindle side.',
      );
    if (belts !== 'direct')
      return tight(
        'The encoder sits on the motor: play of belts or gears goes into the thread, and the control must be told which range is in. Better on the spindle.',
      );
  }
  return yes('The encoder turns with the spindle, without slip.');
};

const say = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

const geared = (facts: Facts) => {
  const spindleTeeth = facts.number('spindle-feedback', 'spindleTeeth');
  const encoderTeeth = facts.number('spindle-feedback', 'encoderTeeth');
  if (spindleTeeth === undefined || encoderTeeth === undefined) return undefined;
  const turns = wholeTurns(spindleTeeth, encoderTeeth);
  if (!turns) return no('Wheels have whole numbers of teeth: count them again.');
  const { encoder, spindle } = turns;
  const ratio = `With ${spindleTeeth} teeth on the spindle and ${encoderTeeth} on the encoder, the encoder makes ${say(encoder, 'turn')} for ${say(spindle, 'turn')} of the spindle`;
  if (encoder === 1 && spindle === 1) return yes('Encoder and spindle turn one to one: one index a turn.');
  if (encoder === 1)
    return tight(
      `${ratio}: the index comes only every ${spindle} turns, at the same angle. Each pass may wait that long for its start, and some controls give up: ask yours, or make it one to one.`,
    );
  return no(
    `${ratio}: its index comes at ${encoder} different angles of the spindle, and the passes of a thread start beside each other. Change the wheels to equal numbers of teeth.`,
  );
};

const index = (facts: Facts) => {
  if (facts.fitted('spindle-feedback') === false)
    return no('Without feedback there is no index, and each pass of a thread would start elsewhere.');
  const type = facts.choice('spindle-feedback', 'type');
  if (type === undefined) return undefined;
  if (type === 'tacho')
    return no('A tachogenerator has no index, and each pass of a thread would start elsewhere.');
  if (type === 'encoder') {
    const has = facts.choice('spindle-feedback', 'index');
    if (has === undefined) return undefined;
    if (has === 'no')
      return no(
        'The encoder has no index. Every pass of a thread would start at another angle and cut across the one before: fit one mark and a sensor on the spindle, or an encoder with an index.',
      );
  }
  const driven = facts.choice('spindle-feedback', 'driven');
  if (driven === undefined) return undefined;
  if (driven === 'toothed') return geared(facts);
  if (driven === 'spindle') return yes('One index for each turn of the spindle.');
  return no(
    driven === 'motor'
      ? 'The index comes once for each turn of the motor, not of the spindle: after a stop it stands at another angle. Put it on the spindle.'
      : 'Over a belt that slips the index wanders round the spindle: every pass of a thread would start elsewhere.',
  );
};

const threads = ifChoice('spindle-duty', 'threading', 'passes', 'tapping');
const counted = ifChoice('spindle-feedback', 'type', 'encoder', 'pulse');

const checks: readonly Check[] = [
  {
    form: 'fact',
    id: 'thread-feedback',
    scope: 'spindle',
    title: 'Feedback for threads',
    place: 'spindle-feedback',
    judge: follows,
    onlyIf: [threads],
    why: 'While a thread is cut the slide follows the spindle, not the clock. It can only follow what it sees.',
  },
  {
    form: 'fact',
    id: 'spindle-index',
    scope: 'spindle',
    title: 'Index, once for each turn of the spindle',
    place: 'spindle-feedback',
    judge: index,
    onlyIf: [threads],
    why: 'A thread is cut in many passes, each in the groove of the one before. The index tells the control at which angle to start.',
  },
  {
    form: 'ratio',
    id: 'thread-counts',
    scope: 'spindle',
    title: 'Counts enough for the coarsest thread',
    place: 'spindle-feedback',
    onlyIf: [threads, counted],
    demand: counts.get('q'),
    capacity: policy('thread-count'),
    unit: 'µm',
    tight: 'exact',
    why: 'The slide follows the spindle count by count. With one pulse a turn that is one step for a whole turn: the control has to guess what the spindle does in between.',
    says: {
      fits: 'One count of the encoder stands for {asked} along the coarsest thread; {there} will do.',
      tight: 'One count of the encoder stands for {asked} along the coarsest thread; {there} will do.',
      fails:
        'One count of the feedback stands for {asked} along the coarsest thread, and {there} is the most that makes a smooth one: more lines a turn.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-encoder-rate',
    scope: 'spindle',
    title: 'Frequency of the spindle’s encoder',
    place: 'spindle-feedback',
    onlyIf: [ifChoice('spindle-feedback', 'type', 'encoder')],
    demand: counts.get('f'),
    capacity: fact('spindle-feedback', 'highestRate'),
    unit: 'kHz',
    tight: 'margin-exact',
    why: 'Above its highest frequency an encoder leaves out lines, and the control believes the spindle slower than it is.',
    says: {
      fits: 'At top speed the encoder makes {asked} on a channel; it can do {there}.',
      tight: 'At top speed the encoder makes {asked} on a channel; it can do {there}.',
      fails:
        'At top speed the encoder makes {asked} on a channel, but it can do only {there}: it loses lines.',
    },
  },
  {
    form: 'ratio',
    id: 'spindle-edge-rate',
    scope: 'spindle',
    title: 'Count rate at the control',
    place: 'spindle-feedback',
    onlyIf: [
      counted,
      ifKnown(
        'control',
        'highestEdgeRate',
        'It is not known how fast the control counts the edges of an encoder.',
      ),
    ],
    demand: counts.get('f_e'),
    capacity: fact('control', 'highestEdgeRate'),
    unit: 'kHz',
    tight: 'receiver',
    why: 'The control must see each edge of the encoder. What it misses moves the thread.',
    says: {
      fits: 'At top speed {asked} come in; the control follows {there}.',
      tight: 'At top speed {asked} come in; the control follows {there}, and edges are not evenly spaced.',
      fails: 'At top speed {asked} come in, but the control follows only {there}.',
    },
  },
];

export const spindleAngle = { workings: [gears, counts], checks };
