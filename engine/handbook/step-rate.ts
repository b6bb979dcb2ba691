import { defineSheet, formula, input } from '../sheet/index.ts';

const PULSES = 'derived: one pulse moves the axis by the resolution';
const TIMER = 'derived: pulses can only begin at a tick of the timer';

/** Step-and-direction pulses: rate needed, rate possible, and what a timer makes of it. */
export const stepRate = defineSheet({
  id: 'step-rate',
  title: 'Rate of step pulses',
  about:
    'Every pulse moves the axis one small step, so a fast axis with a fine step needs many pulses a second. The slowest of control, wiring and drive sets the limit.',
  symbols: {
    v: input('speed', 'm/min', { domain: 'positive' }),
    res: input('travel of one pulse', 'µm', { domain: 'positive' }),
    f_ctrl: input('highest pulse rate of the control', 'kHz', { tex: 'f_{ctrl}', domain: 'positive' }),
    t_high: input('width of a pulse', 'µs', { tex: 't_{high}', domain: 'positive' }),
    t_low: input('gap between pulses', 'µs', { tex: 't_{low}', domain: 'positive' }),
    t_skew: input('difference between switching on and off of the opto-coupler', 'µs', {
      tex: 't_{skew}',
      domain: 'not negative',
    }),
    t_margin: input('time kept in hand', 'µs', { tex: 't_m', domain: 'not negative' }),
    Tb: input('period of the timer that makes the pulses', 'µs', { tex: 'T_b', domain: 'positive' }),
    f_step: formula('pulse rate needed', 'kHz', 'v / res', PULSES, {
      tex: 'f_{step}',
      says: 'Speed divided by the travel of one pulse.',
    }),
    T_step: formula('time from pulse to pulse', 'µs', 'res / v', PULSES, {
      tex: 'T_{step}',
      says: 'The same, turned over.',
    }),
    T_min: formula('shortest time from pulse to pulse', 'µs', 't_high + t_low + t_skew + t_margin', PULSES, {
      tex: 'T_{min}',
      says: 'Pulse, gap and what the opto-coupler takes.',
    }),
    f_max: formula('highest pulse rate the wiring allows', 'kHz', '1 / T_min', PULSES, {
      tex: 'f_{max}',
      says: 'One pulse in that time.',
    }),
    v_max: formula('highest speed at that rate', 'm/min', 'f_max * res', PULSES, {
      tex: 'v_{max}',
      says: 'Rate times travel of one pulse.',
    }),
    v_ctrl: formula('highest speed the control can command', 'm/min', 'f_ctrl * res', PULSES, {
      tex: 'v_{ctrl}',
      says: 'Its pulse rate times travel of one pulse.',
    }),
    M: formula('multiplication the drive must do', '1', 'max(1, ceil(f_step/f_ctrl - 1e-9))', PULSES, {
      says: 'If the control is too slow, the drive can make several steps of each pulse.',
    }),
    res_commanded: formula('travel of one pulse then', 'µm', 'M * res', PULSES, {
      tex: 'res_M',
      says: 'The price: a coarser command.',
    }),
    f_max_timer: formula('highest rate of a timer', 'kHz', '1 / (2*Tb)', TIMER, {
      tex: 'f_{max,b}',
      says: 'One tick up, one tick down.',
    }),
    n_short: formula('ticks of the shorter interval', '1', 'floor(T_step/Tb + 1e-9)', TIMER, {
      tex: 'n',
      says: 'A rate between two whole numbers of ticks is made by mixing shorter and longer intervals.',
    }),
    f_short: formula('rate of the shorter interval', 'kHz', '1 / (n_short*Tb)', TIMER, {
      tex: 'f_n',
      says: 'A little too fast.',
    }),
    f_long: formula('rate of the longer interval', 'kHz', '1 / ((n_short + 1)*Tb)', TIMER, {
      tex: 'f_{n+1}',
      says: 'A little too slow.',
    }),
    long_share: formula('share of longer intervals', '%', 'max(0, T_step/Tb - n_short)', TIMER, {
      tex: '\\lambda',
      says: 'Mixed in this share they give the right mean.',
    }),
    speed_err: formula('error of speed from one pulse to the next', '%', 'Tb * f_step', TIMER, {
      tex: '\\varepsilon_v',
      says: 'The motor feels this jerk at every change of interval.',
    }),
  },
});
