/** Coils and what they move. */
import type { SymbolSpec } from './types.ts';
import { circle, letters, path } from './types.ts';

const COIL = 'M0 0H13M27 0H40M13 -10H27V10H13Z';

export const coils = {
  coil: { name: 'coil of a relay or contactor', form: 'pole', draw: () => [path(COIL)] },
  'coil-delayed': {
    name: 'coil of a relay that lets go late',
    form: 'pole',
    draw: () => [path(`${COIL}M13 5H27`), path('M13 5H27V10H13Z', { class: 'solid' })],
  },
  valve: {
    name: 'coil of a valve',
    form: 'pole',
    draw: () => [path(`${COIL}M15 -5L25 5M15 5L25 -5`)],
  },
  brake: {
    name: 'coil of a brake',
    form: 'pole',
    draw: () => [path(`${COIL}M16 -14H24M20 -14V-10`)],
  },
  fan: {
    name: 'fan or pump with its motor',
    form: 'pole',
    draw: () => [path('M0 0H10M30 0H40'), circle(20, 0, 10), letters(20, 4, 'M')],
  },
} as const satisfies Record<string, SymbolSpec>;
