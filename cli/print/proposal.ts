/** A proposed wiring on a terminal: what it asks and how each is answered, what it lays, what would still not be fine. */

import { exampleOf, type Settled, sayPlace, specAt } from '../../engine/circuit/whole/index.ts';
import type { Proposal, Question } from '../../engine/circuit/wiring/index.ts';
import type { Wiring } from '../../engine/refit/types.ts';
import type { Page } from './page.ts';
import { plural, quoted } from './text.ts';
import { printWiringFindings } from './wiring.ts';

const INDENT = '    ';

export function printProposal(
  page: Page,
  { changes, findings, wiring, left }: Proposal,
  { open, waiting }: Settled,
  path: string,
  kept: boolean,
): void {
  const wires = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const held = new Set(open.flatMap((each) => each.wires));
  page.prose(`${plural(wires.length, 'wire')} proposed between the devices that are there.`);
  for (const { id, from, to, settings } of wires) {
    const words = [...Object.values(settings), ...(held.has(id) ? ['waits for an answer'] : [])];
    page.prose(`${from} to ${to}${words.length > 0 ? `: ${words.join(', ')}` : ''}`, INDENT);
  }
  if (open.length > 0) {
    page.heading('What it has to be told');
    page.prose('Put what you know in place of “…”; what is only a guess can wait.');
    for (const { question, waits } of open) {
      page.prose(`– ${question.asks} ${waits}`, '', INDENT);
      page.line(`${INDENT}${commandFor(question, path)}`);
      page.prose(waysFor(question, wiring), INDENT);
    }
  }
  if (left.length > 0) page.heading('What is left out');
  for (const each of left) page.prose(`– ${each}`, '', INDENT);
  const bad = findings.filter(({ verdict }) => verdict !== 'fits');
  if (bad.length > 0) page.heading('What would not be fine with it');
  printWiringFindings(page, bad);
  if (kept || changes.length === 0) return;
  page.heading('To record it');
  if (waiting > 0)
    page.prose(
      `${plural(waiting, 'wire')} ${waiting === 1 ? 'waits' : 'wait'} for an answer and ${waiting === 1 ? 'stays' : 'stay'} unmade.`,
    );
  page.line(`${INDENT}fettle wiring ${quoted(path)} --propose --keep`);
}

/** The command that answers a question. */
const commandFor = (question: Question, path: string): string =>
  `fettle wire ${quoted(path)} ${sayPlace(question.place)}='…'`;

/** What may stand for the dots. */
function waysFor({ place, options }: Question, wiring: Wiring): string {
  if (options) return `One of: ${options.join('; ')}.`;
  const spec = specAt(place, wiring);
  return spec ? `Written like ${exampleOf(spec)}.` : '';
}
