/** Points where wires end: strips, plugs, earth, the shield. */
import type { SymbolSpec } from './types.ts';
import { circle, path, solid } from './types.ts';

export const points = {
  terminal: { name: 'terminal of a strip', form: 'point', draw: () => [circle(0, 0, 4)] },
  socket: {
    name: 'contact of a plug connector',
    form: 'point',
    draw: () => [path('M-4 -4a4 4 0 0 0 0 8M-8 0H-3'), solid('M-3 -1.700H6V1.700H-3Z')],
  },
  earth: {
    name: 'protective earth',
    form: 'point',
    draw: () => [circle(0, 0, 9), path('M0 -9V-1M-6 -1H6M-4 2H4M-2 5H2')],
  },
  frame: {
    name: 'frame of the machine',
    form: 'point',
    draw: () => [path('M0 -9V0M-8 0H8M-6 0L-9 6M0 0L-3 6M6 0L3 6')],
  },
  shield: {
    name: 'shield of a cable',
    form: 'point',
    draw: () => [path('M-9 0a9 6 0 1 0 18 0a9 6 0 1 0 -18 0', { class: 'line dashed' })],
  },
} as const satisfies Record<string, SymbolSpec>;
