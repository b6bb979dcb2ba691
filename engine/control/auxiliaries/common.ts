/** What several kinds of auxiliary share: something that moves between two ends, the switches that see it, and their settings. */
import { choiceOf, type SettingSpecs, text } from '../../quantity/settings.ts';
import { LIMITS } from '../../refit/limits.ts';
import type { AuxiliaryKind } from './kind.ts';
import type { Becomes, Input, Machine, Output, Rule, Seen, Step, Values, Variable } from './machine.ts';
import { limit, type Read, time } from './settings.ts';

/** How its outputs and sensors are wired: the same for every kind. */
export const WIRING: SettingSpecs = {
  'outputs-by': choiceOf('outputs it wants', {
    '24v': '24 V to a valve or relay',
    contact: 'a free contact',
    '5v': '5 V logic',
  }),
  sensors: choiceOf('its sensors', {
    switch: 'plain switches',
    pnp: 'PNP sensors (give plus)',
    npn: 'NPN sensors (pull to minus)',
  }),
};

export const ON_STOP = choiceOf('when it is stopped in the middle its outputs', {
  off: 'go off',
  stay: 'stay as they are',
});

export const RECOVERY: SettingSpecs = {
  'after-power': choiceOf('when the power comes back the control', {
    reads: 'reads its switches',
    trusts: 'takes all to be as it was',
    waits: 'waits until somebody moves it anew',
  }),
  'on-stop': ON_STOP,
};

/** What it waits for among the other auxiliaries. */
export const ASKS: SettingSpecs = {
  'only-when': {
    ...text('moves only when others are so', '', LIMITS.text),
    like: 'close: tailstock back; open: door unlocked',
    help: 'For each of its moves, which other auxiliary must be in which state: open: tailstock back. Parted by semicolons, several at once by commas.',
  },
  otherwise: choiceOf('and if they are not', {
    refuses: 'refuses with a message',
    waits: 'waits until they are',
  }),
  'wait-limit': limit('that waiting', '30 s'),
};

/** The switches it may have, by input. */
type Switches = Readonly<
  Record<string, { readonly there: boolean; readonly name: string; readonly on: Values }>
>;

/** Those switches that are there: as inputs, and what of a wanted picture they show. */
export function switches(all: Switches): {
  inputs: readonly Input[];
  shows: (wanted: Readonly<Record<string, boolean>>) => Readonly<Record<string, boolean>>;
} {
  return {
    inputs: Object.entries(all).flatMap(([id, { there, name, on }]) =>
      there ? [{ id, name, on: [on] }] : [],
    ),
    shows: (wanted) => Object.fromEntries(Object.entries(wanted).filter(([id]) => all[id]!.there)),
  };
}

/** What is watched while it is ready; nothing, where no switch tells it. */
export const watch = (
  inputs: Seen['inputs'],
  says: string,
  when?: Values,
): NonNullable<Machine['watches']> =>
  Object.keys(inputs).length > 0 ? [{ seen: { inputs, ...(when ? { when } : {}) }, says }] : [];

export const happens = (says: string, when: Values, becomes: Becomes): Rule => ({
  who: 'surroundings',
  says,
  when,
  becomes,
});
export const moves = (says: string, when: Values, becomes: Becomes): Rule => ({
  who: 'mechanism',
  says,
  when,
  becomes,
});

/** A machine but for what every kind does alike. */
export type Particular = Omit<Machine, 'stopClears'>;

/** A kind with the settings that every kind ends with. */
export const auxiliary = ({
  make,
  settings,
  ...kind
}: Omit<AuxiliaryKind, 'make'> & { readonly make: (read: Read) => Particular }): AuxiliaryKind => ({
  ...kind,
  settings: { ...settings, ...ASKS, ...WIRING },
  make: (read) => ({ ...make(read), stopClears: read.choice('on-stop') === 'off' }),
});

export const VALVE = choiceOf('its valve', {
  two: 'two coils, stays where it was',
  one: 'one coil, a spring brings it back',
});
export const valveOf = (read: Read): Ends['valve'] => (read.choice('valve') === 'one' ? 'one' : 'two');

export interface Ends {
  /** Variable: 'jaws'. */
  readonly id: string;
  /** 'Jaws'. */
  readonly name: string;
  /** Where a spring brings it, and where its one coil brings it. */
  readonly rest: string;
  readonly work: string;
  readonly start: 'rest' | 'work';
  /** Names of its coils: 'valve: close'. */
  readonly restOutput: string;
  readonly workOutput: string;
  readonly valve: 'one' | 'two';
  /** Has to be so besides for it to get to an end. */
  readonly restOnly?: Rule['when'];
}

export interface TwoEnds {
  readonly variable: Variable;
  readonly outputs: readonly Output[];
  readonly rules: readonly Rule[];
  readonly to: Readonly<Record<'rest' | 'work', Pick<Step, 'on' | 'off'>>>;
}

/** Something that a valve moves between two ends, with nothing in between but 'between'. */
export function twoEnds(ends: Ends): TwoEnds {
  const { id, name, rest, work, valve } = ends;
  const restCoil = `${id}-${rest}`;
  const workCoil = `${id}-${work}`;
  const driven = (end: 'rest' | 'work'): Rule['when'] =>
    valve === 'two'
      ? end === 'rest'
        ? { [restCoil]: 'on', [workCoil]: 'off' }
        : { [workCoil]: 'on', [restCoil]: 'off' }
      : { [workCoil]: end === 'work' ? 'on' : 'off' };
  const move = (end: 'rest' | 'work', from: string, to: string, only: Rule['when'] = {}): Rule => ({
    who: 'mechanism',
    says: to === 'between' ? `${name}: now between ${rest} and ${work}` : `${name}: now ${to}`,
    when: { [id]: from, ...driven(end), ...only },
    becomes: { [id]: to },
  });
  return {
    variable: { id, values: [rest, 'between', work], start: ends[ends.start] },
    outputs: [
      ...(valve === 'two' ? [{ id: restCoil, name: ends.restOutput }] : []),
      { id: workCoil, name: ends.workOutput },
    ],
    rules: [
      move('rest', work, 'between'),
      move('rest', 'between', rest, ends.restOnly),
      move('work', rest, 'between'),
      move('work', 'between', work),
    ],
    to: {
      rest: valve === 'two' ? { on: [restCoil], off: [workCoil] } : { off: [workCoil] },
      work: valve === 'two' ? { on: [workCoil], off: [restCoil] } : { on: [workCoil] },
    },
  };
}

/** A step that moves it to an end: it waits for switches where there are any, else for a time. */
export function moveTo(
  id: string,
  says: string,
  drive: Pick<Step, 'on' | 'off'>,
  seen: Readonly<Record<string, boolean>>,
  read: Read,
  more: Partial<Step> = {},
): Step {
  const usual = read.number('move-time');
  return Object.keys(seen).length > 0
    ? {
        id,
        says,
        ...drive,
        until: [{ inputs: seen }],
        limit: read.limit('limit'),
        limitSetting: 'limit',
        late: 'alarm',
        usual,
        ...more,
      }
    : { id, says, ...drive, dwell: usual, ...more };
}
export const MOVE_TIMES = (usual: string, most = '5 s'): SettingSpecs => ({
  'move-time': time('time it takes at most', usual),
  limit: limit('each move', most),
});

/** After power: by switches where they tell something, else as for waiting. */
export function afterPower(
  read: Read,
  seen: readonly (Seen & { readonly sets?: Becomes })[],
): Machine['afterPower'] {
  const does = read.choice('after-power');
  if (does === 'trusts') return { does: 'trusts' };
  const telling = seen.filter(({ inputs }) => Object.keys(inputs).length > 0);
  return does === 'reads' && telling.length > 0 ? { does: 'reads', seen: telling } : { does: 'waits' };
}
