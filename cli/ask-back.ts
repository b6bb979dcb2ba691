/** Asking back on a command line: what looks like a slip is not recorded until the person adds --anyway. */
import { Refusal } from './refusal.ts';

/** The option of every command that records amounts. */
export const ANYWAY = { anyway: { says: 'record it although it is far outside what is usual' } } as const;

/** Refuses where there is a question left to be answered; `at` is what was set. */
export function refuseSlip(at: string, question: string | undefined): void {
  if (question === undefined) return;
  throw new Refusal(`${at}: ${question} Nothing was recorded; if it is right all the same, add --anyway.`);
}
