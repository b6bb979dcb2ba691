/** What sees, counts and commands. */
import type { SymbolSpec } from './types.ts';
import { circle, letters, path } from './types.ts';

const SQUARE = 'M-14 -14H14V14H-14Z';

export const sensors = {
  proximity: {
    name: 'sensor that feels metal coming near',
    form: 'box',
    draw: () => [path(`${SQUARE}M0 -10L10 0L0 10L-10 0ZM-5 0H5`)],
  },
  sensor: { name: 'sensor', form: 'box', draw: () => [path(`${SQUARE}M0 -10L10 0L0 10L-10 0Z`)] },
  encoder: {
    name: 'encoder or scale: counts the way',
    form: 'box',
    draw: () => [
      circle(0, 0, 14),
      circle(0, 0, 4),
      path('M-9 11V7M-4 13.400V9M4 13.400V9M9 11V7M-8 -7H-5V-11H0V-7H5V-11H8'),
    ],
  },
  resolver: {
    name: 'resolver',
    form: 'box',
    draw: () => [circle(0, 0, 14), circle(0, 0, 7), letters(0, 3, 'R')],
  },
  probe: {
    name: 'touch probe',
    form: 'box',
    draw: () => [path(`${SQUARE}M-6 -14V-4H6V-14M0 -4V8`), circle(0, 10, 2)],
  },
  potentiometer: {
    name: 'potentiometer',
    form: 'box',
    draw: () => [path('M-14 4H-10M10 4H14M-10 0H10V8H-10ZM0 -12V0M-2.500 -4L0 0L2.500 -4')],
  },
  control: {
    name: 'control, or a board of it',
    form: 'box',
    draw: () => [path('M-13 -13H13V13H-13ZM-8 6V-6H-2V6H3V-6H8V6')],
  },
  'safety-relay': {
    name: 'safety relay',
    form: 'box',
    draw: () => [path(SQUARE), path('M0 -10L9 -6V1C9 6 4 9 0 11C-4 9 -9 6 -9 1V-6ZM-4 0L-1 4L5 -4')],
  },
  /** Its frame is drawn around its terminals; this stands for it in the legend. */
  box: { name: 'device', form: 'box', draw: () => [path('M-14 -10H14V10H-14Z')] },
} as const satisfies Record<string, SymbolSpec>;
