import { besideSpindle, SPINDLE_MOVES } from '../beside-spindle.ts';
import { happens, moveTo, switches, twoEnds, VALVE, valveOf, watch } from '../common.ts';
import { yesNo } from '../settings.ts';

export const tailstock = besideSpindle({
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
  },
  moveTime: ['4 s', '10 s'],
  make: (read, standing) => {
    const quill = twoEnds({
      id: 'quill',
      name: 'Quill',
      rest: 'back',
      work: 'forward',
      start: 'rest',
      restOutput: 'quill back',
      workOutput: 'quill forward',
      valve: valveOf(read),
    });
    const { inputs, shows } = switches({
      presses: {
        there: read.yes('pressure-switch'),
        name: 'quill presses',
        on: { quill: 'forward', work: 'there' },
      },
      back: { there: read.yes('back-switch'), name: 'quill is back', on: { quill: 'back' } },
    });
    const held = shows({ presses: true, back: false });
    const away = shows({ presses: false, back: true });
    return {
      part: quill,
      variables: [
        { id: 'wanted', values: ['back', 'forward'], start: 'back' },
        { id: 'work', values: ['there', 'missed'], start: 'there' },
      ],
      inputs,
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
      watches: watch(shows({ presses: true }), 'The quill no longer presses: the control stops the spindle', {
        wanted: 'forward',
      }),
      hazards: [
        {
          id: 'lets-go',
          says: 'the centre leaves the work while the spindle turns',
          when: [
            { wanted: 'back', quill: ['between'], spindle: SPINDLE_MOVES },
            { wanted: 'forward', quill: ['between', 'back'], spindle: SPINDLE_MOVES },
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
            happens(
              'There is no work in front of the centre',
              { quill: 'back', work: 'there' },
              { work: 'missed' },
            ),
          ],
        },
      ],
      readyWhen: [
        { inputs: held, sets: { wanted: 'forward' } },
        { inputs: away, sets: { wanted: 'back' } },
      ],
    };
  },
});
