import { defineSheet, formula, input } from '../sheet/index.ts';

export const pulseTravel = defineSheet({
  id: 'pulse-travel',
  title: 'Travel of one pulse, pulses for one millimetre',
  about: 'How finely a pulse drive moves the slide, and the number that has to be entered in the control.',
  symbols: {
    N: input('pulses for one motor turn', 'pulses', { domain: 'positive' }),
    i: input('reduction, motor turns for one screw turn', '1', { domain: 'positive' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    v: input('slide speed', 'm/min', { domain: 'not negative' }),
    res: formula('travel of one pulse', 'µm', 'Ph / (N * i)', 'derivation: one screw turn moves one lead', {
      says: 'The lead shared out over all pulses of one screw turn.',
    }),
    cpm: formula('pulses for one millimetre', '1/mm', 'N * i / Ph', 'derivation: the same turned round'),
    f: formula('pulse rate at that speed', 'kHz', 'v / res', 'derivation: speed over travel of one pulse', {
      says: 'The control has to make this many pulses a second, and the drive to take them.',
    }),
  },
});
