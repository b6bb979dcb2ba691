/** Whether the magnets have lost strength: two constants against plate or data sheet. */
import { benchMagnet } from '../../handbook/bench-magnet.ts';
import { MAGNETS } from '../../tables/magnets.ts';
import { arrow, box, draw, words } from '../drawing.ts';
import { exact, standardOf } from '../estimate.ts';
import { bad, doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { motorEnd } from '../symbols.ts';
import { method, type QuantityResult, Senseless, type Verdict } from '../types.ts';

/** Share of the plate below which a magnet is called weak: bench policy, no source. */
const SOUND = 0.95;
const WEAK = 0.9;
/** 20 °C in kelvin. */
const ROOM = 293.15;

export const weakMagnet = method({
  id: 'weak-magnet',
  title: 'Have the magnets lost strength?',
  purpose:
    'Tells a weakened motor from a wrong reading, before money goes into a drive for a motor that will run hot.',
  hazards: [
    'Nothing is touched here; for the two tests it rests on, see their own cautions.',
    'Never draw the armature out to look: old magnets lose their strength when it comes out.',
  ],
  tools: ['results of the spin test and of lever and scale'],
  steps: [
    'Do the spin test (back-emf), and lever and scale (locked-rotor), and take both constants with their ±.',
    'Find the constant on the plate or the maker’s sheet, and for which temperature it is stated: many sheets state it hot.',
    'Give all in the same way: brushed as they are; brushless peak against peak, r.m.s. against r.m.s.',
  ],
  drawing: draw(
    'A motor between its plate and two measurements.',
    motorEnd(160, 110, 46),
    box(20, 30, 92, 44),
    words(66, 48, 'plate'),
    words(66, 64, '36.65 V/krpm'),
    box(208, 20, 96, 34),
    words(256, 42, 'by spinning'),
    box(208, 146, 96, 34),
    words(256, 168, 'by lever'),
    arrow([112, 66], [128, 80]),
    arrow([208, 48], [194, 76]),
    arrow([208, 154], [196, 140]),
  ),
  given: [
    {
      key: 'emf',
      kind: 'quantity',
      name: 'back-EMF constant found',
      unit: 'V/krpm',
      domain: 'positive',
      doubt: 'measured',
      help: 'At 20 °C, with its ±, from the spin test.',
    },
    {
      key: 'torqueConstant',
      kind: 'quantity',
      name: 'torque constant found',
      unit: 'N·m/A',
      domain: 'positive',
      optional: true,
      doubt: 'measured',
      help: 'With its ±, from lever and scale. Without it a wrong speed reading cannot be told from a weak magnet.',
    },
    {
      key: 'plate',
      kind: 'quantity',
      name: 'constant of plate or maker’s sheet',
      unit: 'V/krpm',
      domain: 'positive',
      help: 'In the same way of stating. ± 5 % is usual where none is printed.',
    },
    {
      key: 'plateTemperature',
      kind: 'quantity',
      exact: true,
      name: 'temperature the plate speaks of',
      unit: '°C',
      usual: '20 °C',
      help: '20 or 25 °C when cold values are stated; some sheets state the constant hot, at 80 or 100 °C.',
    },
    {
      key: 'magnet',
      kind: 'choice',
      name: 'magnets',
      optional: true,
      options: Object.fromEntries(MAGNETS.map(({ id, name }) => [id, name])),
      help: 'Only needed when the plate speaks of another temperature than 20 °C.',
    },
  ],
  columns: [],
  least: 0,
  settles: [],
  sheets: [benchMagnet.id],
  run: (read) => {
    const magnet = MAGNETS.find(({ id }) => id === read.choice('magnet'));
    const stated = read.entry('plateTemperature');
    if (!magnet && Math.abs(stated.value - ROOM) > 5)
      throw new Senseless(
        'magnet',
        'The plate speaks of another temperature than 20 °C, so the kind of magnets is needed to compare. Ferrite is usual in brushed motors, neodymium in newer brushless ones.',
      );
    const K_stated = read.entry('plate');
    const plate = { K_stated, t: stated, aB: exact(magnet?.perKelvin ?? 0) };
    const Ke = read.entry('emf');
    const Kt = read.maybe('torqueConstant');
    const byVolts = resultOf(
      { key: 'byVolts', name: 'share of the plate left, by voltage', unit: '%' },
      read.through(benchMagnet, 'ratio_e', { Ke, ...plate }),
    );
    const results: QuantityResult[] = [byVolts];
    const verdicts: Verdict[] = [];
    const size = (value: number, expanded: number): 'sound' | 'weak' | 'between' =>
      value - expanded >= SOUND || (value >= SOUND && value + expanded >= 1)
        ? 'sound'
        : value + expanded < WEAK
          ? 'weak'
          : 'between';
    const volts = size(byVolts.value, byVolts.expanded);
    if (!Kt) {
      if (volts === 'sound')
        verdicts.push(good(`It makes ${percent(byVolts.value)} of its plate: the magnets are sound.`));
      else
        verdicts.push(
          doubtful(
            `By voltage ${percent(byVolts.value)} of the plate is left. Before you call the magnets weak, do lever and scale too: a wrong speed reading looks the same.`,
          ),
        );
    } else {
      const byTorque = resultOf(
        { key: 'byTorque', name: 'share of the plate left, by torque', unit: '%' },
        read.through(benchMagnet, 'ratio_t', { Kt, ...plate }),
      );
      results.push(byTorque);
      const [U_e, U_t] = [Ke, Kt].map((each) => exact(2 * standardOf(each)));
      const agree =
        U_e!.value + U_t!.value > 0 ? enough(read, Ke.value, Kt.value, U_e!.value, U_t!.value) : undefined;
      if (agree === undefined)
        verdicts.push(note('Neither constant has a ±, so whether they agree cannot be judged.'));
      else if (!agree)
        verdicts.push(
          doubtful(
            `Voltage says ${percent(byVolts.value)}, torque says ${percent(byTorque.value)} of the plate, and their doubts do not cover that: ${byVolts.value < byTorque.value ? 'only the voltage is low, so look at the speed reading' : 'only the torque is low, so look at scale, lever and current reading'}. The magnets are not the reason.`,
          ),
        );
      else {
        const torque = size(byTorque.value, byTorque.expanded);
        if (volts === 'weak' && torque !== 'sound')
          verdicts.push(
            bad(
              `Both say the magnets are weak: ${percent(byVolts.value)} and ${percent(byTorque.value)} of the plate.`,
            ),
          );
        else if (volts !== 'weak' && torque !== 'weak' && (volts === 'sound' || torque === 'sound'))
          verdicts.push(good('Both agree, and the magnets are sound.'));
        else
          verdicts.push(
            doubtful(
              `Voltage says ${percent(byVolts.value)}, torque ${percent(byTorque.value)} of the plate, and their doubts cover the difference: a little weak, or not measured well enough to say.`,
            ),
          );
      }
    }
    if (byVolts.value < SOUND) {
      const heat = read.through(benchMagnet, 'more_heat', { Ke, ...plate });
      verdicts.push(
        note(
          `At ${percent(byVolts.value)} the same torque needs ${percent(1 / byVolts.value - 1)} more current and makes ${percent(heat.value)} more heat in the winding; the motor also runs faster on the same voltage.`,
        ),
      );
    }
    if (byVolts.value > 1.2)
      verdicts.push(
        doubtful(
          'More than the plate cannot be: peak against r.m.s., line against phase, or the plate states it hot.',
        ),
      );
    return { results, verdicts };
  },
});

const enough = (
  read: Parameters<typeof weakMagnet.run>[0],
  Ke: number,
  Kt: number,
  U_e: number,
  U_t: number,
): boolean => {
  // A constant without ± is taken as exact; the sheet wants something above zero.
  const least = 1e-9 * Ke;
  return (
    read.through(benchMagnet, 'En', {
      Ke: exact(Ke),
      Kt: exact(Kt),
      U_e: exact(Math.max(U_e, least)),
      U_t: exact(Math.max(U_t, least)),
    }).value <= 1
  );
};
