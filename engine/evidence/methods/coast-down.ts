/** Inertia from coast-downs: with known friction, or with and without a disc of known inertia. */
import { benchCoastDown } from '../../handbook/bench-coast-down.ts';
import { accuracy, SPIN } from '../common.ts';
import { circle, draw, thin, turning, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { ground, motorLying } from '../symbols.ts';
import { type Estimate, method, type Reading, Senseless, type Verdict } from '../types.ts';

/** Repeats of a coast-down should agree this well: bench policy, no source. */
const REPEAT = 0.05;
/** Below this the disc changes too little: bench policy, no source. */
const DISC = 0.3;

export const coastDown = method({
  id: 'coast-down',
  title: 'Inertia from a coast-down',
  purpose:
    'Tells the inertia of a rotor or spindle without taking it apart, which decides how fast an axis can gain speed.',
  hazards: [
    SPIN,
    'The disc must not come off: turned all over, a fit on the shaft and a screw through it, and nobody in its plane.',
    'Leads open and drive unplugged: a motor that is connected brakes itself.',
  ],
  tools: [
    'tachometer that shows the starting speed',
    'stopwatch, or a phone filming a mark',
    'a turned steel disc that fits the shaft',
  ],
  steps: [
    'Run the motor warm, so that its friction is what it was when you measured it.',
    'Spin it up by motor or drill; take the drive off (open the leads) and let it coast.',
    'Start the watch as the tachometer passes the first speed; stop it at the second, or when the shaft stands.',
    'Repeat five times.',
    'Fix the disc to the shaft and repeat five times over the same two speeds.',
  ],
  drawing: draw(
    'A motor coasting with a disc on its shaft, a watch beside it.',
    ground(10, 160, 250),
    motorLying(40, 102),
    [
      {
        kind: 'line',
        style: 'closed',
        points: [
          [140, 78],
          [152, 78],
          [152, 176],
          [140, 176],
        ],
      },
    ],
    words(146, 70, 'disc'),
    turning(170, 127, 30, -60, 60),
    circle(265, 80, 28),
    [
      {
        kind: 'line',
        style: 'plain',
        points: [
          [265, 80],
          [265, 60],
        ],
      },
      {
        kind: 'line',
        style: 'closed',
        points: [
          [260, 46],
          [270, 46],
          [270, 52],
          [260, 52],
        ],
      },
    ],
    words(265, 125, '1.20 s'),
    thin([40, 95], [116, 95]),
    words(78, 90, 'leads open'),
  ),
  given: [
    {
      key: 'from',
      kind: 'quantity',
      name: 'speed when the watch was started',
      unit: 'r/min',
      domain: 'positive',
      help: 'The same in every run. Write its ±.',
    },
    {
      key: 'to',
      kind: 'quantity',
      exact: true,
      name: 'speed when it was stopped',
      unit: 'r/min',
      domain: 'not negative',
      usual: '0 r/min',
      help: '0 when timed to a stop.',
    },
    {
      key: 'friction',
      kind: 'quantity',
      name: 'steady friction',
      unit: 'N·m',
      domain: 'positive',
      optional: true,
      doubt: 'measured',
      help: 'From the no-load current, measured warm. Not needed with a disc.',
    },
    {
      key: 'viscous',
      kind: 'quantity',
      name: 'friction that grows with speed',
      unit: 'N·m·s/rad',
      domain: 'not negative',
      optional: true,
      doubt: 'measured',
      help: 'From the no-load current; leave it out where it is small.',
    },
    {
      key: 'discMass',
      kind: 'quantity',
      name: 'mass of the disc',
      unit: 'kg',
      domain: 'positive',
      optional: true,
      help: 'On kitchen scales.',
    },
    {
      key: 'discRadius',
      kind: 'quantity',
      name: 'radius of the disc',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'Half its outside diameter; the bore hardly counts.',
    },
    { ...accuracy('watch', 'how well the watch was started and stopped', 's', ['time']), usual: '0.1 s' },
  ],
  columns: [
    {
      key: 'time',
      kind: 'quantity',
      name: 'time to coast',
      unit: 's',
      domain: 'positive',
      help: 'From the first speed to the second.',
    },
    {
      key: 'disc',
      kind: 'choice',
      name: 'disc',
      optional: true,
      options: { without: 'without the disc', with: 'with the disc' },
      help: 'Left empty: without.',
    },
  ],
  least: 1,
  settles: [{ place: 'motor', fact: 'inertia' }],
  sheets: [benchCoastDown.id],
  run: (read) => {
    const [w0, w1] = [read.entry('from'), read.entry('to')];
    if (w1.value >= w0.value)
      throw new Senseless(
        'to',
        'The speed at the end is not lower than at the beginning, so nothing coasted.',
      );
    const runs = (disc: boolean): Reading[] =>
      read.column('time').filter(({ row }) => (read.picked('disc', row) === 'with') === disc);
    const [bare, loaded] = [runs(false), runs(true)];
    if (bare.length === 0) throw new Senseless('time', 'There is no run without the disc.');
    const t1 = meanOf(bare, 'scatter without the disc');
    const found: { how: string; J: Estimate }[] = [];
    if (loaded.length > 0)
      found.push({
        how: 'disc',
        J: byDisc(read, t1, meanOf(loaded.map(reactsAnew), 'scatter with the disc')),
      });
    const Tc = read.maybe('friction');
    const b = read.maybe('viscous');
    if (Tc) {
      const J =
        b && b.value > 0
          ? read.through(benchCoastDown, 'J', { w0, w1, t: t1, Tc, b })
          : read.through(benchCoastDown, 'J_steady', { w0, w1, t: t1, Tc });
      found.push({ how: 'friction', J });
    }
    const [first, second] = found;
    if (!first)
      throw new Senseless(
        'friction',
        'Either the friction has to be given, or runs with a disc of known mass and radius.',
      );
    const named = {
      key: 'inertia',
      name: 'inertia of what coasted',
      unit: 'kg·m²',
      fact: { place: 'motor', fact: 'inertia' },
    };
    const results = [resultOf(named, first.J)];
    const verdicts: Verdict[] = [];
    if (second) {
      const other = resultOf(
        { key: 'inertiaByFriction', name: 'the same by the friction known', unit: 'kg·m²' },
        second.J,
      );
      results.push(other);
      const apart = Math.abs(first.J.value - second.J.value);
      const room = Math.hypot(results[0]!.expanded, other.expanded);
      verdicts.push(
        apart <= room
          ? good('Disc and friction tell the same inertia.')
          : doubtful(
              'Disc and friction tell different inertias. The friction was measured warm and the coast-down made cold, or the disc slipped.',
            ),
      );
    }
    if (bare.length > 1) {
      const times = bare.map(({ value }) => value);
      const off = (Math.max(...times) - Math.min(...times)) / t1.value;
      verdicts.push(
        off <= REPEAT
          ? good(`The runs agree within ${percent(off)}.`)
          : doubtful(
              `The runs differ by ${percent(off)}: friction changes from run to run. Run it warm first.`,
            ),
      );
    } else verdicts.push(note('One run tells nothing of the scatter. Time it five times.'));
    if (loaded.length > 0) {
      const added = meanOf(loaded, 'loaded').value / t1.value - 1;
      if (added < DISC)
        verdicts.push(
          doubtful(
            `The disc makes it coast only ${percent(added)} longer. A heavier disc would tell much more.`,
          ),
        );
    }
    return {
      results,
      verdicts,
      questions: [...oddRows(bare, 'time'), ...oddRows(loaded, 'time with the disc')],
    };
  },
});

type Reads = Parameters<typeof coastDown.run>[0];

/** The hand that starts and stops the watch errs anew in the runs with the disc. */
const reactsAnew = (run: Reading): Estimate => ({
  value: run.value,
  parts: run.parts.map((part) => ({ ...part, id: `${part.id}:with` })),
});

function byDisc(read: Reads, t1: Estimate, t2: Estimate): Estimate {
  const [m, r] = [read.maybe('discMass'), read.maybe('discRadius')];
  if (!m || !r)
    throw new Senseless(m ? 'discRadius' : 'discMass', 'Runs with the disc need its mass and its radius.');
  if (t2.value <= t1.value)
    throw new Senseless(
      'time',
      'With the disc it did not coast longer than without: were the runs mixed up, or did the disc slip?',
    );
  const J_a = read.through(benchCoastDown, 'J_disc', { m, r });
  return read.through(benchCoastDown, 'J_times', { J_a, t1, t2 });
}
