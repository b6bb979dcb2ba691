/** The tables, one step a version. A step once released is never changed; a new one is added below. */
export const MIGRATIONS: readonly string[] = [
  `
  -- 'start' is the state before the first edit kept here, whose number is 'before' + 1.
  CREATE TABLE refits (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    machine TEXT NOT NULL,
    created_by TEXT NOT NULL,
    created_at TEXT NOT NULL,
    changed_at TEXT NOT NULL,
    start TEXT NOT NULL,
    before INTEGER NOT NULL,
    head INTEGER NOT NULL
  ) STRICT;

  -- The master: everything else is made from it and can be made again.
  CREATE TABLE edits (
    refit TEXT NOT NULL REFERENCES refits (id),
    number INTEGER NOT NULL,
    who TEXT NOT NULL,
    at TEXT NOT NULL,
    based_on INTEGER NOT NULL,
    says TEXT NOT NULL,
    changes TEXT NOT NULL,
    PRIMARY KEY (refit, number)
  ) STRICT;

  -- A state on the way, so that opening need not fold the whole log.
  CREATE TABLE snapshots (
    refit TEXT PRIMARY KEY REFERENCES refits (id),
    number INTEGER NOT NULL,
    state TEXT NOT NULL
  ) STRICT;

  -- The newest edit that touched each thing.
  CREATE TABLE touched (
    refit TEXT NOT NULL REFERENCES refits (id),
    target TEXT NOT NULL,
    number INTEGER NOT NULL,
    PRIMARY KEY (refit, target)
  ) STRICT, WITHOUT ROWID;

  -- Every id a part ever had: ids are permanent and never used again.
  CREATE TABLE part_ids (
    refit TEXT NOT NULL REFERENCES refits (id),
    part TEXT NOT NULL,
    PRIMARY KEY (refit, part)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE seen (
    refit TEXT NOT NULL REFERENCES refits (id),
    who TEXT NOT NULL,
    number INTEGER NOT NULL,
    PRIMARY KEY (refit, who)
  ) STRICT, WITHOUT ROWID;

  CREATE TABLE photos (
    refit TEXT NOT NULL REFERENCES refits (id),
    name TEXT NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (refit, name)
  ) STRICT;
  `,
];
