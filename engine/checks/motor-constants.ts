/** The servo motor and its drive in direct-current terms, warm. */
import { dcEquivalent } from '../handbook/dc-equivalent.ts';
import { motorTemperature } from '../handbook/motor-temperature.ts';
import { ifChoice } from './check.ts';
import { fact, first, inapplicable, policy, stated, table, when } from './refs.ts';
import { axisWorking } from './working.ts';

const BALANCE = 'derivation: power balance of a sine motor';
const AMPERES = { dc: '1', 'phase-peak': '0.866025403784', 'phase-rms': '1.22474487139' };

/** The checks of servo motors hold for both kinds. */
export const SERVO = ifChoice('motor', 'type', 'brushed', 'brushless');

export const servo = axisWorking('servo', 'Motor and drive in direct-current terms', dcEquivalent, {
  Ke_s: fact('motor', 'emf'),
  c_e: table('motor', 'emfAs', '1', { dc: '1', 'line-peak': '1', 'line-rms': '1.41421356237' }, BALANCE),
  I_dp: fact('drive', 'peakCurrent'),
  I_dc: fact('drive', 'continuousCurrent'),
  c_d: table('drive', 'currentAs', '1', AMPERES, BALANCE),
  I_mp: fact('motor', 'peakCurrent'),
  I_mc: fact('motor', 'continuousCurrent'),
  c_m: table('motor', 'currentAs', '1', AMPERES, BALANCE),
});

const hot = axisWorking('hot', 'Winding resistance when warm', motorTemperature, {
  R1: fact('motor', 'resistance'),
  t1: stated('20 °C', '°C', 'measured or stated cold'),
  t2: policy('winding'),
});

export const HOT_RESISTANCE = hot.get('R2');

export const BRUSH_DROP = when('motor', 'type', {
  brushed: first(
    fact('motor', 'brushDrop'),
    table(
      'motor',
      'type',
      'V',
      { brushed: '2 ± 1 V' },
      'from memory: about 2 V for a pair of carbon brushes',
    ),
  ),
  brushless: stated('0 V', 'V', 'a brushless motor has no brushes'),
  stepper: inapplicable('A stepper has no brushes.'),
});

/** Torque the motor may make for hours. */
export const CONTINUOUS_TORQUE = first(fact('motor', 'continuousTorque'), servo.get('T_motor'));
/** Torque the motor may make for a moment. */
export const PEAK_TORQUE = first(fact('motor', 'peakTorque'), servo.get('T_motor_peak'));

export const motorConstants = { workings: [servo, hot], checks: [] };
