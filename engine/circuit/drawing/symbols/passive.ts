/** Resistors, capacitors, coils without a contact, lamps. */
import type { SymbolSpec } from './types.ts';
import { circle, path } from './types.ts';

export const passive = {
  resistor: { name: 'resistor', form: 'pole', draw: () => [path('M0 0H6M34 0H40M6 -5H34V5H6Z')] },
  'braking-resistor': {
    name: 'braking resistor',
    form: 'pole',
    draw: () => [path('M0 0H6M34 0H40M6 -5H34V5H6ZM13 -5V5M20 -5V5M27 -5V5')],
  },
  capacitor: {
    name: 'capacitor',
    form: 'pole',
    draw: () => [path('M0 0H18M22 0H40M18 -9V9M22 -9V9')],
  },
  'capacitor-polarised': {
    name: 'capacitor with plus and minus',
    form: 'pole',
    draw: () => [path('M0 0H17M23 0H40M23 -9V9M15 -9H18V9H15ZM8 -9V-3M5 -6H11')],
  },
  choke: {
    name: 'choke',
    form: 'pole',
    draw: () => [
      path('M0 0H6a4.700 4.700 0 0 1 9.400 0a4.700 4.700 0 0 1 9.400 0a4.700 4.700 0 0 1 9.200 0H40'),
    ],
  },
  lamp: {
    name: 'lamp',
    form: 'pole',
    draw: () => [
      path('M0 0H11M29 0H40M13.600 -6.400L26.400 6.400M13.600 6.400L26.400 -6.400'),
      circle(20, 0, 9),
    ],
  },
  heater: {
    name: 'heater',
    form: 'pole',
    draw: () => [path('M0 0H6M34 0H40M6 -6H34V6H6ZM13 -6V6M20 -6V6M27 -6V6')],
  },
  jumper: { name: 'bridge', form: 'pole', draw: () => [path('M0 0H40')] },
} as const satisfies Record<string, SymbolSpec>;
