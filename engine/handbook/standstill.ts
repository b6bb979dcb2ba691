import { defineSheet, formula, input } from '../sheet/index.ts';

/** What of its torque for hours a servo motor may hold without turning. */
export const standstill = defineSheet({
  id: 'standstill',
  title: 'Torque a motor may hold at rest',
  about:
    'A motor that turns spreads its heat over all its coils. One that holds a weight at rest heats the same coils all day, so it may hold less than it may turn with.',
  symbols: {
    T: input('torque it may make for hours, turning', 'N·m', { domain: 'positive' }),
    k: input('share of it that it may hold at rest', '1', {
      domain: 'fraction',
      note: '0.7: at rest one phase of three may carry the whole peak of the current, twice its mean share of the heat (1/√2 of the torque).',
    }),
    T_0: formula('torque it may hold at rest', 'N·m', 'k * T', 'common practice, no source', {
      tex: 'T_0',
      says: 'If its sheet names a torque at standstill, that says more.',
    }),
  },
});
