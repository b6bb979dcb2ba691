/** Winding resistance over several rotor angles, taken to a reference temperature; brush drop from two currents. */
import { benchResistance } from '../../handbook/bench-resistance.ts';
import { motorTemperature } from '../../handbook/motor-temperature.ts';
import { accuracy, HOT, temperature, UNPLUG } from '../common.ts';
import { draw, turning, wire, words } from '../drawing.ts';
import { exact, meanOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { doubtful, graded, note, percent, resultOf } from '../outcome.ts';
import { meter, motorEnd, supply } from '../symbols.ts';
import { type Estimate, method, type QuantityResult, Senseless, type Verdict } from '../types.ts';

/** Spread over the places of a commutator: bench policy, no source. */
const SPREAD = [0.05, 0.15] as const;

export const windingResistance = method({
  id: 'winding-resistance',
  title: 'Winding resistance',
  purpose:
    'Tells how much voltage and heat the winding takes, and shows a bad commutator or a shorted turn before a drive is bought for it.',
  hazards: [
    UNPLUG,
    'With amperes through it the shaft may jump: clamp the motor and keep clear of the shaft.',
    HOT,
  ],
  tools: [
    'supply with a current limit, voltmeter and ammeter; or an ohm meter',
    'thermometer',
    'wire brush for the terminals',
  ],
  steps: [
    'Unplug the motor, clean two of its power leads, and let it lie in the room until it is as warm as the room.',
    'Best: pass 10 to 20 % of the rated current, read the volts right at the motor’s terminals and the amperes. Only an ohm meter: touch its probes together, note that as probe resistance, then read the winding.',
    'Brushed: turn the shaft by a twelfth of a turn and read again, until it has gone round once. A place that reads nothing at all: stop there, a brush or the commutator is bad.',
    'Brushless or stepper: read each pair of leads (each phase) twice.',
    'Brushed, to tell brushes from copper: at one place read volts and amperes at a small and at a large current.',
  ],
  drawing: draw(
    'A supply with a current limit feeds the motor; a voltmeter sits right at its terminals; the shaft is turned from place to place.',
    supply(14, 90, '5 A'),
    motorEnd(180, 112, 38),
    turning(180, 112, 50, -60, 30),
    words(236, 82, '12 places', 'start'),
    meter(244, 100, '6.5 V'),
    wire([28, 136], [28, 178], [170, 178], [170, 148]),
    wire([64, 136], [64, 165], [150, 165], [158, 142]),
    wire([254, 162], [254, 186], [176, 186], [172, 150]),
    wire([280, 162], [280, 194], [154, 194], [154, 146]),
  ),
  given: [
    {
      key: 'probes',
      kind: 'quantity',
      name: 'resistance of the probes',
      unit: 'Ω',
      domain: 'not negative',
      usual: '0 Ω',
      help: 'What the ohm meter shows with its probes touched together. 0 when the volts were read right at the terminals.',
    },
    temperature('temperature', 'temperature of the winding'),
    {
      key: 'reference',
      kind: 'quantity',
      exact: true,
      name: 'temperature to state it for',
      unit: '°C',
      usual: '20 °C',
      help: '20 °C for the refit; a maker’s sheet may say 25 °C.',
    },
    {
      key: 'brushes',
      kind: 'choice',
      name: 'has it brushes',
      optional: true,
      options: { yes: 'brushed', no: 'no brushes' },
      help: 'Brush caps on the sides.',
    },
    {
      key: 'smallVolts',
      kind: 'quantity',
      name: 'volts at the small current',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'Brushed: both currents at the same place of the shaft.',
    },
    {
      key: 'smallAmps',
      kind: 'quantity',
      name: 'small current',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'About 5 % of the rated current.',
    },
    {
      key: 'largeVolts',
      kind: 'quantity',
      name: 'volts at the large current',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'Read quickly: the copper warms.',
    },
    {
      key: 'largeAmps',
      kind: 'quantity',
      name: 'large current',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'About 25 % of the rated current.',
    },
    accuracy('ohmMeter', 'accuracy of the ohm meter', 'Ω', ['reading']),
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['volts', 'smallVolts', 'largeVolts']),
    accuracy('ammeter', 'accuracy of the ammeter', 'A', ['amps', 'smallAmps', 'largeAmps']),
  ],
  columns: [
    {
      key: 'reading',
      kind: 'quantity',
      name: 'ohms read',
      unit: 'Ω',
      domain: 'positive',
      optional: true,
      help: 'From an ohm meter; else leave it empty and give volts and amperes.',
    },
    {
      key: 'volts',
      kind: 'quantity',
      name: 'volts',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'At the motor’s terminals.',
    },
    {
      key: 'amps',
      kind: 'quantity',
      name: 'amperes',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'Through the winding.',
    },
  ],
  least: 2,
  settles: [
    { place: 'motor', fact: 'resistance' },
    { place: 'motor', fact: 'brushDrop' },
  ],
  sheets: [benchResistance.id, motorTemperature.id],
  run: (read) => {
    const R_probe = read.entry('probes');
    const at = read.rows.map((row) => {
      const [R_read, V, I] = [read.cell('reading', row), read.cell('volts', row), read.cell('amps', row)];
      if (R_read && !V && !I) return { row, R: read.through(benchResistance, 'R_m', { R_read, R_probe }) };
      if (V && I && !R_read) return { row, R: read.through(benchResistance, 'R', { V, I, R_probe }) };
      throw new Senseless(
        `row ${row}`,
        `Row ${row} needs either the ohms read, or volts and amperes, and not both.`,
      );
    });
    const values = at.map(({ R }) => R.value);
    const mean = meanOf(
      at.map(({ R }) => R),
      'scatter over the places',
    );
    const t1 = read.entry('temperature');
    const cold = (R1: Estimate): Estimate =>
      read.through(motorTemperature, 'R2', { R1, t1, t2: read.entry('reference') });
    const spread = read.through(benchResistance, 'spread', {
      R_most: exact(Math.max(...values)),
      R_least: exact(Math.min(...values)),
      R_mean: exact(mean.value),
    });
    const brushed = read.choice('brushes');
    const two = twoCurrents(read);
    const ohms: QuantityResult = resultOf(
      {
        key: 'resistance',
        name: 'winding resistance between two leads',
        unit: 'Ω',
        ...(two ? {} : { fact: { place: 'motor', fact: 'resistance' } }),
      },
      cold(mean),
    );
    const results = [ohms];
    const verdicts: Verdict[] = [judgeSpread(spread.value, brushed)];
    if (two) {
      results.push(
        resultOf(
          {
            key: 'copper',
            name: 'winding resistance without brushes',
            unit: 'Ω',
            fact: { place: 'motor', fact: 'resistance' },
          },
          cold(two.R12),
        ),
      );
      const drop = resultOf({ key: 'brushDrop', name: 'voltage lost in the brushes', unit: 'V' }, two.Vbr);
      const lawful = two.Vbr.value >= 0;
      results.push(lawful ? { ...drop, fact: { place: 'motor', fact: 'brushDrop' } } : drop);
      if (!lawful)
        verdicts.push(
          doubtful(
            'The brushes come out as giving voltage, which cannot be: the two currents were read at different places, or the copper warmed between them.',
          ),
        );
    }
    if (read.column('reading').length > 0 && brushed === 'yes')
      verdicts.push(
        note(
          'An ohm meter sends only milliamperes and reads the film under the brushes too: take it as an upper limit, and measure with volts and amperes when you can.',
        ),
      );
    return {
      results,
      verdicts,
      questions: oddRows(
        at.map(({ row, R }) => ({ row, value: R.value })),
        'resistance',
      ),
    };
  },
});

function judgeSpread(spread: number, brushed: string | undefined): Verdict {
  const said = percent(spread);
  const where = brushed === 'no' ? 'leads' : 'places';
  return graded(spread, SPREAD, {
    good: `All ${where} agree within ${said}.`,
    doubtful:
      brushed === 'no'
        ? `The pairs of leads differ by ${said}: read again; a real difference is a damaged phase.`
        : `The places differ by ${said}: clean the commutator, bed the brushes, and read again.`,
    bad:
      brushed === 'no'
        ? `The pairs of leads differ by ${said}: a phase is damaged, or they are not phases of one motor.`
        : `The places differ by ${said}: burnt commutator bars, a sticking brush or a bad winding.`,
  });
}

type Reading = Parameters<typeof windingResistance.run>[0];

function twoCurrents(read: Reading): { R12: Estimate; Vbr: Estimate } | undefined {
  const keys = ['smallVolts', 'smallAmps', 'largeVolts', 'largeAmps'] as const;
  const [V1, I1, V2, I2] = keys.map((key) => read.maybe(key));
  const absent = keys.filter((key) => !read.maybe(key));
  if (absent.length === keys.length) return undefined;
  if (!V1 || !I1 || !V2 || !I2)
    throw new Senseless(
      absent[0]!,
      `Two currents need both volts and both amperes; missing: ${absent.join(', ')}.`,
    );
  if (I2.value <= I1.value)
    throw new Senseless('largeAmps', 'The large current is not larger than the small one.');
  const given = { V1, I1, V2, I2 };
  return {
    R12: read.through(benchResistance, 'R12', given),
    Vbr: read.through(benchResistance, 'Vbr', given),
  };
}
