/** Refits carried in and out as `.refit` files. */
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import {
  type Edit,
  LIMITS,
  parseRefit,
  readArchive,
  stripPhoto,
  unfoldEdits,
  writeArchive,
  writeEdits,
} from '../engine/refit/index.ts';
import type { Database } from './database.ts';
import type { Log, OpenRefit } from './log.ts';
import { insertPhoto, readPhotos } from './photos.ts';
import type { Author } from './types.ts';

/** Takes in a `.refit` file with its history and photos, in one transaction; photos are kept bare of all but the picture. */
export function carryIn(
  database: Database,
  log: Log,
  bytes: Uint8Array,
  by: Author & { readonly as?: string },
  knownKinds?: readonly string[],
): Result<OpenRefit> {
  const archive = readArchive(bytes, knownKinds);
  if (!archive.ok) return archive;
  const { edits, photos } = archive.value;
  const state = parseRefit({ ...archive.value.refit, id: by.as ?? archive.value.refit.id });
  if (!state.ok) return state;
  const { id } = state.value;
  if (log.exists(id)) return taken(id);
  const start = unfoldEdits(state.value, edits);
  if (!start.ok) return start;
  const bare = new Map<string, Uint8Array>();
  for (const [name, photo] of photos) {
    const stripped = stripPhoto(photo, name);
    if (!stripped.ok) return stripped;
    bare.set(name, stripped.value.bytes);
  }
  database.transact(() => {
    log.insert(state.value, start.value, edits, by.who, by.when);
    for (const [name, photo] of bare) insertPhoto(database, id, name, photo);
  });
  return log.open(id);
}

/** The refit as a `.refit` file; `from` is the first edit in it. */
export function carryOut(
  database: Database,
  log: Log,
  id: string,
): Result<{ readonly bytes: Uint8Array; readonly from: number }> {
  const opened = log.open(id);
  if (!opened.ok) return opened;
  const { refit, head } = opened.value;
  const history = log.history(id, 1, head);
  if (!history.ok) return history;
  const photos = readPhotos(database, id);
  const spent = [...photos.values()].reduce<number>((sum, photo) => sum + photo.length, LIMITS.refitFile);
  const edits = newest(history.value, Math.min(LIMITS.historyFile, LIMITS.archive - spent));
  const bytes = writeArchive({ refit, edits, photos });
  return bytes.ok ? ok({ bytes: bytes.value, from: edits[0]?.number ?? head + 1 }) : bytes;
}

export const taken = (id: string): Result<never> =>
  refuse({
    code: 'out-of-domain',
    message: `There is a refit '${id}' already; give this one another id.`,
    where: 'id',
  });

/** The newest edits that fit into so many bytes of edits.jsonl. */
export function newest(edits: readonly Edit[], budget: number): readonly Edit[] {
  let spent = 0;
  for (let at = edits.length - 1; at >= 0; at--) {
    spent += Buffer.byteLength(writeEdits([edits[at]!]));
    if (spent > budget) return edits.slice(at + 1);
  }
  return edits;
}
