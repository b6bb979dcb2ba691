import type { Country } from './types.ts';

export const france: Country = {
  id: 'france',
  name: 'France',
  words: ['fr'],
  mains: { single: 230, between: 400, hertz: 50, source: 'IEC 60038 (from memory)' },
  fixed: {
    says: 'A new installation, or one altered as a whole, is attested before it is put on the network.',
    source: 'attestation of conformity (Consuel) (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Sockets up to 32 A stand behind a residual current device of 30 mA at most.',
    source: 'NF C 15-100, 411.3.3 (recalled, check the standard)',
    status: 'from memory',
    residual: { amps: 0.03, upTo: 32 },
  },
  machine: {
    says: 'The electrics of the machine follow NF EN 60204-1.',
    source: 'NF EN 60204-1 (from memory)',
    status: 'from memory',
  },
  ask: 'a qualified electrician',
};
