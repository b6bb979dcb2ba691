/** What Fettle knows of the rules of a country. Everything recalled says so; nothing here replaces the rules themselves. */

export interface Rule {
  readonly says: string;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

export interface Country {
  readonly id: string;
  readonly name: string;
  /** Other words people write for it, lower case. */
  readonly words: readonly string[];
  /** Phase to neutral, and between phases, in V; Hz. */
  readonly mains: {
    readonly single: number;
    readonly between: number;
    readonly hertz: number;
    readonly source: string;
  };
  /** Who may work on the fixed installation. */
  readonly fixed: Rule;
  /** What must stand before a socket that feeds a machine. */
  readonly socket: Rule & {
    /** Largest difference at which its residual current device may trip, A; sockets up to `upTo` A. */
    readonly residual?: { readonly amps: number; readonly upTo: number };
  };
  /** The standard for the electrics of a machine. */
  readonly machine: Rule;
  /** Who can be asked. */
  readonly ask: string;
}
