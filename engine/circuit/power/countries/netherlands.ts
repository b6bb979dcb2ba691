import type { Country } from './types.ts';

export const netherlands: Country = {
  id: 'netherlands',
  name: 'Netherlands',
  words: ['nl', 'holland', 'nederland', 'the netherlands'],
  mains: { single: 230, between: 400, hertz: 50, source: 'IEC 60038 (from memory)' },
  fixed: {
    says: 'The fixed installation has to follow NEN 1010; have a qualified installer do or check it.',
    source: 'NEN 1010 by way of the building decree (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Sockets up to 32 A stand behind a residual current device of 30 mA at most.',
    source: 'NEN 1010, 411.3.3 (recalled, check the standard)',
    status: 'from memory',
    residual: { amps: 0.03, upTo: 32 },
  },
  machine: {
    says: 'The electrics of the machine follow NEN-EN-IEC 60204-1.',
    source: 'NEN-EN-IEC 60204-1 (from memory)',
    status: 'from memory',
  },
  ask: 'a recognised installer',
};
