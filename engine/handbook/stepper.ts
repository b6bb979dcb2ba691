import { defineSheet, formula, input, procedure } from '../sheet/index.ts';

const PHASOR =
  'derived by phasor maximisation, fundamental only; same structure in P. P. Acarnley, Stepping Motors: a guide to theory and practice (from memory)';

type Six = [k: number, R: number, L: number, Vs: number, Nr: number, I_peak: number];

function pullOutByVoltage(w: number, k: number, R: number, L: number, Vs: number, Nr: number): number {
  const Z = Math.hypot(R, Nr * w * L);
  return (k / Z) * (Vs - (k * w * R) / Z);
}

/** The first speed at which the voltage can no longer drive the full current. */
function cornerSpeed(...x: readonly unknown[]): number {
  const [k, R, L, Vs, Nr, I_peak] = x as Six;
  const spare = (w: number): number => pullOutByVoltage(w, k, R, L, Vs, Nr) - k * I_peak;
  // Small steps up, so that the first crossing is taken and not a later one.
  let high = R / (Nr * L) / 100;
  let low = 0;
  while (spare(high) > 0) {
    low = high;
    high *= 1.05;
  }
  for (let n = 0; n < 200 && high - low > 1e-14 * high; n++) {
    const mid = (low + high) / 2;
    if (spare(mid) > 0) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/** Two-phase hybrid stepping motor, first order: an upper bound of what it can do. */
export const stepper = defineSheet({
  id: 'stepper',
  title: 'Torque of a stepping motor at speed',
  about:
    'Holding torque is what a stepping motor has at standstill. At speed the winding does not let the current in quickly enough, and the torque falls. This estimate is kind to the motor: it can prove that one is too weak, never that it is strong enough.',
  symbols: {
    theta_s: input('full step angle', '°', { tex: '\\theta_s', domain: 'positive' }),
    Th: input('holding torque', 'N·m', {
      tex: 'T_h',
      domain: 'positive',
      note: 'Both phases on at rated current.',
    }),
    I: input('rated current of one phase', 'A', { domain: 'positive' }),
    I_peak: input('peak of the phase current as the drive is set', 'A', {
      tex: 'I_{peak}',
      domain: 'positive',
    }),
    R: input('resistance of one phase', 'Ω', { domain: 'positive' }),
    L: input('inductance of one phase', 'mH', {
      domain: 'positive',
      note: 'As the drive connects it: series is four times parallel.',
    }),
    Vs: input('supply voltage', 'V', { tex: 'V_s', domain: 'positive' }),
    w: input('speed', 'r/min', { tex: '\\omega', domain: 'not negative' }),
    J: input('inertia turned', 'kg·m²', { domain: 'positive' }),
    Nr: formula(
      'rotor teeth',
      '1',
      'pi / (2*theta_s)',
      'definition of the two-phase hybrid motor: four steps to a tooth',
      {
        tex: 'N_r',
        says: '50 for the usual 1.8 degrees.',
      },
    ),
    k: formula('torque of one phase for each ampere', 'N·m/A', 'Th / (sqrt(2)*I)', PHASOR, {
      says: 'Two phases at right angles make 1.41 times what one makes.',
    }),
    Z: formula('impedance of one phase at speed', 'Ω', 'sqrt(R^2 + (Nr*w*L)^2)', PHASOR, {
      says: 'What the winding sets against the current; grows with speed.',
    }),
    T_v: formula('torque the voltage allows', 'N·m', 'k/Z * (Vs - k*w*R/Z)', PHASOR, {
      tex: 'T_v',
      says: 'At high speed the supply cannot push more current through the winding than this.',
    }),
    T_i: formula('torque the current allows', 'N·m', 'k * I_peak', PHASOR, {
      tex: 'T_i',
      says: 'At low speed the drive lets no more current flow.',
    }),
    T_po: formula('pull-out torque at speed', 'N·m', 'max(0, min(T_i, T_v))', PHASOR, {
      tex: 'T_{po}',
      says: 'The smaller of the two. Above it the motor loses steps and nobody is told.',
    }),
    P_po: formula('power at that torque', 'W', 'T_po * w', PHASOR, {
      tex: 'P_{po}',
      says: 'Torque times speed.',
    }),
    P_inf: formula('power it never exceeds at high speed', 'W', 'k*Vs/(Nr*L) - k^2*R/(Nr*L)^2', PHASOR, {
      tex: 'P_\\infty',
      says: 'At high speed torque falls as speed rises and the power stays at this. More volts or less inductance raise it.',
    }),
    emf: formula('back-EMF of one phase', 'V', 'k * w', PHASOR, {
      says: 'What the turning motor sets against the supply.',
    }),
    w_c: procedure('speed at which torque starts to fall', 'r/min', {
      tex: '\\omega_c',
      reads: ['k', 'R', 'L', 'Vs', 'Nr', 'I_peak'],
      run: cornerSpeed,
      refuses: (...x) => {
        const [, R, , Vs, , I_peak] = x as Six;
        return Vs > R * I_peak ? undefined : 'the supply cannot drive this current even at standstill';
      },
      says: 'Below it the current limit rules, above it the voltage.',
      source: PHASOR,
    }),
    f_res: formula(
      'resonance of single steps',
      'Hz',
      'sqrt(Nr*Th/J) / (2*pi)',
      'derived: holding torque as a spring',
      {
        tex: 'f_{res}',
        says: 'Stepping near this rate makes the motor ring and lose steps.',
      },
    ),
    t_rise: formula(
      'time for the current to build up at standstill',
      'ms',
      '-L/R * ln(1 - I*R/Vs)',
      'derived: current in a coil at constant voltage',
      {
        tex: 't_{rise}',
        says: 'How long the supply takes to push the rated current into the winding.',
      },
    ),
  },
});
