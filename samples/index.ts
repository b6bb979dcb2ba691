/** The invented refits that come with Fettle. Reading them from disk is the caller's business. */

export interface Sample {
  readonly id: string;
  /** Name of its file in this folder. */
  readonly file: string;
  readonly name: string;
  /** What it is and what there is to find, in a sentence or two. */
  readonly story: string;
}

export const SAMPLES: readonly Sample[] = [
  {
    id: 'carriage-works-lathe',
    file: 'carriage-works-lathe.json',
    name: 'Slant-bed lathe of the Tenter Row carriage works',
    story:
      'A slant-bed lathe that keeps its two brushed servo motors and its transformer. The cross slide asks more volts than low mains leave, and sinks when the power goes.',
  },
  {
    id: 'boatyard-mill',
    file: 'boatyard-mill.json',
    name: 'Vertical mill of the Withy Creek boatyard',
    story:
      'A small mill with inch screws and steppers on a second-hand control that holds only whole pulses per millimetre, and a head whose brake closes too late.',
  },
];
