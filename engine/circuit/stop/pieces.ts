/** Long work in pieces: stop asking for the next one and it stops. */

/** How far it has come: 'every single fault', 120 of 300. */
export interface LookProgress {
  readonly doing: string;
  readonly done: number;
  /** 0 where that is not known beforehand. */
  readonly all: number;
}

/** The same at one go. */
export function atOnce<T>(pieces: Generator<LookProgress, T, void>): T {
  for (let step = pieces.next(); ; step = pieces.next()) if (step.done) return step.value;
}
