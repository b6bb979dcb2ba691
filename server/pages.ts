/** The built page. Only files found by listing its folder are ever opened, so no address can lead out of it. */
import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { refusal } from './answer.ts';
import type { Answer } from './http.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

/** Vite puts a hash of the content into these names: 'index-B3xk29Qa.js'. */
const HASHED = /-[A-Za-z0-9_-]{8}\.[a-z0-9]+$/;

/** Answers for everything outside /api: a file of the page, or the page itself for the addresses within it. */
export function makePages(folder: string | undefined): (steps: readonly string[]) => Promise<Answer> {
  return async (steps) => {
    const path = steps.join('/');
    const files = folder === undefined ? new Set<string>() : await list(folder);
    // 'why/X.whirl' is an address within the page: only the ending of a kind of file makes it a file's.
    const isFile = Object.hasOwn(TYPES, extname(path).toLowerCase());
    const found = files.has(path) ? path : isFile ? undefined : 'index.html';
    if (found === undefined) return refusal(404, 'not-found', 'There is no such file in Fettle’s page.');
    if (folder === undefined || !files.has(found)) return notBuilt();
    return {
      status: 200,
      headers: {
        'content-type': TYPES[extname(found).toLowerCase()] ?? 'application/octet-stream',
        'cache-control':
          found.startsWith('assets/') && HASHED.test(found)
            ? 'public, max-age=31536000, immutable'
            : 'no-cache',
      },
      body: await readFile(join(folder, found)),
    };
  };
}

/** Ordinary files below the folder, as paths with '/'. Links are left out. */
async function list(folder: string, before = ''): Promise<Set<string>> {
  const files = new Set<string>();
  for (const entry of await readdir(folder, { withFileTypes: true }).catch(() => [])) {
    const path = `${before}${entry.name}`;
    if (entry.isFile()) files.add(path);
    else if (entry.isDirectory())
      for (const file of await list(join(folder, entry.name), `${path}/`)) files.add(file);
  }
  return files;
}

const notBuilt = (): Answer => ({
  status: 503,
  headers: { 'content-type': TYPES['.html']!, 'cache-control': 'no-store' },
  body: `<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Fettle</title>
<h1>The screens have not been built yet</h1>
<p>Fettle is running, but it finds no screens to show. Stop it, run “npm start” in its folder, and load this page again. Your refits are safe.</p>
</html>
`,
});
