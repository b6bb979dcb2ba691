import { auxiliary, happens, moves, ON_STOP, switches } from '../common.ts';
import { limit, time, yesNo } from '../settings.ts';

export const lubrication = auxiliary({
  id: 'lubrication',
  name: 'slide lubrication',
  says: 'A pump presses oil to the ways and screws every so often.',
  states: ['oiled'],
  settings: {
    'pressure-switch': yesNo('a switch tells that the pressure came', 'yes'),
    'level-switch': yesNo('a switch tells that the tank has oil', 'yes'),
    'pump-time': time('time the pump runs', '15 s'),
    'pressure-time': time('time until the pressure is there', '6 s'),
    limit: limit('the pressure', '20 s'),
    'on-stop': ON_STOP,
  },
  make: (read) => {
    const pressure = read.yes('pressure-switch');
    const level = read.yes('level-switch');
    const { inputs, shows } = switches({
      pressure: { there: pressure, name: 'oil pressure', on: { line: 'pressed' } },
      level: { there: level, name: 'oil in the tank', on: { tank: 'full' } },
    });
    return {
      variables: [
        { id: 'line', values: ['slack', 'pressed'], start: 'slack' },
        { id: 'tank', values: ['full', 'empty'], start: 'full' },
        { id: 'ways', values: ['oiled', 'dry'], start: 'oiled' },
      ],
      inputs,
      outputs: [{ id: 'pump', name: 'oil pump' }],
      rules: [
        moves(
          'The pressure comes',
          { pump: 'on', line: 'slack', tank: 'full' },
          { line: 'pressed', ways: 'oiled' },
        ),
        moves('The pressure goes', { pump: 'off', line: 'pressed' }, { line: 'slack' }),
      ],
      operations: [
        {
          id: 'oil',
          name: 'oil the ways',
          // By the time it is due, the oil of the last time is used up.
          sets: { ways: 'dry' },
          needs: [{ inputs: shows({ level: true, pressure: false }) }],
          needsSays: [
            level ? 'the tank has oil' : '',
            pressure ? 'the pressure of the last time is gone' : '',
          ]
            .filter(Boolean)
            .join(' and '),
          steps: [
            pressure
              ? {
                  id: 'press',
                  says: 'Run the pump until the pressure is there',
                  on: ['pump'],
                  until: [{ inputs: { pressure: true } }],
                  limit: read.limit('limit'),
                  limitSetting: 'limit',
                  usual: read.number('pressure-time'),
                }
              : { id: 'press', says: 'Run the pump', on: ['pump'], dwell: read.number('pump-time') },
            {
              id: 'rest',
              says: 'Stop the pump',
              off: ['pump'],
              ...(pressure
                ? {
                    until: [{ inputs: { pressure: false } }],
                    limit: read.limit('limit'),
                    limitSetting: 'limit',
                  }
                : { dwell: 1 }),
            },
          ],
          ends: 'ready',
          shows: 'oiled',
        },
      ],
      hazards: [
        {
          id: 'dry',
          says: 'the machine goes on with dry ways and says nothing',
          when: [{ step: 'ready', ways: 'dry' }],
          cure: 'A pressure switch at the far end of the line, waited for with a time-out, and waited for to go off again: one that is stuck would otherwise pass for oil.',
        },
      ],
      troubles: [
        {
          id: 'empty',
          says: 'the tank runs empty',
          adds: [happens('The tank runs empty', { tank: 'full' }, { tank: 'empty' })],
        },
        { id: 'broken', says: 'a pipe is broken', stops: ['The pressure comes'] },
      ],
      afterPower: { does: 'waits' },
    };
  },
});
