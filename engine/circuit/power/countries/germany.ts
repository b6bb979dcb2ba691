import type { Country } from './types.ts';

export const germany: Country = {
  id: 'germany',
  name: 'Germany',
  words: ['de', 'deutschland', 'brd'],
  mains: { single: 230, between: 400, hertz: 50, source: 'IEC 60038 (from memory)' },
  fixed: {
    says: 'Work on the fixed installation, a new socket or circuit included, is only for an electrician entered with the network operator.',
    source: 'NAV § 13 (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Sockets up to 32 A for general use stand behind a residual current device of 30 mA at most.',
    source: 'DIN VDE 0100-410:2018, 411.3.3 (recalled, check the standard)',
    status: 'from memory',
    residual: { amps: 0.03, upTo: 32 },
  },
  machine: {
    says: 'The electrics of the machine follow DIN EN 60204-1 (VDE 0113-1).',
    source: 'DIN EN 60204-1 (from memory)',
    status: 'from memory',
  },
  ask: 'an electrician entered with the network operator (“eingetragener Elektrofachbetrieb”)',
};
