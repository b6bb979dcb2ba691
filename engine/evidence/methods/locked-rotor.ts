/** Torque constant by lever and scale with the rotor held, and the current it then takes. */
import { benchLever } from '../../handbook/bench-lever.ts';
import { benchMagnet } from '../../handbook/bench-magnet.ts';
import { accuracy, HOT, UNPLUG } from '../common.ts';
import { arc, draw, line, thin, wire, words } from '../drawing.ts';
import { exact, meanOf, weigh } from '../estimate.ts';
import { oddRows } from '../odd.ts';
import { doubtful, good, note, resultOf } from '../outcome.ts';
import { motorEnd, springScale, supply } from '../symbols.ts';
import { type Estimate, method, type QuantityResult, Senseless, type Verdict } from '../types.ts';

export const lockedRotor = method({
  id: 'locked-rotor',
  title: 'Torque constant by lever and scale',
  purpose:
    'Tells the torque an ampere makes by pulling on it, which confirms the spin test and finds weak magnets.',
  hazards: [
    UNPLUG,
    'The lever is under load and swings when the scale slips: stand beside it, not over it.',
    HOT,
    'Never the full voltage: at standstill only the copper holds the current back. Current limit on, at most a quarter of the rated voltage.',
  ],
  tools: ['supply with a current limit', 'ammeter', 'lever clamped on the shaft', 'spring or luggage scale'],
  steps: [
    'Clamp the motor and the lever; set the lever level, the scale square to it. Ten degrees off level costs 1.5 %.',
    'Note the scale’s zero as it hangs and take it off.',
    'Set the current limit to a known current and switch on for a few seconds.',
    'Read the scale while you let the lever give way slowly (unloading), then while you pull it back slowly (loading): friction falls out of the mean.',
    'Repeat at three to five currents, letting it cool between.',
  ],
  drawing: draw(
    'A lever on the motor’s shaft pulls on a spring scale; a supply limits the current.',
    motorEnd(90, 92, 40),
    line([90, 87], [230, 87]),
    line([90, 97], [230, 97]),
    line([230, 87], [230, 97]),
    springScale([222, 97], [222, 185]),
    thin([90, 60], [90, 40]),
    thin([222, 84], [222, 40]),
    thin([90, 46], [222, 46]),
    words(156, 42, 'lever'),
    arc(90, 92, 52, 20, 70),
    supply(244, 10, '10 A'),
    wire([258, 56], [258, 70], [130, 70]),
    wire([294, 56], [294, 76], [126, 76]),
    words(240, 150, 'scale', 'start'),
  ),
  given: [
    {
      key: 'lever',
      kind: 'quantity',
      name: 'length of the lever',
      unit: 'mm',
      domain: 'positive',
      help: 'From the middle of the shaft to the hook. Write its ±.',
    },
    {
      key: 'emf',
      kind: 'quantity',
      name: 'torque constant from the spin test',
      unit: 'V·s/rad',
      domain: 'positive',
      optional: true,
      doubt: 'measured',
      help: 'Back-EMF constant of a brushed motor, with its ±.',
    },
    {
      key: 'supplyVolts',
      kind: 'quantity',
      exact: true,
      name: 'volts of the supply',
      unit: 'V',
      domain: 'positive',
      optional: true,
      help: 'To reckon what current it should take.',
    },
    {
      key: 'brushDrop',
      kind: 'quantity',
      name: 'voltage lost in the brushes',
      unit: 'V',
      domain: 'not negative',
      usual: '0 V',
      help: 'From the resistance test with two currents.',
    },
    {
      key: 'resistance',
      kind: 'quantity',
      name: 'winding resistance',
      unit: 'Ω',
      domain: 'positive',
      optional: true,
      doubt: 'measured',
      help: 'From the resistance test.',
    },
    {
      key: 'leads',
      kind: 'quantity',
      name: 'resistance of the leads',
      unit: 'Ω',
      domain: 'not negative',
      usual: '0 Ω',
      help: 'From supply to motor, both.',
    },
    accuracy('ammeter', 'accuracy of the ammeter', 'A', ['amps']),
    accuracy('scale', 'accuracy of the scale', 'N', ['loading', 'unloading']),
  ],
  columns: [
    {
      key: 'amps',
      kind: 'quantity',
      name: 'current',
      unit: 'A',
      domain: 'positive',
      help: 'As the limit holds it.',
    },
    {
      key: 'loading',
      kind: 'quantity',
      name: 'pull while loading',
      unit: 'N',
      domain: 'positive',
      help: 'Lever moved slowly against the motor.',
    },
    {
      key: 'unloading',
      kind: 'quantity',
      name: 'pull while unloading',
      unit: 'N',
      domain: 'positive',
      optional: true,
      help: 'Lever giving way slowly.',
    },
  ],
  least: 1,
  settles: [],
  sheets: [benchLever.id, benchMagnet.id],
  run: (read) => {
    const r = read.entry('lever');
    const rows = read.rows.map((row) => {
      const [loading, unloading] = [read.cell('loading', row)!, read.cell('unloading', row)];
      const F: Estimate = unloading
        ? weigh([
            [0.5, loading],
            [0.5, unloading],
          ])
        : loading;
      return {
        row,
        both: unloading !== undefined,
        Kt: read.through(benchLever, 'Kt', { F, r, I: read.cell('amps', row)! }),
      };
    });
    const found = resultOf(
      { key: 'torqueConstant', name: 'torque constant', unit: 'N·m/A' },
      meanOf(
        rows.map(({ Kt }) => Kt),
        'scatter of the rows',
      ),
    );
    const results: QuantityResult[] = [found];
    const verdicts: Verdict[] = [];
    if (rows.some(({ both }) => !both))
      verdicts.push(
        note('Not every row has loading and unloading: friction is then counted as torque, or taken off it.'),
      );
    const emf = read.maybe('emf');
    if (emf) verdicts.push(agree(read, found, emf));
    const [V, R] = [read.maybe('supplyVolts'), read.maybe('resistance')];
    if (V && R) {
      const I = read.through(benchLever, 'I_locked', {
        V,
        Vbr: read.entry('brushDrop'),
        R,
        R_lead: read.entry('leads'),
      });
      results.push(
        resultOf({ key: 'expectedCurrent', name: 'current to expect at that voltage', unit: 'A' }, I),
      );
    } else if (V || R)
      throw new Senseless(
        V ? 'resistance' : 'supplyVolts',
        'The current to expect needs both the volts of the supply and the winding resistance: give both or neither.',
      );
    return {
      results,
      verdicts,
      questions: oddRows(
        rows.map(({ row, Kt }) => ({ row, value: Kt.value })),
        'torque constant',
      ),
    };
  },
});

function agree(read: Parameters<typeof lockedRotor.run>[0], found: QuantityResult, emf: Estimate): Verdict {
  const spun = resultOf({ key: 'emf', name: '', unit: 'V·s/rad' }, emf);
  if (spun.expanded === 0 || found.expanded === 0)
    return note('To compare the two constants, both need a ±.');
  const given = {
    Ke: exact(spun.value),
    Kt: exact(found.value),
    U_e: exact(spun.expanded),
    U_t: exact(found.expanded),
  };
  const En = read.through(benchMagnet, 'En', given).value;
  return En <= 1
    ? good('Lever and spin test tell the same constant: both can be trusted.')
    : doubtful(
        'Lever and spin test differ by more than their doubts together: one reading is wrong (scale zero, lever not level, peak against r.m.s.). Repeat both.',
      );
}
