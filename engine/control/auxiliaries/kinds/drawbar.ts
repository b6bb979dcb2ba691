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

export const drawbar: AuxiliaryKind = {
  id: 'drawbar',
  name: 'power drawbar',
  says: 'Springs hold the tool in the spindle; a cylinder presses against them to let it go.',
  machines: ['mill', 'other'],
  states: ['clamped', 'released'],
  settings: {
    'clamped-switch': yesNo('a switch tells that the tool is clamped', 'yes'),
    'released-switch': yesNo('a switch tells that the tool is free', 'yes'),
    keyed: yesNo('the tool has drive keys, so that the spindle must stop at an angle', 'no'),
    standstill: STANDSTILL,
    'spindle-asks': SPINDLE_ASKS,
    ...MOVE_TIMES('1.5 s'),
    ...RECOVERY,
    ...ASKS,
    ...WIRING,
  },
  abilities: (read) => (read.yes('keyed') ? { orientation: 'the tools of the drawbar have drive keys' } : {}),
  make: (read) => {
    const bar = twoEnds({
      id: 'tool',
      name: 'Tool',
      rest: 'clamped',
      work: 'released',
      start: 'rest',
      restOutput: '',
      workOutput: 'release the tool',
      valve: 'one',
    });
    const spindle = spindleBeside(read);
    const clampedSwitch = read.yes('clamped-switch');
    const releasedSwitch = read.yes('released-switch');
    const held = {
      ...(clampedSwitch ? { clamped: true } : {}),
      ...(releasedSwitch ? { released: false } : {}),
    };
    const free = {
      ...(clampedSwitch ? { clamped: false } : {}),
      ...(releasedSwitch ? { released: true } : {}),
    };
    const standing = { needs: spindle.needs, needsSays: spindle.needsSays };
    return {
      variables: [bar.variable, spindle.variable],
      inputs: [
        ...(clampedSwitch ? [{ id: 'clamped', name: 'tool clamped', on: [{ tool: 'clamped' }] }] : []),
        ...(releasedSwitch ? [{ id: 'released', name: 'tool free', on: [{ tool: 'released' }] }] : []),
        ...spindle.inputs,
      ],
      outputs: bar.outputs,
      rules: [...bar.rules, ...spindle.rules],
      operations: [
        {
          id: 'release',
          name: 'release the tool',
          ...standing,
          steps: [moveTo('release', 'Press the springs together', bar.to.work, free, read)],
          ends: 'held',
          shows: 'released',
        },
        {
          id: 'clamp',
          name: 'clamp the tool',
          ...standing,
          steps: [moveTo('clamp', 'Let the springs pull', bar.to.rest, held, read)],
          ends: 'ready',
          shows: 'clamped',
        },
      ],
      watches:
        Object.keys(held).length > 0
          ? [
              {
                seen: { inputs: held },
                says: 'The drawbar no longer shows that it holds: the control stops the spindle',
              },
            ]
          : [],
      hazards: [
        {
          id: 'lets-go',
          says: 'the tool is let go while the spindle turns',
          when: [{ tool: ['between', 'released'], spindle: SPINDLE_MOVES }],
          cure: 'Release only when something has seen the spindle stand, and start the spindle only when a switch shows the tool clamped.',
        },
      ],
      troubles: [
        { id: 'sticks', says: 'the taper sticks', stops: ['Tool: now between clamped and released'] },
      ],
      afterPower: afterPower(read, Object.keys(held).length > 0 ? [{ inputs: held }] : []),
      stopClears: read.choice('on-stop') === 'off',
    };
  },
};
