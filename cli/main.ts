/** The command line: arguments to a command, and every failure to one sentence. */
import { nearest } from '../engine/quantity/nearest.ts';
import { readCall, shown } from './arguments.ts';
import { COMMANDS } from './commands/index.ts';
import { EXIT } from './exit.ts';
import { harmless, type Io, processIo } from './io.ts';
import { withOutput } from './output.ts';
import { wrap } from './print/text.ts';
import { Refusal } from './refusal.ts';

/** Runs one command line, without the program's name, and gives the exit code. Never throws. */
export async function main(argv: readonly string[], world: Io): Promise<number> {
  const io: Io = {
    ...world,
    out: (text) => world.out(harmless(text, world.terminal)),
    err: (text) => world.err(harmless(text, false)),
    // Byte for byte for another program; a terminal must not be disturbed.
    data: (text) => world.out(world.terminal ? harmless(text.replaceAll('\r\n', '\n'), false) : text),
  };
  try {
    const [first = 'help', ...rest] = argv;
    const name = first === '--help' || first === '-h' ? 'help' : first === '--version' ? 'version' : first;
    const command = COMMANDS.find((each) => each.name === name);
    if (!command) throw new Refusal(noSuchCommand(first));
    if (rest.some((word) => word === '--help' || word === '-h')) return await main(['help', name], world);
    return await command.run(withOutput(command, readCall(command, rest, io)));
  } catch (fault) {
    const sentence = fault instanceof Refusal ? fault.message : ownMistake(fault);
    io.err(`${wrap(cut(sentence), world.columns).join('\n')}\n`);
    return EXIT.refused;
  }
}

/** Runs this process's command line. */
export async function start(): Promise<void> {
  // A reader that has seen enough, such as head, is no fault.
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EPIPE') process.exitCode = EXIT.refused;
    });
  process.exitCode = await main(process.argv.slice(2), processIo());
}

function noSuchCommand(typed: string): string {
  const names = COMMANDS.map((each) => each.name);
  const near = nearest(shown(typed), names);
  const hint = near ? `Did you mean “fettle ${near}”?` : '“fettle help” lists them.';
  return `Fettle has no command “${shown(typed)}”. ${hint}`;
}

function ownMistake(fault: unknown): string {
  const what = fault instanceof Error ? fault.message : String(fault);
  return `Fettle made a mistake of its own: ${cut(what, 300)} – please report it.`;
}

const cut = (text: string, most = 2_000): string => (text.length > most ? `${text.slice(0, most)}…` : text);
