import { defineSheet, formula, input } from '../sheet/index.ts';

const counting = 'derivation: counting';

export const threadSpeed = defineSheet({
  id: 'thread-speed',
  title: 'Highest spindle speed for threading',
  about:
    'One turn of the spindle moves the slide by one lead, so a coarse thread limits the spindle. The encoder of the spindle must turn with it one to one, and its signal must not be faster than its receiver.',
  symbols: {
    v: input('fastest speed of the slide', 'm/min', { domain: 'positive' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    k: input('share of that speed to use', '%', { domain: 'fraction', note: '80 to 90 %: a habit.' }),
    N: input('lines of the spindle encoder', 'lines', { domain: 'positive' }),
    f: input('highest line frequency of the receiver', 'kHz', {
      domain: 'positive',
      note: 'Where the maker counts edges after fourfold counting, divide by four.',
    }),
    n: input('spindle speed', 'r/min', { domain: 'positive' }),
    dt: input('doubt of the time of an index or position', 'ms', { domain: 'not negative' }),
    n_axis: formula('speed at which the slide is at its limit', 'r/min', '2 * pi * k * v / Ph', counting, {
      tex: 'n_\\mathrm{axis}',
    }),
    n_line: formula('speed at which the encoder is at its limit', 'r/min', '2 * pi * f / N', counting, {
      tex: 'n_\\mathrm{line}',
    }),
    n_max: formula('highest spindle speed', 'r/min', 'min(n_axis, n_line)', counting, {
      tex: 'n_\\mathrm{max}',
    }),
    scatter: formula('scatter of the thread’s place', 'µm', 'Ph * n / (2 * pi) * dt', counting),
    grain: formula('smallest step along the axis', 'µm', 'Ph / (4 * N)', counting),
    t_index: formula('length of the index pulse', 'µs', '2 * pi / (4 * N * n)', counting, {
      tex: 't_\\mathrm{index}',
      says: 'It must be longer than the filter of the input.',
    }),
  },
});
