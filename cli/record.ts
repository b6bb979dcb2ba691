/** Writes changes to a refit file and says what they did. */

import { assess } from '../engine/assess/index.ts';
import { POLICY } from '../engine/checks/policies.ts';
import { PARTS } from '../engine/parts/index.ts';
import { type Change, refitNamer, sayChange } from '../engine/refit/index.ts';
import { changed, type RefitFile, writeRefitFile } from './files.ts';
import type { Io } from './io.ts';
import { printChanges } from './print/changes.ts';
import { pageOn } from './print/page.ts';

const standsAlready = (change: Change): boolean => JSON.stringify(change.old) === JSON.stringify(change.new);

/** One edit; nothing is written when everything stands there already. */
export function record(
  io: Io,
  file: RefitFile,
  all: readonly Change[],
  remarks: readonly string[] = [],
): void {
  const page = pageOn(io);
  const changes = all.filter((change) => !standsAlready(change));
  if (changes.length === 0) {
    page.prose('That is how it stands already; nothing was written.');
    return;
  }
  const before = assess(file.refit);
  const after = changed(file, changes, io);
  writeRefitFile(after, true);
  const namer = refitNamer(after.refit, PARTS, POLICY);
  for (const change of changes) page.prose(`Recorded: ${sayChange(change, namer)}.`, '', '    ');
  for (const remark of remarks) page.prose(remark, '', '    ');
  page.line();
  printChanges(page, before, assess(after.refit, { previous: before }));
}
