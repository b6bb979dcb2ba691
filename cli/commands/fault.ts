/** `fettle fault`: dead or asleep, by the cheapest tests first. */
import {
  type Diagnosis,
  dangerIn,
  diagnose,
  findSymptoms,
  SKIP,
  SYMPTOM,
  SYMPTOMS,
  type Symptom,
} from '../../engine/advice/faults/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { type Page, pageOn } from '../print/page.ts';
import { padEnd, quoted, widthOf } from '../print/text.ts';
import { need, Refusal } from '../refusal.ts';

const INDENT = '    ';

export const fault: Command = {
  name: 'fault',
  summary: 'dead or asleep: from a symptom by the cheapest tests first to the cause',
  usage: ['fault [SYMPTOM] [TEST=ANSWER …] [--json]', "fault 'WORDS OF YOUR OWN' [--json]"],
  about:
    'Without a symptom, lists them; it is found by words of your own as well, such as “it falls”. Answer the test that is proposed by adding TEST=ANSWER to the line; TEST=skip passes one over. How often each cause is and in which order to test are common practice, no source.',
  options: { json: { says: 'as JSON' } },
  examples: ['fault', "fault 'it falls'", 'fault screen-dark', 'fault screen-dark anything-lives=yes'],
  words: [0],
  run: ({ io, words, has }) => {
    const page = pageOn(io);
    const json = (value: object): void => io.out(`${JSON.stringify(value, null, 2)}\n`);
    // After a symptom's own name there are only answers; words of one's own may be several.
    const named = words[0] !== undefined && SYMPTOM.has(words[0].trim().toLowerCase());
    const first = named ? 1 : words.findIndex((word) => word.includes('='));
    const said = words.slice(0, first < 0 ? words.length : first);
    const given = words.slice(said.length);
    if (words.length === 0) {
      const symptoms = SYMPTOMS.map(({ id, title, about }) => ({ id, title, about }));
      if (has('json')) json({ format: 'fettle-symptoms', version: 1, symptoms });
      else printSymptoms(page, SYMPTOMS);
      return EXIT.fine;
    }
    const typed = said.join(' ');
    const found = symptomsFor(typed);
    const [symptom, ...others] = found as [Symptom, ...Symptom[]];
    if (others.length > 0) {
      if (given.length > 0)
        throw new Refusal(`“${shown(typed)}” can be several symptoms; name one: ${idsOf(found)}.`);
      if (has('json'))
        json({
          format: 'fettle-symptoms',
          version: 1,
          symptoms: found.map(({ id, title, about }) => ({ id, title, about })),
        });
      else {
        warn(page, typed);
        printSymptoms(page, found);
      }
      return EXIT.fine;
    }
    const diagnosis = need(diagnose(symptom, readAnswers(given)));
    if (has('json')) json({ format: 'fettle-fault', version: 1, ...diagnosis });
    else {
      warn(page, typed);
      print(page, symptom, diagnosis, ['fettle', 'fault', symptom.id, ...given].map(quoted).join(' '));
    }
    return EXIT.fine;
  },
};

const idsOf = (symptoms: readonly Symptom[]): string => symptoms.map(({ id }) => id).join(', ');

/** What can hurt comes first. */
function warn(page: Page, typed: string): void {
  const danger = dangerIn(typed);
  if (danger !== undefined) page.prose(`Caution: ${danger}`);
}

/** A symptom by its name, or those that words of a person's own fit; never none. */
function symptomsFor(typed: string): readonly Symptom[] {
  const symptom = SYMPTOM.get(typed.trim().toLowerCase());
  if (symptom) return [symptom];
  const isFile = /\.(refit|json)$/i.test(typed);
  const near = nearest(
    shown(typed),
    SYMPTOMS.map(({ id }) => id),
  );
  if (!isFile && near !== undefined)
    throw new Refusal(`There is no symptom “${shown(typed)}”. Did you mean ${near}?`);
  const fitting = isFile ? [] : findSymptoms(SYMPTOMS, typed);
  if (fitting.length > 0) return fitting;
  const danger = dangerIn(typed);
  const before = isFile
    ? `“fettle fault” asks what you see at the machine and needs no file such as ${shown(typed)}.`
    : `No symptom fits “${shown(typed)}”.`;
  throw new Refusal(
    [
      `${danger === undefined ? '' : `${danger} `}${before} Write one of these, or other words for it:`,
      ...SYMPTOMS.map(({ id, title }) => `– ${id}: ${title}`),
    ].join('\n'),
  );
}

/** A table of what is seen and how to begin; one under the other where the terminal is narrow. */
function printSymptoms(page: Page, symptoms: readonly Symptom[]): void {
  const width = Math.max(...symptoms.map(({ title }) => widthOf(title)));
  const widest = Math.max(...symptoms.map(({ id }) => `fettle fault ${id}`.length));
  const isNarrow = width + 2 + widest > page.width;
  if (!isNarrow) page.line(page.paint('dim', `${padEnd('what you see', width)}  to begin`));
  for (const { id, title } of symptoms) {
    const command = `fettle fault ${id}`;
    if (isNarrow) {
      page.prose(`${title}:`);
      page.line(`${INDENT}${command}`);
    } else page.line(`${page.paint('bold', padEnd(title, width))}  ${command}`);
  }
}

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
