#!/usr/bin/env node
import { existsSync } from 'node:fs';

const program = new URL('../dist/cli/main.js', import.meta.url);
if (existsSync(program)) {
  const { start } = await import(program.href);
  await start();
} else {
  process.stderr.write('Fettle has not been built yet; run “npm start” once in its folder.\n');
  process.exitCode = 2;
}
