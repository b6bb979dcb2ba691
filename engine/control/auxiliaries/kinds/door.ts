import { choiceOf } from '../../../quantity/settings.ts';
import { besideSpindle, SPINDLE_MOVES } from '../beside-spindle.ts';
import { happens, moveTo, switches, twoEnds, watch } from '../common.ts';
import { yesNo } from '../settings.ts';

export const door = besideSpindle({
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
  },
  moveTime: ['0.3 s'],
  make: (read, standing) => {
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
    const { inputs, shows } = switches({
      shut: { there: read.yes('shut-switch'), name: 'door shut', on: { leaf: 'shut' } },
      locked: { there: read.yes('locked-switch'), name: 'door locked', on: { bolt: 'locked' } },
    });
    const locked = shows({ shut: true, locked: true });
    return {
      part: {
        ...bolt,
        rules: bolt.rules.map((rule) =>
          rule.becomes.bolt === 'locked' ? { ...rule, when: { ...rule.when, leaf: 'shut' } } : rule,
        ),
      },
      variables: [{ id: 'leaf', values: ['shut', 'open'], start: 'shut' }],
      inputs,
      startsOn: byCurrent ? ['bolt-locked'] : [],
      rules: [
        happens('Somebody opens the door', { leaf: 'shut', bolt: ['between', 'unlocked'] }, { leaf: 'open' }),
        happens('Somebody shuts the door', { leaf: 'open' }, { leaf: 'shut' }),
      ],
      operations: [
        {
          id: 'unlock',
          name: 'unlock the door',
          ...standing,
          steps: [
            moveTo(
              'unlock',
              'Draw the bolt',
              byCurrent ? bolt.to.rest : bolt.to.work,
              shows({ locked: false }),
              read,
            ),
          ],
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
      watches: watch(locked, 'The door no longer shows shut and locked: the control stops the spindle'),
      hazards: [
        {
          id: 'open-turning',
          says: 'the door can be opened while the spindle turns',
          when: [{ bolt: ['between', 'unlocked'], spindle: SPINDLE_MOVES }],
          cure: 'Unlock only when something has seen the spindle stand. Take a lock that locks by its spring: one that needs current lets go when the power fails and the spindle still turns.',
        },
      ],
      troubles: [],
      readyWhen: [{ inputs: locked }],
    };
  },
});
