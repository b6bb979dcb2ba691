import { defineSheet, formula, input } from '../sheet/index.ts';

export const axialResonance = defineSheet({
  id: 'axial-resonance',
  title: 'First resonance along the axis',
  about:
    'The slide on its screw rings like a weight on a spring. It limits how tightly the position loop can be tuned. The machine’s base is taken as rigid: a heavy slide on a light stand rings lower.',
  symbols: {
    K: input('stiffness of the whole drive', 'N/µm', { domain: 'positive' }),
    m: input('moving mass', 'kg', { domain: 'positive', note: 'With work, fixture and tool.' }),
    m_s: input('mass of the screw', 'kg', { domain: 'not negative', note: '0 to leave it out.' }),
    k_Kv: input('share of the resonance allowed to the loop', '1', {
      domain: 'fraction',
      tex: 'k',
      note: '0.2 to 0.3 with little damping (from memory).',
    }),
    m_e: formula('mass that swings', 'kg', 'm + m_s / 3', 'derivation: a spring’s own mass counts a third', {
      says: 'Of the screw only a third counts: its far end moves with the slide, its near end stands still.',
    }),
    f1: formula('first resonance', 'Hz', 'sqrt(K / m_e) / (2 * pi)', 'derivation: one mass on a spring', {
      tex: 'f_1',
      says: 'Four times the stiffness only doubles it.',
    }),
    Kv_max: formula('highest position-loop gain', '1/s', 'k_Kv * 2 * pi * f1', 'common practice, no source', {
      tex: 'K_{v,\\max}',
      says: 'Above it the loop begins to feed the ringing.',
    }),
  },
});
