import { defineSheet, formula, input } from '../sheet/index.ts';

const EDGES = 'derived: an opto-coupler that switches on and off unequally moves one edge against the other';

/** Pulse width and direction timing of the sender against what the receiver asks for. */
export const stepTiming = defineSheet({
  id: 'step-timing',
  title: 'Timing of step and direction',
  about:
    'The drive must see each pulse long enough, and must know the direction before the pulse comes. Too short, and it now and then loses a step or makes one the wrong way: the axis creeps.',
  symbols: {
    t_high: input('width of a pulse as sent', 'µs', { tex: 't_{high}', domain: 'positive' }),
    t_low: input('gap between pulses as sent, at top speed', 'µs', { tex: 't_{low}', domain: 'positive' }),
    t_setup: input('time from direction to pulse as sent', 'µs', {
      tex: 't_{setup}',
      domain: 'not negative',
    }),
    t_hold: input('time direction stays after a pulse as sent', 'µs', {
      tex: 't_{hold}',
      domain: 'not negative',
    }),
    t_skew: input('difference between switching on and off of the opto-coupler', 'µs', {
      tex: 't_{skew}',
      domain: 'not negative',
    }),
    need_high: input('shortest pulse the drive sees', 'µs', { tex: 't_{high,min}', domain: 'positive' }),
    need_low: input('shortest gap the drive sees', 'µs', { tex: 't_{low,min}', domain: 'positive' }),
    need_setup: input('set-up time the drive asks for', 'µs', {
      tex: 't_{setup,min}',
      domain: 'not negative',
    }),
    need_hold: input('hold time the drive asks for', 'µs', { tex: 't_{hold,min}', domain: 'not negative' }),
    ask_high: formula('pulse that has to be sent', 'µs', 'need_high + t_skew', EDGES, {
      tex: 't_{high,ask}',
      says: 'What the drive needs, and what the opto-coupler may eat.',
    }),
    ask_low: formula('gap that has to be sent', 'µs', 'need_low + t_skew', EDGES, {
      tex: 't_{low,ask}',
      says: 'What the drive needs, and what the opto-coupler may eat.',
    }),
    ask_setup: formula('set-up time that has to be sent', 'µs', 'need_setup + t_skew', EDGES, {
      tex: 't_{setup,ask}',
      says: 'Direction may come late by that much.',
    }),
    ask_hold: formula('hold time that has to be sent', 'µs', 'need_hold + t_skew', EDGES, {
      tex: 't_{hold,ask}',
      says: 'Direction may leave early by that much.',
    }),
    m_high: formula('margin of the pulse', '1', 't_high / ask_high', EDGES, {
      tex: 'm_{high}',
      says: 'Sent, over what has to be sent. Below 1 pulses are lost.',
    }),
    m_low: formula('margin of the gap', '1', 't_low / ask_low', EDGES, {
      tex: 'm_{low}',
      says: 'Sent, over what has to be sent. Below 1 two pulses melt into one.',
    }),
    m_setup: formula('margin of the set-up time', '1', 't_setup / ask_setup', EDGES, {
      tex: 'm_{setup}',
      says: 'Below 1 the first step after a reversal may go the wrong way.',
    }),
    m_hold: formula('margin of the hold time', '1', 't_hold / ask_hold', EDGES, {
      tex: 'm_{hold}',
      says: 'Below 1 the last step before a reversal may go the wrong way.',
    }),
  },
});
