import { curve, defineSheet, procedure } from '../sheet/index.ts';
import type { Argument, Curve } from '../sheet/types.ts';

const RMS = 'derived: mean heat of a constant resistance';

/** Integral of f(current) over the stretches; each point holds the current since the point before it. */
function integral(duty: Curve, f: (current: number) => number): number {
  let sum = 0;
  let from = 0;
  duty.x.forEach((until, k) => {
    sum += f(duty.y[k]!) * (until - from);
    from = until;
  });
  return sum;
}

const total = (duty: Curve): number => duty.x[duty.x.length - 1]!;

function refuses(...args: readonly Argument[]): string | undefined {
  const duty = args[0] as Curve;
  return duty.x[0]! > 0 ? undefined : 'the first stretch has to end after time zero';
}

/** R.m.s. current of any list of stretches. */
export const dutyCycle = defineSheet({
  id: 'duty-cycle',
  title: 'Heating current of a list of stretches',
  about:
    'Write down for how long which current flows over one part or one shift; this gives the steady current that would heat the motor as much.',
  symbols: {
    duty: curve('current of each stretch', 'A', 'time at which the stretch ends', 's', {
      note: '20 A until 0.1 s, then 5 A until 0.9 s, and so on.',
    }),
    t_cycle: procedure('length of the cycle', 's', {
      tex: 't_{cycle}',
      reads: ['duty'],
      run: (duty) => total(duty as Curve),
      refuses,
      says: 'The time at which the last stretch ends.',
      source: RMS,
    }),
    I_rms: procedure('heating current', 'A', {
      tex: 'I_{rms}',
      reads: ['duty'],
      run: (duty) => Math.sqrt(integral(duty as Curve, (i) => i * i) / total(duty as Curve)),
      refuses,
      says: 'Square each current, weigh it with its time, take the mean and the root.',
      source: RMS,
    }),
    I_mean: procedure('mean current', 'A', {
      tex: 'I_{mean}',
      reads: ['duty'],
      run: (duty) => integral(duty as Curve, Math.abs) / total(duty as Curve),
      refuses,
      says: 'The mean, whichever way it flows. Less than the heating current.',
      source: RMS,
    }),
    I_peak: procedure('highest current', 'A', {
      tex: 'I_{peak}',
      reads: ['duty'],
      run: (duty) => (duty as Curve).y.reduce((top, i) => Math.max(top, Math.abs(i)), 0),
      refuses,
      says: 'The largest of the list, whichever way it flows.',
      source: RMS,
    }),
  },
});
