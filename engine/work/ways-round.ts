/** What can be done where the control or the spindle cannot: each way with what it needs and where it ends. */
import type { Side, Thread } from '../threads/index.ts';

export interface WayRound {
  readonly name: string;
  /** What is done. */
  readonly how: string;
  /** Where it ends: sizes, lengths, quality, work. */
  readonly limits: string;
  readonly source: string;
}

export interface Trouble {
  /** 'threading-taper', 'rigid-tapping', 'spindle-stop', 'feedback' … */
  readonly what: string;
  readonly thread: Thread;
  readonly side: Side;
  readonly machine: 'lathe' | 'mill' | 'other';
}

const PRACTICE = 'common practice, no source';
const MM = 1e3;

const size = (thread: Thread): number => thread.diameter * MM;

const way = (name: string, how: string, limits: string): WayRound => ({
  name,
  how,
  limits,
  source: PRACTICE,
});

const ANOTHER_CONTROL = way(
  'another control',
  'Ask this of the control before it is bought; for one that is bought, ask its maker whether it can be added.',
  'Money and time; everything else that was wired and set for the first one is looked at again.',
);

function formDie({ thread, side }: Trouble): WayRound {
  const pipe = thread.taper > 0;
  return side === 'external'
    ? way(
        pipe ? 'die head with pipe dies' : 'button die or self-opening die head',
        pipe
          ? 'Turn the taper first, hold the die head in the tailstock or a floating holder, turn the spindle slowly by hand or at its lowest speed, and reverse off or open the head.'
          : 'Turn to the outside diameter, start the die square from the tailstock, turn by hand or at the lowest speed.',
        size(thread) > 30
          ? `At ${Math.round(size(thread))} mm the torque is more than most small machines hold: the grip and the lowest range decide. Ordinary dies cut one start and one hand only.`
          : 'One size, one hand and one start a die; about one turn of run-in is not full. The thread follows the die, not the axis.',
      )
    : way(
        pipe
          ? 'taper tap by hand or in a floating holder'
          : 'tap by hand, guided by the tailstock or the spindle',
        pipe
          ? 'Ream the taper or drill to the table, start the tap guided by a centre, turn it by hand and stop at the gauge length.'
          : 'Drill, start the tap square with a centre behind it, turn by hand.',
        'A hole a day, not a batch. A taper tap cuts along its whole length and asks more torque than a parallel one.',
      );
}

function taper(of: Trouble): readonly WayRound[] {
  return [
    formDie(of),
    ...(of.machine === 'lathe' && of.side === 'external'
      ? [
          way(
            'taper attachment or tailstock set over',
            'Cut it as a parallel thread along the bed while a guide bar (or work between centres set over) moves the cross slide by a thirty-second of the travel.',
            'Only on a lathe that has one. The screw of the cross slide must be let free or telescoped, so the X axis cannot be a ball screw in use. Setting over makes the lead a trifle short: under a thousandth at this taper.',
          ),
          way(
            'many short parallel pieces',
            'Program the taper as a row of parallel threads, each a turn or less and a thirty-second of a turn’s travel deeper, if the control joins moves in step without waiting for the mark again.',
            'Steps of pitch/32 in the flank show. Where the control waits for the mark between pieces it does not work at all.',
          ),
        ]
      : []),
    ANOTHER_CONTROL,
  ];
}

function multiStart({ thread }: Trouble): readonly WayRound[] {
  return [
    way(
      'shift the start along the axis',
      `Cut each start as a thread of its own, begun one pitch (${(thread.pitch * MM).toFixed(3).replace(/\.?0+$/, '')} mm) further from the work than the last.`,
      'Works on every control that can cut the lead at all: a shift of one pitch is the same as a turn of the start angle. It takes that much more room before the thread.',
    ),
    way(
      'turn the work in its driver',
      'Between centres, move the carrier to the next slot of an evenly slotted driver plate for each start.',
      'As even as the slots are.',
    ),
  ];
}

const threadMilling = ({ machine }: Trouble): WayRound =>
  way(
    'thread milling',
    machine === 'mill'
      ? 'A cutter smaller than the hole goes round in a circle while the axis climbs one lead. Want it here as a thread that is milled, and it is judged.'
      : 'Not on a lathe without a driven tool.',
    'Needs three axes that move together and about 1.3 times the time; a broken cutter does not spoil the hole, and one cutter does all diameters of a pitch. Below about M4 the cutters are frail.',
  );

function tapping(of: Trouble): readonly WayRound[] {
  const large = size(of.thread) > 12;
  return [
    way(
      'holder with float in tension and compression',
      'Feed at a little less than the lead, stop the feed short of depth, reverse the spindle; the holder gives what is missing.',
      'Its float must be more than the overrun of the spindle. Depth is as exact as the spindle stops, so blind holes want room below the thread.',
    ),
    way(
      'self-reversing tapping head',
      'The head turns the tap back by its own gears when the axis withdraws; the spindle never stops.',
      `Each head takes a range of sizes (small ones about M2 to M7, middle ones to M12${large ? '; this size wants a large one' : ''}), right-hand taps only, and needs an arm against turning. One speed for in and out.`,
    ),
    threadMilling(of),
    way(
      'tap by hand with the machine as guide',
      'Drill on the machine without moving the work, then turn the tap by hand under a centre.',
      'Slow, but no spindle has to stop.',
    ),
    ANOTHER_CONTROL,
  ];
}

const straight = (of: Trouble): readonly WayRound[] => [
  ...(of.machine === 'mill' ? [threadMilling(of)] : []),
  formDie(of),
  way(
    'change gears, where they are still there',
    'Leave the lead screw and its gears on the machine and engage them for threads only.',
    'The axis drive must let go while the gears drive; thread by thread the gears are changed by hand.',
  ),
  ANOTHER_CONTROL,
];

const powered = (of: Trouble): readonly WayRound[] => [
  way(
    'second setting on a drill press or mill',
    'Carry the part over and find its centre again.',
    'Position is as good as the second clamping: reckon 0.05 to 0.1 mm.',
  ),
  way(
    'air or hand drill in the tool post',
    'Lock the spindle at its angle, by a pin or a brake, and drive the drill by itself while the axis feeds.',
    'The spindle must be held against the drill’s torque. No tapping in step.',
  ),
  ...tapping(of).slice(1, 2),
  ANOTHER_CONTROL,
];

const stop = (of: Trouble): readonly WayRound[] => [
  way(
    'slower',
    'The overrun falls with the square of the speed: half the speed, a quarter of the overrun.',
    'Below the lowest speed of the range the motor has no torque or no cooling; then a lower belt or gear range.',
  ),
  way(
    'brake the spindle',
    'A drive with a braking resistor, or a resistor for the one there is, stops the spindle in a fraction of its run-down.',
    'Brakes what the drive’s current allows; the resistor gets hot and needs its place.',
  ),
  ...tapping(of).slice(0, 3),
];

const feedback = (of: Trouble): readonly WayRound[] => [
  way(
    'encoder on the spindle',
    'An encoder of some hundred lines or more with an index, turning one to one with the spindle by a toothed belt or straight on its end.',
    'Needs a place at the spindle’s end and an input of the control; a V-belt slips and is no use.',
  ),
  formDie(of),
];

/** Honest ways round, the nearest first. */
export function waysRound(trouble: Trouble): readonly WayRound[] {
  switch (trouble.what) {
    case 'threading-taper':
      return taper(trouble);
    case 'threading-multi-start':
      return multiStart(trouble);
    case 'rigid-tapping':
      return tapping(trouble);
    case 'threading-straight':
      return straight(trouble);
    case 'powered-tools':
      return powered(trouble);
    case 'spindle-stop':
      return stop(trouble);
    case 'feedback':
    case 'one-pulse':
    case 'index':
    case 'geared-index':
      return feedback(trouble);
    default:
      return [];
  }
}
