import {
  ASKS,
  afterPower,
  MOVE_TIMES,
  moveTo,
  RECOVERY,
  SPINDLE_ASKS,
  STANDSTILL,
  spindleBeside,
  twoEnds,
  VALVE,
  WIRING,
} from '../common.ts';
import type { AuxiliaryKind } from '../kind.ts';
import { yesNo } from '../settings.ts';

export const tailstock: AuxiliaryKind = {
  id: 'tailstock',
  name: 'tailstock quill',
  says: 'A cylinder presses the centre into the work and takes it back.',
  machines: ['lathe', 'other'],
  states: ['back', 'forward'],
  settings: {
    valve: VALVE,
    'pressure-switch': yesNo(
      'a switch tells that it presses',
      'yes',
      'It comes on when the centre meets the work, not where the quill happens to stand.',
    ),
    'back-switch': yesNo('a switch tells that it is back', 'yes'),
    standstill: STANDSTILL,
    'spindle-asks': SPINDLE_ASKS,
    ...MOVE_TIMES('4 s', '10 s'),
    ...RECOVERY,
    ...ASKS,
    ...WIRING,
  },
  make: (read) => {
    const quill = twoEnds({
      id: 'quill',
      name: 'Quill',
      rest: 'back',
      work: 'forward',
      start: 'rest',
      restOutput: 'quill back',
      workOutput: 'quill forward',
      valve: read.choice('valve') as 'one' | 'two',
    });
    const spindle = spindleBeside(read);
    const presses = read.yes('pressure-switch');
    const backSwitch = read.yes('back-switch');
    const held = { ...(presses ? { presses: true } : {}), ...(backSwitch ? { back: false } : {}) };
    const away = { ...(presses ? { presses: false } : {}), ...(backSwitch ? { back: true } : {}) };
    const wanted = { id: 'wanted', values: ['back', 'forward'], start: 'back' } as const;
    const standing = { needs: spindle.needs, needsSays: spindle.needsSays };
    return {
      variables: [
        quill.variable,
        spindle.variable,
        wanted,
        { id: 'work', values: ['there', 'missed'], start: 'there' },
      ],
      inputs: [
        ...(presses
          ? [{ id: 'presses', name: 'quill presses', on: [{ quill: 'forward', work: 'there' }] }]
          : []),
        ...(backSwitch ? [{ id: 'back', name: 'quill is back', on: [{ quill: 'back' }] }] : []),
        ...spindle.inputs,
      ],
      outputs: quill.outputs,
      rules: [...quill.rules, ...spindle.rules],
      operations: [
        {
          id: 'forward',
          name: 'bring the quill forward',
          ...standing,
          sets: { wanted: 'forward' },
          steps: [moveTo('forward', 'Press the centre into the work', quill.to.work, held, read)],
          ends: 'ready',
          shows: 'forward',
        },
        {
          id: 'back',
          name: 'take the quill back',
          ...standing,
          sets: { wanted: 'back' },
          steps: [moveTo('back', 'Take the centre back', quill.to.rest, away, read)],
          ends: 'ready',
          shows: 'back',
        },
      ],
      watches: presses
        ? [
            {
              seen: { inputs: { presses: true }, when: { wanted: 'forward' } },
              says: 'The quill no longer presses: the control stops the spindle',
            },
          ]
        : [],
      hazards: [
        {
          id: 'lets-go',
          says: 'the centre leaves the work while the spindle turns',
          when: [
            { wanted: 'back', quill: ['between'], spindle: ['turning', 'running down'] },
            { wanted: 'forward', quill: ['between', 'back'], spindle: ['turning', 'running down'] },
          ],
          cure: 'Take the quill back only when something has seen the spindle stand, and keep it forward with a valve of two coils and a check valve when the power fails.',
        },
        {
          id: 'presses-nothing',
          says: 'the spindle is started though the centre met no work',
          when: [{ step: 'ready', wanted: 'forward', quill: 'forward', work: 'missed', spindle: 'turning' }],
          cure: 'A pressure switch that comes on only when the centre meets the work.',
        },
      ],
      troubles: [
        {
          id: 'missed',
          says: 'there is no work in front of the centre',
          adds: [
            {
              who: 'surroundings',
              says: 'There is no work in front of the centre',
              when: { quill: 'back', work: 'there' },
              becomes: { work: 'missed' },
            },
          ],
        },
      ],
      afterPower: afterPower(read, [
        ...(Object.keys(held).length > 0 ? [{ inputs: held, sets: { wanted: 'forward' } }] : []),
        ...(Object.keys(away).length > 0 ? [{ inputs: away, sets: { wanted: 'back' } }] : []),
      ]),
      stopClears: read.choice('on-stop') === 'off',
    };
  },
};
