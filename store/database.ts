/** One SQLite file in one folder, held by one process, in which a commit returns only when it is on the disk. */
import { closeSync, fsyncSync, mkdirSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import Libsql from 'libsql';
import { ok, type Result } from '../engine/quantity/types.ts';
import { MIGRATIONS } from './migrations.ts';
import { reasonFor, trouble } from './trouble.ts';

type Value = string | number | null | Uint8Array;

/** Marks the file as ours: 'Fttl'. */
const APPLICATION_ID = 0x4674746c;
const FILE = 'refits.db';
const OWNER = 'open-in-process';

export interface Database {
  readonly all: <Row>(sql: string, ...values: Value[]) => Row[];
  readonly one: <Row>(sql: string, ...values: Value[]) => Row | undefined;
  readonly run: (sql: string, ...values: Value[]) => void;
  /** All of the work or none of it; returns once it is on the disk. */
  readonly transact: <T>(work: () => T) => T;
  readonly isOpen: () => boolean;
  readonly close: () => void;
}

/** Opens the folder, makes it where it is missing, and brings its tables up to date. */
export function openDatabase(folder: string, migrations: readonly string[] = MIGRATIONS): Result<Database> {
  const directory = resolve(folder);
  let connection: Libsql.Database | undefined;
  try {
    makePrivate(directory);
    connection = new Libsql(join(directory, FILE), { timeout: 300 });
    connection.pragma('locking_mode = EXCLUSIVE');
    const refusal = foreign(connection, migrations.length);
    if (refusal) {
      release(connection);
      return refusal;
    }
    makeDurable(connection);
    migrate(connection, migrations);
    writeFileSync(join(directory, OWNER), String(process.pid), { mode: 0o600 });
    return ok(wrap(connection, directory));
  } catch (fault) {
    const reason = reasonFor(fault);
    if (connection) abandon(connection, reason);
    if (reason === undefined) throw fault;
    return reason === 'in-use' ? trouble(reason, inUse(directory)) : trouble(reason);
  }
}

/** For this user alone; and the folder's own entry must survive a power cut, which SQLite does not see to. */
function makePrivate(directory: string): void {
  const made = mkdirSync(directory, { recursive: true, mode: 0o700 });
  if (made !== undefined)
    for (let at = directory; at.length >= made.length; at = dirname(at)) syncFolder(dirname(at));
  try {
    // Only made here, never opened when it exists: closing any descriptor of a file drops this process's locks on it.
    closeSync(openSync(join(directory, FILE), 'wx', 0o600));
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code !== 'EEXIST') throw fault;
  }
}

function syncFolder(path: string): void {
  // Windows neither needs nor allows this.
  if (process.platform === 'win32') return;
  const descriptor = openSync(path, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

/**
 * Read before anything is written, so that a file that is not ours stays as it is. The lock that reading takes is the
 * operating system's and is kept: it ends with the process however that ends, so nothing stale is left to take over.
 */
function foreign(connection: Libsql.Database, newest: number): Result<never> | undefined {
  const tables = connection.prepare('SELECT count(*) AS n FROM sqlite_schema').get() as { n: number };
  if (tables.n > 0 && numberOf(connection, 'application_id') !== APPLICATION_ID) return trouble('damaged');
  return numberOf(connection, 'user_version') > newest ? trouble('newer') : undefined;
}

/** A write-ahead log with full synchronising: each commit syncs the log before it returns. */
function makeDurable(connection: Libsql.Database): void {
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = FULL');
  // Only macOS heeds this: there a plain sync may stop at the drive's cache.
  connection.pragma('fullfsync = ON');
  connection.pragma('foreign_keys = ON');
  connection.pragma('trusted_schema = OFF');
}

function migrate(connection: Libsql.Database, migrations: readonly string[]): void {
  for (let step = numberOf(connection, 'user_version'); step < migrations.length; step++) {
    connection.exec('BEGIN IMMEDIATE');
    connection.exec(migrations[step]!);
    connection.exec(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${step + 1}`);
    connection.exec('COMMIT');
  }
}

function numberOf(connection: Libsql.Database, pragma: string): number {
  const row = connection.prepare(`PRAGMA ${pragma}`).get() as Record<string, number>;
  return Number(row[pragma]);
}

function inUse(directory: string): string {
  let owner = '';
  try {
    owner = readFileSync(join(directory, OWNER), 'utf8').slice(0, 20);
  } catch {
    // Only a help for the sentence.
  }
  return /^\d+$/.test(owner)
    ? `Another Fettle (process ${owner}) has this folder open. Close it there first.`
    : 'Another Fettle has this folder open. Close it there first.';
}

/**
 * Statements outlive `close` and would hold the lock with them, so the lock is given back first. Leaving the write-ahead
 * log also folds it into the one file, which can then be copied.
 */
function release(connection: Libsql.Database): void {
  try {
    if (numberOf(connection, 'application_id') === APPLICATION_ID) connection.pragma('journal_mode = DELETE');
    connection.pragma('locking_mode = NORMAL');
    connection.prepare('SELECT count(*) FROM sqlite_schema').get();
  } catch (fault) {
    // Whatever was acknowledged is on the disk; what could not be tidied is tidied at the next opening.
    if (reasonFor(fault) === undefined) throw fault;
  } finally {
    connection.close();
  }
}

/** Gives up an opening that failed; where another holds the folder there is nothing to give back. */
function abandon(connection: Libsql.Database, reason: string | undefined): void {
  try {
    if (connection.inTransaction) connection.exec('ROLLBACK');
    if (reason === 'in-use') connection.close();
    else release(connection);
  } catch {
    // The fault that led here is the one to tell.
  }
}

function wrap(connection: Libsql.Database, directory: string): Database {
  const statements = new Map<string, Libsql.Statement<unknown[]>>();
  const statement = (sql: string): Libsql.Statement<unknown[]> => {
    let known = statements.get(sql);
    if (!known) {
      known = connection.prepare(sql);
      statements.set(sql, known);
    }
    return known;
  };
  let open = true;
  return {
    all: <Row>(sql: string, ...values: Value[]) => statement(sql).all(...values) as Row[],
    one: <Row>(sql: string, ...values: Value[]) => statement(sql).get(...values) as Row | undefined,
    run: (sql, ...values) => {
      statement(sql).run(...values);
    },
    transact: (work) => {
      connection.exec('BEGIN IMMEDIATE');
      try {
        const result = work();
        connection.exec('COMMIT');
        return result;
      } catch (fault) {
        // After some faults SQLite has rolled back by itself.
        if (connection.inTransaction) connection.exec('ROLLBACK');
        throw fault;
      }
    },
    isOpen: () => open,
    close: () => {
      if (!open) return;
      open = false;
      statements.clear();
      rmSync(join(directory, OWNER), { force: true });
      release(connection);
    },
  };
}
