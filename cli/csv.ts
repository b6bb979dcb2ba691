/** A table that a command writes beside its answer. */
import { shown } from './arguments.ts';
import { replaceFile } from './files.ts';
import { Refusal } from './refusal.ts';

/** Never writes over a refit. */
export function writeCsv(path: string, csv: string): void {
  if (path.trim() === '') throw new Refusal('The name of the CSV file is empty.');
  if (/\.(refit|json)$/i.test(path))
    throw new Refusal('A CSV file does not end in .refit or .json; name another.');
  try {
    replaceFile(path, Buffer.from(csv));
  } catch {
    throw new Refusal(
      `${shown(path)} could not be written; look whether the folder is there and yours to write in.`,
    );
  }
}
