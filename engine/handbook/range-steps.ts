import { defineSheet, input, procedure } from '../sheet/index.ts';

const reads = ['i_1', 'i_2', 'i_3', 'i_4'];

/** Ratios of the ranges that are there, slowest (largest) first. */
const ratios = (given: readonly unknown[]): number[] =>
  (given as readonly number[]).filter((i) => i > 0).sort((a, b) => b - a);

const refuses = (...given: readonly unknown[]): string | undefined =>
  ratios(given).length > 0 ? undefined : 'there is no range at all';

const range = (name: string, tex: string) =>
  input(name, '1', { domain: 'not negative', tex, note: '0 where there is no such range.' });

export const rangeSteps = defineSheet({
  id: 'range-steps',
  title: 'Ranges beside each other',
  about:
    'The slowest range has the most torque, the fastest the most speed. Between neighbours the motor must bridge the step with its own change of speed, or there are spindle speeds that no range reaches.',
  symbols: {
    i_1: range('ratio of the first range', 'i_1'),
    i_2: range('ratio of the second range', 'i_2'),
    i_3: range('ratio of the third range', 'i_3'),
    i_4: range('ratio of the fourth range', 'i_4'),
    i_slow: procedure('ratio of the slowest range', '1', {
      tex: 'i_\\mathrm{slow}',
      reads,
      run: (...given) => ratios(given)[0] ?? Number.NaN,
      refuses,
      says: 'The largest of them: most motor turns for one turn of the spindle.',
      source: 'the largest of them',
    }),
    i_fast: procedure('ratio of the fastest range', '1', {
      tex: 'i_\\mathrm{fast}',
      reads,
      run: (...given) => ratios(given).at(-1) ?? Number.NaN,
      refuses,
      says: 'The smallest of them: fewest motor turns for one turn of the spindle.',
      source: 'the smallest of them',
    }),
    step: procedure('largest step between neighbouring ranges', '1', {
      reads,
      run: (...given) =>
        ratios(given).reduce((most, i, k, all) => (k === 0 ? 1 : Math.max(most, all[k - 1]! / i)), 1),
      says: 'How many times faster the next range is. 1 where there is only one range.',
      source: 'derivation: quotient of neighbouring ratios',
    }),
  },
});
