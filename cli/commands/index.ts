/** Every command. Add one: its file and one line here; help shows them in this order. */
import type { Command } from '../command.ts';
import { check } from './check.ts';
import { newRefitFile } from './new.ts';

export const COMMANDS: readonly Command[] = [newRefitFile, check];
