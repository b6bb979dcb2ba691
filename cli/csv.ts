/** A table that a command writes beside its answer. */
import { type Call, TO_OUT } from './command.ts';
import { writeOut } from './output.ts';
import { Refusal } from './refusal.ts';

/** Never writes over a refit; “-” is the standard output. */
export function writeCsv(io: Call['io'], path: string, csv: string): void {
  if (path !== TO_OUT && /\.(refit|json)$/i.test(path))
    throw new Refusal('A CSV file does not end in .refit or .json; name another.');
  writeOut(io, path, csv, true);
}
