/** Refits on the disk: `.refit` files and bare refit.json. */

import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { POLICY } from '../engine/checks/policies.ts';
import { PARTS } from '../engine/parts/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import {
  applyEdit,
  type Change,
  type Edit,
  LIMITS,
  parseEdit,
  type Refit,
  readArchive,
  readRefit,
  refitNamer,
  sayChanges,
  writeArchive,
  writeRefit,
} from '../engine/refit/index.ts';
import { shown } from './arguments.ts';
import type { Io } from './io.ts';
import { need, Refusal } from './refusal.ts';

export interface RefitFile {
  readonly path: string;
  /** A `.refit` file keeps a history and photos, a bare refit.json the state alone. */
  readonly form: 'refit' | 'json';
  readonly refit: Refit;
  readonly edits: readonly Edit[];
  readonly photos: ReadonlyMap<string, Uint8Array>;
  /** As read, to notice when another program wrote in between; absent for a file that is not there yet. */
  readonly bytes?: Uint8Array;
}

const KINDS = Object.keys(PARTS);

function readBytes(path: string): Uint8Array {
  const name = shown(path);
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) throw new Refusal(`${name} is a folder; name the refit file in it.`);
    if (!stat.isFile()) throw new Refusal(`${name} is not an ordinary file.`);
    if (stat.size > LIMITS.archive)
      throw new Refusal(`${name} is larger than ${LIMITS.archive / 1e6} MB, the most a refit file can hold.`);
    return readFileSync(path);
  } catch (fault) {
    throw fault instanceof Refusal
      ? fault
      : new Refusal(`${name} could not be read: ${reason(fault)}.${instead(path, fault)}`);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such folder',
  EACCES: 'you have no right to it',
  EPERM: 'you have no right to it',
  EROFS: 'the disk is write-protected',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links lead round in a ring',
  EIO: 'the disk has a fault',
  ERR_INVALID_ARG_VALUE: 'that cannot be the name of a file',
};

function reason(fault: unknown): string {
  const code = (fault as NodeJS.ErrnoException).code ?? '';
  return REASONS[code] ?? `the system says ${code || String(fault)}`;
}

/** What to do where there is no such file: the one that was meant, or how to begin. */
function instead(path: string, fault: unknown): string {
  if ((fault as NodeJS.ErrnoException).code !== 'ENOENT') return '';
  try {
    const there = readdirSync(dirname(path)).filter((each) => /\.(refit|json)$/i.test(each));
    const stem = (name: string): string => name.replace(/\.[^.]*$/, '').toLowerCase();
    const named = basename(path);
    const near = there.find((each) => stem(each) === stem(named)) ?? nearest(shown(named), there);
    if (near !== undefined) return ` Did you mean ${shown(join(dirname(path), near))}?`;
  } catch {
    return '';
  }
  return ' “fettle new lathe X Z” begins a refit.';
}

/** Reads a refit, of whichever form the file turns out to be. */
export function openRefit(path: string): RefitFile {
  if (path.trim() === '') throw new Refusal('The name of the refit file is empty.');
  const bytes = readBytes(path);
  const before = `${shown(path)} cannot be opened as a refit. `;
  if (bytes.length === 0) throw new Refusal(`${before}It is empty.`);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) {
    const archive = need(readArchive(bytes, KINDS), before);
    return { path, form: 'refit', bytes, ...archive };
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(`${before}It is neither a .refit file nor text in UTF-8.`);
  }
  return {
    path,
    form: 'json',
    bytes,
    refit: need(readRefit(text, KINDS), before),
    edits: [],
    photos: new Map(),
  };
}

/** The file with these changes as one edit; the history of a `.refit` file grows by it. Nothing is written yet. */
export function changed(file: RefitFile, changes: readonly Change[], io: Io): RefitFile {
  const refit = need(applyEdit(file.refit, { changes }, refitNamer(file.refit, PARTS, POLICY)));
  if (file.form === 'json') return { ...file, refit };
  const last = file.edits.at(-1)?.number ?? 0;
  const { USER, LOGNAME, USERNAME } = io.env;
  const edit: Edit = {
    number: last + 1,
    who: (USER || LOGNAME || USERNAME || 'somebody').slice(0, LIMITS.name),
    when: io.now(),
    basedOn: last,
    changes,
    says: sayChanges(changes, refitNamer(refit, PARTS, POLICY)),
  };
  return { ...file, refit, edits: [...file.edits, need(parseEdit(edit))] };
}

/** Writes the whole file, or leaves the old one as it was. */
export function writeRefitFile(file: RefitFile, replace: boolean): void {
  const bytes = bytesOf(file);
  writeWhole(file.path, bytes, replace, () => {
    if (file.bytes && !Buffer.from(file.bytes).equals(readBytes(file.path)))
      throw new Refusal(
        `${shown(file.path)} was changed by another program meanwhile; nothing was written, do it again.`,
      );
  });
}

/** Writes any file whole, or leaves what was there; `look` may refuse just before. */
export function writeWhole(path: string, bytes: Uint8Array, replace: boolean, look = () => {}): void {
  const name = shown(path);
  const there = entryAt(path);
  if (there && !replace) throw new Refusal(`${name} is there already; choose another name, or add --force.`);
  look();
  try {
    replaceFile(there ? realpathSync(path) : path, bytes);
  } catch (fault) {
    throw new Refusal(`${name} could not be written: ${reason(fault)}.`);
  }
}

/** What stands at a path, a dangling link included. */
function entryAt(path: string): Stats | undefined {
  try {
    return lstatSync(path, { throwIfNoEntry: false });
  } catch (fault) {
    throw new Refusal(`${shown(path)} could not be written: ${reason(fault)}.`);
  }
}

/** Only what reads back is written. */
function bytesOf({ form, refit, edits, photos }: RefitFile): Uint8Array {
  const cannot = 'That cannot be kept in a refit: ';
  const text = writeRefit(refit);
  need(readRefit(text, KINDS), cannot);
  return form === 'json' ? Buffer.from(text) : need(writeArchive({ refit, edits, photos }), cannot);
}

/** A power cut leaves either the old file or the new one: written beside, forced to the disk, then put in its place. */
export function replaceFile(path: string, bytes: Uint8Array): void {
  const folder = dirname(path);
  const beside = join(folder, `.${basename(path).slice(0, 100)}.${randomBytes(6).toString('hex')}.tmp`);
  const mode = statSync(path, { throwIfNoEntry: false })?.mode ?? 0o666;
  const handle = openSync(beside, 'wx', mode & 0o777);
  try {
    try {
      for (let at = 0; at < bytes.length; ) at += writeSync(handle, bytes, at);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(beside, path);
  } catch (fault) {
    rmSync(beside, { force: true });
    throw fault;
  }
  syncFolder(folder);
}

/** The new name has to reach the disk too; some systems do not let a folder be opened for that. */
function syncFolder(folder: string): void {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    return;
  }
}
