import { defineSheet, formula, input } from '../sheet/index.ts';

const basic = 'BS 84, profile of the Whitworth thread';

export const threadForm55 = defineSheet({
  id: 'thread-form-55',
  title: 'Basic sizes of a 55° thread',
  about:
    'Whitworth threads and all pipe threads of the G and R kind: 55° between the flanks, crest and root rounded. Outside and inside have the same sizes.',
  symbols: {
    d: input('major diameter', 'mm', { domain: 'positive' }),
    P: input('pitch', 'mm', { domain: 'positive', note: '25.4 mm divided by the threads per inch.' }),
    H: formula(
      'height of the sharp triangle',
      'mm',
      'P / (2 * sin(27.5 * pi / 180) / cos(27.5 * pi / 180))',
      basic,
    ),
    h: formula('depth of thread', 'mm', '2 / 3 * H', basic, {
      says: 'How deep a single-point tool goes, measured on the radius.',
    }),
    d2: formula('pitch diameter', 'mm', 'd - h', basic, {
      tex: 'd_2',
      says: 'Where groove and ridge are equally wide; the older books call it effective diameter.',
    }),
    d1: formula('minor diameter', 'mm', 'd - 2 * h', basic, { tex: 'd_1' }),
    r: formula('radius at crest and root', 'mm', '0.1373291 * P', 'BS 84: r = 0.137329 P'),
  },
});
