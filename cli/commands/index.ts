/** Every command. Add one: its file and one line here; help shows them in this order. */
import type { Command } from '../command.ts';
import { add } from './add.ts';
import { auxiliary } from './auxiliary.ts';
import { check } from './check.ts';
import { control } from './control.ts';
import { cut } from './cut.ts';
import { duty } from './duty.ts';
import { evidence } from './evidence.ts';
import { fault } from './fault.ts';
import { helpOn, version } from './help.ts';
import { history } from './history.ts';
import { keep } from './keep.ts';
import { newRefitFile } from './new.ts';
import { nextFacts } from './next.ts';
import { choose, option } from './option.ts';
import { pack, unpack } from './pack.ts';
import { serve } from './serve.ts';
import { set } from './set.ts';
import { sheet } from './sheet.ts';
import { show } from './show.ts';
import { simulate } from './simulate.ts';
import { stop } from './stop.ts';
import { survey } from './survey.ts';
import { thread } from './thread.ts';
import { whyFinding } from './why.ts';
import { wire } from './wire.ts';
import { wiring } from './wiring.ts';
import { work } from './work.ts';
import { worth } from './worth.ts';

export const COMMANDS: readonly Command[] = [
  newRefitFile,
  add,
  set,
  nextFacts,
  check,
  whyFinding,
  duty,
  fault,
  keep,
  worth,
  sheet,
  thread,
  cut,
  work,
  simulate,
  evidence,
  show,
  option,
  choose,
  survey,
  control,
  auxiliary,
  stop,
  wiring,
  wire,
  history,
  pack,
  unpack,
  serve,
  helpOn(() => COMMANDS),
  version,
];
