/** The material of a cut, from the word for it. */
import type { Result } from '../quantity/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { CUTTING_MATERIALS } from '../tables/cutting-materials.ts';
import { TAPPING_MATERIALS } from '../tables/tapping-materials.ts';
import type { Operation } from './cut-shapes.ts';
import { LONGEST, orList, problem } from './text.ts';

export interface MaterialValues {
  readonly name: string;
  readonly soft: boolean;
  /** Only the shorter formula of tapping has a factor for it. */
  readonly byPitch?: boolean;
  readonly values: Readonly<Record<string, number>>;
  readonly notes: readonly string[];
}

export function materialOf(text: string | undefined, operation: Operation): Result<MaterialValues> {
  const table = operation === 'tapping' ? TAPPING_MATERIALS : CUTTING_MATERIALS;
  const names = table.map(({ id }) => id);
  if (text === undefined) return problem('empty', `material is missing: ${orList(names)}.`);
  const word = text.trim().toLowerCase().slice(0, LONGEST);
  const index = table.findIndex(({ id, words }) => id === word || words.includes(word));
  const found = table[index];
  if (!found) {
    const near = nearest(
      word,
      table.flatMap(({ id, words }) => [id, ...words]),
    );
    return problem(
      'unknown-name',
      `material: there is no “${word}”.${near ? ` Did you mean ${near}?` : ''} There is ${orList(names)}.`,
    );
  }
  const notes = found.id === word ? [] : [`“${word}” was read as ${found.name}.`];
  const soft = /alumin|brass|iron/.test(found.id);
  if (operation === 'tapping') {
    const tapping = TAPPING_MATERIALS[index]!;
    const kt = tapping.byHole ?? tapping.byPitch;
    return {
      ok: true,
      value: {
        name: found.name,
        soft,
        values: { kt: kt! },
        byPitch: tapping.byHole === undefined,
        notes,
      },
    };
  }
  const cutting = CUTTING_MATERIALS[index]!;
  if (cutting.note) notes.push(cutting.note);
  return {
    ok: true,
    value: { name: found.name, soft, values: { kc11: cutting.kc11, mc: cutting.mc }, notes },
  };
}
