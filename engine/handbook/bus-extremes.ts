import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { diodeDropLight, diodeDropLoaded } from './electrical-constants.ts';
import { idealRipple, idealRippleRefuses } from './ideal-ripple.ts';

const RECTIFIER = 'derived: single-phase bridge charging a capacitor to the peak of the secondary';

/** Highest and lowest voltage of an unregulated bus. */
export const busExtremes = defineSheet({
  id: 'bus-extremes',
  title: 'Highest and lowest bus voltage',
  about:
    'An unregulated bus is highest when nothing moves and the mains is high, lowest when everything pulls and the mains is low. The drive must survive the one and the rapid must be reached on the other. A slowing axis pushes the highest higher still.',
  symbols: {
    Vsec: input('secondary voltage at rated load', 'V', {
      tex: 'V_{sec}',
      domain: 'positive',
      note: 'On the mains there is: another tap or country changes it in proportion.',
    }),
    reg: input('rise of the secondary without load', '%', {
      domain: 'fraction',
      note: 'Small transformers 10 to 15 %.',
    }),
    f: input('mains frequency', 'Hz', { domain: 'positive' }),
    C: input('bus capacitance', 'µF', { domain: 'positive' }),
    I: input('bus current', 'A', { domain: 'not negative' }),
    V_abs: input('absolute highest voltage of the drive', 'V', { tex: 'V_{abs}', domain: 'positive' }),
    use: input('share of that voltage to be used', '%', {
      tex: 'k',
      domain: 'fraction',
      note: 'Habit: 90 %.',
    }),
    up: input('how far the mains may rise', '%', {
      domain: 'fraction',
      note: '10 %: IEC 60038 and IEC 60204-1, 4.3.2 (from memory).',
    }),
    down: input('how far the mains may fall', '%', { domain: 'fraction', note: '10 %, as above.' }),
    Vd0: diodeDropLight,
    Vd: diodeDropLoaded,
    V_no_load_high: formula(
      'highest bus voltage',
      'V',
      'sqrt(2)*Vsec*(1 + reg)*(1 + up) - 2*Vd0',
      RECTIFIER,
      {
        tex: 'V_{high}',
        says: 'Peak of the unloaded secondary with the mains high, less two diodes.',
      },
    ),
    V_no_load: formula('bus voltage without load', 'V', 'sqrt(2)*Vsec*(1 + reg) - 2*Vd0', RECTIFIER, {
      tex: 'V_0',
      says: 'What a meter shows on an idle machine on a usual day.',
    }),
    V_loaded_peak: formula('peak of the loaded bus', 'V', 'sqrt(2)*Vsec - 2*Vd', RECTIFIER, {
      tex: 'V_p',
      says: 'Peak of the loaded secondary on a usual day, less two diodes.',
    }),
    V_loaded_low_peak: formula(
      'peak of the loaded bus with the mains low',
      'V',
      'sqrt(2)*Vsec*(1 - down) - 2*Vd',
      RECTIFIER,
      {
        tex: 'V_{low,peak}',
        says: 'The same with the mains low.',
      },
    ),
    V_loaded_low_valley: procedure('lowest bus voltage', 'V', {
      tex: 'V_{low}',
      reads: ['f', 'C', 'I', 'V_loaded_low_peak'],
      run: (...x) => idealRipple(...(x as [number, number, number, number])).valley,
      refuses: (...x) => idealRippleRefuses(...(x as [number, number, number, number])),
      says: 'Between two peaks the capacitor feeds the drives alone, and its voltage falls to this.',
      source: RECTIFIER,
    }),
    Vsec_max: formula(
      'highest secondary voltage the drive allows',
      'V',
      '(use*V_abs + 2*Vd0) / (sqrt(2)*(1 + reg)*(1 + up))',
      RECTIFIER,
      {
        tex: 'V_{sec,max}',
        says: 'Worked back from what the drive stands. Regeneration still comes on top.',
      },
    ),
  },
});
