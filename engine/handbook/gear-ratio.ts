import { defineSheet, formula, input } from '../sheet/index.ts';

const energy = 'derivation: energy balance of a ratio with losses';

export const gearRatio = defineSheet({
  id: 'gear-ratio',
  title: 'Through the reduction',
  about:
    'Speed and torque from the screw to the motor and back, through a belt, gears or a plain coupling (ratio 1, efficiency 1). Losses make the motor work harder when it drives and help it when it brakes.',
  symbols: {
    i: input('reduction, motor turns for one screw turn', '1', { domain: 'positive' }),
    eta_g: input('efficiency of the reduction', '%', {
      domain: 'positive',
      tex: '\\eta_g',
      note: 'Toothed belt about 97 %, a pair of gears about 97 %, a coupling 100 % (from memory).',
    }),
    n_s: input('screw speed', 'r/min'),
    T_s: input('torque at the screw', 'N·m', { note: 'Above zero the motor drives, below zero it brakes.' }),
    T_in: input('motor torque there is', 'N·m', { domain: 'not negative', tex: 'T_\\mathrm{in}' }),
    n_m: formula('motor speed', 'r/min', 'i * n_s', 'derivation: definition of the ratio'),
    T_m: formula('motor torque', 'N·m', 'T_s >= 0 ? T_s / (i * eta_g) : T_s * eta_g / i', energy, {
      says: 'When driving, the losses come on top; when braking, they take their part off.',
    }),
    T_out: formula('torque that arrives at the screw', 'N·m', 'T_in * i * eta_g', energy, {
      tex: 'T_\\mathrm{out}',
    }),
  },
});
