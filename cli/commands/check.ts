/** `fettle check`: every finding of a refit, worst first. */
import { type Assessment, assessDrawn, type Finding, next } from '../../engine/assess/index.ts';
import { type Counts, countVerdicts } from '../../engine/quantity/verdict.ts';
import { andList } from '../../engine/quantity/words.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { chooseGroup, type Group, groupsOf } from '../groups.ts';
import { findingsJson } from '../json/findings.ts';
import { entering } from '../print/enter.ts';
import { printFindings } from '../print/findings.ts';
import { worstFirst } from '../print/order.ts';
import { type Page, pageOn } from '../print/page.ts';
import { plural, quoted } from '../print/text.ts';
import { foldWaiting, printWaiting } from '../print/waiting.ts';
import { readUnits, UNITS } from '../units.ts';

export const check: Command = {
  name: 'check',
  summary: 'asks every question of a refit: what to do next, what fails, what is not known yet',
  usage: ['check FILE [--axis X] [--all] [--units mm|in] [--json]'],
  about:
    'The exit code is 0 when nothing fails and nothing is unknown, 1 when something fails, 3 when nothing fails but something is unknown, and 2 when the file or a fact in it cannot be read.',
  options: {
    axis: { takes: 'an axis', says: 'only this axis; “machine” for what belongs to the whole machine' },
    all: { says: 'every answer, axis by axis; also what is not asked, and why' },
    units: UNITS,
    json: { says: 'as JSON (docs/command-line.md says what is in it)' },
  },
  examples: ['check lathe.refit', 'check lathe.refit --axis X', 'check lathe.refit --json'],
  words: [1, 1],
  run: ({ io, words, text, has }) => {
    const file = openRefit(words[0]!);
    const assessment = assessDrawn(file.refit, { system: readUnits(text('units')) });
    const axis = text('axis');
    const groups = axis === undefined ? groupsOf(file.refit) : [chooseGroup(file.refit, axis)];
    const findings = groups.flatMap((group) => worstFirst(assessment.findings.filter(group.holds)));
    const counts = countVerdicts(findings);
    if (has('json')) {
      io.out(`${JSON.stringify(findingsJson(assessment, findings, groups), null, 2)}\n`);
    } else {
      const page = pageOn(io);
      printHeading(page, assessment, findings, counts);
      if (has('all')) {
        printEvery(page, groups, findings);
        printQuestions(page, assessment);
        printNotAsked(page, assessment, groups);
        printNext(page, file.path, assessment, findings);
      } else {
        printNext(page, file.path, assessment, findings);
        printWhatMatters(page, file.path, findings);
        printQuestions(page, assessment);
        printLeftOut(page, counts, notAskedIn(assessment, groups).length);
      }
    }
    for (const { where, message } of assessment.problems)
      io.err(`${where} cannot be read as it stands. ${message}\n`);
    if (assessment.problems.length > 0) return EXIT.refused;
    return counts.fails > 0 ? EXIT.fails : counts.unknown > 0 ? EXIT.unknown : EXIT.fine;
  },
};

/** The answer in one sentence. */
function answer(findings: readonly Finding[], counts: Counts): string {
  if (findings.length === 0) return 'Nothing is asked here yet.';
  const [worst] = worstFirst(findings);
  if (counts.fails > 0) {
    const others = counts.fails > 1 ? ` and ${plural(counts.fails - 1, 'other question')}` : '';
    return `As it stands it will not do: “${worst!.title}” (${worst!.id})${others} ${counts.fails > 1 ? 'fail' : 'fails'}.`;
  }
  if (counts.unknown > 0) {
    return `Nothing that is known fails, but ${plural(counts.unknown, 'question')} cannot be answered yet.`;
  }
  return counts.tight > 0
    ? `Everything that was asked goes, ${counts.tight === 1 ? 'one thing' : `${counts.tight} things`} with little to spare.`
    : 'Everything that was asked fits.';
}

function printHeading(page: Page, { refit }: Assessment, findings: readonly Finding[], counts: Counts): void {
  page.prose(page.paint('bold', refit.name));
  page.prose(
    `${plural(findings.length, 'finding')}: ${counts.fails} fails, ${counts.unknown} unknown, ${counts.tight} tight, ${counts.fits} fits.`,
  );
  page.prose(answer(findings, counts));
}

function printQuestions(page: Page, { questions }: Assessment): void {
  if (questions.length === 0) return;
  page.heading('Is this right?');
  for (const { where, message } of questions) page.prose(`${where}: ${message}`, '', '    ');
}

/** Every finding, axis by axis. */
function printEvery(page: Page, groups: readonly Group[], findings: readonly Finding[]): void {
  for (const group of groups) {
    const own = findings.filter(group.holds);
    if (own.length === 0) continue;
    page.heading(group.title);
    printFindings(page, own);
  }
}

/** What fails, what is tight, and what is not known yet by what it waits for. */
function printWhatMatters(page: Page, path: string, findings: readonly Finding[]): void {
  const print = (title: string, own: readonly Finding[]): void => {
    if (own.length === 0) return;
    page.heading(title);
    printFindings(page, worstFirst(own));
  };
  const of = (verdict: Finding['verdict']) => findings.filter((each) => each.verdict === verdict);
  print('What fails', of('fails'));
  print('What is tight', of('tight'));
  const unknown = of('unknown');
  const groups = foldWaiting(unknown);
  if (groups.length > 0) {
    page.heading('What is not known yet');
    printWaiting(page, path, groups);
  }
  print(
    'What cannot be told',
    unknown.filter(({ missing }) => missing.length === 0),
  );
}

function printLeftOut(page: Page, { fits, unknown }: Counts, notAsked: number): void {
  const parts = [
    ...(fits > 0 ? [`${fits} fit`] : []),
    ...(unknown > 0 ? [`${unknown} wait`] : []),
    ...(notAsked > 0 ? [`${notAsked} ${notAsked === 1 ? 'does' : 'do'} not apply here`] : []),
  ];
  if (parts.length === 0) return;
  page.line();
  page.prose(`Of all questions ${andList(parts)}; --all shows each of them, and why.`);
}

const notAskedIn = ({ notAsked }: Assessment, groups: readonly Group[]): Assessment['notAsked'] =>
  notAsked.filter((each) => groups.some((group) => group.holds(each)));

function printNotAsked(page: Page, assessment: Assessment, groups: readonly Group[]): void {
  const own = notAskedIn(assessment, groups);
  if (own.length === 0) return;
  page.heading('Not asked, and why');
  for (const { id, title, reason } of own) page.prose(`${title} (${id}): ${reason}`, '', '    ');
}

function printNext(page: Page, path: string, assessment: Assessment, findings: readonly Finding[]): void {
  const [worst] = worstFirst(findings);
  const ids = new Set(findings.map(({ id }) => id));
  const step = next(assessment, 200).find(({ waiting }) => waiting.some((id) => ids.has(id)));
  const judged = worst && worst.verdict !== 'unknown' ? worst : undefined;
  if (!judged && !step) return;
  page.heading('What next');
  if (judged) {
    page.prose(`To see the working of “${judged.title}” (${judged.verdict}):`);
    page.line(`    fettle why ${quoted(path)} ${judged.id}`);
  }
  if (!step) return;
  page.prose(`To find out ${step.doubtful ? 'better' : 'next'}: ${step.name}.`);
  if (step.caution) page.prose(`Caution: ${step.caution}`, '    ');
  page.prose(step.findOut, '    ');
  const { command, write } = entering(path, step.path);
  page.line(`    ${command}`);
  page.prose(write, '    ');
}
