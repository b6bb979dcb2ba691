import { besideSpindle, SPINDLE_MOVES } from '../beside-spindle.ts';
import { moveTo, switches, twoEnds, watch } from '../common.ts';
import { yesNo } from '../settings.ts';

export const drawbar = besideSpindle({
  id: 'drawbar',
  name: 'power drawbar',
  says: 'Springs hold the tool in the spindle; a cylinder presses against them to let it go.',
  machines: ['mill', 'other'],
  states: ['clamped', 'released'],
  settings: {
    'clamped-switch': yesNo('a switch tells that the tool is clamped', 'yes'),
    'released-switch': yesNo('a switch tells that the tool is free', 'yes'),
    keyed: yesNo('the tool has drive keys, so that the spindle must stop at an angle', 'no'),
  },
  moveTime: ['1.5 s'],
  abilities: (read) => (read.yes('keyed') ? { orientation: 'the tools of the drawbar have drive keys' } : {}),
  make: (read, standing) => {
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
    const { inputs, shows } = switches({
      clamped: { there: read.yes('clamped-switch'), name: 'tool clamped', on: { tool: 'clamped' } },
      released: { there: read.yes('released-switch'), name: 'tool free', on: { tool: 'released' } },
    });
    const held = shows({ clamped: true, released: false });
    const free = shows({ clamped: false, released: true });
    return {
      part: bar,
      inputs,
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
      watches: watch(held, 'The drawbar no longer shows that it holds: the control stops the spindle'),
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
      readyWhen: [{ inputs: held }],
    };
  },
});
