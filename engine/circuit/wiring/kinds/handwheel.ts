import { type Draft, known, numberOf, textOf, wiringKind } from '../kind.ts';
import { amount, choice, count, type Settings, text } from '../setting.ts';
import { contact, RATING } from './contacts.ts';
import { namesOf } from './control.ts';
import { encoderOutputs } from './encoder-lines.ts';

/** Steps on the switch of usual handwheels: a thousandth, a hundredth, a tenth of a millimetre a mark. */
const STEPS = '3';

export const HANDWHEEL_LINES = ['differential', 'single-ended', 'open collector'] as const;

/** The contacts of its switches, in their order: 'X-1' and 'X-2' are one. */
export const selectorsOf = (settings: Settings): readonly (readonly [name: string, says: string])[] => [
  ...namesOf(settings, 'axes').map((axis) => [axis, `switch at ${axis}`] as const),
  ...Array.from(
    { length: numberOf(settings, 'steps') ?? 0 },
    (_, n) => [`step${n + 1}`, `switch at step ${n + 1}`] as const,
  ),
];

export const handwheel = wiringKind({
  id: 'handwheel',
  name: 'handwheel',
  says: 'A wheel turned by hand that moves an axis: an encoder with two channels, a switch for the axis and one for the step. One end of all its contacts is joined inside.',
  letter: 'S',
  settings: {
    lines: choice('its output lines', HANDWHEEL_LINES),
    volts: amount('voltage it is fed with', 'V', '5 V'),
    'least-volts': amount('lowest voltage it works with', 'V', '4.75 V'),
    'most-volts': amount('highest voltage it stands', 'V', '5.25 V'),
    current: amount('current it takes', 'A'),
    // Hundred marks a turn and a few turns a second: common practice, no source.
    rate: amount('highest line rate, turned fast', 'Hz', '1 kHz'),
    axes: text('axes on its switch'),
    steps: count('steps on its switch', STEPS, 4),
    ...RATING,
  },
  terminals: (s) => {
    const lines = textOf(s, 'lines');
    const wheel: readonly Draft[] =
      lines === ''
        ? []
        : encoderOutputs(
            lines,
            known({
              volts: numberOf(s, 'volts'),
              least: numberOf(s, 'least-volts'),
              most: numberOf(s, 'most-volts'),
              amps: numberOf(s, 'current'),
              frequency: numberOf(s, 'rate'),
            }),
          ).filter(({ mark }) => !mark.startsWith('Z'));
    return [
      ...wheel,
      ...selectorsOf(s).flatMap(([name, says]) =>
        contact(`${name}-1`, `${name}-2`, { closes: 'when-on', role: 'signal', moved: 'hand' }, s).map(
          (each) => ({ ...each, name: says }),
        ),
      ),
    ];
  },
  joins: (s) => {
    const [first, ...rest] = selectorsOf(s);
    return first ? rest.map(([name]) => [`${first[0]}-1`, `${name}-1`] as const) : [];
  },
});
