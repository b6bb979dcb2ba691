/** The engine's sentences name entries by the keys a command line uses; on a screen the names alone are enough. */

import type { Problem } from '../../../engine/quantity/types.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { BenchSheet } from '../../worker/bench-protocol.ts';

export function tidyFor({ given, columns }: BenchSheet): (sentence: string) => string {
  const keys = [...given, ...columns].map(({ key }) => key);
  const lists = new Set([...keys, columns.map(({ key }) => key).join(', ')].map((each) => ` (${each})`));
  return (sentence) => {
    let said = sentence;
    for (const each of lists) said = said.replaceAll(each, '');
    return capital(said);
  };
}

export interface Faults {
  /** By key of an entry. */
  readonly entries: Readonly<Record<string, string>>;
  /** By number of a row, from 1. */
  readonly rows: ReadonlyMap<number, string>;
  /** What belongs to no field. */
  readonly whole: string | undefined;
}

const NONE: Faults = { entries: {}, rows: new Map(), whole: undefined };

/** Where a refusal belongs on the screen. */
export function faultsOf(sheet: BenchSheet, problem: Problem | undefined): Faults {
  if (!problem) return NONE;
  const message = tidyFor(sheet)(problem.message);
  const where = problem.where ?? '';
  if (sheet.given.some(({ key }) => key === where)) {
    // The name stands over the field already.
    const name = sheet.given.find(({ key }) => key === where)!.name;
    const short = message.toLowerCase().startsWith(`${name.toLowerCase()}: `)
      ? message.slice(name.length + 2)
      : message;
    return { ...NONE, entries: { [where]: capital(short) } };
  }
  const row = /(?:^|, )row (\d+)$/.exec(where)?.[1];
  if (row !== undefined) return { ...NONE, rows: new Map([[Number(row), message]]) };
  return { ...NONE, whole: message };
}

/** '25 November 2026'. */
export function sayDay(when: string): string {
  const day = new Date(when);
  return Number.isNaN(day.getTime())
    ? when
    : day.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}
