import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { idealRipple, idealRippleRefuses } from './ideal-ripple.ts';

const EXACT = 'derived: ideal source, constant current; the instant of recharge is solved for';
const reads = ['f', 'C', 'I', 'Vp'];
type Four = [f: number, C: number, I: number, Vp: number];

/** Ripple of a single-phase bridge on an ideal source. */
export const ripple = defineSheet({
  id: 'ripple',
  title: 'Ripple of the bus',
  about:
    'Twice in each cycle of the mains the capacitor is charged to the peak; in between it feeds the drives alone and its voltage falls. More capacitance means a smaller fall, but shorter and higher gulps from the transformer.',
  symbols: {
    f: input('mains frequency', 'Hz', { domain: 'positive' }),
    C: input('bus capacitance', 'µF', { domain: 'positive' }),
    I: input('bus current', 'A', { domain: 'not negative' }),
    Vp: input('peak of the bus', 'V', { tex: 'V_p', domain: 'positive' }),
    dV_want: input('ripple wanted', 'V', { tex: '\\Delta V_{want}', domain: 'positive' }),
    V_valley: procedure('lowest bus voltage', 'V', {
      tex: 'V_{valley}',
      reads,
      run: (...x) => idealRipple(...(x as Four)).valley,
      refuses: (...x) => idealRippleRefuses(...(x as Four)),
      says: 'The voltage just before the next peak comes to help.',
      source: EXACT,
    }),
    V_mean: procedure('mean bus voltage', 'V', {
      tex: 'V_{mean}',
      reads,
      run: (...x) => idealRipple(...(x as Four)).mean,
      refuses: (...x) => idealRippleRefuses(...(x as Four)),
      says: 'What a d.c. meter shows.',
      source: EXACT,
    }),
    dV: formula('ripple, peak to valley', 'V', 'Vp - V_valley', EXACT, {
      tex: '\\Delta V',
      says: 'How far the bus falls between two peaks.',
    }),
    dV_max: formula(
      'ripple at most',
      'V',
      'I / (2*f*C)',
      'derived: as if the capacitor fed the drives for the whole half cycle',
      {
        tex: '\\Delta V_{max}',
        says: 'The short formula; the truth is a little less.',
      },
    ),
    C_need: formula(
      'capacitance for the ripple wanted',
      'µF',
      'I / (2*f*dV_want)',
      'derived: as if the capacitor fed the drives for the whole half cycle',
      {
        tex: 'C_{need}',
        says: 'On the safe side, since the truth is a little less.',
      },
    ),
  },
});
