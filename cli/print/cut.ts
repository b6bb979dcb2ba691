/** A cut on a page. */

import { formatQuantity } from '../../engine/quantity/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Cut } from '../../engine/threads/index.ts';
import type { Page } from './page.ts';
import { padEnd, padStart } from './text.ts';

const INDENT = '  ';
const say = (value: number, unit: string): string => formatQuantity(value, unit, { digits: 3 });

export function printCut(page: Page, { title, material, found, asked, notes, sheet }: Cut): void {
  page.prose(`${page.paint('bold', title)}, ${material}`);
  for (const note of notes) page.prose(capital(note), INDENT);
  page.heading('What it asks');
  for (const { name, value, unit, capacity, margin, feed } of asked) {
    const enough =
      capacity === undefined || margin === undefined
        ? ''
        : margin < 1
          ? `; there is only ${say(capacity, unit)}${feed === undefined || feed <= 0 ? '' : ` (enough up to a feed of ${say(feed, 'mm')})`}`
          : `; there is ${say(capacity, unit)}, enough${feed === undefined ? '' : ` up to a feed of ${say(feed, 'mm')}`}`;
    page.prose(`${name}: ${page.paint('bold', say(value, unit))}${enough}`, INDENT, INDENT.repeat(2));
  }
  page.heading('Worked out');
  const rows = found.map(({ name, value, unit }) => [name, say(value, unit)] as const);
  const width = Math.max(...rows.map(([name]) => name.length));
  const right = Math.max(...rows.map(([, text]) => text.length));
  for (const [name, text] of rows) page.line(`${INDENT}${padEnd(name, width)}  ${padStart(text, right)}`);
  page.prose(page.paint('dim', `Formulas and sources: fettle sheet --show ${sheet}`), INDENT);
}
