/** What a control may be able to do, one fact each: yes, no, or nobody has looked. Job and control share the list. */
import type { ChoiceFact, QuantityFact } from './types.ts';

interface Ability {
  readonly name: string;
  /** What it is, for somebody who never used it. */
  readonly means: string;
  readonly findOut: string;
}

export const ABILITIES = {
  'threading-straight': {
    name: 'cuts straight threads',
    means: 'Feed tied to the turning of the spindle, so that every pass falls into the same groove.',
    findOut: 'Its list of commands: threading with a lead. It needs an encoder on the spindle.',
  },
  'threading-taper': {
    name: 'cuts taper threads',
    means: 'Both axes move while the feed stays tied to the spindle, as pipe threads want.',
    findOut:
      'Its list of commands: threading with an end point in X and Z, or with a taper. Many small ones cannot.',
  },
  'threading-multi-start': {
    name: 'cuts threads of several starts',
    means: 'Each start begins at another angle of the spindle.',
    findOut:
      'Its list of commands: a start angle for threading. Shifting the start in Z by hand does it as well, on a straight thread.',
  },
  'rigid-tapping': {
    name: 'taps rigidly',
    means:
      'Feed stays tied to the spindle while it slows, reverses and comes out, so that no floating holder is needed.',
    findOut: 'Its list of commands: tapping without a floating holder. It needs an encoder on the spindle.',
  },
  'constant-surface-speed': {
    name: 'keeps the surface speed constant',
    means: 'The spindle turns faster as the tool nears the middle, up to a limit that is typed in.',
    findOut: 'Its list of commands: surface speed instead of turns, with a highest speed beside it.',
  },
  orientation: {
    name: 'stops the spindle at an angle',
    means: 'For a keyed tool or a bolt circle in the chuck.',
    findOut: 'Its list of commands: oriented spindle stop. It needs an encoder with an index on the spindle.',
  },
  'powered-tools': {
    name: 'drives powered tools',
    means:
      'A second spindle in the turret, with a speed of its own, while the main spindle stands or turns as an axis.',
    findOut: 'Its list of commands: a second spindle.',
  },
  'free-sequences': {
    name: 'lets you write steps of your own',
    means: 'Outputs on, wait for inputs, give up after a time: what a turret or a chuck needs.',
    findOut:
      'Its manual: programmable inputs and outputs, or a built-in ladder or step program. Ask for an example.',
  },
  probing: {
    name: 'measures with a probe',
    means: 'An axis stops at the touch of a switch and the control keeps where that was.',
    findOut: 'Its list of commands: a move until an input switches.',
  },
  handwheel: {
    name: 'moves axes by a handwheel',
    means: 'A wheel turned by hand moves the axis that a switch beside it names, a little for each mark.',
    findOut:
      'Its list of plugs: an input for a handwheel, or an encoder input that may be used for one, and inputs for its switches.',
  },
  networking: {
    name: 'takes programs over a network',
    means: 'A program comes from another computer without a memory stick.',
    findOut: 'Look for a network socket and read what it is for.',
  },
} as const satisfies Readonly<Record<string, Ability>>;

export type AbilityId = keyof typeof ABILITIES;
export const ABILITY_IDS = Object.keys(ABILITIES) as readonly AbilityId[];

/** A fact for each, answered yes or no; absent is not known. */
export const abilityFacts = Object.fromEntries(
  ABILITY_IDS.map((id): [AbilityId, ChoiceFact] => [
    id,
    {
      kind: 'choice',
      given: true,
      name: ABILITIES[id].name,
      trouble: 2,
      options: { yes: 'yes', no: 'no' },
      findOut: `${ABILITIES[id].means} ${ABILITIES[id].findOut}`,
    },
  ]),
) as Readonly<Record<AbilityId, ChoiceFact>>;

const count = (name: string, findOut: string, most: string): QuantityFact => ({
  kind: 'quantity',
  name,
  unit: '1',
  domain: 'not negative',
  plausible: ['0', most],
  trouble: 2,
  findOut,
});

/** How many of each it has; 0 where it has none. */
export const countFacts = {
  axes: count(
    'axes it can move',
    'Its manual, first page. Count the outputs, not the letters it knows.',
    '9',
  ),
  'coordinated-axes': count(
    'axes it moves together along one path',
    'Its manual: simultaneous or interpolated axes, straight lines and arcs. 1: one after the other only.',
    '9',
  ),
  'inputs-24v': count('inputs for 24 V', 'Its list of terminals. Count those that are free for you.', '256'),
  'inputs-5v': count(
    'inputs for 5 V',
    'Its list of terminals: logic inputs, without those of encoders.',
    '128',
  ),
  'outputs-24v': count('transistor outputs for 24 V', 'Its list of terminals.', '256'),
  'outputs-relay': count(
    'relay outputs',
    'Its list of terminals: free contacts with two terminals each.',
    '64',
  ),
  'outputs-5v': count(
    'outputs of 5 V',
    'Its list of terminals: logic outputs, without those of the axes.',
    '128',
  ),
  'outputs-10v-both': count(
    '±10 V outputs',
    'Its list of terminals: analogue outputs that go below 0 V.',
    '16',
  ),
  'outputs-10v': count(
    '0 to 10 V outputs',
    'Its list of terminals: analogue outputs that stay above 0 V.',
    '16',
  ),
  'inputs-10v': count('analogue inputs, 0 to 10 V', 'Its list of terminals.', '32'),
  'encoder-inputs': count('encoder inputs', 'Its list of plugs. Count the spindle’s input too.', '16'),
  'pulse-outputs': count(
    'pairs of pulse outputs',
    'Its list of plugs: step and direction, one pair for each drive.',
    '16',
  ),
  'program-lines': count(
    'lines of program it holds',
    'Its manual: program memory. A line is some 30 characters; 0.1 MB is about 3500 lines.',
    '100000000',
  ),
} as const satisfies Readonly<Record<string, QuantityFact>>;

export type CountId = keyof typeof countFacts;
export const COUNT_IDS = Object.keys(countFacts) as readonly CountId[];
