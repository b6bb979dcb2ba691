/** Friction from the no-load current at several speeds. */
import { benchNoLoad } from '../../handbook/bench-no-load.ts';
import { accuracy, MAKES_VOLTS, SPIN } from '../common.ts';
import { draw, turning, wire, words } from '../drawing.ts';
import { standardOf } from '../estimate.ts';
import { lineThrough } from '../line.ts';
import { bad, doubtful, graded, note, percent, resultOf } from '../outcome.ts';
import { meter, motorLying, supply } from '../symbols.ts';
import { method, Senseless, type Verdict } from '../types.ts';

/** Share of the continuous current: bench policy, no source. */
const SHARE = [0.1, 0.2] as const;

export const noLoadCurrent = method({
  id: 'no-load-current',
  title: 'Friction from the no-load current',
  purpose:
    'Tells the motor’s own friction, steady and growing with speed, and shows a dragging bearing, brush or shorted turn.',
  hazards: [
    SPIN,
    'With nothing on its shaft a motor can run away: raise the voltage slowly, and a field winding must never be opened.',
    MAKES_VOLTS,
  ],
  tools: ['adjustable d.c. supply', 'ammeter', 'tachometer'],
  steps: [
    'Clamp the motor with nothing on its shaft. Let it run ten minutes so that grease and bearings are warm.',
    'Set a low speed; when it is steady, read amperes and speed together.',
    'Raise the voltage and repeat at four speeds or more, up to the speed it will work at.',
    'Turn the leads round and repeat the other way; write both without signs.',
  ],
  drawing: draw(
    'An adjustable supply runs the motor through an ammeter; nothing is on its shaft.',
    supply(14, 30, '0–30 V'),
    meter(120, 20, '0.42 A'),
    motorLying(170, 120),
    turning(262, 145, 22, -70, 70),
    wire([28, 76], [28, 112], [100, 112], [100, 100], [130, 100], [130, 82]),
    wire([156, 82], [156, 100], [182, 100], [182, 120]),
    wire([64, 76], [64, 104], [90, 104], [90, 190], [160, 190], [160, 108], [196, 108], [196, 120]),
    words(312, 110, 'nothing on it', 'end'),
  ),
  given: [
    {
      key: 'torqueConstant',
      kind: 'quantity',
      name: 'torque constant',
      unit: 'N·m/A',
      domain: 'positive',
      doubt: 'measured',
      help: 'From the spin test: a brushed motor’s back-EMF constant in V·s/rad is the same number.',
    },
    {
      key: 'continuous',
      kind: 'quantity',
      exact: true,
      name: 'continuous current of the motor',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'From the plate, to compare.',
    },
    accuracy('ammeter', 'accuracy of the ammeter', 'A', ['amps']),
    accuracy('tachometer', 'accuracy of the tachometer', 'r/min', ['speed']),
  ],
  columns: [
    { key: 'speed', kind: 'quantity', name: 'speed', unit: 'r/min', domain: 'positive', help: 'Steady.' },
    {
      key: 'amps',
      kind: 'quantity',
      name: 'no-load current',
      unit: 'A',
      domain: 'positive',
      help: 'At the same moment, without its sign.',
    },
  ],
  least: 2,
  settles: [{ place: 'motor', fact: 'friction' }],
  sheets: [benchNoLoad.id],
  run: (read) => {
    const Kt = read.entry('torqueConstant');
    const rows = read.rows.map((row) => {
      const I0 = read.cell('amps', row)!;
      return { row, I0, x: read.cell('speed', row)!, y: read.through(benchNoLoad, 'T', { Kt, I0 }) };
    });
    if (new Set(rows.map(({ x }) => x.value)).size < 2)
      throw new Senseless(
        'speed',
        'All rows have the same speed: at least two speeds are needed to part steady friction from what grows with speed.',
      );
    const { intercept, slope, deviation, freedom, residuals } = lineThrough(
      rows,
      'scatter about the line',
      'speed',
    );
    const steady = { key: 'friction', name: 'steady friction torque', unit: 'N·m' };
    const results = [
      resultOf(
        intercept.value > 0 ? { ...steady, fact: { place: 'motor', fact: 'friction' } } : steady,
        intercept,
      ),
      resultOf({ key: 'viscous', name: 'friction that grows with speed', unit: 'N·m·s/rad' }, slope),
    ];
    const verdicts: Verdict[] = [];
    if (intercept.value <= 0)
      verdicts.push(
        bad(
          'The steady friction comes out below zero, which cannot be. The speeds lie too near each other, or something (air, a brake) grows faster than with speed.',
        ),
      );
    if (slope.value < -2 * standardOf(slope))
      verdicts.push(
        doubtful(
          'The friction falls with speed: the motor was still warming up, or the readings were taken in one run upwards. Run it warm and go up and down.',
        ),
      );
    if (freedom === 0)
      verdicts.push(
        note('Two readings always lie on a line, so nothing tells their scatter. Take four speeds or more.'),
      );
    const I_cont = read.maybe('continuous');
    if (I_cont) {
      const most = rows.reduce((a, b) => (b.I0.value > a.I0.value ? b : a));
      const share = read.through(benchNoLoad, 'share', { I0: most.I0, I_cont }).value;
      verdicts.push(
        graded(share, SHARE, {
          good: `It takes at most ${percent(share)} of its continuous current by itself: it runs freely.`,
          doubtful: `It takes ${percent(share)} of its continuous current by itself: more than it should. Bearings, seal or brushes?`,
          bad: `It takes ${percent(share)} of its continuous current by itself: a dragging bearing or brake, or shorted turns. Find out before it is built in.`,
        }),
      );
    }
    const questions = rows.flatMap(({ row }, at) =>
      freedom >= 2 && Math.abs(residuals[at]!) > 1.8 * deviation
        ? [
            {
              row,
              sentence: `Row ${row} lies farthest from the line of the others. Was speed and current read at the same moment?`,
            },
          ]
        : [],
    );
    return { results, verdicts, questions };
  },
});
