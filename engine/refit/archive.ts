/** The `.refit` file: a zip of refit.json, edits.jsonl and photos/. */
import { strToU8, type Zippable, zipSync } from 'fflate';
import { ok, type Result, refuse } from '../quantity/types.ts';
import { applyEdit, unfoldEdits } from './edit.ts';
import { feedMarksEdit, hasOldFeedMarks } from './feed-marks.ts';
import { parseJson } from './json.ts';
import { LIMITS } from './limits.ts';
import { photoFault, photoNameFault } from './photo.ts';
import { parseState, readEdits } from './read.ts';
import type { Edit, Refit } from './types.ts';
import { writeEdits, writeRefit } from './write.ts';
import { readZip } from './zip.ts';

export interface Archive {
  readonly refit: Refit;
  /** The history that led to `refit`; it may begin after the first edit. */
  readonly edits: readonly Edit[];
  /** By name, without the folder. */
  readonly photos: ReadonlyMap<string, Uint8Array>;
}

/** When something happened to a file that does not say when. */
const LONG_AGO = new Date(0).toISOString();

/** Reads a `.refit` file. The history is undone step by step to see that it really led to the state beside it. */
export function readArchive(bytes: Uint8Array, knownKinds?: readonly string[]): Result<Archive> {
  const files = readZip(bytes, {
    total: LIMITS.archive,
    entries: LIMITS.archiveEntries,
    expansion: LIMITS.expansion,
    entry: belongs,
  });
  if (!files.ok) return files;
  const state = files.value.get('refit.json');
  if (!state)
    return refuse({ code: 'malformed', message: 'There is no refit.json in the zip.', where: 'refit.json' });
  const stateText = utf8(state, 'refit.json');
  if (!stateText.ok) return stateText;
  const parsed = parseJson(stateText.value, 'refit.json', LIMITS.refitFile);
  if (!parsed.ok) return parsed;
  const refit = parseState(parsed.value, knownKinds);
  if (!refit.ok) return refit;
  const historyText = utf8(files.value.get('edits.jsonl') ?? new Uint8Array(), 'edits.jsonl');
  if (!historyText.ok) return historyText;
  const edits = readEdits(historyText.value);
  if (!edits.ok) return edits;
  const start = unfoldEdits(refit.value, edits.value);
  if (!start.ok)
    return refuse({
      ...start.problem,
      message: `The history in edits.jsonl does not lead to the state in refit.json. ${start.problem.message} To open the state alone, open refit.json by itself.`,
    });

  const photos = new Map<string, Uint8Array>();
  for (const [path, photo] of files.value) {
    if (!path.startsWith(PHOTOS)) continue;
    const fault = photoFault(path.slice(PHOTOS.length), photo);
    if (fault !== undefined)
      return refuse({ code: 'malformed', message: `'${path}' in the zip ${fault}.`, where: path });
    photos.set(path.slice(PHOTOS.length), photo);
  }
  const last = edits.value.at(-1);
  const renames = hasOldFeedMarks(parsed.value)
    ? feedMarksEdit(refit.value, last?.number ?? 0, last?.when ?? LONG_AGO)
    : undefined;
  if (!renames) return ok({ refit: refit.value, edits: edits.value, photos });
  const renamed = applyEdit(refit.value, renames);
  return renamed.ok ? ok({ refit: renamed.value, edits: [...edits.value, renames], photos }) : renamed;
}

/** Writes a `.refit` file that readArchive reads; the same archive always gives the same bytes. */
export function writeArchive(archive: Archive): Result<Uint8Array> {
  const files: Zippable = {};
  let total = 0;
  const add = (name: string, bytes: Uint8Array, pack: boolean) => {
    total += bytes.length;
    files[name] = [bytes, { level: pack ? 6 : 0, mtime: EARLIEST }];
  };
  const state = strToU8(writeRefit(archive.refit));
  if (state.length > LIMITS.refitFile) return tooLong('The refit', LIMITS.refitFile);
  add('refit.json', state, true);
  const history = strToU8(writeEdits(archive.edits));
  if (history.length > LIMITS.historyFile) return tooLong('The history', LIMITS.historyFile);
  add('edits.jsonl', history, true);
  for (const [name, photo] of archive.photos) {
    const fault = photoFault(name, photo);
    if (fault !== undefined)
      return refuse({ code: 'malformed', message: `'${name}' ${fault}.`, where: name });
    if (photo.length > LIMITS.photo) return tooLong(`The photo '${name}'`, LIMITS.photo);
    add(PHOTOS + name, photo, false);
  }
  if (total > LIMITS.archive || archive.photos.size + 2 > LIMITS.archiveEntries)
    return tooLong('The refit with its photos', LIMITS.archive);
  return ok(zipSync(unpackable(files)));
}

const PHOTOS = 'photos/';
/** The earliest time a zip can hold, so that the bytes do not depend on a clock. */
const EARLIEST = new Date(1980, 0, 1);

function belongs(name: string): number | string {
  if (name === 'refit.json') return LIMITS.refitFile;
  if (name === 'edits.jsonl') return LIMITS.historyFile;
  // Left by programs that zip a folder.
  if (name === PHOTOS) return 0;
  const words = 'does not belong there; a refit file holds refit.json, edits.jsonl and photos';
  if (!name.startsWith(PHOTOS)) return words;
  return photoNameFault(name.slice(PHOTOS.length)) ?? LIMITS.photo;
}

/** A text so repetitive that reading would refuse its expansion is stored as it is. */
function unpackable(files: Zippable): Zippable {
  return Object.fromEntries(
    Object.entries(files).map(([name, file]) => {
      const [bytes, options] = file as [Uint8Array, { level: 0 | 6; mtime: Date }];
      if (options.level === 0 || bytes.length <= 1e6) return [name, file];
      const packed = zipSync({ x: [bytes, { level: 6 }] }).length;
      return [
        name,
        bytes.length > packed * (LIMITS.expansion / 2) ? [bytes, { ...options, level: 0 }] : file,
      ];
    }),
  );
}

function utf8(bytes: Uint8Array, name: string): Result<string> {
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return refuse({ code: 'malformed', message: `${name} in the zip is not text in UTF-8.`, where: name });
  }
}

const tooLong = (what: string, max: number): Result<never> =>
  refuse({
    code: 'too-long',
    message: `${what} comes to more than ${max / 1e6} MB, the most a refit file can hold.`,
  });
