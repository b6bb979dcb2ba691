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
  VALVE,
  WIRING,
} from '../common.ts';
import type { AuxiliaryKind } from '../kind.ts';
import { yesNo } from '../settings.ts';

export const chuck: AuxiliaryKind = {
  id: 'chuck',
  name: 'power chuck',
  says: 'A cylinder behind the spindle, moved by oil or air, closes and opens the jaws.',
  machines: ['lathe', 'other'],
  states: ['closed', 'open'],
  settings: {
    'moved-by': choiceOf('moved by', { oil: 'oil', air: 'air' }),
    valve: {
      ...VALVE,
      help: 'With one coil choose which way the spring goes: a chuck that opens when the power fails lets the work fly.',
    },
    spring: choiceOf('with one coil, the spring', { closes: 'closes it', opens: 'opens it' }),
    'closed-switch': yesNo(
      'a switch tells that it grips',
      'yes',
      'It must be off both when it is open and when the jaws have closed on nothing.',
    ),
    'open-switch': yesNo('a switch tells that it is open', 'no'),
    'pressure-switch': yesNo('a switch tells that the pressure is there', 'yes'),
    standstill: STANDSTILL,
    'spindle-asks': SPINDLE_ASKS,
    ...MOVE_TIMES('2 s'),
    ...RECOVERY,
    ...ASKS,
    ...WIRING,
  },
  make: (read) => {
    const valve = read.choice('valve') as 'one' | 'two';
    const opens = valve === 'one' && read.choice('spring') === 'opens';
    const jaws = twoEnds({
      id: 'jaws',
      name: 'Jaws',
      rest: opens ? 'open' : 'closed',
      work: opens ? 'closed' : 'open',
      start: opens ? 'work' : 'rest',
      restOutput: opens ? 'open the chuck' : 'close the chuck',
      workOutput: opens ? 'close the chuck' : 'open the chuck',
      valve,
    });
    const spindle = spindleBeside(read);
    const closedSwitch = read.yes('closed-switch');
    const openSwitch = read.yes('open-switch');
    const pressure = read.yes('pressure-switch');
    const gripped = {
      ...(closedSwitch ? { closed: true } : {}),
      ...(openSwitch ? { open: false } : {}),
      ...(pressure ? { pressure: true } : {}),
    };
    const opened = { ...(closedSwitch ? { closed: false } : {}), ...(openSwitch ? { open: true } : {}) };
    const standing = { needs: spindle.needs, needsSays: spindle.needsSays };
    const start = opens ? { 'jaws-closed': 'on' } : {};
    return {
      variables: [
        jaws.variable,
        spindle.variable,
        { id: 'work', values: ['there', 'missed'], start: 'there' },
        { id: 'oil', values: ['there', 'gone'], start: 'there' },
      ],
      inputs: [
        ...(closedSwitch
          ? [{ id: 'closed', name: 'chuck grips', on: [{ jaws: 'closed', work: 'there' }] }]
          : []),
        ...(openSwitch ? [{ id: 'open', name: 'chuck open', on: [{ jaws: 'open' }] }] : []),
        ...(pressure ? [{ id: 'pressure', name: 'chuck pressure', on: [{ oil: 'there' }] }] : []),
        ...spindle.inputs,
      ],
      outputs: jaws.outputs,
      rules: [
        ...jaws.rules.map((rule) => ({ ...rule, when: { ...rule.when, oil: 'there' } })),
        ...spindle.rules,
      ],
      startsOn: Object.keys(start),
      operations: [
        {
          id: 'open',
          name: 'open the chuck',
          ...standing,
          steps: [moveTo('open', 'Open the jaws', opens ? jaws.to.rest : jaws.to.work, opened, read)],
          ends: 'held',
          shows: 'open',
        },
        {
          id: 'close',
          name: 'close the chuck',
          ...standing,
          steps: [moveTo('close', 'Close the jaws', opens ? jaws.to.work : jaws.to.rest, gripped, read)],
          ends: 'ready',
          shows: 'closed',
        },
      ],
      watches:
        pressure || closedSwitch
          ? [
              {
                seen: {
                  inputs: {
                    ...(pressure ? { pressure: true } : {}),
                    ...(closedSwitch ? { closed: true } : {}),
                  },
                },
                says: 'The chuck no longer shows that it grips: the control stops the spindle',
              },
            ]
          : [],
      hazards: [
        {
          id: 'opens-turning',
          says: 'the jaws let go while the spindle turns',
          when: [{ jaws: ['between', 'open'], spindle: SPINDLE_MOVES }],
          cure: 'Let it open only when something has seen the spindle stand: a standstill signal, not the mere command. Take a valve with two coils, or a spring that closes, so that lost power does not open it. Start the spindle only when the chuck is ready.',
        },
        {
          id: 'grips-nothing',
          says: 'the spindle is let go though the jaws closed on nothing',
          when: [{ step: 'ready', jaws: 'closed', work: 'missed', spindle: 'turning' }],
          cure: 'A switch on the drawbar that is on only in the middle of its travel: off when open, off when closed on nothing.',
        },
        {
          id: 'no-pressure',
          says: 'the spindle is started without pressure behind the jaws',
          when: [{ step: 'ready', oil: 'gone', spindle: 'turning' }],
          cure: 'A pressure switch that has to be on for the spindle to start and stops it when it goes. A check valve at the cylinder holds the grip meanwhile.',
        },
      ],
      troubles: [
        {
          id: 'missed',
          says: 'the jaws close on nothing',
          adds: [
            {
              who: 'surroundings',
              says: 'There is no work between the jaws',
              when: { jaws: 'open', work: 'there' },
              becomes: { work: 'missed' },
            },
          ],
        },
        {
          id: 'no-oil',
          says: 'the pressure goes',
          adds: [
            {
              who: 'surroundings',
              says: 'The pressure goes',
              when: { oil: 'there' },
              becomes: { oil: 'gone' },
            },
          ],
        },
      ],
      afterPower: afterPower(read, Object.keys(gripped).length > 0 ? [{ inputs: gripped }] : []),
      stopClears: read.choice('on-stop') === 'off',
    };
  },
};
