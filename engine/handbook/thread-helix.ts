import { defineSheet, formula, input } from '../sheet/index.ts';

const unrolled = 'derivation: one turn of the thread unrolled';

export const threadHelix = defineSheet({
  id: 'thread-helix',
  title: 'Slope of a thread and what the tool needs',
  about:
    'A thread climbs. The side of the tool that leads must lean away by more than the slope at the root, or it rubs and the thread tears. The other side may lean less by as much.',
  symbols: {
    P: input('pitch', 'mm', { domain: 'positive' }),
    z: input('number of starts', '1', { domain: 'positive' }),
    d2: input('pitch diameter', 'mm', { domain: 'positive', tex: 'd_2' }),
    d1: input('diameter at the root', 'mm', { domain: 'positive', tex: 'd_1' }),
    c: input('clearance beyond the slope', '°', {
      domain: 'not negative',
      note: '2 to 3° is usual: common practice, no source.',
    }),
    Ph: formula('lead', 'mm', 'P * z', 'ISO 5408: lead is pitch times number of starts', { tex: 'P_h' }),
    beta: formula('slope at the pitch diameter', '°', 'atan(Ph / (pi * d2))', unrolled, { tex: '\\beta' }),
    beta_1: formula('slope at the root', '°', 'atan(Ph / (pi * d1))', unrolled, { tex: '\\beta_1' }),
    lead_side: formula(
      'clearance to grind on the leading side',
      '°',
      'beta_1 + c',
      'derivation: slope and clearance add',
      {
        tex: '\\alpha_\\mathrm{lead}',
        says: 'Right-hand thread cut towards the chuck: the side that faces the chuck.',
      },
    ),
    trail_side: formula(
      'clearance on the trailing side',
      '°',
      'c - beta_1',
      'derivation: slope and clearance subtract',
      {
        tex: '\\alpha_\\mathrm{trail}',
        says: 'Below zero: that side may even lean the other way.',
      },
    ),
  },
});
