/** `fettle help` and `fettle version`. */
import { existsSync, readFileSync } from 'node:fs';
import { nearest } from '../../engine/quantity/nearest.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { type Page, pageOn } from '../print/page.ts';
import { padEnd } from '../print/text.ts';
import { Refusal } from '../refusal.ts';

/** Help needs the list that it stands in. */
export const helpOn = (commands: () => readonly Command[]): Command => ({
  name: 'help',
  summary: 'says how Fettle, or one command, is used',
  usage: ['help [COMMAND]'],
  about: '--help after any command does the same.',
  options: {},
  examples: ['help', 'help set'],
  words: [0, 1],
  run: ({ io, words }) => {
    const page = pageOn(io);
    const [name] = words;
    if (name === undefined) {
      printAll(page, commands());
      return EXIT.fine;
    }
    const command = commands().find((each) => each.name === name.trim().toLowerCase());
    if (!command) {
      const near = nearest(
        shown(name),
        commands().map((each) => each.name),
      );
      throw new Refusal(
        `Fettle has no command “${shown(name)}”. ${near ? `Did you mean “${near}”?` : '“fettle help” lists them.'}`,
      );
    }
    printOne(page, command);
    return EXIT.fine;
  },
});

function printAll(page: Page, commands: readonly Command[]): void {
  page.prose('Fettle: the workbench for bringing an old CNC lathe or mill back to life.');
  page.line();
  const width = Math.max(...commands.map(({ name }) => name.length));
  for (const { name, summary } of commands)
    page.prose(summary, `  ${padEnd(name, width)}  `, ' '.repeat(width + 4));
  page.line();
  page.prose('“fettle help COMMAND” says more. A first refit: fettle new lathe X Z');
  page.prose(
    'Exit codes: 0 as it should be, 1 something fails, 2 wrong use or a file that cannot be read, 3 something is unknown.',
  );
  page.prose(
    'Fettle reckons; it does not know your machine. Before mains, stored energy, a chuck at speed or an axis that can fall, follow the rules of your country and ask a licensed trade where they ask for one.',
  );
}

function printOne(page: Page, command: Command): void {
  page.prose(`fettle ${command.name}: ${command.summary}.`);
  page.prose(command.about);
  page.heading('Usage');
  for (const usage of command.usage) page.prose(`fettle ${usage}`, '  ', '      ');
  const options = Object.entries(command.options);
  if (options.length > 0) page.heading('Options');
  for (const [name, { takes, says, writes }] of options)
    page.prose(
      `--${name}${takes === undefined ? '' : ` (${takes}${writes ? ', or “-” for the standard output' : ''})`}: ${says}`,
      '  ',
      '      ',
    );
  page.heading('Examples');
  for (const example of command.examples) page.line(`  fettle ${example}`);
}

export const version: Command = {
  name: 'version',
  summary: 'says which Fettle this is',
  usage: ['version'],
  about: 'The same as “fettle --version”.',
  options: {},
  examples: ['version'],
  words: [0, 0],
  run: ({ io }) => {
    io.out(`fettle ${ownVersion()}\n`);
    return EXIT.fine;
  },
};

/** From our package.json, which stands above both the source and what is built from it. */
function ownVersion(): string {
  for (let folder = new URL('.', import.meta.url); folder.pathname !== '/'; folder = new URL('..', folder)) {
    const file = new URL('package.json', folder);
    if (!existsSync(file)) continue;
    const { name, version: number } = JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
    if (name === 'fettle') return String(number);
  }
  throw new Error('package.json was not found');
}
