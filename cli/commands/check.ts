/** `fettle check`: every finding of a refit, worst first. */
import { type Assessment, assessDrawn, type Finding, next } from '../../engine/assess/index.ts';
import { type Counts, countVerdicts } from '../../engine/quantity/verdict.ts';
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
import { readUnits, UNITS } from '../units.ts';

export const check: Command = {
  name: 'check',
  summary: 'asks every question of a refit and shows the answers, worst first',
  usage: ['check FILE [--axis X] [--all] [--units mm|in] [--json]'],
  about:
    'The exit code is 0 when nothing fails and nothing is unknown, 1 when something fails, 3 when nothing fails but something is unknown, and 2 when the file or a fact in it cannot be read.',
  options: {
    axis: { takes: 'an axis', says: 'only this axis; “machine” for what belongs to the whole machine' },
    all: { says: 'also what is not asked, and why' },
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
      for (const group of groups) {
        const own = findings.filter(group.holds);
        if (own.length === 0) continue;
        page.heading(group.title);
        printFindings(page, own);
      }
      printQuestions(page, assessment);
      if (has('all')) printNotAsked(page, assessment, groups);
      else if (assessment.notAsked.length > 0) {
        page.line();
        page.prose(
          `${plural(assessment.notAsked.length, 'question does', 'questions do')} not apply here; --all shows them and why.`,
        );
      }
      printNext(page, file.path, assessment, findings);
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

function printNotAsked(page: Page, { notAsked }: Assessment, groups: readonly Group[]): void {
  const own = notAsked.filter((each) => groups.some((group) => group.holds(each)));
  if (own.length === 0) return;
  page.heading('Not asked, and why');
  for (const { id, title, reason } of own) page.prose(`${title} (${id}): ${reason}`, '', '    ');
}

function printNext(page: Page, path: string, assessment: Assessment, findings: readonly Finding[]): void {
  const [worst] = worstFirst(findings);
  const ids = new Set(findings.map(({ id }) => id));
  const step = next(assessment, 200).find(({ waiting }) => waiting.some((id) => ids.has(id)));
  if (!worst && !step) return;
  page.heading('What next');
  if (worst) {
    page.prose(`To see the working of “${worst.title}” (${worst.verdict}):`);
    page.line(`    fettle why ${quoted(path)} ${worst.id}`);
  }
  if (!step) return;
  page.prose(`To find out ${step.doubtful ? 'better' : 'next'}: ${step.name}.`);
  if (step.caution) page.prose(`Caution: ${step.caution}`, '    ');
  page.prose(step.findOut, '    ');
  page.line(`    ${entering(path, step.path).command}`);
}
