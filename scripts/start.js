/** `npm start`: installs and builds what is missing, then opens the workbench on the sample refits. */

import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { build, install, needNode, ROOT } from './tools.js';

needNode();
install();
build();
const program = spawn(
  process.execPath,
  [join(ROOT, 'bin', 'fettle.js'), 'serve', '--samples', ...process.argv.slice(2)],
  { stdio: 'inherit' },
);
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => program.kill(signal));
program.on('exit', (code, signal) => process.exit(signal ? 0 : (code ?? 1)));
