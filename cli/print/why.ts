/** The working of a finding on a page. */

import {
  type FactRow,
  type PolicyRow,
  type Remedy,
  sayDoubts,
  sayGuesses,
  type Why,
  type WorkStep,
} from '../../engine/assess/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { entering } from './enter.ts';
import { sayAmount, sayChance } from './findings.ts';
import { sayMargin } from './margin.ts';
import type { Page } from './page.ts';
import { quoted } from './text.ts';
import { sayVerdict } from './verdict.ts';

const INDENT = '  ';
const HANG = '      ';

export function printWhy(page: Page, answer: Why, file: string): void {
  const { finding } = answer;
  page.prose(`${sayVerdict(page, finding.verdict)}  ${page.paint('bold', finding.title)} (${finding.id})`);
  if (answer.caution) page.prose(`Caution: ${answer.caution}`);
  page.prose([finding.sentence, sayGuesses(finding), sayChance(finding)].filter(Boolean).join(' '));
  if (finding.asked && finding.there) {
    page.prose(
      `Asked ${sayAmount(finding.asked)}; there is ${sayAmount(finding.there)}; margin ${sayMargin(finding)}.`,
    );
  }
  if (finding.doubts && finding.doubts.length > 0)
    page.prose(`Where its doubt comes from: ${sayDoubts(finding.doubts)}.`);
  page.prose(`Why it matters: ${answer.why}`);
  printSteps(page, answer.steps);
  printFacts(page, answer.facts, file);
  if (answer.stated.length > 0) {
    page.heading('Numbers from tables and books');
    for (const { name, text, source } of answer.stated)
      page.prose(`${name}: ${text} – ${source}`, INDENT, HANG);
  }
  printPolicies(page, answer.policies);
}

function printSteps(page: Page, steps: readonly WorkStep[]): void {
  if (steps.length === 0) return;
  page.heading('The working');
  let heading = '';
  for (const step of steps) {
    if (step.heading !== heading) page.prose(page.paint('bold', step.heading), INDENT);
    heading = step.heading;
    page.prose(`${capital(step.name)}: ${step.text ?? noResult(step)}`, '    ', HANG);
    page.prose(step.plain, HANG);
    if (step.text !== undefined) page.prose(step.plainWithNumbers, HANG);
    if (step.says) page.prose(step.says, HANG);
    if (step.source) page.prose(page.paint('dim', `Source: ${step.source}`), HANG);
  }
}

const noResult = ({ outcome }: WorkStep): string =>
  outcome.state === 'undefined' ? `no answer: ${outcome.reason}` : 'not known yet';

function printFacts(page: Page, facts: readonly FactRow[], file: string): void {
  if (facts.length === 0) return;
  page.heading('What goes in');
  for (const fact of facts) {
    const basis = fact.basis ? ` (${fact.basis})` : '';
    const note = fact.note ? ` – ${fact.note}` : '';
    page.prose(`${capital(fact.name)}: ${fact.text ?? 'not known yet'}${basis}${note}`, INDENT, HANG);
    if (fact.findOut === undefined) continue;
    if (fact.caution) page.prose(`Caution: ${fact.caution}`, HANG);
    page.prose(fact.findOut, HANG);
    page.line(`${HANG}${entering(file, fact.path).command}`);
  }
}

function printPolicies(page: Page, policies: readonly PolicyRow[]): void {
  if (policies.length === 0) return;
  page.heading('Habits that may be changed');
  for (const { id, name, text, usual, why, source } of policies) {
    const changed = text === usual ? 'as usual' : `usual is ${usual}`;
    page.prose(
      `${capital(name)}: ${text} (${changed}; policies.${id}). ${why} Source: ${source}.`,
      INDENT,
      HANG,
    );
  }
}

export function printRemedies(page: Page, found: readonly Remedy[], file: string): void {
  page.heading('What would make it fit');
  if (found.length === 0) {
    page.prose('No single change of what is known would; more than one thing has to change.', INDENT);
  }
  for (const remedy of found) {
    page.prose(
      `${capital(remedy.says)}${remedy.free ? '' : ' – a property of a part, so another part'}.`,
      INDENT,
      HANG,
    );
    for (const { id, title, before, after } of remedy.changes) {
      page.prose(
        `It would also take ${title} (${id}) from ${sayVerdict(page, before)} to ${sayVerdict(page, after)}.`,
        HANG,
      );
    }
    const verb = remedy.kind === 'part' ? 'choose' : 'set';
    page.line(`${HANG}fettle ${verb} ${quoted(file)} ${remedy.path} ${quoted(remedy.text)}`);
  }
}
