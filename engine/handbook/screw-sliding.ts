import { defineSheet, formula, input } from '../sheet/index.ts';

const shigley =
  'Shigley, Mechanical Engineering Design, chapter 8; Bhandari, Design of Machine Elements, chapter 6';

export const screwSliding = defineSheet({
  id: 'screw-sliding',
  title: 'Trapezoidal, Acme and square screws',
  about:
    'Torque to move a load up and down with a sliding nut, how much of it is lost, and whether the screw holds the load by its own friction. The flank angle is taken in the axial section: under 6° of lead angle that is right to a thousandth.',
  symbols: {
    d: input('outside diameter', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    z: input('number of starts', '1', { domain: 'positive' }),
    mu: input('friction coefficient of the thread', '1', {
      domain: 'not negative',
      tex: '\\mu',
      note: 'Bronze nut, oiled: 0.08 to 0.15; dry or new 0.15 to 0.2; plastic nut 0.06 to 0.12 (from memory).',
    }),
    alpha: input('flank half-angle', '°', {
      domain: 'not negative',
      tex: '\\alpha',
      note: 'Trapezoidal 15°, Acme 14.5°, square 0°.',
    }),
    mu_c: input('friction coefficient of the thrust collar', '1', {
      domain: 'not negative',
      tex: '\\mu_c',
      note: '0 where the thrust runs on a rolling bearing.',
    }),
    d_c: input('mean diameter of the thrust collar', 'mm', { domain: 'not negative' }),
    Fa: input('axial load', 'N', { domain: 'not negative', tex: 'F_a' }),
    T: input('torque put in', 'N·m', { domain: 'not negative' }),
    dm: formula(
      'mean thread diameter',
      'mm',
      'd - P / 2',
      'ISO 2904 and ASME B1.5: outside less half the pitch',
      {
        tex: 'd_m',
        domain: 'positive',
      },
    ),
    Ph: formula('lead', 'mm', 'P * z', 'ISO 3408-1: lead is pitch times number of starts', { tex: 'P_h' }),
    t: formula('slope of the thread', '1', 'Ph / (pi * dm)', shigley, {
      says: 'One turn climbs by the lead over the mean circumference.',
    }),
    beta: formula('lead angle', '°', 'atan(t)', 'derivation: one turn of the thread unrolled', {
      tex: '\\beta',
    }),
    m: formula('friction as the sloped flank feels it', '1', 'mu / cos(alpha)', shigley, {
      says: 'Sloped flanks wedge, so friction counts more than on a square thread.',
    }),
    room: formula('room before the thread jams', '1', '1 - m * t', shigley, {
      domain: 'positive',
      says: 'At zero or below the thread is so steep and so rough that no torque lifts the load.',
    }),
    r_up: formula(
      'torque for each newton, moving against the load',
      'mm',
      'dm / 2 * (t + m) / room + mu_c * d_c / 2',
      shigley,
      {
        tex: 'r_\\mathrm{up}',
        says: 'The lever arm with which the load resists: slope and friction of the thread, and the collar.',
      },
    ),
    r_dn: formula(
      'torque for each newton, moving with the load',
      'mm',
      'dm / 2 * (m - t) / (1 + m * t) + mu_c * d_c / 2',
      shigley,
      { tex: 'r_\\mathrm{dn}', says: 'Below zero the load turns the screw by itself.' },
    ),
    T_up: formula('torque against the load', 'N·m', 'Fa * r_up', shigley, { tex: 'T_\\mathrm{up}' }),
    T_dn: formula('torque with the load', 'N·m', 'Fa * r_dn', shigley, {
      tex: 'T_\\mathrm{dn}',
      says: 'Above zero the screw has to be turned to lower the load; below zero the load drives the screw and must be held back.',
    }),
    eta: formula('efficiency of the thread alone', '1', 't * room / (t + m)', shigley, { tex: '\\eta' }),
    eta_all: formula('efficiency with the collar', '1', 'Ph / (2 * pi * r_up)', shigley, {
      tex: '\\eta_\\mathrm{all}',
      says: 'Useful work of one turn over the work put in.',
    }),
    eta_b: formula(
      'efficiency, the load turns the screw',
      '1',
      '-2 * pi * r_dn / Ph',
      'derivation: energy balance of one turn',
      {
        tex: '\\eta_b',
        says: 'The share of the falling load’s work that arrives as turning, collar included. Zero or below: friction holds the load.',
      },
    ),
    lock: formula('self-locking margin', '1', 'm / t', 'Shigley, Mechanical Engineering Design, chapter 8', {
      says: 'Above 1 the thread holds the load by friction when at rest. Vibration can still creep it down, so it is never a brake.',
    }),
    F_T: formula('thrust from the torque put in', 'N', 'T / r_up', shigley, {
      says: 'The force that this torque can push with.',
    }),
  },
});
