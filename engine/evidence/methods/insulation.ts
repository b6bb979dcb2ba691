/** Insulation of a winding to its frame. */
import { benchInsulation } from '../../handbook/bench-insulation.ts';
import { accuracy } from '../common.ts';
import { draw, wire, words } from '../drawing.ts';
import { meanOf, standardOf } from '../estimate.ts';
import { bad, doubtful, good, note, resultOf } from '../outcome.ts';
import { meter, motorLying } from '../symbols.ts';
import { method, type Verdict } from '../types.ts';

const MEGOHM = 1e6;
/** As read cold, sound: bench policy, no source. */
const SOUND = 100 * MEGOHM;
/** At 40 °C: armatures (IEEE 43-2013, as quoted in trade articles), and machines as a whole (IEC 60204-1, 18.3). */
const ARMATURE = 5 * MEGOHM;
const MACHINE = 1 * MEGOHM;

export const insulation = method({
  id: 'insulation',
  title: 'Insulation of the winding to the frame',
  purpose:
    'Tells whether carbon dust or damp would put the winding’s voltage on the motor’s case, before any power is put on it.',
  hazards: [
    'The tester puts 250 or 500 V on the winding, and the charge stays: nobody touches the leads, and afterwards short winding to frame for 60 s.',
    'Never through a connected drive, encoder, resolver or tacho: it destroys them. Unplug all of them first, and never test their own leads so.',
  ],
  tools: ['insulation tester, 250 and 500 V d.c.', 'thermometer'],
  steps: [
    'Unplug the motor from everything: drive, brake, encoder, tacho, thermal switch.',
    'Join all power leads of the motor. Tester from these to bare metal of the frame.',
    'Insulation class unknown: begin with 250 V. Else 500 V.',
    'Press for one minute, then read. If it shows “over range”, write the largest number it can show.',
    'Short the leads to the frame for one minute before you touch them.',
  ],
  drawing: draw(
    'An insulation tester between the joined leads and the bare frame of a motor.',
    motorLying(30, 110),
    meter(196, 40, '180'),
    wire([206, 102], [206, 60], [60, 60], [42, 110]),
    wire([60, 60], [56, 110]),
    wire([232, 102], [232, 190], [46, 190], [46, 168]),
    words(120, 52, 'all leads joined'),
    words(140, 182, 'bare frame'),
    words(248, 56, 'MΩ, at 500 V', 'start'),
  ),
  given: [
    {
      key: 'temperature',
      kind: 'quantity',
      name: 'temperature of the winding',
      unit: '°C',
      usual: '20 ± 3 °C',
      help: 'As warm as the room it has lain in.',
    },
    accuracy('tester', 'accuracy of the tester', 'MΩ', ['megohms']),
  ],
  columns: [
    {
      key: 'megohms',
      kind: 'quantity',
      name: 'insulation resistance after one minute',
      unit: 'MΩ',
      domain: 'positive',
      help: 'Winding to frame.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchInsulation.id],
  run: (read) => {
    const R = meanOf(read.column('megohms'), 'scatter of the readings');
    const R40 = read.through(benchInsulation, 'R40', { R, t: read.entry('temperature') });
    const low = R40.value - 2 * standardOf(R40);
    const verdicts: Verdict[] = [];
    if (R.value >= SOUND && low >= ARMATURE)
      verdicts.push(
        good('Winding and frame are well apart. This says nothing of the winding itself, nor of sensors.'),
      );
    else if (R40.value < MACHINE)
      verdicts.push(
        bad(
          'Below 1 MΩ at 40 °C: do not put power on it. Clean and dry it; if that does not help, it is for a rewinder.',
        ),
      );
    else if (R40.value < ARMATURE || low < MACHINE)
      verdicts.push(
        bad(
          'Below 5 MΩ at 40 °C, or too near to tell: blow and vacuum out the carbon dust, dry it at 80 to 90 °C for some hours, and test again before any power.',
        ),
      );
    else
      verdicts.push(
        doubtful(
          'It would do, but a clean dry motor shows over 100 MΩ cold: carbon dust or damp. Clean it now, while it is easy.',
        ),
      );
    verdicts.push(note('Short the leads to the frame for 60 s now.'));
    return {
      results: [resultOf({ key: 'insulation', name: 'insulation resistance at 40 °C', unit: 'MΩ' }, R40)],
      verdicts,
    };
  },
});
