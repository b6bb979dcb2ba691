/** A run or many in the words of the engine, what the loop has to say, gains to begin with, and the list of moves. */
import { formatNumber, formatQuantity } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import {
  type AxisModel,
  type Band,
  type Beside,
  bandInWords,
  gainWords,
  headline,
  hunting,
  huntingInWords,
  type InWordsOptions,
  inWords,
  limitOfGain,
  loopMargins,
  MOVES,
  type Move,
  marginsInWords,
  type Run,
  type StartingGains,
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
      page.prose(
        `${name}: ${field.name}${field.options ? ` (${field.options.join(' or ')})` : ''}; usual ${field.usual}`,
        INDENT,
        INDENT.repeat(2),
      );
  }
}

interface Common {
  readonly name: string;
  readonly model: AxisModel;
  readonly move: Move;
  /** What was taken for want of better, a sentence each. */
  readonly notes: readonly string[];
  readonly words: InWordsOptions;
}

export interface Told extends Common {
  readonly run: Run;
  /** The other case that belongs beside it. */
  readonly beside: (Beside & { readonly run: Run }) | null;
}

export function printRun(page: Page, { name, model, move, run, notes, words, beside }: Told): void {
  page.prose(page.paint('bold', `${name}: ${move.kind}`));
  printSayings(page, run, model, words);
  if (beside) {
    page.heading(`The same ${beside.name}`);
    printSayings(page, beside.run, beside.model, words);
  }
  page.heading('What happened');
  if (run.events.length === 0) page.prose('Nothing out of the ordinary.');
  for (const { time, sentence } of run.events.slice(0, MOST_EVENTS))
    page.prose(`${show(time)}: ${sentence}`, '', INDENT);
  if (run.events.length > MOST_EVENTS)
    page.prose(`… and ${run.events.length - MOST_EVENTS} more; --json has them.`);
  printLoop(page, model, words);
  printNotes(page, notes);
}

function printSayings(page: Page, run: Run, model: AxisModel, words: InWordsOptions): void {
  const first = headline(run, model, words.system);
  page.prose(first);
  page.line();
  // A trip stands in the headline already, and its time below.
  const said = (sentence: string): boolean =>
    sentence === first || run.trips.some((trip) => sentence.startsWith(trip.sentence));
  for (const { sentence } of inWords(run, model, words))
    if (!said(sentence)) page.prose(sentence, '', INDENT);
}

function printNotes(page: Page, notes: readonly string[]): void {
  if (notes.length === 0) return;
  page.heading('What this rests on');
  for (const note of notes) page.prose(note, '', INDENT);
}

interface ToldBand extends Common {
  readonly band: Band;
  /** Runs that were asked for; the band has fewer where it was stopped. */
  readonly asked: number;
}

export function printBand(page: Page, { name, move, band, asked, notes, words }: ToldBand): void {
  const short = band.runs < asked ? ` (stopped, of ${asked})` : '';
  page.prose(page.paint('bold', `${name}: ${move.kind}, ${band.runs} axes made up within the doubt${short}`));
  for (const { sentence } of bandInWords(band, words.system)) page.prose(sentence, '', INDENT);
  printNotes(page, notes);
}

interface ToldGains {
  readonly name: string;
  readonly model: AxisModel;
  readonly notes: readonly string[];
}

export function printGains(
  page: Page,
  { name, model, notes }: ToldGains,
  started: StartingGains | null,
): void {
  page.prose(page.paint('bold', `${name}: gains to begin with`));
  if (started === null || model.control.kind === 'open') {
    page.prose(
      'A stepping motor on pulses has no loop that could swing: it follows, or it falls out of step.',
    );
    return;
  }
  const structure = model.control.kind === 'pid' ? 'single' : 'cascade';
  const { loops, gains } = gainWords(model);
  const own = started[structure] as unknown as Readonly<Record<string, number>>;
  const tried: AxisModel = { ...model, control: { ...model.control, ...own } };
  page.prose(loops);
  page.prose('Begin with a fifth of them at the machine, belt off, low current limit.');
  page.line();
  for (const [key, { name: gain, unit, says }] of Object.entries(gains)) {
    const limit = limitOfGain(tried, key);
    const swings =
      limit === null
        ? ''
        : limit === Number.POSITIVE_INFINITY
          ? ' By itself it may grow a thousand times.'
          : ` By itself it may grow to ${formatNumber(limit, 3)} ${unit}; there the loop begins to swing.`;
    page.prose(`${capital(gain)}: ${formatNumber(own[key]!, 3)} ${unit}. ${says}${swings}`, '', INDENT);
  }
  page.heading('How far from swinging');
  page.prose(marginsInWords(loopMargins(tried)!));
  page.heading('Why these');
  for (const reason of started.reasons[structure]) page.prose(reason, '', INDENT);
  printNotes(page, notes);
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
