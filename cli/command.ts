/** What a command is: its words for help, its options, and what it does. */
import type { Io } from './io.ts';

/** In place of a file's name: the standard output. */
export const TO_OUT = '-';

export interface Option {
  /** What stands after it, 'AXIS'; absent for a plain switch. */
  readonly takes?: string;
  /** What it takes is a file that the command writes with `writeOut`, so that “-” means the standard output. */
  readonly writes?: true;
  readonly says: string;
}

/** A command line taken apart. */
export interface Call {
  readonly io: Io;
  /** What was given besides options. */
  readonly words: readonly string[];
  /** The text of an option that takes one. */
  readonly text: (option: string) => string | undefined;
  /** Whether a switch was given. */
  readonly has: (option: string) => boolean;
}

export interface Command {
  readonly name: string;
  /** One line, no full stop. */
  readonly summary: string;
  /** Without 'fettle' before it. */
  readonly usage: readonly string[];
  /** More than the summary, in whole sentences. */
  readonly about: string;
  readonly options: Readonly<Record<string, Option>>;
  readonly examples: readonly string[];
  /** Least and most words; no most where any number will do. */
  readonly words: readonly [least: number, most?: number];
  /** The exit code. Throws Refusal for what a person can put right. */
  readonly run: (call: Call) => number | Promise<number>;
}
