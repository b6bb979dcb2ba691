/** Winding inductance from volts and amperes of a.c. */
import { benchInductance } from '../../handbook/bench-inductance.ts';
import { accuracy, HOT, MAINS } from '../common.ts';
import { box, draw, line, wire, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { meter, motorEnd } from '../symbols.ts';
import { method, Senseless, type Verdict } from '../types.ts';

/** Below this share of reactance the resistance hides the inductance: bench policy, no source. */
const HIDDEN = 0.3;

export const inductance = method({
  id: 'inductance',
  title: 'Winding inductance on a.c.',
  purpose:
    'Tells whether the motor suits a drive that chops its current: too little inductance makes it hum, heat and trip.',
  hazards: [
    MAINS,
    'Only behind a low-voltage isolating transformer (6 to 12 V): never the mains itself on a motor lead.',
    'Rotor held: it shakes with the mains.',
    HOT,
  ],
  tools: ['isolating transformer of 6 to 12 V', 'a.c. voltmeter and ammeter', 'known winding resistance'],
  steps: [
    'Hold the rotor so that it cannot turn.',
    'Connect the low-voltage winding of the transformer to two motor leads through the ammeter.',
    'Read volts right at the leads, and amperes, quickly.',
    'Brushless: turn the rotor a little, hold it, and repeat: the inductance changes with the angle.',
  ],
  drawing: draw(
    'A low-voltage transformer feeds a held motor; a voltmeter at its leads, an ammeter in the lead.',
    box(14, 70, 54, 70),
    words(41, 62, '6 V a.c.'),
    line([30, 80], [38, 88], [30, 96], [38, 104], [30, 112], [38, 120]),
    line([52, 80], [44, 88], [52, 96], [44, 104], [52, 112], [44, 120]),
    motorEnd(240, 104, 38),
    meter(110, 14, '3.74 A'),
    wire([68, 82], [96, 82], [96, 92], [120, 92], [120, 76]),
    wire([146, 76], [146, 92], [204, 92]),
    wire([68, 128], [96, 128], [96, 116], [204, 116]),
    meter(150, 126, '6.31 V'),
    wire([160, 188], [140, 188], [140, 116]),
    wire([186, 188], [200, 188], [200, 92]),
    words(240, 164, 'held'),
  ),
  given: [
    {
      key: 'frequency',
      kind: 'quantity',
      exact: true,
      name: 'frequency',
      unit: 'Hz',
      domain: 'positive',
      usual: '50 Hz',
      help: '50 Hz in most of the world, 60 Hz in North America.',
    },
    {
      key: 'resistance',
      kind: 'quantity',
      name: 'winding resistance',
      unit: 'Ω',
      domain: 'positive',
      doubt: 'measured',
      help: 'Between the same two leads, from the resistance test, as warm as now.',
    },
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['volts']),
    accuracy('ammeter', 'accuracy of the ammeter', 'A', ['amps']),
  ],
  columns: [
    {
      key: 'volts',
      kind: 'quantity',
      name: 'a.c. volts',
      unit: 'V',
      domain: 'positive',
      help: 'At the motor’s leads.',
    },
    {
      key: 'amps',
      kind: 'quantity',
      name: 'a.c. amperes',
      unit: 'A',
      domain: 'positive',
      help: 'At the same moment.',
    },
  ],
  least: 1,
  settles: [{ place: 'motor', fact: 'inductance' }],
  sheets: [benchInductance.id],
  run: (read) => {
    const [f, R] = [read.entry('frequency'), read.entry('resistance')];
    const rows = read.rows.map((row) => {
      const [V, I] = [read.cell('volts', row)!, read.cell('amps', row)!];
      const Z = read.through(benchInductance, 'Z', { V, I });
      if (Z.value <= R.value)
        throw new Senseless(
          'resistance',
          `Row ${row}: on a.c. the winding shows no more than its resistance, so there is no inductance to be seen. Is the resistance that of the same two leads, and are the volts a.c. volts?`,
        );
      return { row, Z, L: read.through(benchInductance, 'L', { V, I, f, R }) };
    });
    const L = meanOf(
      rows.map((each) => each.L),
      'scatter of the rows',
    );
    const verdicts: Verdict[] = [];
    const least = Math.min(...rows.map(({ Z }) => Math.sqrt(1 - (R.value / Z.value) ** 2)));
    verdicts.push(
      least < HIDDEN
        ? doubtful(
            `Only ${percent(least)} of what is seen is inductance; the rest is resistance and hides it. A higher frequency would tell it better.`,
          )
        : good('There is enough inductance to be told apart from the resistance.'),
    );
    const values = rows.map((each) => each.L.value);
    const off = (Math.max(...values) - Math.min(...values)) / L.value;
    if (rows.length > 1 && off > 0.1)
      verdicts.push(
        note(
          `It changes by ${percent(off)} from angle to angle, as with magnets buried in the rotor: take the smallest for choosing a drive.`,
        ),
      );
    verdicts.push(
      note('At 50 Hz eddy currents make some solid rotors show less than they have at a drive’s frequency.'),
    );
    return {
      results: [
        resultOf(
          {
            key: 'inductance',
            name: 'winding inductance between two leads',
            unit: 'mH',
            fact: { place: 'motor', fact: 'inductance' },
          },
          L,
        ),
      ],
      verdicts,
      questions: oddRows(
        rows.map((each) => ({ row: each.row, value: each.L.value })),
        'inductance',
      ),
    };
  },
});
