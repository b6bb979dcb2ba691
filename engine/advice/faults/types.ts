/** A symptom of an old machine, what may be behind it, and the tests that tell those apart. */

export interface Cause {
  readonly says: string;
  /** `asleep`: nothing is broken, something keeps it from working. `dead`: a part has to be mended or replaced. */
  readonly is: 'asleep' | 'dead';
  /** How often it is this, against the others: 1 rare … 8 nearly always. */
  readonly often: number;
  /** What to do about it. */
  readonly mend: string;
}

export interface FaultAnswer<C extends string = string> {
  readonly says: string;
  /** Causes this answer goes with. A cause that stands with no answer of the test is not touched by it. */
  readonly fits: readonly C[];
}

export interface FaultTest<C extends string = string> {
  readonly question: string;
  readonly how: string;
  readonly tool: string;
  /** Stands before `how`. */
  readonly caution?: string;
  /** 1 look and listen, 2 a meter or a screwdriver, 3 half an hour, 4 a strip-down, 5 somebody else’s tool. */
  readonly trouble: 1 | 2 | 3 | 4 | 5;
  readonly answers: Readonly<Record<string, FaultAnswer<C>>>;
}

/** Causes, how often and the order of tests are common practice, no source. */
export interface Symptom<C extends string = string> {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  /** Other words people use for it, with blanks between: it is found by them. */
  readonly words: string;
  readonly causes: Readonly<Record<C, Cause>>;
  readonly tests: Readonly<Record<string, FaultTest<C>>>;
  /** Who can tell what is left apart. */
  readonly ask: string;
}

/** Keeps the causes typed, so that a misspelt one does not compile. */
export const symptom = <C extends string>(of: Symptom<C>): Symptom => of as unknown as Symptom;

export const MAINS =
  'Mains can kill. Lock off, and show with a meter that it is dead, before a cover comes off; what has to be measured live is for an electrician.';
export const BUS =
  'The capacitors of the drives stay charged after switching off: lock off, wait ten minutes, and measure that the bus is empty before you touch.';
export const MOVES =
  'It may move at full speed without warning: nobody within reach, slide in the middle of its travel, a hand on the emergency stop, drive current as low as it goes.';
export const FALLS = 'A vertical or sloping axis falls when its drive or brake lets go: prop it first.';
export const TURNS = 'Chuck empty or tool out, doors shut, lowest speed, nobody in line with what turns.';
