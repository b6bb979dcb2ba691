/** Diodes and what is made of them. */
import type { SymbolSpec } from './types.ts';
import { path, solid } from './types.ts';

const arrow = (x: number, y: number) =>
  path(`M${x} ${y}L${x + 6} ${y - 6}M${x + 6} ${y - 6}h-3M${x + 6} ${y - 6}v3`);

export const semiconductors = {
  diode: {
    name: 'diode',
    form: 'pole',
    draw: () => [path('M0 0H40M27 -7V7'), solid('M14 -7L27 0L14 7Z')],
  },
  'suppressor-diode': {
    name: 'suppressor diode',
    form: 'pole',
    draw: () => [path('M0 0H40M30 -9L27 -7V7L24 9'), solid('M14 -7L27 0L14 7Z')],
  },
  'light-diode': {
    name: 'light-emitting diode',
    form: 'pole',
    draw: () => [path('M0 0H40M26 -6V6'), solid('M15 -6L26 0L15 6Z'), arrow(18, -8), arrow(24, -8)],
  },
  opto: {
    name: 'optocoupler: an input kept apart by light',
    form: 'box',
    draw: () => [
      path(
        'M-14 -12H14V12H-14ZM-14 -6H-6M-6 -6V-3M-10 4H-2M-6 4V6H-14M10 -6V-2M7 -3V5M7 -1L12 -6M7 3L12 7H14M12 -6H14',
      ),
      solid('M-10 -3H-2L-6 4Z'),
      path('M-1 -1L4 -1M4 -1l-2 -2M4 -1l-2 2M-1 3L4 3M4 3l-2 -2M4 3l-2 2'),
    ],
  },
  rectifier: {
    name: 'rectifier',
    form: 'box',
    draw: () => [path('M-13 -13H13V13H-13ZM-8 0H10M4 -5V5'), solid('M-5 -5L4 0L-5 5Z')],
  },
  transistor: {
    name: 'transistor output',
    form: 'box',
    draw: () => [path('M-12 0H-3M-3 -8V8M-3 -3L8 -10M-3 3L8 10'), solid('M8 10L2 9L5 5Z')],
  },
  'solid-relay': {
    name: 'solid-state relay',
    form: 'box',
    draw: () => [
      path('M-14 -12H14V12H-14ZM-9 -8V-4M-13 3H-5M-9 3V8M4 -9V-3M4 3V9M-1 -3H9M-1 3H9M-1 3L4 -3L9 3'),
      solid('M-13 -4H-5L-9 3Z'),
    ],
  },
} as const satisfies Record<string, SymbolSpec>;
