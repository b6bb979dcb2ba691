/** Coils and what they move. */
import type { SymbolSpec } from './types.ts';
import { circle, letters, path, solid } from './types.ts';

const COIL = 'M0 0H13M27 0H40M13 -10H27V10H13Z';

/** A coil that leaves room below for what lies across it. */
const LOW_COIL = 'M0 0H13M27 0H40M13 -12H27V5H13Z';
const ACROSS = 'M4 0V11H36V0';

export const coils = {
  coil: { name: 'coil of a relay or contactor', form: 'pole', draw: () => [path(COIL)] },
  'coil-diode': {
    name: 'coil with a diode across it',
    form: 'pole',
    draw: () => [path(`${LOW_COIL}${ACROSS}M18 8V14`), solid('M23 8L18 11L23 14Z')],
  },
  'coil-clamp': {
    name: 'coil with a clamp across it (suppressor diode)',
    form: 'pole',
    draw: () => [path(`${LOW_COIL}${ACROSS}M16 7L18 8V14L20 15`), solid('M23 8L18 11L23 14Z')],
  },
  'coil-varistor': {
    name: 'coil with a varistor across it',
    form: 'pole',
    draw: () => [path(`${LOW_COIL}${ACROSS}M14 9H26V13H14ZM14 15H17L24 7`)],
  },
  'coil-snubber': {
    name: 'coil with resistor and capacitor across it',
    form: 'pole',
    draw: () => [path(`${LOW_COIL}M4 0V11H10M10 9H19V13H10ZM19 11H24M24 8V14M27 8V14M27 11H36V0`)],
  },
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
