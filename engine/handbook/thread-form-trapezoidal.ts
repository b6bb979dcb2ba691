import { defineSheet, formula, input } from '../sheet/index.ts';

const basic = 'ISO 2901, ISO 2904 and DIN 103';

export const threadFormTrapezoidal = defineSheet({
  id: 'thread-form-trapezoidal',
  title: 'Basic sizes of a trapezoidal thread',
  about:
    'The thread of lead screws: 30° between the flanks, flat crest and root, clearance at both. Screw and nut touch on the flanks alone.',
  symbols: {
    d: input('nominal diameter', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive', note: 'With several starts: not the lead.' }),
    ac: input('clearance at crest and root', 'mm', {
      domain: 'not negative',
      tex: 'a_c',
      note: '0.15 mm for a pitch of 1.5 mm, 0.25 mm for 2 to 5 mm, 0.5 mm for 6 to 12 mm, 1 mm from 14 mm.',
    }),
    H1: formula('depth on which the flanks touch', 'mm', 'P / 2', basic, { tex: 'H_1' }),
    h3: formula('depth of thread', 'mm', 'P / 2 + ac', basic, {
      tex: 'h_3',
      says: 'How deep the tool goes, in the screw and in the nut, measured on the radius.',
    }),
    d2: formula('pitch diameter', 'mm', 'd - P / 2', basic, { tex: 'd_2' }),
    d3: formula('root diameter of the screw', 'mm', 'd - 2 * h3', basic, { tex: 'd_3' }),
    D1: formula('bore of the nut', 'mm', 'd - P', basic, { tex: 'D_1' }),
    D4: formula('major diameter of the nut', 'mm', 'd + 2 * ac', basic, { tex: 'D_4' }),
    w: formula(
      'width of the tool’s tip for the screw',
      'mm',
      '(1 / 2 - sin(pi / 12) / cos(pi / 12) / 2) * P - 2 * ac * sin(pi / 12) / cos(pi / 12)',
      'derivation: the groove at its root, 0.366 P less the clearance',
      {
        says: 'Grind the tip no wider than this.',
      },
    ),
  },
});
