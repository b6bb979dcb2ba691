import { defineSheet, formula, input } from '../sheet/index.ts';

const teeth = 'derivation: belt teeth meet pulley teeth one for one';

export const belt = defineSheet({
  id: 'belt',
  title: 'Toothed belt',
  about: 'Ratio, pulley sizes, belt speed and pull of a toothed belt from motor to screw.',
  symbols: {
    z_m: input('teeth on the motor pulley', 'teeth', { domain: 'positive' }),
    z_s: input('teeth on the screw pulley', 'teeth', { domain: 'positive' }),
    p: input('pitch of the belt', 'mm', { domain: 'positive' }),
    n_m: input('motor speed', 'r/min', { domain: 'not negative' }),
    T_m: input('motor torque', 'N·m', { domain: 'not negative' }),
    i: formula('reduction, motor turns for one screw turn', '1', 'z_s / z_m', teeth),
    d_m: formula('pitch diameter of the motor pulley', 'mm', 'p * z_m / pi', teeth, {
      says: 'The pitch line runs in the belt, a little outside the tips of the pulley’s teeth.',
    }),
    d_s: formula('pitch diameter of the screw pulley', 'mm', 'p * z_s / pi', teeth),
    v_b: formula('belt speed', 'm/s', 'p * z_m * n_m / (2 * pi)', teeth),
    n_s: formula('screw speed', 'r/min', 'n_m / i', teeth),
    F_p: formula('pull of the belt', 'N', '2 * T_m / d_m', 'derivation: torque over radius', {
      says: 'What the belt carries beyond its tension at rest.',
    }),
  },
});
