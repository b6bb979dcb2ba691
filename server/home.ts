/** Where this program lies and which one it is. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Home {
  /** The folder that holds package.json. */
  readonly folder: string;
  readonly version: string;
}

/** Looks upward, because the source and what is built from it lie at different depths. */
export function findHome(): Home {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const file = join(folder, 'package.json');
    if (existsSync(file)) {
      const { name, version } = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
      if (name === 'fettle') return { folder, version: String(version) };
    }
    const above = dirname(folder);
    if (above === folder) throw new Error('package.json was not found');
    folder = above;
  }
}
