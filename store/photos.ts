/** Photos, kept beside the edits so that one commit covers both. */
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import { LIMITS, photoFault, type StrippedPhoto, stripPhoto } from '../engine/refit/index.ts';
import type { Database } from './database.ts';

/** Leaves room in a `.refit` file of LIMITS.archive for the state and the newest edits. */
const PHOTOS_PER_REFIT = 45_000_000;

/** The names of a refit's photos, in order. */
export const photoNames = (database: Database, id: string): string[] =>
  database
    .all<{ name: string }>('SELECT name FROM photos WHERE refit = ? ORDER BY name', id)
    .map(({ name }) => name);

export function readPhoto(database: Database, id: string, name: string): Result<Uint8Array> {
  const bytes = find(database, id, name);
  return bytes
    ? ok(bytes)
    : refuse({
        code: 'unknown-name',
        message: `There is no photo '${name.slice(0, 60)}' in this refit.`,
        where: name,
      });
}

export function readPhotos(database: Database, id: string): Map<string, Uint8Array> {
  const rows = database.all<{ name: string; bytes: ArrayBuffer }>(
    'SELECT name, bytes FROM photos WHERE refit = ? ORDER BY name',
    id,
  );
  return new Map(rows.map(({ name, bytes }) => [name, new Uint8Array(bytes)]));
}

/** To be called within a transaction. */
export const insertPhoto = (database: Database, id: string, name: string, bytes: Uint8Array): void =>
  database.run('INSERT INTO photos VALUES (?, ?, ?)', id, name, bytes);

/** Keeps a photo, bare of all but the picture; the same one again is no change, another under its name is refused. */
export function savePhoto(
  database: Database,
  id: string,
  name: string,
  whole: Uint8Array,
): Result<StrippedPhoto> {
  const tooLong = (message: string) => refuse({ code: 'too-long', message, where: name });
  const fault = photoFault(name, whole);
  if (fault !== undefined)
    return refuse({ code: 'malformed', message: `'${name.slice(0, 60)}' ${fault}.`, where: name });
  const bare = stripPhoto(whole, name);
  if (!bare.ok) return bare;
  const { bytes } = bare.value;

  const there = database.all<{ name: string; size: number }>(
    'SELECT name, length(bytes) AS size FROM photos WHERE refit = ?',
    id,
  );
  const namesake = there.find((other) => other.name.toLowerCase() === name.toLowerCase());
  if (namesake)
    return namesake.name === name && Buffer.compare(find(database, id, name)!, bytes) === 0
      ? bare
      : refuse({
          code: 'out-of-domain',
          message: `There is another photo called '${namesake.name}' already; give this one another name.`,
          where: name,
        });

  const total = there.reduce((sum, { size }) => sum + size, bytes.length);
  if (total > PHOTOS_PER_REFIT)
    return tooLong(
      `The photos of a refit may have ${PHOTOS_PER_REFIT / 1e6} MB in all; make this one smaller.`,
    );
  // refit.json and edits.jsonl take two entries of the file.
  if (there.length + 3 > LIMITS.archiveEntries)
    return tooLong(`A refit may have ${LIMITS.archiveEntries - 2} photos at most.`);
  database.transact(() => insertPhoto(database, id, name, bytes));
  return bare;
}

function find(database: Database, id: string, name: string): Uint8Array | undefined {
  const row = database.one<{ bytes: ArrayBuffer }>(
    'SELECT bytes FROM photos WHERE refit = ? AND name = ?',
    id,
    name,
  );
  return row && new Uint8Array(row.bytes);
}
