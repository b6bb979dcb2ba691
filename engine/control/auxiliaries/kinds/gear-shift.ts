import { besideSpindle, SPINDLE_MOVES } from '../beside-spindle.ts';
import { moveTo, switches, twoEnds, VALVE, valveOf } from '../common.ts';
import type { Operation } from '../machine.ts';
import { yesNo } from '../settings.ts';

export const gearShift = besideSpindle({
  id: 'gear-shift',
  name: 'gear shift',
  says: 'A cylinder slides the gears of the headstock: low or high.',
  states: ['low', 'high'],
  settings: {
    valve: VALVE,
    'low-switch': yesNo('a switch tells that low is in', 'yes'),
    'high-switch': yesNo('a switch tells that high is in', 'yes'),
    rocks: yesNo(
      'the spindle rocks gently while it shifts',
      'yes',
      'Tooth on tooth does not go in until the spindle moves a little.',
    ),
  },
  moveTime: ['3 s'],
  make: (read, standing) => {
    const gear = twoEnds({
      id: 'gear',
      name: 'Gear',
      rest: 'low',
      work: 'high',
      start: 'rest',
      restOutput: 'shift to low',
      workOutput: 'shift to high',
      valve: valveOf(read),
    });
    const rocks = read.yes('rocks');
    const { inputs, shows } = switches({
      low: { there: read.yes('low-switch'), name: 'low gear in', on: { gear: 'low' } },
      high: { there: read.yes('high-switch'), name: 'high gear in', on: { gear: 'high' } },
    });
    const seen = (want: 'low' | 'high') => shows({ low: want === 'low', high: want === 'high' });
    const shift = (want: 'low' | 'high'): Operation => {
      const drive = want === 'low' ? gear.to.rest : gear.to.work;
      const step = moveTo(
        'shift',
        `Shift to ${want}${rocks ? ', rocking the spindle' : ''}`,
        { ...drive, on: [...(drive.on ?? []), ...(rocks ? ['rock'] : [])] },
        seen(want),
        read,
      );
      return {
        id: want,
        name: `shift to ${want}`,
        ...standing,
        sets: { wanted: want },
        steps: rocks ? [step, { id: 'rest', says: 'Stop rocking', off: ['rock'], dwell: 0.2 }] : [step],
        ends: 'ready',
        shows: want,
      };
    };
    return {
      part: gear,
      variables: [{ id: 'wanted', values: ['low', 'high'], start: 'low' }],
      inputs,
      outputs: rocks ? [{ id: 'rock', name: 'rock the spindle' }] : [],
      operations: [shift('low'), shift('high')],
      hazards: [
        {
          id: 'half-in',
          says: 'the gears are half in while the spindle turns',
          when: [{ gear: 'between', spindle: SPINDLE_MOVES }],
          cure: 'Shift only when something has seen the spindle stand; start the spindle only when a switch shows the gear fully in.',
        },
        {
          id: 'wrong-gear',
          says: 'the control reckons with another gear than the one that is in: the spindle runs too fast or has no pull',
          when: [
            { step: 'ready', wanted: 'low', gear: ['between', 'high'] },
            { step: 'ready', wanted: 'high', gear: ['between', 'low'] },
          ],
          cure: 'A switch for each gear, waited for with a time-out, and read when the power comes back.',
        },
      ],
      troubles: [
        {
          id: 'tooth-on-tooth',
          says: 'tooth meets tooth',
          stops: rocks ? [] : ['Gear: now low', 'Gear: now high'],
        },
        { id: 'sticks', says: 'the fork sticks half way', stops: ['Gear: now low', 'Gear: now high'] },
      ],
      readyWhen: (['low', 'high'] as const).map((want) => ({ inputs: seen(want), sets: { wanted: want } })),
    };
  },
});
