import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { copperZero } from './electrical-constants.ts';
import { numbers } from './numbers.ts';

const BALANCE = 'derived: energy balance of one body, copper loss only';

/** One-body heating of a motor. Iron and friction loss are left out: at speed the motor stands less. */
export const motorHeating = defineSheet({
  id: 'motor-heating',
  title: 'Heating of a motor',
  about:
    'Current heats the winding with its square, and warm copper resists more, which heats it further. This says what current a motor stands for ever, and for how long it stands more.',
  symbols: {
    Rth: input('thermal resistance from winding to room', 'K/W', { tex: 'R_{th}', domain: 'positive' }),
    Rref: input('winding resistance', 'Ω', { tex: 'R_{ref}', domain: 'positive' }),
    Tref: input('temperature at which it was measured', '°C', { tex: 'T_{ref}' }),
    Ta: input('room temperature', '°C', { tex: 'T_a' }),
    Tmax: input('highest winding temperature', '°C', {
      tex: 'T_{max}',
      note: 'From the insulation class; see its table.',
    }),
    I: input('current', 'A', { domain: 'not negative' }),
    tau: input('thermal time constant', 's', { tex: '\\tau', domain: 'positive' }),
    T0: copperZero,
    R_hot: formula(
      'winding resistance at the highest temperature',
      'Ω',
      'Rref * (Tmax - T0) / (Tref - T0)',
      'IEC 60034-1 (from memory)',
      {
        tex: 'R_{hot}',
        says: 'Warm copper resists more.',
      },
    ),
    R_a: formula(
      'winding resistance at room temperature',
      'Ω',
      'Rref * (Ta - T0) / (Tref - T0)',
      'IEC 60034-1 (from memory)',
      {
        tex: 'R_a',
        says: 'The same winding, cold.',
      },
    ),
    I_cont: formula('current it stands for ever', 'A', 'sqrt((Tmax - Ta) / (Rth * R_hot))', BALANCE, {
      tex: 'I_{cont}',
      says: 'The current whose heat just escapes when the winding is as hot as it may be.',
    }),
    I_runaway: formula(
      'current above which it never settles',
      'A',
      'sqrt((Ta - T0) / (R_a * Rth))',
      BALANCE,
      {
        tex: 'I_{runaway}',
        says: 'Above it the growing resistance makes heat faster than it escapes: the temperature rises until something burns.',
      },
    ),
    dT: procedure('rise above the room once settled', 'K', {
      tex: '\\Delta T',
      reads: ['I', 'R_a', 'Rth', 'Ta', 'T0'],
      run: (...x) => {
        const [I, R_a, Rth, Ta, T0] = numbers<5>(x);
        const cold = I * I * R_a * Rth;
        return cold / (1 - cold / (Ta - T0));
      },
      refuses: (...x) => {
        const [I, R_a, Rth, Ta, T0] = numbers<5>(x);
        return I * I * R_a * Rth < Ta - T0
          ? undefined
          : 'above the runaway current the winding never settles; it heats until it burns';
      },
      says: 'Heat made equals heat lost, with the resistance growing as the winding warms.',
      source: BALANCE,
    }),
    T_end: formula('winding temperature once settled', '°C', 'Ta + dT', BALANCE, {
      tex: 'T_{end}',
      says: 'Room temperature plus the rise.',
    }),
    t_lim: procedure('time from cold to the highest temperature, hot resistance throughout', 's', {
      tex: 't_{lim}',
      reads: ['I', 'R_hot', 'Rth', 'Tmax', 'Ta', 'tau'],
      run: (...x) => {
        const [I, R_hot, Rth, Tmax, Ta, tau] = numbers<6>(x);
        return -tau * Math.log1p(-(Tmax - Ta) / (I * I * R_hot * Rth));
      },
      refuses: (...x) => {
        const [I, R_hot, Rth, Tmax, Ta] = numbers<5>(x);
        if (Tmax <= Ta) return 'the room is already as hot as the winding may be';
        return I * I * R_hot * Rth > Tmax - Ta
          ? undefined
          : 'this current never reaches the highest temperature';
      },
      says: 'A short, careful answer: it reckons with hot resistance from the start.',
      source: BALANCE,
    }),
    t_lim_exact: procedure('time from cold to the highest temperature, resistance growing', 's', {
      tex: 't_{lim,exact}',
      reads: ['I', 'R_a', 'Rth', 'Tmax', 'Ta', 'T0', 'tau'],
      run: (...x) => {
        const [I, R_a, Rth, Tmax, Ta, T0, tau] = numbers<7>(x);
        const cold = I * I * R_a * Rth;
        const rise = Tmax - Ta;
        // tau·dT' = cold − a·dT; a turns negative above the runaway current, where the rise is exponential.
        const a = 1 - cold / (Ta - T0);
        const u = (a * rise) / cold;
        return Math.abs(u) < 1e-9 ? (tau * rise) / cold : (-tau / a) * Math.log1p(-u);
      },
      refuses: (...x) => {
        const [I, R_a, Rth, Tmax, Ta, T0] = numbers<6>(x);
        if (Tmax <= Ta) return 'the room is already as hot as the winding may be';
        const cold = I * I * R_a * Rth;
        return cold > (1 - cold / (Ta - T0)) * (Tmax - Ta)
          ? undefined
          : 'this current never reaches the highest temperature';
      },
      says: 'The same with the resistance growing as the winding warms: a little longer.',
      source: BALANCE,
    }),
  },
});
