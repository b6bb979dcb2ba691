/** How long a spindle drive takes to act on an order: stops from several speeds, filmed. */
import { benchSpindleStop } from '../../handbook/bench-spindle-stop.ts';
import { box, circle, dot, draw, line, thin, turning, wire, words } from '../drawing.ts';
import { standardOf } from '../estimate.ts';
import { lineThrough } from '../line.ts';
import { bad, doubtful, good, note, percent, resultOf } from '../outcome.ts';
import { ground } from '../symbols.ts';
import { method, Senseless, type Verdict } from '../types.ts';

/** Pictures by which a stop may lie off the line of the others; bench policy, no source. */
const OFF = 4;
/** Highest speed over the lowest, below which the line is followed too far; bench policy, no source. */
const APART = 2;
/** Share of the delay that its ± may be before more stops are worth it; bench policy, no source. */
const SHARE = 0.5;

export const spindleDelay = method({
  id: 'spindle-delay',
  title: 'Delay of the spindle drive',
  purpose:
    'Tells how long the spindle turns on as if nothing had been said, which a tap goes deeper at the bottom of its hole.',
  hazards: [
    'The chuck turns: guard shut, nothing between its jaws and the jaws closed, nobody in its plane. Stay below the speed marked on the chuck.',
    'The camera stands by itself outside the guard; no hand goes near to film.',
    'The light hangs on a 24 V order or on the relay’s own lamp, never on a mains coil: mains can kill, and is for a licensed electrician.',
    'Stops one after another heat the braking resistor: wait a minute between them. If the drive trips, its ramp is too short for it.',
  ],
  tools: [
    'phone or camera with slow motion, 120 pictures a second or more',
    'light-emitting diode with its resistor for 24 V, or a relay with a lamp in it',
    'white tape for a mark on the chuck',
  ],
  steps: [
    'Write down the ramp for slowing that is set in the drive, and set it to the shortest with which it does not trip.',
    'Put the light across the order that the control gives, so that it changes with the order. Stick the tape to the chuck. Set the camera up so that it sees both.',
    'Run at a low speed, film, and give the order to stop or to turn back.',
    'Repeat at four speeds or more, each twice, up to where the motor still has its full torque (its rated speed).',
    'Go through each film picture by picture: count from the first with the light changed to the first in which the mark stands still.',
    'Set the ramp back to what it was.',
  ],
  drawing: draw(
    'A camera sees the chuck with a mark on it and a light that hangs on the order to stop.',
    ground(10, 178, 290),
    box(14, 62, 66, 90),
    words(47, 112, 'control'),
    wire([80, 84], [118, 84], [118, 66]),
    circle(118, 56, 10),
    line([111, 49], [125, 63]),
    line([125, 49], [111, 63]),
    words(118, 36, 'order'),
    circle(190, 112, 40),
    circle(190, 112, 10),
    line([190, 102], [190, 74]),
    turning(190, 112, 52, -60, 10),
    words(190, 172, 'chuck'),
    box(262, 84, 44, 28),
    circle(262, 98, 7),
    dot(298, 90),
    thin([254, 94], [130, 58]),
    thin([254, 102], [222, 108]),
    words(284, 130, '240 a second'),
  ),
  given: [
    {
      key: 'rate',
      kind: 'quantity',
      exact: true,
      name: 'pictures a second',
      unit: 'Hz',
      domain: 'positive',
      usual: '240 Hz',
      help: 'As the camera films, not as it shows the film. Film a stopwatch if you are not sure.',
    },
    {
      key: 'lamp',
      kind: 'quantity',
      name: 'how late the light shows the order',
      unit: 'ms',
      domain: 'not negative',
      usual: '0 ms',
      help: 'A light-emitting diode shows it at once; a filament lamp after some 50 ms, a relay that carries the light after some 10 ms.',
    },
    {
      key: 'told',
      kind: 'accuracy',
      name: 'how well light and standstill were told, in pictures',
      unit: '1',
      of: ['pictures'],
      optional: true,
      usual: '2',
      help: 'By how many pictures your count may always be wrong the same way.',
    },
    {
      key: 'tachometer',
      kind: 'accuracy',
      name: 'accuracy of the speed shown',
      unit: 'r/min',
      of: ['speed'],
      optional: true,
      usual: '2 %',
      help: 'Of the tachometer or of the drive’s display, such as “2 %” or “5 r/min”.',
    },
  ],
  columns: [
    {
      key: 'speed',
      kind: 'quantity',
      name: 'speed before the order',
      unit: 'r/min',
      domain: 'positive',
      help: 'Of the spindle, steady.',
    },
    {
      key: 'pictures',
      kind: 'quantity',
      whole: true,
      name: 'pictures from the order to standstill',
      unit: '1',
      domain: 'positive',
      help: 'From the first with the light changed to the first in which the mark stands still.',
    },
  ],
  least: 2,
  settles: [{ place: 'spindle-drive', fact: 'orderDelay' }],
  sheets: [benchSpindleStop.id],
  run: (read) => {
    const f = read.entry('rate');
    const rows = read.rows.map((row) => ({
      row,
      x: read.cell('speed', row)!,
      y: read.through(benchSpindleStop, 't', { N: read.cell('pictures', row)!, f }),
    }));
    const speeds = rows.map(({ x }) => x.value);
    const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
    if (slowest === fastest)
      throw new Senseless(
        'speed',
        'All stops are from the same speed: at least two speeds are needed to part the delay from the slowing.',
      );
    const { intercept, slope, deviation, freedom, residuals } = lineThrough(
      rows,
      'scatter about the line',
      'speed',
    );
    if (slope.value <= 0)
      throw new Senseless(
        'pictures',
        'Stops from higher speed do not take longer. A drive whose ramp is a fixed time does that: its ramp hides the delay. Set the ramp to the shortest and film again.',
      );
    const t_lamp = read.entry('lamp');
    const delay = read.through(benchSpindleStop, 't_d', { t_0: intercept, t_lamp });
    const named = { key: 'delay', name: 'time from the order until it acts', unit: 'ms' };
    const result = resultOf(
      delay.value > 0 ? { ...named, fact: { place: 'spindle-drive', fact: 'orderDelay' } } : named,
      delay,
    );
    const isSloped = slope.value > 2 * standardOf(slope);
    const results = [
      result,
      ...(isSloped
        ? [
            resultOf(
              { key: 'slowing', name: 'slowing of the spindle', unit: 'rad/s²' },
              read.through(benchSpindleStop, 'a', { s: slope }),
            ),
          ]
        : []),
    ];
    const verdicts: Verdict[] = [];
    if (delay.value <= 0)
      verdicts.push(
        bad(
          'The delay comes out below nothing, which cannot be. The spindle slows faster at low speed than at high (above its rated speed the motor weakens), or the order came before the light showed it.',
        ),
      );
    else if (!isSloped)
      verdicts.push(
        doubtful(
          'Stops from higher speed hardly take longer, as with a ramp that is a fixed time: then this is the ramp and not the delay. Set the ramp to the shortest.',
        ),
      );
    else if (result.expanded > SHARE * delay.value)
      verdicts.push(
        doubtful(
          `The ± is ${percent(result.expanded / delay.value)} of the delay itself. More stops at low speed, and more pictures a second, tell it better.`,
        ),
      );
    else {
      const n = { value: fastest, parts: [] };
      const { value: angle } = read.through(benchSpindleStop, 'turned', { n, t_0: intercept, t_lamp });
      verdicts.push(
        good(
          `At the highest speed filmed the spindle turns on by ${percent(angle / (2 * Math.PI))} of a turn before anything happens.`,
        ),
      );
    }
    if (freedom === 0)
      verdicts.push(
        note('Two stops always lie on a line, so nothing tells their scatter. Film four speeds, each twice.'),
      );
    else if (deviation * f.value > OFF)
      verdicts.push(
        doubtful(
          'The stops do not lie on a line: some were above the speed up to which the motor has its full torque, or a ramp slows it and not the drive at its limit.',
        ),
      );
    if (fastest < APART * slowest)
      verdicts.push(
        doubtful(
          'The speeds lie near each other, and the line is followed a long way down to no speed. Film some at half the speed and less.',
        ),
      );
    const questions = rows.flatMap(({ row }, at) =>
      freedom >= 2 && Math.abs(residuals[at]!) > 1.8 * deviation && Math.abs(residuals[at]!) * f.value > 1
        ? [
            {
              row,
              sentence: `Row ${row} lies farthest from the line of the others. Was the light or the standstill told one picture early or late?`,
            },
          ]
        : [],
    );
    return { results, verdicts, questions };
  },
});
