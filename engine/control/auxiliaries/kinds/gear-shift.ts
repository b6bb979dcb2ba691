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
import type { Operation } from '../machine.ts';
import { yesNo } from '../settings.ts';

export const gearShift: AuxiliaryKind = {
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
    standstill: STANDSTILL,
    'spindle-asks': SPINDLE_ASKS,
    ...MOVE_TIMES('3 s'),
    ...RECOVERY,
    ...ASKS,
    ...WIRING,
  },
  make: (read) => {
    const gear = twoEnds({
      id: 'gear',
      name: 'Gear',
      rest: 'low',
      work: 'high',
      start: 'rest',
      restOutput: 'shift to low',
      workOutput: 'shift to high',
      valve: read.choice('valve') as 'one' | 'two',
    });
    const spindle = spindleBeside(read);
    const rocks = read.yes('rocks');
    const switches = { low: read.yes('low-switch'), high: read.yes('high-switch') };
    const seen = (want: 'low' | 'high') => ({
      ...(switches.low ? { low: want === 'low' } : {}),
      ...(switches.high ? { high: want === 'high' } : {}),
    });
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
        needs: spindle.needs,
        needsSays: spindle.needsSays,
        sets: { wanted: want },
        steps: rocks ? [step, { id: 'rest', says: 'Stop rocking', off: ['rock'], dwell: 0.2 }] : [step],
        ends: 'ready',
        shows: want,
      };
    };
    return {
      variables: [gear.variable, spindle.variable, { id: 'wanted', values: ['low', 'high'], start: 'low' }],
      inputs: [
        ...(switches.low ? [{ id: 'low', name: 'low gear in', on: [{ gear: 'low' }] }] : []),
        ...(switches.high ? [{ id: 'high', name: 'high gear in', on: [{ gear: 'high' }] }] : []),
        ...spindle.inputs,
      ],
      outputs: [...gear.outputs, ...(rocks ? [{ id: 'rock', name: 'rock the spindle' }] : [])],
      rules: [...gear.rules, ...spindle.rules],
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
      afterPower: afterPower(
        read,
        (['low', 'high'] as const)
          .filter((want) => Object.keys(seen(want)).length > 0)
          .map((want) => ({ inputs: seen(want), sets: { wanted: want } })),
      ),
      stopClears: read.choice('on-stop') === 'off',
    };
  },
};
