/** `fettle show`: everything known of a refit, place by place. */

import { sayValue } from '../../engine/assess/index.ts';
import { PARTS } from '../../engine/parts/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import { everyPlace, type Part, type Place, type Refit } from '../../engine/refit/index.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { type Page, pageOn } from '../print/page.ts';
import { plural } from '../print/text.ts';

export const show: Command = {
  name: 'show',
  summary: 'lists what is known, place by place, as it was typed',
  usage: ['show FILE [--all]'],
  about: 'Each fact stands with its basis; what is not known yet is counted.',
  options: { all: { says: 'also names what is not known yet' } },
  examples: ['show lathe.refit', 'show lathe.refit --all'],
  words: [1, 1],
  run: ({ io, words, has }) => {
    const { refit, edits, photos, form } = openRefit(words[0]!);
    const page = pageOn(io);
    page.prose(page.paint('bold', refit.name));
    const kind = refit.machine === 'other' ? 'Another kind of machine' : capital(refit.machine);
    page.prose(`${kind} with ${chainWords(refit)}.`);
    if (refit.about) page.prose(refit.about);
    if (form === 'refit')
      page.prose(`${plural(edits.length, 'edit')} and ${plural(photos.size, 'photo')} are kept with it.`);
    for (const { chain, name, place } of everyPlace(refit))
      printPlace(page, refit, chain === null ? name : `${chain}.${name}`, name, place, has('all'));
    const policies = Object.entries(refit.policies);
    if (policies.length > 0) page.heading('Habits changed from their usual value');
    for (const [id, text] of policies) page.prose(`policies.${id}: ${text}`, '  ', '      ');
    return EXIT.fine;
  },
};

/** 'the axes X, Z and the spindle S'. */
export function chainWords({ chains }: Refit): string {
  const named = (['axis', 'spindle'] as const).flatMap((kind) => {
    const ids = chains.filter((chain) => chain.kind === kind).map(({ id }) => id);
    if (ids.length === 0) return [];
    const plural = kind === 'axis' ? 'axes' : 'spindles';
    return [`the ${ids.length === 1 ? kind : plural} ${ids.join(', ')}`];
  });
  return named.join(' and ') || 'no axis';
}

function printPlace(page: Page, refit: Refit, at: string, name: string, place: Place, all: boolean): void {
  if (place.chosen === null || place.chosen === 'none') {
    const state = place.chosen === null ? 'it is not known whether there is one' : 'the machine has none';
    page.heading(`${at}: ${state}`);
  }
  for (const id of [...place.options].sort(
    (a, b) => Number(b === place.chosen) - Number(a === place.chosen),
  )) {
    const part = refit.parts[id]!;
    const option = id === place.chosen ? '' : `, an option (${at}@${id})`;
    page.heading(`${id === place.chosen ? at : `${at}@${id}`}: ${part.name}${option}`);
    printFacts(page, part, name, all);
  }
}

function printFacts(page: Page, part: Part, place: string, all: boolean): void {
  const specs = PARTS[part.kind]?.facts ?? {};
  for (const [fact, known] of Object.entries(part.facts)) {
    const name = specs[fact]?.name ?? fact;
    const note = known.note ? ` – ${known.note}` : '';
    const text = sayValue(known, `${place}.${fact}`) || 'none of the choices';
    page.prose(`${capital(name)} (${fact}): ${text} (${known.basis})${note}`, '  ', '      ');
  }
  const unknown = Object.keys(specs).filter((fact) => !Object.hasOwn(part.facts, fact));
  if (unknown.length === 0) return;
  const names = all ? `: ${unknown.map((fact) => `${specs[fact]!.name} (${fact})`).join('; ')}` : '';
  page.prose(page.paint('dim', `${plural(unknown.length, 'fact')} not known yet${names}.`), '  ', '      ');
}
