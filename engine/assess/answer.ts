/** The answer to a page's question in one or two sentences, from its findings. */

import { byVerdict, countVerdicts } from '../quantity/verdict.ts';
import { capital } from '../quantity/words.ts';
import type { Finding } from './finding.ts';

/** Worst first; among equals the smaller margin first. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  const margin = (finding: Finding): number => finding.margin ?? Number.POSITIVE_INFINITY;
  return [...findings].sort(
    (a, b) => byVerdict(a, b) || (margin(a) < margin(b) ? -1 : margin(a) > margin(b) ? 1 : 0),
  );
}

const WORDS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const say = (n: number): string => WORDS[n] ?? String(n);

/** 'Not yet. The motor runs out of volts … Two answers are tight, one of them on a guess; three wait for facts.' */
export function answer(findings: readonly Finding[]): string {
  const n = countVerdicts(findings);
  const known = findings.length - n.unknown;
  if (known === 0)
    return 'Nobody can say yet: too little is known. The next facts to find out stand first in the list of what to do.';
  const sentences: string[] = [];
  const worst = worstFirst(findings)[0];
  if (n.fails > 0 && worst) {
    sentences.push('Not yet.', worst.sentence);
    if (n.fails > 1)
      sentences.push(`${capital(say(n.fails - 1))} more ${n.fails === 2 ? 'answer fails' : 'answers fail'}.`);
  } else if (n.unknown > 0) {
    sentences.push('So far nothing speaks against it.');
  } else {
    sentences.push(n.tight > 0 ? 'Yes, with little to spare.' : 'Yes.');
  }
  const clauses: string[] = [];
  if (n.tight > 0) {
    const guessed = findings.filter((f) => f.verdict === 'tight' && f.guesses.length > 0).length;
    const on = guessed === 0 ? '' : n.tight === 1 ? ', on a guess' : `, ${say(guessed)} of them on a guess`;
    clauses.push(`${say(n.tight)} ${n.tight === 1 ? 'answer is' : 'answers are'} tight${on}`);
  }
  if (n.unknown > 0) clauses.push(`${say(n.unknown)} ${n.unknown === 1 ? 'waits' : 'wait'} for facts`);
  if (clauses.length > 0) sentences.push(`${capital(clauses.join('; '))}.`);
  if (n.fits > 0) sentences.push(n.fits === findings.length ? 'Everything fits.' : 'The rest fits.');
  return sentences.join(' ');
}
