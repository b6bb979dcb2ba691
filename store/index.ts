/** The store: refits, their edits and photos in one folder on this computer's disk. */
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import {
  checkShape,
  type Edit,
  LIMITS,
  parseRefit,
  photoFault,
  type Refit,
  readArchive,
  unfoldEdits,
  whenSchema,
  whoSchema,
  writeArchive,
  writeEdits,
  writeRefit,
} from '../engine/refit/index.ts';
import { type Database, openDatabase } from './database.ts';
import { type Kept, type Kinds, makeLog, type NewEdit, noSuchRefit, type OpenRefit } from './log.ts';
import { reasonFor, trouble } from './trouble.ts';

export type { Kept, NewEdit, OpenRefit } from './log.ts';
export { reasonOf, type TroubleProblem, type TroubleReason } from './trouble.ts';

export interface RefitLine {
  readonly id: string;
  readonly name: string;
  readonly machine: Refit['machine'];
  /** Number of the newest edit. */
  readonly head: number;
  /** When it was last edited, or made. */
  readonly changedAt: string;
}

export interface Author {
  readonly who: string;
  /** ISO 8601. */
  readonly when: string;
}

/**
 * Every call answers with a Result, and an ok for anything written means that it is on the disk. A refusal leaves
 * everything as it was; `reasonOf` tells those that come from the disk or folder, `conflictOf` edits that met.
 */
export interface Store {
  readonly listRefits: () => Result<readonly RefitLine[]>;
  readonly createRefit: (refit: Refit, who: string, when: string) => Result<OpenRefit>;
  readonly openRefit: (id: string) => Result<OpenRefit>;
  /** Refused with a conflict where what it changes was edited after `basedOn`, or is not what `old` says. */
  readonly appendEdit: (id: string, edit: NewEdit) => Result<Kept>;
  /** Takes an edit back by a new one; undoing that one does it again. */
  readonly undo: (id: string, number: number, by: Author) => Result<Kept>;
  /** Edits in order, both ends included; all of them without a range. */
  readonly history: (
    id: string,
    range?: { readonly from?: number; readonly to?: number },
  ) => Result<readonly Edit[]>;
  /** Number of the newest edit that this person has seen; 0 for one who has seen none. */
  readonly lastSeen: (id: string, who: string) => Result<number>;
  /** Seen up to `number`, or up to the newest edit. What was seen stays seen. */
  readonly markSeen: (id: string, who: string, number?: number) => Result<number>;
  /** A photo is evidence: another one under the same name is refused. */
  readonly savePhoto: (id: string, name: string, bytes: Uint8Array) => Result<null>;
  readonly readPhoto: (id: string, name: string) => Result<Uint8Array>;
  readonly listPhotos: (id: string) => Result<readonly string[]>;
  /** Takes in a `.refit` file with its history, under another id where `as` is given. */
  readonly importArchive: (bytes: Uint8Array, by: Author & { readonly as?: string }) => Result<OpenRefit>;
  /** `from` is the first edit in it: the oldest ones stay out of a history too long for a file. */
  readonly exportArchive: (id: string) => Result<{ readonly bytes: Uint8Array; readonly from: number }>;
  /** Folds the whole log and holds it against the state; the number of edits folded. */
  readonly verify: (id: string) => Result<number>;
  readonly close: () => void;
}

/** Leaves room in a `.refit` file of LIMITS.archive for the state and the newest edits. */
const PHOTOS_PER_REFIT = 45_000_000;

/** Opens a folder for this process alone, making it where it is missing. */
export function openStore(folder: string, options: { readonly kinds?: Kinds } = {}): Result<Store> {
  const opened = openDatabase(folder);
  return opened.ok ? ok(makeStore(opened.value, options.kinds)) : opened;
}

function makeStore(database: Database, kinds?: Kinds): Store {
  const log = makeLog(database, kinds);
  const kindIds = kinds && Object.keys(kinds);

  /** Faults of the disk become refusals; faults of ours stay faults. */
  function guard<T>(work: () => Result<T>): Result<T> {
    if (!database.isOpen()) return trouble('closed');
    try {
      return work();
    } catch (fault) {
      const reason = reasonFor(fault);
      if (reason === undefined) throw fault;
      return trouble(reason);
    }
  }

  // Compared again, because SQLite takes a text to end at its first null character.
  const exists = (id: string): boolean =>
    database.one<{ id: string }>('SELECT id FROM refits WHERE id = ?', id)?.id === id;
  const withRefit = <T>(id: string, work: () => Result<T>): Result<T> =>
    guard(() => (exists(id) ? work() : noSuchRefit(id)));

  function authorProblem({ who, when }: Author): Result<never> | undefined {
    const checks = [checkShape(whoSchema, who, 'who'), checkShape(whenSchema, when, 'when')];
    for (const check of checks) if (!check.ok) return check;
    return undefined;
  }

  const taken = (id: string): Result<never> =>
    refuse({
      code: 'out-of-domain',
      message: `There is a refit '${id}' already; give this one another id.`,
      where: 'id',
    });

  function photo(id: string, name: string): Uint8Array | undefined {
    const row = database.one<{ bytes: ArrayBuffer }>(
      'SELECT bytes FROM photos WHERE refit = ? AND name = ?',
      id,
      name,
    );
    return row && new Uint8Array(row.bytes);
  }

  function photosOf(id: string): Map<string, Uint8Array> {
    const rows = database.all<{ name: string; bytes: ArrayBuffer }>(
      'SELECT name, bytes FROM photos WHERE refit = ? ORDER BY name',
      id,
    );
    return new Map(rows.map(({ name, bytes }) => [name, new Uint8Array(bytes)]));
  }

  return {
    listRefits: () =>
      guard(() => {
        const rows = database.all<RefitLine>(
          'SELECT id, name, machine, head, changed_at AS changedAt FROM refits ORDER BY name, id',
        );
        return ok(
          rows.map(({ id, name, machine, head, changedAt }) => ({ id, name, machine, head, changedAt })),
        );
      }),

    createRefit: (refit, who, when) =>
      guard(() => {
        const parsed = parseRefit(refit, kindIds);
        if (!parsed.ok) return parsed;
        const problem = authorProblem({ who, when });
        if (problem) return problem;
        if (exists(parsed.value.id)) return taken(parsed.value.id);
        if (writeRefit(parsed.value).length > LIMITS.refitFile)
          return refuse({
            code: 'too-long',
            message: `The refit comes to more than ${LIMITS.refitFile / 1e6} MB.`,
          });
        database.transact(() => log.insert(parsed.value, parsed.value, [], who, when));
        return log.open(parsed.value.id);
      }),

    openRefit: (id) => withRefit(id, () => log.open(id)),
    appendEdit: (id, edit) => withRefit(id, () => log.append(id, edit)),
    undo: (id, number, by) => withRefit(id, () => log.undo(id, number, by)),
    history: (id, range = {}) =>
      withRefit(id, () => log.history(id, range.from ?? 1, range.to ?? Number.MAX_SAFE_INTEGER)),
    verify: (id) => withRefit(id, () => log.verify(id)),

    lastSeen: (id, who) =>
      withRefit(id, () =>
        ok(
          database.one<{ number: number }>('SELECT number FROM seen WHERE refit = ? AND who = ?', id, who)
            ?.number ?? 0,
        ),
      ),

    markSeen: (id, who, number) =>
      withRefit(id, () => {
        const name = checkShape(whoSchema, who, 'who');
        if (!name.ok) return name;
        const { head } = database.one<{ head: number }>('SELECT head FROM refits WHERE id = ?', id)!;
        const seen = number ?? head;
        if (!Number.isInteger(seen) || seen < 0 || seen > head)
          return refuse({
            code: 'out-of-domain',
            message: `number must be a whole number from 0 to ${head}.`,
            where: 'number',
          });
        const row = database.transact(() => {
          database.run(
            'INSERT INTO seen VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET number = max(number, excluded.number)',
            ...[id, who, seen],
          );
          return database.one<{ number: number }>(
            'SELECT number FROM seen WHERE refit = ? AND who = ?',
            id,
            who,
          )!;
        });
        return ok(row.number);
      }),

    savePhoto: (id, name, bytes) =>
      withRefit(id, () => {
        const fault = photoFault(name, bytes);
        if (fault !== undefined)
          return refuse({ code: 'malformed', message: `'${name.slice(0, 60)}' ${fault}.`, where: name });
        if (bytes.length > LIMITS.photo)
          return refuse({
            code: 'too-long',
            message: `A photo may have ${LIMITS.photo / 1e6} MB at most; make it smaller.`,
            where: name,
          });
        const there = database.all<{ name: string; size: number }>(
          'SELECT name, length(bytes) AS size FROM photos WHERE refit = ?',
          id,
        );
        const namesake = there.find((other) => other.name.toLowerCase() === name.toLowerCase());
        if (namesake)
          return namesake.name === name && Buffer.compare(photo(id, name)!, bytes) === 0
            ? ok(null)
            : refuse({
                code: 'out-of-domain',
                message: `There is another photo called '${namesake.name}' already; give this one another name.`,
                where: name,
              });
        const total = there.reduce((sum, { size }) => sum + size, bytes.length);
        if (total > PHOTOS_PER_REFIT || there.length + 1 > LIMITS.archiveEntries - 2)
          return refuse({
            code: 'too-long',
            message: `The photos of a refit may have ${PHOTOS_PER_REFIT / 1e6} MB in all; make this one smaller.`,
            where: name,
          });
        database.transact(() => database.run('INSERT INTO photos VALUES (?, ?, ?)', id, name, bytes));
        return ok(null);
      }),

    readPhoto: (id, name) =>
      withRefit(id, () => {
        const bytes = photo(id, name);
        return bytes
          ? ok(bytes)
          : refuse({
              code: 'unknown-name',
              message: `There is no photo '${name.slice(0, 60)}' in this refit.`,
              where: name,
            });
      }),

    listPhotos: (id) =>
      withRefit(id, () =>
        ok(
          database
            .all<{ name: string }>('SELECT name FROM photos WHERE refit = ? ORDER BY name', id)
            .map(({ name }) => name),
        ),
      ),

    importArchive: (bytes, by) =>
      guard(() => {
        const archive = readArchive(bytes, kindIds);
        if (!archive.ok) return archive;
        const problem = authorProblem(by);
        if (problem) return problem;
        const { edits, photos } = archive.value;
        const state = parseRefit({ ...archive.value.refit, id: by.as ?? archive.value.refit.id });
        if (!state.ok) return state;
        if (exists(state.value.id)) return taken(state.value.id);
        const start = unfoldEdits(state.value, edits);
        if (!start.ok) return start;
        database.transact(() => {
          log.insert(state.value, start.value, edits, by.who, by.when);
          for (const [name, photo] of photos)
            database.run('INSERT INTO photos VALUES (?, ?, ?)', state.value.id, name, photo);
        });
        return log.open(state.value.id);
      }),

    exportArchive: (id) =>
      withRefit(id, () => {
        const opened = log.open(id);
        if (!opened.ok) return opened;
        const history = log.history(id, 1, opened.value.head);
        if (!history.ok) return history;
        const photos = photosOf(id);
        const spent = [...photos.values()].reduce<number>(
          (sum, photo) => sum + photo.length,
          LIMITS.refitFile,
        );
        const edits = newest(history.value, Math.min(LIMITS.historyFile, LIMITS.archive - spent));
        const bytes = writeArchive({ refit: opened.value.refit, edits, photos });
        return bytes.ok ? ok({ bytes: bytes.value, from: edits[0]?.number ?? opened.value.head + 1 }) : bytes;
      }),

    close: () => database.close(),
  };
}

/** The newest edits that fit into so many bytes of edits.jsonl. */
function newest(edits: readonly Edit[], budget: number): readonly Edit[] {
  let spent = 0;
  for (let at = edits.length - 1; at >= 0; at--) {
    spent += Buffer.byteLength(writeEdits([edits[at]!]));
    if (spent > budget) return edits.slice(at + 1);
  }
  return edits;
}
