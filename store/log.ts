/** The log of edits, which is the master, and the state folded from it. */
import { POLICY } from '../engine/checks/policies.ts';
import type { PartKind } from '../engine/parts/types.ts';
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import {
  applyEdit,
  type Change,
  conflictProblem,
  type Edit,
  feedMarksEdit,
  foldEdits,
  hasOldFeedMarks,
  LIMITS,
  parseEdit,
  parseState,
  type Refit,
  refitNamer,
  sayChanges,
  undoOf,
  writeRefit,
} from '../engine/refit/index.ts';
import type { Database } from './database.ts';
import { ownerOf, targetOf } from './targets.ts';

/** A refit and the number of the newest edit in it. */
export interface OpenRefit {
  readonly refit: Refit;
  readonly head: number;
}

/** An edit that is on the disk, and the refit after it. */
export interface Kept {
  readonly edit: Edit;
  readonly refit: Refit;
}

export type NewEdit = Pick<Edit, 'who' | 'when' | 'basedOn' | 'changes'>;
export type Kinds = Readonly<Record<string, PartKind>>;

interface EditRow {
  readonly number: number;
  readonly who: string;
  readonly at: string;
  readonly based_on: number;
  readonly says: string;
  readonly changes: string;
}

interface Cached extends OpenRefit {
  /** Characters of the state as compact JSON, roughly. */
  readonly size: number;
}

export interface Log {
  readonly exists: (id: string) => boolean;
  readonly open: (id: string) => Result<OpenRefit>;
  /** Puts a refit with the edits that led to it into the tables; to be called within a transaction. */
  readonly insert: (state: Refit, start: Refit, edits: readonly Edit[], who: string, when: string) => void;
  readonly append: (id: string, edit: NewEdit) => Result<Kept>;
  readonly undo: (id: string, number: number, by: Pick<Edit, 'who' | 'when'>) => Result<Kept>;
  readonly history: (id: string, from: number, to: number) => Result<readonly Edit[]>;
  /** Folds the whole log and holds it against the state; the number of edits folded. */
  readonly verify: (id: string) => Result<number>;
}

/** Edits between snapshots: opening folds at most so many. */
export const SNAPSHOT_EVERY = 100;

export function makeLog(database: Database, kinds?: Kinds): Log {
  // This process alone holds the folder, so what it has read stays true until it writes.
  const cache = new Map<string, Cached>();

  const editsBetween = (id: string, from: number, to: number): Edit[] =>
    database
      .all<EditRow>(
        'SELECT * FROM edits WHERE refit = ? AND number BETWEEN ? AND ? ORDER BY number',
        id,
        from,
        to,
      )
      .map((row) => ({
        number: row.number,
        who: row.who,
        when: row.at,
        basedOn: row.based_on,
        changes: JSON.parse(row.changes),
        says: row.says,
      }));

  function load(id: string): Result<Cached> {
    const known = cache.get(id);
    if (known) return ok(known);
    const row = database.one<{ head: number; number: number; state: string }>(
      'SELECT head, number, state FROM refits JOIN snapshots ON refit = id WHERE id = ?',
      id,
    );
    if (!row) return noSuchRefit(id);
    const stored: unknown = JSON.parse(row.state);
    const start = parseState(stored);
    if (!start.ok) return start;
    const edits = editsBetween(id, row.number + 1, row.head);
    const state = foldEdits(start.value, edits);
    if (!state.ok) return state;
    const loaded = { refit: state.value, head: row.head, size: JSON.stringify(state.value).length };
    cache.set(id, loaded);
    return hasOldFeedMarks(stored) ? renamed(id, loaded) : ok(loaded);
  }

  /** A refit of an older format with the names of today, which is kept once: its newest snapshot is of today's format. */
  function renamed(id: string, loaded: Cached): Result<Cached> {
    const changed = database.one<{ at: string }>('SELECT changed_at AS at FROM refits WHERE id = ?', id)!;
    const edit = feedMarksEdit(loaded.refit, loaded.head, changed.at);
    if (edit) {
      const kept = keep(id, loaded, edit);
      if (!kept.ok) return kept;
    }
    const now = cache.get(id) ?? loaded;
    snapshot(id, now.head, now.refit);
    return ok(now);
  }

  /** The edit itself, and what can be looked up about it. */
  function record(id: string, edit: Edit): void {
    database.run(
      'INSERT INTO edits (refit, number, who, at, based_on, says, changes) VALUES (?, ?, ?, ?, ?, ?, ?)',
      ...[id, edit.number, edit.who, edit.when, edit.basedOn, edit.says, JSON.stringify(edit.changes)],
    );
    for (const change of edit.changes) {
      database.run('INSERT OR REPLACE INTO touched VALUES (?, ?, ?)', id, targetOf(change), edit.number);
      if (change.do === 'part' && change.new)
        database.run('INSERT OR IGNORE INTO part_ids VALUES (?, ?)', id, change.id);
    }
  }

  function write(id: string, edit: Edit, after: Refit): void {
    record(id, edit);
    database.run(
      'UPDATE refits SET head = ?, name = ?, machine = ?, changed_at = ? WHERE id = ?',
      ...[edit.number, after.name, after.machine, edit.when, id],
    );
    if (edit.number % SNAPSHOT_EVERY === 0) snapshot(id, edit.number, after);
  }

  const snapshot = (id: string, number: number, state: Refit): void =>
    database.run('INSERT OR REPLACE INTO snapshots VALUES (?, ?, ?)', id, number, JSON.stringify(state));

  /** A change whose subject was edited since `basedOn`, even if it has come back to what it was. */
  function overtaken(id: string, { basedOn, changes }: NewEdit): Change | undefined {
    return changes.find((change) => {
      const target = targetOf(change);
      const newest = database.one<{ number: number }>(
        // '0' follows '/' in ASCII: the range holds whatever stands within the target.
        "SELECT max(number) AS number FROM touched WHERE refit = ? AND (target IN (?, ?) OR (target > ? || '/' AND target < ? || '0'))",
        ...[id, target, ownerOf(target) ?? target, target, target],
      );
      return (newest?.number ?? 0) > basedOn;
    });
  }

  function usedAgain(id: string, before: Refit, changes: readonly Change[]): Result<never> | undefined {
    for (const change of changes) {
      if (change.do !== 'part' || change.new === null) continue;
      const where = `parts.${change.id}`;
      if (
        !Object.hasOwn(before.parts, change.id) &&
        database.one('SELECT 1 FROM part_ids WHERE refit = ? AND part = ?', id, change.id)
      )
        return refuse({
          code: 'out-of-domain',
          message: `The id '${change.id}' belonged to a part that was taken out; give the new part another, or undo the edit that took it out.`,
          where,
        });
      if (kinds && !Object.hasOwn(kinds, change.new.kind))
        return refuse({
          code: 'unknown-name',
          message: `There is no kind of part called '${change.new.kind}'.`,
          where,
        });
    }
    return undefined;
  }

  /** Applies and writes; the cache follows only once the commit is on the disk. */
  function keep(id: string, before: Cached, edit: Edit): Result<Kept> {
    const parsed = parseEdit(edit);
    if (!parsed.ok) return parsed;
    const namer = refitNamer(before.refit, kinds, POLICY);
    const after = applyEdit(before.refit, parsed.value, namer);
    if (!after.ok) return after;
    const size = before.size + growth(parsed.value.changes);
    // Indenting doubles the length, and a character takes up to three bytes: below this there is no need to look.
    if (size > LIMITS.refitFile / 6 && Buffer.byteLength(writeRefit(after.value)) > LIMITS.refitFile)
      return refuse({
        code: 'too-long',
        message: `With this the refit would come to more than ${LIMITS.refitFile / 1e6} MB, the most its file can hold; shorten or take out something first.`,
      });
    cache.delete(id);
    database.transact(() => write(id, parsed.value, after.value));
    cache.set(id, { refit: after.value, head: edit.number, size });
    return ok({ edit: parsed.value, refit: after.value });
  }

  return {
    // Compared again, because SQLite takes a text to end at its first null character.
    exists: (id) => database.one<{ id: string }>('SELECT id FROM refits WHERE id = ?', id)?.id === id,

    open: (id) => {
      const loaded = load(id);
      return loaded.ok ? ok({ refit: loaded.value.refit, head: loaded.value.head }) : loaded;
    },

    insert: (state, start, edits, who, when) => {
      const { id, name, machine } = state;
      const before = edits.length === 0 ? 0 : edits[0]!.number - 1;
      const head = edits.at(-1)?.number ?? 0;
      database.run(
        'INSERT INTO refits (id, name, machine, created_by, created_at, changed_at, start, before, head) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)',
        ...[id, name, machine, who, when, edits.at(-1)?.when ?? when, JSON.stringify(start), before, head],
      );
      for (const part of Object.keys(start.parts))
        database.run('INSERT INTO part_ids VALUES (?, ?)', id, part);
      for (const edit of edits) record(id, edit);
      snapshot(id, head, state);
    },

    append: (id, edit) => {
      const loaded = load(id);
      if (!loaded.ok) return loaded;
      const { refit, head } = loaded.value;
      // Its shape is looked at before anything in it is used.
      const shaped = parseEdit({ ...edit, number: head + 1, says: '' });
      if (!shaped.ok) return shaped;
      if (edit.basedOn > head)
        return refuse({
          code: 'out-of-domain',
          message: `basedOn must be at most ${head}, the number of the newest edit.`,
          where: 'basedOn',
        });
      const met = overtaken(id, shaped.value);
      if (met) return refuse(conflictProblem(refit, met, refitNamer(refit, kinds, POLICY)));
      const again = usedAgain(id, refit, shaped.value.changes);
      if (again) return again;
      const says = sayChanges(shaped.value.changes, refitNamer(refit, kinds, POLICY));
      return keep(id, loaded.value, { ...shaped.value, says });
    },

    undo: (id, number, by) => {
      const loaded = load(id);
      if (!loaded.ok) return loaded;
      const [edit] = editsBetween(id, number, number);
      if (!edit)
        return refuse({
          code: 'unknown-name',
          message: `There is no edit ${number} in this refit.`,
          where: 'number',
        });
      const { head } = loaded.value;
      return keep(id, loaded.value, undoOf(edit, { ...by, number: head + 1, basedOn: head }));
    },

    history: (id, from, to) => {
      const loaded = load(id);
      return loaded.ok ? ok(editsBetween(id, from, to)) : loaded;
    },

    verify: (id) => {
      const loaded = load(id);
      if (!loaded.ok) return loaded;
      const row = database.one<{ start: string; before: number }>(
        'SELECT start, before FROM refits WHERE id = ?',
        id,
      )!;
      const start = parseState(JSON.parse(row.start));
      if (!start.ok) return start;
      const edits = editsBetween(id, row.before + 1, loaded.value.head);
      const folded = foldEdits(start.value, edits);
      if (!folded.ok) return folded;
      return writeRefit(folded.value) === writeRefit(loaded.value.refit)
        ? ok(edits.length)
        : refuse({ code: 'malformed', message: 'The state is not what its edits lead to.' });
    },
  };
}

export const noSuchRefit = (id: string): Result<never> =>
  refuse({
    code: 'unknown-name',
    message: `There is no refit '${id.slice(0, 61)}' in this folder.`,
    where: 'refit',
  });

function growth(changes: readonly Change[]): number {
  const length = (value: unknown) => JSON.stringify(value).length;
  return changes.reduce((sum, change) => sum + length(change.new) - length(change.old), 0);
}
