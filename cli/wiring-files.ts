/** Diagrams as files in a folder; what Fettle did not draw is never written over. */
import { closeSync, lstatSync, mkdirSync, openSync, readSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Diagrams,
  layOut,
  legendFile,
  MADE_BY,
  marksOf,
  planOf,
  svgFile,
} from '../engine/circuit/drawing/index.ts';
import { libraryLayouter } from '../engine/circuit/drawing/library.ts';
import { type Looked, photosOf } from '../engine/circuit/whole/index.ts';
import type { Refit } from '../engine/refit/index.ts';
import { shown } from './arguments.ts';
import { writeWhole } from './files.ts';
import { Refusal } from './refusal.ts';

/** Names of the files written. */
export async function drawInto(
  folder: string,
  refit: Refit,
  { read, findings }: Looked,
): Promise<readonly string[]> {
  if (folder.trim() === '') throw new Refusal('The name of the folder for the diagrams is empty.');
  const plan = planOf(refit, read);
  const diagrams = await layOut(plan, libraryLayouter());
  const options = { marks: marksOf(findings), pinned: new Set(photosOf(refit.wiring).keys()) };
  const files = [
    ...diagrams.sheets.map((sheet) => [fileName(sheet), svgFile(sheet, options)] as const),
    ...(diagrams.sheets.length > 0 ? [['symbols.svg', legendFile(plan)] as const] : []),
  ];
  makeFolder(folder);
  for (const [name] of files)
    if (!isOurs(join(folder, name)))
      throw new Refusal(
        `${shown(join(folder, name))} was not drawn by Fettle and is left alone; name another folder. Nothing was written.`,
      );
  for (const [name, text] of files) writeWhole(join(folder, name), new TextEncoder().encode(text), true);
  return files.map(([name]) => name);
}

const fileName = ({ circuit, number, of }: Diagrams['sheets'][number]): string =>
  `${circuit.toLowerCase().replace(/[^a-z0-9]+/g, '-')}${of > 1 ? `-${number}` : ''}.svg`;

function makeFolder(folder: string): void {
  let there: ReturnType<typeof lstatSync> | undefined;
  try {
    there = lstatSync(folder, { throwIfNoEntry: false });
    if (!there) mkdirSync(folder);
  } catch {
    throw new Refusal(`The folder ${shown(folder)} could not be made; its parent must be there already.`);
  }
  if (there && !there.isDirectory())
    throw new Refusal(`${shown(folder)} is no folder; the diagrams need one.`);
}

/** Not there at all, or an ordinary file that begins with our mark. */
function isOurs(path: string): boolean {
  const there = lstatSync(path, { throwIfNoEntry: false });
  if (!there) return true;
  if (!there.isFile()) return false;
  const handle = openSync(path, 'r');
  try {
    const bytes = Buffer.alloc(MADE_BY.length);
    readSync(handle, bytes, 0, bytes.length, 0);
    return bytes.toString('utf8') === MADE_BY;
  } finally {
    closeSync(handle);
  }
}
