/** An auxiliary as a machine of finitely many states: its mechanism, its surroundings, and the steps the control takes. */

/** What must be so: each variable at one of the values. */
export type Values = Readonly<Record<string, string | readonly string[]>>;

export interface Variable {
  readonly id: string;
  readonly values: readonly string[];
  readonly start: string;
}

/** Something the control sees. */
export interface Input {
  readonly id: string;
  /** 'clamped switch'. */
  readonly name: string;
  /** On while one of these holds. */
  readonly on: readonly Values[];
  /** May be on or off while one of these holds: a code while the turret is between two places. */
  readonly maybe?: readonly Values[];
  /** Inputs of the same word are alike by turning the machine on: a fault of one stands for all of them. */
  readonly alike?: string;
  /** The control knows it by itself: no terminal, and no wire to fail. */
  readonly inside?: true;
}

export interface Output {
  readonly id: string;
  /** 'valve: let go'. */
  readonly name: string;
}

/** What one variable becomes: a value, so many values further round, or any of its values. */
export type Becomes = Readonly<Record<string, string | { readonly by: number } | 'any'>>;

export interface Rule {
  /** The mechanism by itself, the surroundings (people, spindle, slide), or a mishap. */
  readonly who: 'mechanism' | 'surroundings' | 'mishap';
  readonly says: string;
  readonly when: Values;
  readonly becomes: Becomes;
  /** Never comes to rest while it holds: a motor that is left on. */
  readonly endless?: true;
}

/** What the control waits for: inputs on or off, and what it remembers. */
export interface Seen {
  readonly inputs: Readonly<Record<string, boolean>>;
  readonly when?: Values;
}

export interface Step {
  readonly id: string;
  /** 'Let the turret go'. */
  readonly says: string;
  readonly on?: readonly string[];
  readonly off?: readonly string[];
  /** Goes on once one of these is seen. A step without it goes on after `dwell`. */
  readonly until?: readonly Seen[];
  /** In words, where the list of inputs would be too long. */
  readonly untilSays?: string;
  /** Seconds it waits where nothing tells that it is done. */
  readonly dwell?: number;
  /** Seconds; null where it waits as long as it takes. */
  readonly limit?: number | null;
  /** Name of the setting that holds the time-out. */
  readonly limitSetting?: string;
  /** Seconds it usually takes at most, where that is known. */
  readonly usual?: number;
  /** What happens when the time is over. */
  readonly late?: 'alarm' | 'go on';
  /** What the control remembers from then on. */
  readonly sets?: Becomes;
}

export interface Operation {
  readonly id: string;
  /** 'change to another position'. */
  readonly name: string;
  /** Must be seen for it to begin; refused otherwise. */
  readonly needs?: readonly Seen[];
  readonly needsSays?: string;
  /** Must be seen all the time; it is given up otherwise. */
  readonly keeps?: readonly Seen[];
  readonly keepsSays?: string;
  /** Remembered as it begins. */
  readonly sets?: Becomes;
  readonly steps: readonly Step[];
  /** Ready: spindle and axes may move. Held: it is done, but they may not: the chuck is open. */
  readonly ends: 'ready' | 'held';
  /** The state that others can ask for: 'open'. */
  readonly shows: string;
}

export interface Hazard {
  readonly id: string;
  /** 'The chuck is open while the spindle turns'. */
  readonly says: string;
  readonly when: readonly Values[];
  readonly cure: string;
}

/** A way in which the mechanism itself fails: rules that hold, or no longer hold, from then on. */
export interface Trouble {
  readonly id: string;
  readonly says: string;
  /** Rules that come with it. */
  readonly adds?: readonly Rule[];
  /** What no longer happens: rules of the mechanism whose `says` is one of these. */
  readonly stops?: readonly string[];
}

export interface Machine {
  readonly variables: readonly Variable[];
  readonly inputs: readonly Input[];
  readonly outputs: readonly Output[];
  readonly rules: readonly Rule[];
  readonly operations: readonly Operation[];
  /** Outputs that are on while it is ready at the start. */
  readonly startsOn?: readonly string[];
  /** What the control watches while it is ready; where it is not seen, nothing may move any more. */
  readonly watches?: readonly {
    readonly seen: Seen;
    readonly says: string;
    /** Its outputs go off as well. */
    readonly clears?: boolean;
  }[];
  readonly hazards: readonly Hazard[];
  readonly troubles: readonly Trouble[];
  /** When the power comes back: reads its switches (and is ready where one of these is seen), trusts its memory, or waits. */
  readonly afterPower:
    | { readonly does: 'waits' | 'trusts' }
    | { readonly does: 'reads'; readonly seen: readonly (Seen & { readonly sets?: Becomes })[] };
  /** Whether outputs go off when it is stopped in the middle. */
  readonly stopClears: boolean;
}

/** Values of the variable `step` besides those of the steps, which are 'operation.step'. */
export const RESTS = ['ready', 'held', 'stopped', 'dark'] as const;
