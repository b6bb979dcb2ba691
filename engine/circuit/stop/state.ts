/** Where everything stands at one moment. */
import type { Model } from './model.ts';

export interface State {
  /** Seconds since the beginning. */
  time: number;
  /** Position of each mover. */
  readonly at: Uint8Array;
  /** When each mover will change; Infinity for not at all. */
  readonly due: Float64Array;
  /** Contacts that are melted fuses. */
  readonly melted: Uint8Array;
  /** Supplies that gave up because no fuse cleared a short. */
  readonly tripped: Uint8Array;
  /** 1 while the main switch is on. */
  power: 0 | 1;
  /** For each safety relay: channels read, both seen off since it last stopped, start loop, wants to be on, locked out. */
  readonly memory: Uint8Array;
  /** For each control: runs a program. */
  readonly program: Uint8Array;
}

/** Places in a safety relay's memory. */
export const MEMORY = { cleared: 0, loop: 1, wants: 2, locked: 3, size: 4 } as const;

/** Everything off, hands where they are while the machine runs, no power. */
export function atRest(model: Model): State {
  return {
    time: 0,
    at: Uint8Array.from(model.movers, ({ does }) => does?.normal ?? 0),
    due: new Float64Array(model.movers.length).fill(Number.POSITIVE_INFINITY),
    melted: new Uint8Array(model.contacts.length),
    tripped: new Uint8Array(model.sources.length),
    power: 0,
    memory: new Uint8Array(model.safety.length * MEMORY.size),
    program: new Uint8Array(model.controls.length),
  };
}

export const copyState = (state: State): State => ({
  time: state.time,
  at: state.at.slice(),
  due: state.due.slice(),
  melted: state.melted.slice(),
  tripped: state.tripped.slice(),
  power: state.power,
  memory: state.memory.slice(),
  program: state.program.slice(),
});

/** The same text for states that go on alike. Time is left out. */
export const keyOf = ({ at, melted, tripped, power, memory, program }: State): string =>
  `${power}${at.join('')}|${melted.join('')}|${tripped.join('')}|${memory.join('')}|${program.join('')}`;
