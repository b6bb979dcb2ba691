/** A run in the words of the engine, what the loop has to say, and the list of moves. */
import { formatQuantity } from '../../engine/quantity/index.ts';
import {
  type AxisModel,
  headline,
  hunting,
  huntingInWords,
  type InWordsOptions,
  inWords,
  loopMargins,
  MOVES,
  type Move,
  marginsInWords,
  type Run,
} from '../../engine/simulate/index.ts';
import type { Page } from './page.ts';

const INDENT = '    ';
const MOST_EVENTS = 16;
/** Below a nanosecond nothing is told apart. */
const show = (seconds: number): string =>
  formatQuantity(Math.abs(seconds) < 1e-12 ? 0 : seconds, 's', { digits: 3 });

export function printMoves(page: Page): void {
  for (const [kind, { says, fields }] of Object.entries(MOVES)) {
    page.prose(`${page.paint('bold', kind)}: ${says}`, '', INDENT);
    for (const [name, field] of Object.entries(fields))
      page.prose(`${name}: ${field.name}; usual ${field.usual}`, INDENT, INDENT.repeat(2));
  }
}

export interface Told {
  readonly name: string;
  readonly model: AxisModel;
  readonly move: Move;
  readonly run: Run;
  /** What was taken for want of better, a sentence each. */
  readonly notes: readonly string[];
  readonly words: InWordsOptions;
}

export function printRun(page: Page, { name, model, move, run, notes, words }: Told): void {
  page.prose(page.paint('bold', `${name}: ${move.kind}`));
  const first = headline(run, model);
  page.prose(first);
  page.line();
  // A trip stands in the headline already, and its time below.
  const said = (sentence: string): boolean =>
    sentence === first || run.trips.some((trip) => sentence.startsWith(trip.sentence));
  for (const { sentence } of inWords(run, model, words))
    if (!said(sentence)) page.prose(sentence, '', INDENT);
  page.heading('What happened');
  if (run.events.length === 0) page.prose('Nothing out of the ordinary.');
  for (const { time, sentence } of run.events.slice(0, MOST_EVENTS))
    page.prose(`${show(time)}: ${sentence}`, '', INDENT);
  if (run.events.length > MOST_EVENTS)
    page.prose(`… and ${run.events.length - MOST_EVENTS} more; --json has them.`);
  printLoop(page, model, words);
  if (notes.length === 0) return;
  page.heading('What this rests on');
  for (const note of notes) page.prose(note, '', INDENT);
}

/** How far the loop is from swinging, and whether it hunts; nothing for a stepping motor, which has no loop. */
function printLoop(page: Page, model: AxisModel, { system }: InWordsOptions): void {
  const margins = loopMargins(model);
  const rest = hunting(model);
  if (!margins || !rest) return;
  page.heading('At rest');
  page.prose(marginsInWords(margins), '', INDENT);
  page.prose(huntingInWords(rest, system).sentence, '', INDENT);
}
