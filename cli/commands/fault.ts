/** `fettle fault`: dead or asleep, by the cheapest tests first. */
import {
  type Diagnosis,
  diagnose,
  SKIP,
  SYMPTOM,
  SYMPTOMS,
  type Symptom,
} from '../../engine/advice/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { type Page, pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';

const INDENT = '    ';

export const fault: Command = {
  name: 'fault',
  summary: 'dead or asleep: from a symptom by the cheapest tests first to the cause',
  usage: ['fault [SYMPTOM] [TEST=ANSWER …] [--json]'],
  about:
    'Without a symptom, lists them. Answer the test that is proposed by adding TEST=ANSWER to the line; TEST=skip passes one over. How often each cause is and in which order to test are common practice, no source.',
  options: { json: { says: 'as JSON' } },
  examples: ['fault', 'fault screen-dark', 'fault screen-dark anything-lives=yes'],
  words: [0],
  run: ({ io, words, has }) => {
    const [name, ...given] = words;
    const page = pageOn(io);
    if (name === undefined) {
      if (has('json')) {
        const symptoms = SYMPTOMS.map(({ id, title, about }) => ({ id, title, about }));
        io.out(`${JSON.stringify({ format: 'fettle-symptoms', version: 1, symptoms }, null, 2)}\n`);
      } else
        for (const { id, title, about } of SYMPTOMS)
          page.prose(`${page.paint('bold', id)}: ${title}. ${about}`, '', INDENT);
      return EXIT.fine;
    }
    const symptom = SYMPTOM.get(name);
    if (!symptom) {
      const names = SYMPTOMS.map(({ id }) => id);
      const near = nearest(shown(name), names);
      throw new Refusal(
        `There is no symptom “${shown(name)}”. ${near ? `Did you mean ${near}?` : `There are: ${names.join(', ')}.`}`,
      );
    }
    const diagnosis = need(diagnose(symptom, readAnswers(given)));
    if (has('json'))
      io.out(`${JSON.stringify({ format: 'fettle-fault', version: 1, ...diagnosis }, null, 2)}\n`);
    else print(page, symptom, diagnosis, ['fettle', 'fault', ...words].map(quoted).join(' '));
    return EXIT.fine;
  },
};

function readAnswers(words: readonly string[]): Record<string, string> {
  const answers = new Map<string, string>();
  for (const word of words) {
    const at = word.indexOf('=');
    if (at < 1)
      throw new Refusal(`“${shown(word)}” is no answer; write TEST=ANSWER, such as anything-lives=yes.`);
    const test = word.slice(0, at);
    if (answers.has(test)) throw new Refusal(`“${shown(test)}” is answered twice; keep one answer.`);
    answers.set(test, word.slice(at + 1));
  }
  return Object.fromEntries(answers);
}

function print(page: Page, symptom: Symptom, { asked, remaining, next, end }: Diagnosis, line: string): void {
  page.prose(`${page.paint('bold', `${symptom.title}.`)} ${symptom.about}`);
  for (const { question, answer } of asked) page.prose(`– ${question} ${answer}.`, '', INDENT);
  if (end) {
    page.heading(end.is === 'cause' ? 'What it is' : 'Who can tell');
    page.prose(end.sentence);
  }
  if (remaining.length > 1) {
    page.heading('What it can be');
    for (const { says, is, share } of remaining)
      page.prose(`${Math.round(100 * share)} %, ${is}: ${says}`, '', INDENT);
  }
  if (!next) return;
  page.heading('What to test next');
  page.prose(`${page.paint('bold', next.test.question)} (${next.id})`);
  if (next.test.caution) page.prose(`Caution: ${next.test.caution}`, INDENT);
  page.prose(`${next.test.how} With: ${next.test.tool}. ${next.why}`, INDENT);
  for (const answer of next.possible)
    page.prose(
      `${next.test.answers[answer]!.says}: ${line} ${next.id}=${answer}`,
      INDENT,
      `${INDENT}${INDENT}`,
    );
  page.prose(`Cannot do it: ${line} ${next.id}=${SKIP}`, INDENT, `${INDENT}${INDENT}`);
}
