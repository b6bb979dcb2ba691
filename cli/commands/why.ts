/** `fettle why`: the working of one finding, from the facts to the verdict. */
import {
  type Assessment,
  assessDrawn,
  type Finding,
  type Remedy,
  remedies,
  type Why,
  why,
} from '../../engine/assess/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { whyJson } from '../json/why.ts';
import { pageOn } from '../print/page.ts';
import { printStopWhy } from '../print/stop.ts';
import { printRemedies, printWhy } from '../print/why.ts';
import { Refusal } from '../refusal.ts';
import { isOfStop, stopWhy, stopWhyJson } from '../stop-why.ts';
import { readUnits, UNITS } from '../units.ts';

export const whyFinding: Command = {
  name: 'why',
  summary: 'shows the working of one finding, its sources, and what would make it fit',
  usage: ['why FILE FINDING [--units mm|in] [--json]'],
  about:
    'FINDING is a name such as X.whirl, as “fettle check” shows it, or stop.faults, as “fettle stop” does. With --units in, what is asked and what there is are in inches; the working keeps the units of its sheets.',
  options: { units: UNITS, json: { says: 'as JSON' } },
  examples: ['why lathe.refit X.whirl'],
  words: [2, 2],
  run: ({ io, words, text, has }) => {
    const [path, id] = words as [string, string];
    const file = openRefit(path);
    const assessment = assessDrawn(file.refit, { system: readUnits(text('units')) });
    if (isOfStop(id)) {
      const found = stopWhy(assessment, id);
      if (has('json')) io.out(`${JSON.stringify(stopWhyJson(found), null, 2)}\n`);
      else printStopWhy(pageOn(io), found.finding, found.looked);
      return EXIT.fine;
    }
    const finding = findFinding(assessment, id);
    const answer: Why = why(assessment, finding.id)!;
    if (has('json')) {
      const found = remedies(assessment, finding.id);
      io.out(`${JSON.stringify(whyJson(answer, found), null, 2)}\n`);
      return EXIT.fine;
    }
    const page = pageOn(io);
    printWhy(page, answer, path);
    if (finding.verdict === 'fits' || finding.verdict === 'unknown') return EXIT.fine;
    // Seeking takes a second or more, so all else stands there already.
    const found: readonly Remedy[] = remedies(assessment, finding.id);
    printRemedies(page, found, path);
    return EXIT.fine;
  },
};

function findFinding({ findings, notAsked, refit }: Assessment, text: string): Finding {
  const wanted = text.trim().toLowerCase();
  const found = findings.find(({ id }) => id.toLowerCase() === wanted);
  if (found) return found;
  const idle = notAsked.find(({ id }) => id.toLowerCase() === wanted);
  if (idle) throw new Refusal(`“${idle.title}” (${idle.id}) is not asked of this refit: ${idle.reason}`);
  const near = nearest(
    shown(wanted),
    findings.map(({ id }) => id),
  );
  throw new Refusal(
    `“${refit.name}” has no finding “${shown(text)}”. ${near ? `Did you mean ${near}?` : '“fettle check --all” shows the names of all.'}`,
  );
}
