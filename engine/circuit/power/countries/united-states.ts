import type { Country } from './types.ts';

export const unitedStates: Country = {
  id: 'united-states',
  name: 'United States',
  words: ['us', 'usa', 'united states of america', 'america'],
  mains: { single: 120, between: 240, hertz: 60, source: 'ANSI C84.1 (from memory)' },
  fixed: {
    says: 'State, county and city say who may wire a circuit and whether a permit is needed; many ask for a licensed electrician.',
    source: 'local law (recalled, check it)',
    status: 'from memory',
  },
  socket: {
    says: 'Receptacles in garages and workshops need ground-fault protection of about 5 mA for people, which drive filters often trip.',
    source: 'NFPA 70 (NEC), 210.8 (recalled, check the edition your county uses)',
    status: 'from memory',
  },
  machine: {
    says: 'The electrics of an industrial machine follow NFPA 79 and article 670 of NFPA 70; its colours and wire sizes differ from those here.',
    source: 'NFPA 79, NFPA 70 article 670 (recalled, check the standard)',
    status: 'from memory',
  },
  ask: 'a licensed electrician, and the local building department',
};
