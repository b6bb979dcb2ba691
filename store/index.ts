/** The store: refits, their edits and photos in one folder on this computer's disk. */
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import { checkShape, LIMITS, parseRefit, whenSchema, whoSchema, writeRefit } from '../engine/refit/index.ts';
import { carryIn, carryOut, taken } from './carry.ts';
import { type Database, openDatabase } from './database.ts';
import { type Kinds, makeLog, noSuchRefit } from './log.ts';
import { photoNames, readPhoto, savePhoto } from './photos.ts';
import { lastSeen, markSeen } from './seen.ts';
import { reasonFor, trouble } from './trouble.ts';
import type { Author, RefitLine, Store } from './types.ts';

export type { Kept, NewEdit, OpenRefit } from './log.ts';
export { reasonOf, type TroubleProblem, type TroubleReason } from './trouble.ts';
export type { Author, RefitLine, Store } from './types.ts';

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

  const withRefit = <T>(id: string, work: () => Result<T>): Result<T> =>
    guard(() => (log.exists(id) ? work() : noSuchRefit(id)));
  const withAuthor = <T>(by: Author, work: () => Result<T>): Result<T> =>
    guard(() => authorProblem(by) ?? work());

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
      withAuthor({ who, when }, () => {
        const parsed = parseRefit(refit, kindIds);
        if (!parsed.ok) return parsed;
        const { id } = parsed.value;
        if (log.exists(id)) return taken(id);
        if (Buffer.byteLength(writeRefit(parsed.value)) > LIMITS.refitFile)
          return refuse({
            code: 'too-long',
            message: `The refit comes to more than ${LIMITS.refitFile / 1e6} MB.`,
          });
        database.transact(() => log.insert(parsed.value, parsed.value, [], who, when));
        return log.open(id);
      }),

    openRefit: (id) => withRefit(id, () => log.open(id)),
    appendEdit: (id, edit) => withRefit(id, () => log.append(id, edit)),
    undo: (id, number, by) => withRefit(id, () => log.undo(id, number, by)),
    history: (id, range = {}) =>
      withRefit(id, () => log.history(id, range.from ?? 1, range.to ?? Number.MAX_SAFE_INTEGER)),
    verify: (id) => withRefit(id, () => log.verify(id)),

    lastSeen: (id, who) => withRefit(id, () => ok(lastSeen(database, id, who))),
    markSeen: (id, who, number) =>
      withRefit(id, () => {
        const opened = log.open(id);
        return opened.ok
          ? markSeen(database, id, who, number ?? opened.value.head, opened.value.head)
          : opened;
      }),

    savePhoto: (id, name, bytes) => withRefit(id, () => savePhoto(database, id, name, bytes)),
    readPhoto: (id, name) => withRefit(id, () => readPhoto(database, id, name)),
    listPhotos: (id) => withRefit(id, () => ok(photoNames(database, id))),

    importArchive: (bytes, by) => withAuthor(by, () => carryIn(database, log, bytes, by, kindIds)),
    exportArchive: (id) => withRefit(id, () => carryOut(database, log, id)),

    close: () => database.close(),
  };
}

function authorProblem({ who, when }: Author): Result<never> | undefined {
  for (const check of [checkShape(whoSchema, who, 'who'), checkShape(whenSchema, when, 'when')])
    if (!check.ok) return check;
  return undefined;
}
