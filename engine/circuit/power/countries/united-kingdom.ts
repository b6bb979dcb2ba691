import type { Country } from './types.ts';

export const unitedKingdom: Country = {
  id: 'united-kingdom',
  name: 'United Kingdom',
  words: ['uk', 'gb', 'great britain', 'england', 'scotland', 'wales', 'northern ireland', 'britain'],
  mains: { single: 230, between: 400, hertz: 50, source: 'IEC 60038 (from memory)' },
  fixed: {
    says: 'A new circuit in a dwelling, its garage or shed has to be notified, or done by a registered electrician.',
    source:
      'Building Regulations, Part P, for England; Wales, Scotland and Northern Ireland have their own (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Sockets up to 32 A stand behind a residual current device of 30 mA at most.',
    source: 'BS 7671:2018, 411.3.3 (recalled, check the standard)',
    status: 'from memory',
    residual: { amps: 0.03, upTo: 32 },
  },
  machine: {
    says: 'The electrics of the machine follow BS EN 60204-1.',
    source: 'BS EN 60204-1 (from memory)',
    status: 'from memory',
  },
  ask: 'an electrician registered with a competent person scheme',
};
