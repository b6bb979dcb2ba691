/** What parts a circuit when too much flows, or leads a surge away. */
import type { SymbolSpec } from './types.ts';
import { path } from './types.ts';

export const protection = {
  fuse: { name: 'fuse', form: 'pole', draw: () => [path('M0 0H40M6 -5H34V5H6Z')] },
  breaker: {
    name: 'circuit breaker',
    form: 'pole',
    linked: true,
    draw: () => [path('M0 0H11L29 -10M29 0H40M26 -3L32 3M26 3L32 -3')],
  },
  'motor-breaker': {
    name: 'motor circuit breaker',
    form: 'pole',
    linked: true,
    draw: () => [path('M0 0H8L22 -9M22 0H27V-4H33V0H40M19 -3L25 3M19 3L25 -3')],
  },
  overload: {
    name: 'overload relay, its heater',
    form: 'pole',
    linked: true,
    draw: () => [path('M0 0H14V-5H26V0H40M9 -10H31V5H9Z')],
  },
  'residual-current': {
    name: 'residual current device',
    form: 'pole',
    linked: true,
    draw: () => [path('M0 0H6L18 -9M18 0H40'), path('M25 0a4 7 0 1 0 8 0a4 7 0 1 0 -8 0')],
  },
  varistor: {
    name: 'surge suppressor (varistor)',
    form: 'pole',
    draw: () => [path('M0 0H6M34 0H40M6 -5H34V5H6ZM8 10H14L28 -10')],
  },
  snubber: {
    name: 'suppressor: resistor and capacitor',
    form: 'pole',
    draw: () => [path('M0 0H4M4 -4H18V4H4ZM18 0H26M26 -7V7M30 -7V7M30 0H40')],
  },
} as const satisfies Record<string, SymbolSpec>;
