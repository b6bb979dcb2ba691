/** Takes a command line apart, and says in a sentence what is wrong with it. */

import { parseArgs } from 'node:util';
import { nearest } from '../engine/quantity/nearest.ts';
import { own } from '../engine/quantity/own.ts';
import type { Call, Command } from './command.ts';
import type { Io } from './io.ts';
import { Refusal } from './refusal.ts';

/** '-5 mm' is a value, not an option. */
const NEGATIVE = /^-[\d.,]/;
const KEPT = '\u0000';

const keep = (word: string): string => (NEGATIVE.test(word) ? KEPT + word : word);
const give = (word: string): string => (word.startsWith(KEPT) ? word.slice(1) : word);

export const shown = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text);

const seeHelp = (command: Command): string => `“fettle help ${command.name}” shows how it is used.`;

/** Throws Refusal for an option the command does not have, one without its value, and too few or too many words. */
export function readCall(command: Command, args: readonly string[], io: Io): Call {
  const options = Object.entries(command.options);
  const parsed = parseArgs({
    args: args.map(keep),
    options: Object.fromEntries(
      options.map(([name, { takes }]) => [name, { type: takes === undefined ? 'boolean' : 'string' }]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const texts = new Map<string, string>();
  const switches = new Set<string>();
  for (const token of parsed.tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName } = token;
    const option = own(command.options, name);
    if (!option) throw new Refusal(noSuchOption(command, rawName));
    if (option.takes === undefined) {
      if (token.value !== undefined)
        throw new Refusal(`${rawName} is a switch and takes no value. ${seeHelp(command)}`);
      switches.add(name);
    } else if (token.value === undefined || token.value.startsWith('--')) {
      throw new Refusal(`${rawName} needs ${option.takes} after it. ${seeHelp(command)}`);
    } else texts.set(name, give(token.value));
  }
  const words = parsed.positionals.map(give);
  const [least, most = Number.POSITIVE_INFINITY] = command.words;
  if (words.length < least)
    throw new Refusal(`That is not enough for “fettle ${command.name}”. Usage: fettle ${command.usage[0]}.`);
  if (words.length > most) {
    throw new Refusal(
      `“${shown(words[most]!)}” is too much for “fettle ${command.name}”. Usage: fettle ${command.usage[0]}. Put text with spaces in quotation marks.`,
    );
  }
  return { io, words, text: (name) => texts.get(name), has: (name) => switches.has(name) };
}

function noSuchOption(command: Command, typed: string): string {
  const near = nearest(shown(typed).replace(/^-+/, ''), Object.keys(command.options));
  const names = Object.keys(command.options).map((name) => `--${name}`);
  const hint = near
    ? `Did you mean --${near}?`
    : names.length > 0
      ? `It has ${names.join(', ')}.`
      : 'It has no options.';
  return `“fettle ${command.name}” has no option ${shown(typed)}. ${hint}`;
}
