/** Coil and holding torque of a brake. */
import { benchCoil } from '../../handbook/bench-coil.ts';
import { accuracy, PROP } from '../common.ts';
import { box, draw, line, wire, words } from '../drawing.ts';
import { meanOf } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { bad, doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { motorEnd, springScale, supply } from '../symbols.ts';
import { method, type QuantityResult, type Question, Senseless, type Verdict } from '../types.ts';

/** Bench policy: lets go at 90 % of its voltage; holds 1.3 times its load (recalled from guidance on vertical axes). */
const RELEASE = 0.9;
const HOLD = 1.3;

export const holdingBrake = method({
  id: 'holding-brake',
  title: 'Holding brake: coil and grip',
  purpose:
    'Tells whether a brake lets go with its voltage and holds the head without it, before a vertical axis drops.',
  hazards: [
    PROP,
    'Never test it under the real load: take the motor off, or prop the axis so that it cannot move.',
    'The coil kicks when it is switched off: a diode across it, and insulated clips.',
  ],
  tools: ['supply of the coil’s voltage, adjustable', 'ohm meter', 'lever and spring scale'],
  steps: [
    'Read the ohms of the coil, cold.',
    'Raise the voltage slowly until the shaft is free; note at which voltage. Do it three times.',
    'Coil off: clamp a lever on the shaft and pull with the scale, square to the lever, until it slips. Both ways, at several places.',
    'Write the lowest pull too: the brake is as good as that.',
  ],
  drawing: draw(
    'A brake on a motor shaft; a supply on its coil; a lever and a scale that pull until it slips.',
    motorEnd(120, 92, 36),
    box(88, 124, 64, 22),
    words(120, 140, 'brake'),
    line([120, 87], [246, 87]),
    line([120, 97], [246, 97]),
    line([246, 87], [246, 97]),
    springScale([236, 97], [236, 186]),
    supply(6, 8, '24 V'),
    wire([20, 54], [20, 142], [88, 142]),
    wire([56, 54], [56, 132], [88, 132]),
    words(250, 150, 'until it slips', 'start'),
  ),
  given: [
    {
      key: 'rated',
      kind: 'quantity',
      exact: true,
      name: 'rated voltage of the coil',
      unit: 'V',
      domain: 'positive',
      usual: '24 V',
      help: 'On its plate; nearly always 24 V.',
    },
    {
      key: 'coil',
      kind: 'quantity',
      name: 'resistance of the coil',
      unit: 'Ω',
      domain: 'positive',
      optional: true,
      help: 'Cold, by ohm meter.',
    },
    {
      key: 'lever',
      kind: 'quantity',
      name: 'length of the lever',
      unit: 'mm',
      domain: 'positive',
      optional: true,
      help: 'Needed for the grip.',
    },
    {
      key: 'load',
      kind: 'quantity',
      name: 'torque of the load it has to hold',
      unit: 'N·m',
      domain: 'positive',
      optional: true,
      help: 'Weight of the axis through the screw.',
    },
    accuracy('voltmeter', 'accuracy of the voltmeter', 'V', ['release']),
    accuracy('scale', 'accuracy of the scale', 'N', ['slip']),
  ],
  columns: [
    {
      key: 'release',
      kind: 'quantity',
      name: 'volts at which it lets go',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'Raised slowly from zero.',
    },
    {
      key: 'slip',
      kind: 'quantity',
      name: 'pull at which it slips',
      unit: 'N',
      domain: 'positive',
      optional: true,
      help: 'Coil off.',
    },
  ],
  least: 0,
  settles: [{ place: 'brake', fact: 'torque' }],
  sheets: [benchCoil.id],
  run: (read) => {
    const V = read.entry('rated');
    const [releases, slips] = [read.column('release'), read.column('slip')];
    const R = read.maybe('coil');
    if (!R && releases.length === 0 && slips.length === 0)
      throw new Senseless(
        'coil',
        'Nothing was measured yet: give the resistance of the coil, volts at which it lets go, or pulls at which it slips.',
      );
    const results: QuantityResult[] = [];
    const verdicts: Verdict[] = [];
    const questions: Question[] = [];
    if (R) {
      results.push(
        resultOf(
          { key: 'current', name: 'current of the coil', unit: 'A' },
          read.through(benchCoil, 'I', { V, R }),
        ),
      );
      results.push(
        resultOf(
          { key: 'heat', name: 'heat of the coil', unit: 'W' },
          read.through(benchCoil, 'P', { V, R }),
        ),
      );
    }
    if (releases.length > 0) {
      const share = resultOf(
        { key: 'release', name: 'share of the rated voltage that lets it go', unit: '%' },
        read.through(benchCoil, 'release', { V, V_release: meanOf(releases, 'scatter of the release') }),
      );
      results.push(share);
      verdicts.push(
        share.value + share.expanded <= RELEASE
          ? good(`It lets go at ${percent(share.value)} of its voltage.`)
          : share.value - share.expanded > RELEASE
            ? bad(
                `It lets go only at ${percent(share.value)} of its voltage: with a warm coil and a long cable it may drag. Air gap too large, or worn.`,
              )
            : doubtful(
                `It lets go at ${percent(share.value)} of its voltage, which is near the limit of 90 %.`,
              ),
      );
      questions.push(...oddRows(releases, 'release voltage'));
    }
    if (slips.length > 0) {
      const r = read.maybe('lever');
      if (!r) throw new Senseless('lever', 'The pull at which it slips needs the length of the lever.');
      // A brake is as good as its weakest place.
      const weakest = slips.reduce((a, b) => (b.value < a.value ? b : a));
      const T = read.through(benchCoil, 'T', { F: weakest, r });
      const torque = resultOf(
        {
          key: 'torque',
          name: 'holding torque, the lowest',
          unit: 'N·m',
          fact: { place: 'brake', fact: 'torque' },
        },
        T,
      );
      results.push(torque);
      const T_load = read.maybe('load');
      if (T_load) {
        const hold = resultOf(
          { key: 'hold', name: 'holding torque over load', unit: '1' },
          read.through(benchCoil, 'hold', { F: weakest, r, T_load }),
        );
        results.push(hold);
        verdicts.push(
          hold.value - hold.expanded >= HOLD
            ? good(`It holds ${hold.text} times its load.`)
            : hold.value < 1
              ? bad(`It holds only ${hold.text} times its load: the axis would drop.`)
              : hold.value < HOLD
                ? bad(
                    `It holds ${hold.text} times its load; 1.3 times is the usual least. Clean or replace its lining.`,
                  )
                : doubtful(
                    `It holds ${hold.text} times its load, so near the usual least of 1.3 that these pulls cannot decide.`,
                  ),
        );
      } else verdicts.push(note('Without the torque of the load it cannot be said whether that is enough.'));
      if (slips.length < 3)
        verdicts.push(
          note('Pulled at few places: a brake has weak ones. Pull at four places of the turn, both ways.'),
        );
      questions.push(...oddRows(slips, 'pull'));
    }
    return { results, verdicts, questions };
  },
});
