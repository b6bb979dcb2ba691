import { curve, defineSheet, formula, input, procedure } from '../sheet/index.ts';
import type { Curve } from '../sheet/types.ts';
import { interpolate, outside } from './interpolate.ts';

const rpm = (w: number): string => `${Number(((w * 30) / Math.PI).toPrecision(4))} r/min`;
const BETWEEN = 'straight line between the points of the curve';

/** Pull-out torque read from a measured or catalogue curve. */
export const stepperCurve = defineSheet({
  id: 'stepper-curve',
  title: 'Torque of a stepping motor from its curve',
  about:
    'A curve measured at your voltage and current beats any formula. Between its points a straight line is drawn; beyond its ends it says nothing.',
  symbols: {
    pullOut: curve('pull-out torque', 'N·m', 'speed', 'r/min', { tex: 'T(\\omega)' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'not negative' }),
    T_po: procedure('pull-out torque at that speed', 'N·m', {
      tex: 'T_{po}',
      reads: ['pullOut', 'w'],
      run: (points, w) => interpolate(points as Curve, w as number),
      refuses: (points, w) => outside(points as Curve, w as number, rpm),
      says: 'Read from the curve. Above this torque the motor loses steps.',
      source: BETWEEN,
    }),
    P_po: formula('power at that torque', 'W', 'T_po * w', 'definition of power', {
      tex: 'P_{po}',
      says: 'Torque times speed.',
    }),
    w_top: procedure('highest speed of the curve', 'r/min', {
      tex: '\\omega_{top}',
      reads: ['pullOut'],
      run: (points) => (points as Curve).x.at(-1)!,
      says: 'Beyond it nothing is known.',
      source: BETWEEN,
    }),
  },
});
