import type { Country } from './types.ts';

export const australia: Country = {
  id: 'australia',
  name: 'Australia',
  words: ['au', 'aus'],
  mains: { single: 230, between: 400, hertz: 50, source: 'AS 60038 (from memory)' },
  fixed: {
    says: 'All fixed wiring, however small, is only for a licensed electrician.',
    source: 'electrical safety laws of the states and territories (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Final circuits up to 32 A stand behind a residual current device of 30 mA at most.',
    source: 'AS/NZS 3000:2018, 2.6.3 (recalled, check the standard)',
    status: 'from memory',
    residual: { amps: 0.03, upTo: 32 },
  },
  machine: {
    says: 'The electrics of the machine follow AS/NZS 4024.1204 (IEC 60204-1).',
    source: 'AS/NZS 4024.1204 (recalled, check the standard)',
    status: 'from memory',
  },
  ask: 'a licensed electrician',
};
