/** Mains at the machine: idle, loaded, and at its hardest. */
import { benchMains } from '../../handbook/bench-mains.ts';
import { accuracy, MAINS } from '../common.ts';
import { box, circle, draw, line, wire, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { bad, good, note, percent, resultOf } from '../outcome.ts';
import { meter } from '../symbols.ts';
import { type Estimate, method, type QuantityResult, Senseless, type Verdict } from '../types.ts';

/** Usual limits of the supply at a machine's terminals: IEC 60204-1, 4.3.2 (from memory). */
const LIMIT = 0.1;
/** Sag that is worth a thicker cable: bench policy, no source. */
const SAG = 0.05;

export const mainsVoltage = method({
  id: 'mains-voltage',
  title: 'Mains at the machine',
  purpose:
    'Tells the voltage the machine really gets, idle and under load, before a transformer tap is chosen by the number on the socket.',
  hazards: [MAINS, 'Read at a socket with a plug-in meter where you can: nothing has to be opened.'],
  tools: [
    'plug-in energy meter, or a voltmeter rated for mains with fused probes',
    'a known load: a 2 kW heater',
    'clamp meter for its current',
  ],
  steps: [
    'Use the very socket and cable the machine will have.',
    'Read the voltage without load.',
    'Switch the heater on, wait a moment, read voltage and current.',
    'Repeat at several times of a day and an evening: the mains change by the hour.',
  ],
  drawing: draw(
    'A socket, its cable’s resistance, a heater as load and a voltmeter across it.',
    circle(40, 90, 26),
    circle(32, 90, 3),
    circle(48, 90, 3),
    words(40, 136, 'socket'),
    wire([66, 82], [110, 82]),
    line([110, 82], [116, 74], [126, 90], [136, 74], [146, 90], [152, 82]),
    words(131, 64, 'cable'),
    wire([152, 82], [196, 82], [196, 96]),
    box(180, 96, 32, 44),
    words(174, 122, 'heater', 'end'),
    wire([196, 140], [196, 178], [80, 178], [66, 98]),
    meter(250, 40, '226 V'),
    wire([260, 102], [260, 112], [226, 112], [226, 82], [196, 82]),
    wire([286, 102], [286, 178], [196, 178]),
  ),
  given: [
    {
      key: 'rated',
      kind: 'quantity',
      exact: true,
      name: 'rated mains voltage',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: '230 V in most of Europe, 120 or 240 V in North America.',
    },
    {
      key: 'most',
      kind: 'quantity',
      exact: true,
      name: 'largest current the machine will take',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'To reckon the voltage at its hardest.',
    },
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['idle', 'loaded']),
    accuracy('ammeter', 'accuracy of the ammeter', 'A', ['amps']),
  ],
  columns: [
    {
      key: 'idle',
      kind: 'quantity',
      name: 'volts without load',
      unit: 'V',
      domain: 'positive',
      help: 'Just before the load.',
    },
    {
      key: 'loaded',
      kind: 'quantity',
      name: 'volts with load',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'Just after.',
    },
    {
      key: 'amps',
      kind: 'quantity',
      name: 'current of the load',
      unit: 'A',
      domain: 'positive',
      optional: true,
      help: 'While it is on.',
    },
  ],
  least: 1,
  settles: [{ place: 'site', fact: 'mains' }],
  sheets: [benchMains.id],
  run: (read) => {
    const idle = read.column('idle');
    const V0 = meanOf(idle, 'scatter over the day');
    const results: QuantityResult[] = [
      resultOf(
        {
          key: 'mains',
          name: 'mains voltage without load',
          unit: 'V',
          fact: { place: 'site', fact: 'mains' },
        },
        V0,
      ),
    ];
    const verdicts: Verdict[] = [];
    const sources: Estimate[] = [];
    for (const row of read.rows) {
      const [start, V1, I] = [read.cell('idle', row)!, read.cell('loaded', row), read.cell('amps', row)];
      if (!V1 && !I) continue;
      if (!V1 || !I)
        throw new Senseless(
          `row ${row}`,
          `Row ${row} needs both the volts with load and the current of the load, or neither.`,
        );
      sources.push(read.through(benchMains, 'R', { V0: start, V1, I }));
    }
    const lowest = idle.reduce((a, b) => (b.value < a.value ? b : a));
    const highest = idle.reduce((a, b) => (b.value > a.value ? b : a));
    if (sources.length > 0) {
      const R = meanOf(sources, 'scatter of the resistance');
      const source = resultOf({ key: 'source', name: 'resistance of the mains up to here', unit: 'Ω' }, R);
      results.push(source);
      if (R.value + source.expanded < 0)
        verdicts.push(
          bad(
            'The voltage rises under load, which cannot be: it changed meanwhile, or the readings were swapped. Read both within seconds.',
          ),
        );
      const I_most = read.maybe('most');
      if (I_most) {
        const worst = read.through(benchMains, 'V_worst', { V_low: lowest, R_mains: R, I_most });
        results.push(
          resultOf({ key: 'worst', name: 'voltage at the machine at its hardest', unit: 'V' }, worst),
        );
        const sag = read.through(benchMains, 'sag', { V0: lowest, V1: worst }).value;
        verdicts.push(
          sag > SAG
            ? note(
                `At its hardest it loses ${percent(sag)} in the cable: a thicker or shorter one would help.`,
              )
            : good(`At its hardest it loses ${percent(Math.max(0, sag))} in the cable, which is little.`),
        );
      }
    }
    const V_rated = read.maybe('rated');
    if (V_rated)
      for (const [V_read, side] of [
        [lowest, 'lowest'],
        [highest, 'highest'],
      ] as const) {
        const off = read.through(benchMains, 'off', { V_read, V_rated }).value;
        if (Math.abs(off) > LIMIT)
          verdicts.push(
            bad(
              `The ${side} reading is ${percent(Math.abs(off))} ${off < 0 ? 'below' : 'above'} the rated voltage; machines are usually built for 10 %. Ask the electricity company or an electrician.`,
            ),
          );
      }
    if (idle.length < 4)
      verdicts.push(
        note(
          'Few readings: low and high mains of the day are not known yet. Read at several hours, in the evening too.',
        ),
      );
    return { results, verdicts };
  },
});
