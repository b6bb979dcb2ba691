import { choiceOf } from '../../../quantity/settings.ts';
import {
  ASKS,
  afterPower,
  MOVE_TIMES,
  moveTo,
  RECOVERY,
  SPINDLE_ASKS,
  SPINDLE_MOVES,
  STANDSTILL,
  spindleBeside,
  twoEnds,
  WIRING,
} from '../common.ts';
import type { AuxiliaryKind } from '../kind.ts';
import { yesNo } from '../settings.ts';

export const door: AuxiliaryKind = {
  id: 'door',
  name: 'door with a lock',
  says: 'A lock keeps the door shut while something turns. What stops the machine when it opens belongs to the stop circuit; this is what the control does with it.',
  states: ['locked', 'unlocked'],
  settings: {
    lock: choiceOf('the lock', {
      spring: 'locks by its spring, current unlocks',
      current: 'locks by current',
    }),
    'shut-switch': yesNo('a switch tells that the door is shut', 'yes'),
    'locked-switch': yesNo('a switch tells that it is locked', 'yes'),
    standstill: STANDSTILL,
    'spindle-asks': SPINDLE_ASKS,
    ...MOVE_TIMES('0.3 s'),
    ...RECOVERY,
    ...ASKS,
    ...WIRING,
  },
  make: (read) => {
    const byCurrent = read.choice('lock') === 'current';
    const bolt = twoEnds({
      id: 'bolt',
      name: 'Lock',
      rest: byCurrent ? 'unlocked' : 'locked',
      work: byCurrent ? 'locked' : 'unlocked',
      start: byCurrent ? 'work' : 'rest',
      restOutput: '',
      workOutput: byCurrent ? 'lock the door' : 'unlock the door',
      valve: 'one',
      ...(byCurrent ? {} : { restOnly: { leaf: 'shut' } }),
    });
    const rules = bolt.rules.map((rule) =>
      rule.becomes.bolt === 'locked' ? { ...rule, when: { ...rule.when, leaf: 'shut' } } : rule,
    );
    const spindle = spindleBeside(read);
    const shut = read.yes('shut-switch');
    const lockedSwitch = read.yes('locked-switch');
    const locked = { ...(shut ? { shut: true } : {}), ...(lockedSwitch ? { locked: true } : {}) };
    const unlocked = lockedSwitch ? { locked: false } : {};
    return {
      variables: [bolt.variable, { id: 'leaf', values: ['shut', 'open'], start: 'shut' }, spindle.variable],
      inputs: [
        ...(shut ? [{ id: 'shut', name: 'door shut', on: [{ leaf: 'shut' }] }] : []),
        ...(lockedSwitch ? [{ id: 'locked', name: 'door locked', on: [{ bolt: 'locked' }] }] : []),
        ...spindle.inputs,
      ],
      outputs: bolt.outputs,
      startsOn: byCurrent ? ['bolt-locked'] : [],
      rules: [
        ...rules,
        ...spindle.rules,
        {
          who: 'surroundings',
          says: 'Somebody opens the door',
          when: { leaf: 'shut', bolt: ['between', 'unlocked'] },
          becomes: { leaf: 'open' },
        },
        {
          who: 'surroundings',
          says: 'Somebody shuts the door',
          when: { leaf: 'open' },
          becomes: { leaf: 'shut' },
        },
      ],
      operations: [
        {
          id: 'unlock',
          name: 'unlock the door',
          needs: spindle.needs,
          needsSays: spindle.needsSays,
          steps: [moveTo('unlock', 'Draw the bolt', byCurrent ? bolt.to.rest : bolt.to.work, unlocked, read)],
          ends: 'held',
          shows: 'unlocked',
        },
        {
          id: 'lock',
          name: 'lock the door',
          steps: [moveTo('lock', 'Let the bolt in', byCurrent ? bolt.to.work : bolt.to.rest, locked, read)],
          ends: 'ready',
          shows: 'locked',
        },
      ],
      watches:
        Object.keys(locked).length > 0
          ? [
              {
                seen: { inputs: locked },
                says: 'The door no longer shows shut and locked: the control stops the spindle',
              },
            ]
          : [],
      hazards: [
        {
          id: 'open-turning',
          says: 'the door can be opened while the spindle turns',
          when: [{ bolt: ['between', 'unlocked'], spindle: SPINDLE_MOVES }],
          cure: 'Unlock only when something has seen the spindle stand. Take a lock that locks by its spring: one that needs current lets go when the power fails and the spindle still turns.',
        },
      ],
      troubles: [],
      afterPower: afterPower(read, Object.keys(locked).length > 0 ? [{ inputs: locked }] : []),
      stopClears: read.choice('on-stop') === 'off',
    };
  },
};
