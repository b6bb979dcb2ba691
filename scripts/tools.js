/** What start and test share. Plain JavaScript: it runs before anything is installed or built. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));
const OLDEST = [20, 19];

/** Ends with one sentence when Node is too old. */
export function needNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > OLDEST[0] || (major === OLDEST[0] && minor >= OLDEST[1])) return;
  console.error(`Fettle needs Node ${OLDEST.join('.')} or newer; this is ${process.versions.node}.`);
  process.exit(2);
}

/** Runs a command in the project's folder; ends with its exit code when it fails. */
export function run(command, args, { quiet = false, env = {} } = {}) {
  const { status, error, stdout, stderr } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: quiet ? 'pipe' : 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  });
  if (error) {
    console.error(`Could not run ${command}: ${error.message}`);
    process.exit(2);
  }
  if (status !== 0) {
    if (quiet) process.stderr.write(`${stdout}${stderr}`);
    process.exit(status ?? 1);
  }
}

/** The program of a package, run by this Node. */
export const tool = (path, args, options) =>
  run(process.execPath, [join(ROOT, 'node_modules', path), ...args], options);

const time = (path) => (existsSync(path) ? statSync(path).mtimeMs : 0);

/** Installs the packages when they are missing or the lock file has changed since. */
export function install() {
  const mark = join(ROOT, 'node_modules', '.package-lock.json');
  if (time(mark) >= time(join(ROOT, 'package-lock.json'))) return;
  console.log('Installing what Fettle needs (once) …');
  run('npm', ['ci', '--no-fund', '--no-audit', '--loglevel=error']);
}

/** Newest change below a folder, tests left out. */
function newest(folder) {
  let last = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) last = Math.max(last, newest(path));
    else if (!entry.name.includes('.test.')) last = Math.max(last, statSync(path).mtimeMs);
  }
  return last;
}

const SOURCES = ['engine', 'cli', 'store', 'server', 'web', 'samples'];
const SETTINGS = [
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.build.json',
  'vite.config.ts',
];

/** Builds when a source is newer than the last build. */
export function build() {
  const mark = join(ROOT, 'dist', '.built');
  const changed = Math.max(
    ...SOURCES.map((folder) => join(ROOT, folder))
      .filter(existsSync)
      .map(newest),
    ...SETTINGS.map((file) => time(join(ROOT, file))),
  );
  if (time(mark) > changed) return;
  console.log('Building …');
  tool('typescript/bin/tsc', ['-p', 'tsconfig.build.json']);
  if (existsSync(join(ROOT, 'vite.config.ts'))) tool('vite/bin/vite.js', ['build', '--logLevel', 'warn']);
  mkdirSync(join(ROOT, 'dist'), { recursive: true });
  writeFileSync(mark, '');
}
