/** Kinds that move something which must keep still while the spindle turns: chuck, tailstock, drawbar, gears, door. */
import { choiceOf } from '../../quantity/settings.ts';
import { afterPower, auxiliary, MOVE_TIMES, type Particular, RECOVERY, type TwoEnds } from './common.ts';
import type { AuxiliaryKind } from './kind.ts';
import type { Becomes, Input, Operation, Rule, Seen, Variable } from './machine.ts';
import { type Read, yesNo } from './settings.ts';

/** How the control knows that the spindle stands. */
const STANDSTILL = choiceOf(
  'how it knows that the spindle stands',
  {
    switch: 'a standstill signal of the drive or a sensor',
    command: 'only that it told the spindle to stop',
    no: 'it does not ask',
  },
  'A spindle told to stop still runs down. Only something that sees it turn can tell that it stands.',
);
const SPINDLE_ASKS = yesNo('the spindle starts only when this is ready', 'yes');

const SPINDLE = 'spindle';

/** The spindle as far as an auxiliary has to do with it. */
function spindleBeside(read: Read): {
  variable: Variable;
  rules: readonly Rule[];
  inputs: readonly Input[];
  needs: readonly Seen[];
  needsSays: string;
} {
  const knows = read.choice('standstill');
  const asks = read.yes('spindle-asks');
  return {
    variable: { id: SPINDLE, values: ['still', 'turning', 'running down'], start: 'still' },
    rules: [
      {
        who: 'surroundings',
        says: 'The spindle is started',
        when: { [SPINDLE]: 'still', ...(asks ? { step: 'ready' } : {}) },
        becomes: { [SPINDLE]: 'turning' },
      },
      {
        who: 'surroundings',
        says: 'The spindle is told to stop',
        when: { [SPINDLE]: 'turning' },
        becomes: { [SPINDLE]: 'running down' },
      },
      {
        who: 'surroundings',
        says: 'The spindle comes to rest',
        when: { [SPINDLE]: 'running down' },
        becomes: { [SPINDLE]: 'still' },
      },
    ],
    inputs:
      knows === 'switch'
        ? [{ id: 'standstill', name: 'spindle stands', on: [{ [SPINDLE]: 'still' }] }]
        : knows === 'command'
          ? [
              {
                id: 'standstill',
                name: 'spindle is told to stop',
                on: [{ [SPINDLE]: ['still', 'running down'] }],
                inside: true,
              },
            ]
          : [],
    needs: knows === 'no' ? [{ inputs: {} }] : [{ inputs: { standstill: true } }],
    needsSays:
      knows === 'switch'
        ? 'the spindle stands'
        : knows === 'command'
          ? 'the spindle has been told to stop'
          : '',
  };
}
export const SPINDLE_MOVES = ['turning', 'running down'] as const;

/** When the spindle stands, as an operation asks for it. */
type Standing = Pick<Operation, 'needs' | 'needsSays'>;

interface Moved extends Omit<Particular, 'variables' | 'inputs' | 'outputs' | 'rules' | 'afterPower'> {
  /** What is moved. */
  readonly part: TwoEnds;
  /** Besides those of the part and of the spindle. */
  readonly variables?: readonly Variable[];
  readonly inputs: readonly Input[];
  readonly outputs?: readonly Particular['outputs'][number][];
  readonly rules?: readonly Rule[];
  /** What its switches show where it is ready. */
  readonly readyWhen: readonly (Seen & { readonly sets?: Becomes })[];
}

interface BesideSpindle extends Omit<AuxiliaryKind, 'make'> {
  /** Time that a move takes at most, and its time-out, as they would be typed. */
  readonly moveTime: readonly [usual: string, most?: string];
  readonly make: (read: Read, standing: Standing) => Moved;
}

/** The kind, with the spindle beside it and the settings that go with both. */
export const besideSpindle = ({ settings, moveTime, make, ...kind }: BesideSpindle): AuxiliaryKind =>
  auxiliary({
    ...kind,
    settings: {
      ...settings,
      standstill: STANDSTILL,
      'spindle-asks': SPINDLE_ASKS,
      ...MOVE_TIMES(...moveTime),
      ...RECOVERY,
    },
    make: (read) => {
      const spindle = spindleBeside(read);
      const { part, readyWhen, ...moved } = make(read, {
        needs: spindle.needs,
        needsSays: spindle.needsSays,
      });
      return {
        ...moved,
        variables: [part.variable, spindle.variable, ...(moved.variables ?? [])],
        inputs: [...moved.inputs, ...spindle.inputs],
        outputs: [...part.outputs, ...(moved.outputs ?? [])],
        rules: [...part.rules, ...spindle.rules, ...(moved.rules ?? [])],
        afterPower: afterPower(read, readyWhen),
      };
    },
  });
