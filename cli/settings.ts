/** The settings of `fettle set`: PATH VALUE once, or PATH=VALUE as often as wanted. */
import type { Refit } from '../engine/refit/index.ts';
import { target } from '../engine/refit/set.ts';
import { shown } from './arguments.ts';
import { quoted } from './print/text.ts';
import { Refusal } from './refusal.ts';

export type Setting = readonly [path: string, value: string];

/** In PATH VALUE an unquoted value may be several words. Refuses the two forms mixed, with the person's first setting as an example. */
export function settingsOf(refit: Refit, words: readonly string[]): Setting[] {
  const [first, ...rest] = words as [string, ...string[]];
  const isPath = (word: string): boolean => leadsSomewhere(refit, word);
  if (first.includes('=')) {
    const bare = rest.findIndex((word) => !word.includes('='));
    if (bare < 0) return words.map(parted);
    if (isPath(rest[bare]!)) throw mixed(...parted(first));
    const [path, value] = parted(words[bare]!);
    throw new Refusal(
      `“${shown(rest[bare]!)}” has no “=”; write each as PATH=VALUE, in quotation marks where there are spaces: ${shown(path)}=${quoted(shown(`${value} ${rest[bare]}`))}.`,
    );
  }
  if (rest.length === 0)
    throw new Refusal(`“${shown(first)}” says where, but not what; write its value after it.`);
  const next = rest.findIndex((word, at) => at > 0 && isPath(word.split('=', 1)[0]!));
  if (next > 0) throw mixed(first, rest.slice(0, next).join(' '));
  return [[first, rest.join(' ')]];
}

const parted = (word: string): Setting => {
  const at = word.indexOf('=');
  return [word.slice(0, at), word.slice(at + 1)];
};

/** A path with a dot, or a misspelt one below a place of this machine; a unit such as N.m is none. */
function leadsSomewhere(refit: Refit, word: string): boolean {
  if (!/^[a-z][\w@-]*(\.[\w@-]+)+$/i.test(word)) return false;
  if (/^policies\./i.test(word) || target(refit, word).ok) return true;
  return target(refit, word.slice(0, word.lastIndexOf('.'))).ok;
}

const mixed = (path: string, value: string): Refusal =>
  new Refusal(
    `These are several settings: write each as PATH=VALUE, such as ${shown(path)}=${quoted(shown(value))}.`,
  );
