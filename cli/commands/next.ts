/** `fettle next`: the few facts that would settle most. */

import { assessDrawn, next, type Step } from '../../engine/assess/index.ts';
import { methodsFor } from '../../engine/evidence/methods-for.ts';
import { formatNumber } from '../../engine/quantity/index.ts';
import { andList, capital } from '../../engine/quantity/words.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { entering } from '../print/enter.ts';
import { type Page, pageOn } from '../print/page.ts';
import { plural } from '../print/text.ts';
import { Refusal } from '../refusal.ts';

const USUAL = 5;
const MOST = 200;

const TROUBLE = [
  '',
  'read a plate',
  'look it up or use a meter',
  'a bench test',
  'strip it down',
  'buy or ask far',
];

export const nextFacts: Command = {
  name: 'next',
  summary: 'names the few facts that would settle most, and how to find them out',
  usage: ['next FILE [--most N] [--json]'],
  about: 'Ask again after each answer: one answer may bring further questions, or make others needless.',
  options: {
    most: { takes: 'a number', says: `how many at most; else ${USUAL}` },
    json: { says: 'as JSON' },
  },
  examples: ['next lathe.refit', 'next lathe.refit --most 1'],
  words: [1, 1],
  run: ({ io, words, text, has }) => {
    const most = readMost(text('most'));
    const file = openRefit(words[0]!);
    const assessment = assessDrawn(file.refit);
    const steps = next(assessment, most);
    if (has('json')) {
      io.out(
        `${JSON.stringify({ format: 'fettle-next', version: 1, steps: steps.map(withMethods) }, null, 2)}\n`,
      );
      return EXIT.fine;
    }
    const page = pageOn(io);
    if (steps.length === 0) page.prose('Nothing more needs to be found out.');
    for (const [at, step] of steps.entries()) {
      if (at > 0) page.line();
      printStep(page, step, at + 1, file.path);
    }
    return EXIT.fine;
  },
};

const withMethods = (step: Step) => ({ ...step, methods: methodsFor(step.path).map(({ id }) => id) });

function readMost(text: string | undefined): number {
  if (text === undefined) return USUAL;
  const most = /^\d{1,3}$/.test(text.trim()) ? Number(text) : 0;
  if (most < 1 || most > MOST) throw new Refusal(`--most takes a whole number from 1 to ${MOST}.`);
  return most;
}

function printStep(page: Page, step: Step, number: number, file: string): void {
  const indent = '   ';
  page.prose(`${page.paint('bold', `${number}. ${capital(step.name)}`)} (${step.path})`, '', indent);
  if (step.caution) page.prose(`Caution: ${step.caution}`, indent);
  page.prose(step.findOut, indent);
  page.prose(`Trouble: ${TROUBLE[step.trouble] ?? 'some'}. ${settles(step)}`, indent);
  for (const { id, title } of methodsFor(step.path)) {
    page.prose(`How to measure it: “${title}”.`, indent);
    page.line(`${indent}fettle evidence --show ${id}`);
  }
  const { command, write } = entering(file, step.path);
  page.line(`${indent}${command}`);
  page.prose(write, indent);
}

function settles({ settles, waiting, doubtful, carries }: Step): string {
  if (doubtful) {
    const [most] = carries ?? [];
    if (!most || most.share === 0)
      return `It is only a guess so far, and ${sayIds(waiting)} would be surer with it.`;
    const others = waiting.filter((id) => id !== most.finding);
    const also = others.length > 0 ? ` It also carries doubt in ${sayIds(others)}.` : '';
    return `It carries ${percent(most.share)} of the doubt in ${most.finding}, which fits with a chance of ${percent(most.chance)}.${also}`;
  }
  const others = waiting.length - settles.filter((id) => waiting.includes(id)).length;
  const more = others > 0 ? ` ${plural(others, 'finding waits', 'findings wait')} for it and for more.` : '';
  return settles.length > 0
    ? `With what stands above, it brings an answer, or the next question, for ${sayIds(settles)}.${more}`
    : more.trim();
}

const percent = (share: number): string => `${formatNumber(100 * share, 2)} %`;

const sayIds = (ids: readonly string[]): string =>
  ids.length > 6 ? andList([...ids.slice(0, 5), `${ids.length - 5} more`]) : andList(ids);
