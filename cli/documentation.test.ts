import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { COMMANDS } from './commands/index.ts';
import { inFolder, run } from './run.fixture.ts';

const ROOT = join(import.meta.dirname, '..');
const PAGE = readFileSync(join(ROOT, 'docs', 'command-line.md'), 'utf8');

interface Example {
  readonly line: string;
  readonly wanted: readonly string[];
}

/** In the order of the page, since later examples go on with the files of earlier ones. */
const EXAMPLES: readonly Example[] = [...PAGE.matchAll(/^```console\n([\s\S]*?)^```$/gm)].flatMap(
  ([, block]) =>
    block!
      .split(/^\$ /m)
      .slice(1)
      .map((text) => {
        const [line = '', ...wanted] = text.trimEnd().split('\n');
        return { line, wanted };
      }),
);

/** As a shell does: blanks part words, single quotation marks keep them together. */
const wordsOf = (line: string): string[] =>
  [...line.matchAll(/(?:'[^']*'|[^\s'])+/g)].map(([word]) => word.replaceAll("'", ''));

/** The first wanted line that is not there; '…' lets any lines pass. */
function firstMissing(wanted: readonly string[], got: readonly string[]): string | undefined {
  let at = 0;
  let anywhere = false;
  for (const line of wanted) {
    if (line === '…') {
      anywhere = true;
      continue;
    }
    const found = anywhere ? got.indexOf(line, at) : got[at] === line ? at : -1;
    if (found < 0) return `${line}\n  where there is\n${got[at]}`;
    at = found + 1;
    anywhere = false;
  }
  return anywhere || at === got.length ? undefined : `the end, where there is\n${got[at]}`;
}

test('frozen: every example of docs/command-line.md prints what stands there', async () => {
  const home = process.cwd();
  await inFolder(async (folder) => {
    copyFileSync(join(ROOT, 'samples', 'carriage-works-lathe.json'), join(folder, 'works.json'));
    process.chdir(folder);
    try {
      for (const { line, wanted } of EXAMPLES) {
        const [program, ...argv] = wordsOf(line);
        expect(program, line).toBe('fettle');
        const { out, err } = await run(...argv);
        expect(firstMissing(wanted, `${out}${err}`.trimEnd().split('\n')), line).toBeUndefined();
      }
    } finally {
      process.chdir(home);
    }
  });
}, 180_000);

test('every command has its place on the page', () => {
  const headings = [...PAGE.matchAll(/^## (.+)$/gm)].flatMap(([, title]) => title!.split(', '));
  for (const { name } of COMMANDS) expect(headings, name).toContain(name);
});

test('every command shows usage and examples that begin with its name, and its help names each option', async () => {
  for (const { name, usage, examples, options } of COMMANDS) {
    for (const line of [...usage, ...examples]) expect(line.split(' ')[0]).toBe(name);
    const { out, code } = await run('help', name);
    expect(code).toBe(0);
    for (const option of Object.keys(options)) expect(out, `${name} --${option}`).toContain(`--${option}`);
    expect((await run(name, '--help')).out).toBe(out);
  }
});
