/** `npm test`: installs what it needs, then types, lint, unit and published checks, browser tests. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { browser } from './browser.js';
import { build, install, needNode, ROOT, tool } from './tools.js';

needNode();
install();
build();
console.log('Types …');
tool('typescript/bin/tsc', ['--noEmit']);
if (existsSync(join(ROOT, 'web', 'tsconfig.json'))) tool('typescript/bin/tsc', ['--noEmit', '-p', 'web']);
console.log('Format and lint …');
tool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']);
console.log('Tests …');
tool('vitest/vitest.mjs', ['run', ...process.argv.slice(2)], { env: { CHROMIUM: browser() } });
