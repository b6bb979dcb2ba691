import { auxiliary, happens, moves, ON_STOP, switches } from '../common.ts';
import { limit, time, yesNo } from '../settings.ts';

export const coolant = auxiliary({
  id: 'coolant',
  name: 'coolant',
  says: 'A pump floods the cut.',
  states: ['off', 'on'],
  settings: {
    'flow-switch': yesNo('a switch tells that it flows', 'no'),
    'asks-door': yesNo(
      'it stops when the door is opened',
      'yes',
      'It needs an input that tells that the door is shut.',
    ),
    'flow-time': time('time until it flows', '3 s'),
    limit: limit('the flow', '10 s'),
    'on-stop': ON_STOP,
  },
  make: (read) => {
    const flow = read.yes('flow-switch');
    const asksDoor = read.yes('asks-door');
    const { inputs } = switches({
      flow: { there: flow, name: 'coolant flows', on: { stream: 'flows' } },
      shut: { there: asksDoor, name: 'door shut (coolant)', on: { leaf: 'shut' } },
    });
    const shut = [{ inputs: { shut: true } }];
    return {
      variables: [
        { id: 'wanted', values: ['off', 'on'], start: 'off' },
        { id: 'stream', values: ['none', 'flows'], start: 'none' },
        { id: 'leaf', values: ['shut', 'open'], start: 'shut' },
      ],
      inputs,
      outputs: [{ id: 'pump', name: 'coolant pump' }],
      rules: [
        moves('It flows', { pump: 'on', stream: 'none' }, { stream: 'flows' }),
        moves('It no longer flows', { pump: 'off', stream: 'flows' }, { stream: 'none' }),
        happens('Somebody opens the door', { leaf: 'shut' }, { leaf: 'open' }),
        happens('Somebody shuts the door', { leaf: 'open' }, { leaf: 'shut' }),
      ],
      operations: [
        {
          id: 'on',
          name: 'switch the coolant on',
          ...(asksDoor
            ? { needs: shut, needsSays: 'the door is shut', keeps: shut, keepsSays: 'the door stays shut' }
            : {}),
          sets: { wanted: 'on' },
          steps: [
            flow
              ? {
                  id: 'flow',
                  says: 'Switch the pump on',
                  on: ['pump'],
                  until: [{ inputs: { flow: true } }],
                  limit: read.limit('limit'),
                  limitSetting: 'limit',
                  usual: read.number('flow-time'),
                }
              : { id: 'flow', says: 'Switch the pump on', on: ['pump'], dwell: read.number('flow-time') },
          ],
          ends: 'ready',
          shows: 'on',
        },
        {
          id: 'off',
          name: 'switch the coolant off',
          sets: { wanted: 'off' },
          steps: [{ id: 'stop', says: 'Switch the pump off', off: ['pump'], dwell: 0.1 }],
          ends: 'ready',
          shows: 'off',
        },
      ],
      watches: asksDoor
        ? [
            {
              seen: { inputs: { shut: true }, when: { wanted: 'on' } },
              says: 'The door is open: the control stops the pump',
              clears: true,
            },
          ]
        : [],
      hazards: [
        {
          id: 'no-flow',
          says: 'cutting goes on without coolant and nobody is told',
          when: [{ step: 'ready', wanted: 'on', pump: 'on', stream: 'none' }],
          cure: 'A flow or pressure switch, waited for with a time-out.',
        },
        ...(asksDoor
          ? []
          : [
              {
                id: 'splashes',
                says: 'it goes on flowing when the door is opened',
                when: [{ stream: 'flows', leaf: 'open', step: 'ready' }],
                cure: 'Stop the pump with the door’s switch.',
              },
            ]),
      ],
      troubles: [{ id: 'dry', says: 'the tank is empty or the pump blocked', stops: ['It flows'] }],
      afterPower: { does: 'waits' },
    };
  },
});
