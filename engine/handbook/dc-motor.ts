import { defineSheet, formula, input } from '../sheet/index.ts';

const LINE = 'derived: d.c. machine with constant flux, inductance ignored';

/** Brushed motor, or a brushless one as its d.c. equivalent (see `brushless-constants`). */
export const dcMotor = defineSheet({
  id: 'dc-motor',
  title: 'Torque and speed of a d.c. motor',
  about:
    'A motor turns volts into speed and amperes into torque. At high speed the supply runs out of volts, at low speed the drive runs out of amperes; a rapid needs both at once.',
  symbols: {
    Vb: input('bus voltage', 'V', {
      tex: 'V_b',
      domain: 'positive',
      note: 'Use the lowest it falls to under load.',
    }),
    duty: input('share of the bus the drive can pass on', '%', { tex: 'D', domain: 'fraction' }),
    Vbr: input('voltage lost in the brushes', 'V', {
      tex: 'V_{br}',
      domain: 'not negative',
      note: 'Zero for a brushless motor.',
    }),
    R: input('winding resistance', 'Ω', { domain: 'positive' }),
    Kt: input('torque constant', 'N·m/A', {
      tex: 'K_t',
      domain: 'positive',
      note: 'The same number as the back-EMF constant in volt-seconds per radian.',
    }),
    Tf: input('friction torque', 'N·m', { tex: 'T_f', domain: 'not negative' }),
    b: input('drag that grows with speed', 'N·m·s/rad', { domain: 'not negative' }),
    TL: input('load torque', 'N·m', {
      tex: 'T_L',
      note: 'What the shaft must deliver, acceleration included.',
    }),
    Ilim: input('current limit of the drive', 'A', { tex: 'I_{lim}', domain: 'positive' }),
    w_req: input('speed asked for', 'r/min', { tex: '\\omega_{req}', domain: 'not negative' }),
    V_av: formula('voltage the drive can put on the motor', 'V', 'duty * Vb', LINE, {
      tex: 'V_{av}',
      says: 'A drive switches the bus on and off; it cannot keep it on all the time, so a little is lost.',
    }),
    w: formula(
      'speed reached with this load at full voltage',
      'r/min',
      '(V_av - Vbr - R*(TL + Tf)/Kt) / (Kt + R*b/Kt)',
      LINE,
      {
        tex: '\\omega',
        says: 'What is left of the volts after brushes and winding is turned into speed. Negative: the motor cannot carry this load.',
      },
    ),
    I: formula('current at that load and speed', 'A', '(TL + Tf + b*w) / Kt', LINE, {
      says: 'Torque of the load and the friction, divided by the torque each ampere makes.',
    }),
    w_0: formula('speed without load', 'r/min', '(V_av - Vbr - R*Tf/Kt) / (Kt + R*b/Kt)', LINE, {
      tex: '\\omega_0',
      says: 'The highest speed this voltage can give.',
    }),
    I_0: formula('current without load', 'A', '(Tf + b*w_0) / Kt', LINE, {
      tex: 'I_0',
      says: 'Only friction is left to feed.',
    }),
    I_stall: formula('current at standstill with full voltage', 'A', '(V_av - Vbr) / R', LINE, {
      tex: 'I_{stall}',
      says: 'Only the winding resistance holds it back. Far more than the motor survives: never put the full bus on a standing motor without a current limit.',
    }),
    w_knee: formula(
      'speed up to which the full current can flow',
      'r/min',
      '(V_av - Vbr - Ilim*R) / Kt',
      LINE,
      {
        tex: '\\omega_{knee}',
        says: 'Below this speed the current limit rules, above it the voltage. Negative: the current limit is never reached.',
      },
    ),
    T_knee: formula('torque at that speed', 'N·m', 'Kt*Ilim - Tf - b*w_knee', LINE, {
      tex: 'T_{knee}',
      says: 'Peak torque at the shaft, friction taken off.',
    }),
    I_av: formula(
      'current that can flow at the speed asked for',
      'A',
      'min(Ilim, (V_av - Vbr - Kt*w_req)/R)',
      LINE,
      {
        tex: 'I_{av}',
        says: 'Either the limit of the drive, or what the volts left over can push through the winding, whichever is less.',
      },
    ),
    T_av: formula('torque there is at the speed asked for', 'N·m', 'Kt*I_av - Tf - b*w_req', LINE, {
      tex: 'T_{av}',
      says: 'Torque left for the load at that speed. Negative: the motor does not reach the speed at all.',
    }),
    T_need: formula('motor torque needed at the speed asked for', 'N·m', 'TL + Tf + b*w_req', LINE, {
      tex: 'T_{need}',
      says: 'Load and friction at that speed.',
    }),
    I_need: formula('current needed at the speed asked for', 'A', 'T_need / Kt', LINE, {
      tex: 'I_{need}',
      says: 'That torque divided by the torque each ampere makes.',
    }),
    V_need: formula(
      'voltage needed for that load at the speed asked for',
      'V',
      'Vbr + R*I_need + Kt*w_req',
      LINE,
      {
        tex: 'V_{need}',
        says: 'Brushes, winding and back-EMF together. Hold it against the voltage the drive can put on the motor.',
      },
    ),
    P_out: formula('power at the shaft', 'W', 'TL * w', LINE, {
      tex: 'P_{out}',
      says: 'Torque times speed.',
    }),
    P_in: formula('power taken', 'W', 'V_av * I', LINE, { tex: 'P_{in}', says: 'Volts times amperes.' }),
    eta: formula('efficiency', '%', 'P_out / P_in', LINE, {
      tex: '\\eta',
      says: 'How much of what is paid for reaches the shaft; the rest heats the motor.',
    }),
    P_req: formula('power taken at the speed asked for', 'W', 'V_need * I_need', LINE, {
      tex: 'P_{req}',
      says: 'Volts needed times amperes needed.',
    }),
  },
});
