import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const asme = 'ASME B1.20.1';

export const threadNpt = defineSheet({
  id: 'thread-npt',
  title: 'Basic sizes of an NPT taper thread',
  about:
    'American taper pipe thread: 60° between the flanks, 1 in 16 on the diameter. The size follows from the outside of the pipe. It seals on the thread, with sealant, and does not fit an R thread.',
  symbols: {
    D: input('outside diameter of the pipe', 'in', { domain: 'positive' }),
    P: input('pitch', 'in', { domain: 'positive', note: 'One inch divided by the threads per inch.' }),
    L1: input('hand-tight length', 'in', { domain: 'positive', tex: 'L_1' }),
    in1: constant('one inch', 'in', '1 in', 'definition'),
    E0: formula(
      'pitch diameter at the small end',
      'in',
      'D - (0.05 * D + 1.1 * in1) * P / in1',
      `${asme} (formula from memory; it reproduces the published table)`,
      {
        tex: 'E_0',
      },
    ),
    E1: formula('pitch diameter at the hand-tight plane', 'in', 'E0 + L1 / 16', asme, {
      tex: 'E_1',
      says: 'Where a ring gauge screwed on by hand should stop.',
    }),
    L2: formula(
      'length of effective thread',
      'in',
      '(0.8 * D + 6.8 * in1) * P / in1',
      `${asme} (formula from memory; it reproduces the published table)`,
      {
        tex: 'L_2',
      },
    ),
    h: formula('depth of thread', 'in', '0.8 * P', asme, { says: 'How deep the tool goes, on the radius.' }),
    turns: formula('turns by hand', '1', 'L1 / P', asme),
  },
});
