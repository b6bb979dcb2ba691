import { defineSheet, formula, input } from '../sheet/index.ts';

const sum = 'derivation: everything that needs room below the thread';

export const tapDepth = defineSheet({
  id: 'tap-depth',
  title: 'How deep to drill for a tapped thread',
  about:
    'Below the last full thread there must be room for the tap’s chamfer, for what the spindle runs on, for axis and spindle being out of step, and for chips. A tap that meets the bottom breaks.',
  symbols: {
    L: input('depth of full thread', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive' }),
    c: input('threads of the tap’s chamfer', '1', {
      domain: 'not negative',
      note: '2 to 3 for a bottoming tap, 3 to 5 spiral point, 6 to 8 taper tap.',
    }),
    x: input('overrun of the spindle', 'mm', { domain: 'not negative' }),
    chips: input('room for chips', 'mm', { domain: 'not negative' }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    Kz: input('gain of the axis', '1/s', { domain: 'positive', tex: 'K_z' }),
    Ks: input('gain of the spindle', '1/s', { domain: 'positive', tex: 'K_s' }),
    e: formula(
      'axis and spindle out of step',
      'mm',
      'P * n / (2 * pi) * (1 / Kz - 1 / Ks)',
      'derivation: two first-order lags',
      {
        says: 'Below zero: the axis runs ahead. It changes sign when the spindle turns back, so the tap feels twice this.',
      },
    ),
    L_hole: formula('depth to drill', 'mm', 'L + c * P + x + abs(e) + chips', sum, {
      tex: 'L_\\mathrm{hole}',
      says: 'Of the full diameter, without the point of the drill.',
    }),
    float: formula(
      'float the tap holder needs',
      'mm',
      'x + 2 * abs(e)',
      'derivation: overrun and both signs of being out of step',
      {
        tex: 's',
        says: 'Where the axis stops at its depth and the spindle does not.',
      },
    ),
  },
});
