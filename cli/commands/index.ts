/** Every command. Add one: its file and one line here; help shows them in this order. */
import type { Command } from '../command.ts';
import { check } from './check.ts';
import { newRefitFile } from './new.ts';
import { nextFacts } from './next.ts';
import { choose, option } from './option.ts';
import { set } from './set.ts';

export const COMMANDS: readonly Command[] = [newRefitFile, set, option, choose, nextFacts, check];
