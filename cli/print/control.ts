/** What the control must do, and who can, as lines. */

import {
  type AuxiliaryFinding,
  type Chart,
  type ControlReport,
  SIGNALS,
} from '../../engine/control/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { shown } from '../arguments.ts';
import type { Page } from './page.ts';
import { sayVerdict } from './verdict.ts';

export function printNeeds(page: Page, { needs }: ControlReport): void {
  page.heading('What is asked of it');
  if (needs.needs.length === 0) page.prose('Nothing yet: there are no axes, no work and no auxiliaries.');
  for (const need of needs.needs) {
    const asked = need.kind === 'count' ? ` (${need.asked})` : '';
    page.prose(
      `${capital(need.name)}${asked}: ${need.why.slice(0, 3).join('; ')}${need.why.length > 3 ? `; and ${need.why.length - 3} more` : ''}${need.waived ? '. You can do without.' : '.'}`,
      '',
      '    ',
    );
  }
  for (const each of needs.unsure) page.prose(each, '', '    ');
}

export function printCensus(page: Page, { signals }: ControlReport): void {
  page.heading('Inputs and outputs');
  for (const { sort, count, withSpares, from } of signals)
    page.prose(
      `${count} × ${SIGNALS[sort].name}${withSpares > count ? ` (${withSpares} with spares)` : ''}: ${from.join(', ')}.`,
      '',
      '    ',
    );
}

export function printCandidates(page: Page, { candidates }: ControlReport, all: boolean): void {
  if (candidates.length === 0) {
    page.heading('Candidates');
    page.prose('No control is in its place yet. Add one: fettle option FILE control NAME.');
  }
  for (const { part, chosen, verdict, sentence, rows } of candidates) {
    page.heading(`${capital(part.name)}${chosen ? ' (chosen)' : ''}`);
    page.prose(`${sayVerdict(page, verdict)} ${sentence}`, '', '    ');
    for (const row of rows)
      if (all || (row.verdict !== 'fits' && !row.waived))
        page.prose(
          `${sayVerdict(page, row.verdict)} ${row.name}: asked ${row.asked}; ${row.says}${row.waived ? ' (you can do without)' : ''}`,
          '  ',
          '      ',
        );
  }
}

export function printAuxiliaryFindings(
  page: Page,
  findings: readonly AuxiliaryFinding[],
  all: boolean,
): void {
  for (const { verdict, title, sentence, faults, way, cure } of findings) {
    page.prose(`${sayVerdict(page, verdict)} ${title}`, '  ', '    ');
    if (verdict === 'fits' && !all) continue;
    page.prose(sentence, '    ');
    if (faults.length > 0)
      page.prose(
        `When ${faults.slice(0, all ? 99 : 3).join(', or ')}${!all && faults.length > 3 ? `, or ${faults.length - 3} more` : ''}.`,
        '    ',
        '      ',
      );
    if ((all || (verdict === 'fails' && faults.length === 0)) && way.length > 0)
      page.prose(`How it comes: ${way.join(' → ')}`, '    ', '      ');
    if (cure) page.prose(`What would do: ${cure}`, '    ', '      ');
  }
}

export function printChart(page: Page, { title, first, meanwhile, rows, end }: Chart): void {
  page.heading(capital(title));
  page.prose(first);
  if (meanwhile) page.prose(meanwhile);
  for (const { n, says, on, off, waits, most, late } of rows) {
    page.prose(`${n}. ${says}`, '  ', '     ');
    for (const each of on) page.prose(`on: ${each}`, '     ', '         ');
    for (const each of off) page.prose(`off: ${each}`, '     ', '         ');
    page.prose(`waits for: ${waits} (${most}${late ? `, then it ${late}` : ''})`, '     ', '         ');
  }
  page.prose(end);
}

export const problemLine = (where: string, message: string): string => `${shown(where)}: ${message}`;
