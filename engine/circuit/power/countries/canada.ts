import type { Country } from './types.ts';

export const canada: Country = {
  id: 'canada',
  name: 'Canada',
  words: ['ca', 'can'],
  mains: { single: 120, between: 240, hertz: 60, source: 'CSA C22.1 (from memory)' },
  fixed: {
    says: 'The province says who may wire a circuit; a permit and an inspection are usual.',
    source: 'provincial law on CSA C22.1 (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Ground-fault protection of about 5 mA is asked for in some places; drive filters often trip it.',
    source: 'CSA C22.1, section 26 (recalled, check it)',
    status: 'from memory',
  },
  machine: {
    says: 'The electrics of an industrial machine follow CSA C22.2 No. 301; its colours and wire sizes differ from those here.',
    source: 'CSA C22.2 No. 301 (recalled, check the standard)',
    status: 'from memory',
  },
  ask: 'a licensed electrician, and the provincial safety authority',
};
