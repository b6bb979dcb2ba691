/** What happened in a run, as kinds with a time, and in words. */

export type EventKind =
  | 'stick'
  | 'slip'
  | 'play-crossed'
  | 'flank-left'
  | 'current-limit'
  | 'voltage-limit'
  | 'dump-on'
  | 'dump-off'
  | 'mains-off'
  | 'drive-off'
  | 'brake-holds'
  | 'force-on'
  | 'force-off'
  | 'stall'
  | 'trip-following'
  | 'trip-overvoltage'
  | 'trip-undervoltage'
  | 'unstable'
  | 'stopped';

export interface RunEvent {
  /** s. */
  readonly time: number;
  readonly kind: EventKind;
  /** 0 for the first axis, 1 for the second; −1 for what they share. */
  readonly axis: number;
  readonly sentence: string;
}

const SAYS: Readonly<Record<EventKind, string>> = {
  stick: 'Friction brings the slide to rest.',
  slip: 'The slide breaks free and moves.',
  'play-crossed': 'The play is taken up: screw and nut touch.',
  'flank-left': 'The screw leaves the flank of the nut and crosses the play.',
  'current-limit': 'The drive is at its current limit: it cannot push harder.',
  'voltage-limit': 'The drive uses all the bus voltage there is: the motor cannot turn faster.',
  'dump-on': 'The dump resistor switches in to hold the bus down.',
  'dump-off': 'The dump resistor switches out.',
  'mains-off': 'The mains fail.',
  'drive-off': 'The drive is switched off.',
  'brake-holds': 'The brake holds.',
  'force-on': 'The force sets in.',
  'force-off': 'The force ends.',
  stall: 'The stepping motor falls out of step: it stalls, and its position is lost.',
  'trip-following': 'The drive trips: the axis is farther behind its command than allowed.',
  'trip-overvoltage': 'The drive trips: the bus voltage is too high.',
  'trip-undervoltage': 'The drive trips: the bus voltage is too low.',
  unstable: 'The loop is unstable.',
  stopped: 'The simulation stops here.',
};

/** Of kinds that come in crowds, so many are kept; the summary counts them all. */
const KEPT_OF_A_KIND = 60;

export class EventList {
  readonly list: RunEvent[] = [];
  readonly counts = new Map<string, number>();

  add(kind: EventKind, time: number, axis: number, sentence = SAYS[kind]): void {
    const key = `${kind} ${axis}`;
    const count = (this.counts.get(key) ?? 0) + 1;
    this.counts.set(key, count);
    if (count <= KEPT_OF_A_KIND) this.list.push({ time, kind, axis, sentence });
  }

  count(kind: EventKind, axis: number): number {
    return this.counts.get(`${kind} ${axis}`) ?? 0;
  }
}
