/** How one symbol of a sheet is worked out: the formula, and the formula with its numbers in place. */
import { formatQuantity } from '../quantity/index.ts';
import { readsOf } from './compile/plan.ts';
import { evaluate } from './evaluate.ts';
import { type Leaf, plainKey, plainText } from './print-plain.ts';
import { quantityTex, type TexLeaf, texKey, texText } from './print-tex.ts';
import { treesOf } from './trees.ts';
import type { Given, Outcome, Sheet, SymbolSpec } from './types.ts';

export interface ExplainedInput {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly outcome: Outcome;
  /** The value with its unit, or undefined while there is none. */
  readonly text: string | undefined;
}

export interface Explanation {
  readonly key: string;
  readonly name: string;
  /** `n_c = \frac{f \cdot d}{L^{2}}`; a procedure shows what it reads. */
  readonly tex: string;
  /**
   * The same with each value in the unit a person reads it in. Every number carries its unit, so that the line is
   * true as it stands, with r/min, degrees and the like taken as the numbers of SI that they are.
   */
  readonly texWithNumbers: string;
  readonly plain: string;
  readonly plainWithNumbers: string;
  /** The symbols that stand in the formula, with their values. */
  readonly inputs: readonly ExplainedInput[];
  readonly outcome: Outcome;
  readonly source: string | undefined;
  readonly says: string | undefined;
}

/** Typeset form of a symbol. */
export const symbolTex = (spec: SymbolSpec, key: string): string => spec.tex ?? texKey(key);

/** Throws RangeError when the sheet has no such symbol. */
export function explain<K extends string>(sheet: Sheet<K>, key: K, given: Given<K>): Explanation {
  if (!Object.hasOwn(sheet.symbols, key)) throw new RangeError(`sheet '${sheet.id}' has no symbol '${key}'`);
  const outcomes: Readonly<Record<string, Outcome>> = evaluate(sheet, given);
  const all = sheet as Sheet;
  const spec: SymbolSpec = all.symbols[key]!;
  const inputs = readsOf(all, key).map((read) => explainedInput(all, read, outcomes[read]!));
  const outcome = outcomes[key]!;
  const own = explainedInput(all, key, outcome);

  const values = new Map(inputs.map((each) => [each.key, each.text]));
  const plainSymbol = (read: string): Leaf => ({ text: plainKey(read), word: true });
  const texSymbol = (read: string): TexLeaf => ({ tex: symbolTex(all.symbols[read]!, read), word: true });
  const plainValue = (read: string): Leaf => {
    const text = values.get(read);
    return text === undefined ? plainSymbol(read) : { text, word: /^[\d.]+$/.test(text) };
  };
  const texValue = (read: string): TexLeaf => {
    const { text, word } = plainValue(read);
    return values.get(read) === undefined ? texSymbol(read) : { tex: quantityTex(text), word };
  };

  const plainLeft = plainKey(key);
  const texLeft = symbolTex(spec, key);
  const plainResult = own.text === undefined ? '' : ` = ${own.text}`;
  const texResult = own.text === undefined ? '' : ` = ${quantityTex(own.text)}`;
  const base = { key, name: spec.name, inputs, outcome, ...sourceOf(spec) };
  const tree = treesOf(all).expressions.get(key);
  if (tree) {
    return {
      ...base,
      plain: `${plainLeft} = ${plainText(tree, plainSymbol)}`,
      plainWithNumbers: `${plainLeft} = ${plainText(tree, plainValue)}${plainResult}`,
      tex: `${texLeft} = ${texText(tree, texSymbol)}`,
      texWithNumbers: `${texLeft} = ${texText(tree, texValue)}${texResult}`,
    };
  }
  if (spec.kind === 'procedure') {
    const call = (print: (read: string) => string): string => `(${spec.reads.map(print).join(', ')})`;
    return {
      ...base,
      plain: `${plainLeft} from ${call((read) => plainSymbol(read).text)}`,
      plainWithNumbers: `${plainLeft} from ${call((read) => plainValue(read).text)}${plainResult}`,
      tex: `${texLeft} = f${call((read) => texSymbol(read).tex)}`,
      texWithNumbers: `${texLeft} = f${call((read) => texValue(read).tex)}${texResult}`,
    };
  }
  return {
    ...base,
    plain: plainLeft,
    plainWithNumbers: `${plainLeft}${plainResult}`,
    tex: texLeft,
    texWithNumbers: `${texLeft}${texResult}`,
  };
}

function sourceOf(spec: SymbolSpec): { source: string | undefined; says: string | undefined } {
  return {
    source: 'source' in spec ? spec.source : undefined,
    says: 'says' in spec ? spec.says : undefined,
  };
}

function explainedInput(sheet: Sheet, key: string, outcome: Outcome): ExplainedInput {
  const spec = sheet.symbols[key]!;
  const unit = shownUnit(sheet, key);
  // A curve has no single number to put in place.
  const text =
    outcome.state === 'known' && spec.kind !== 'curve' ? formatQuantity(outcome.value, unit) : undefined;
  return { key, name: spec.name, unit, outcome, text };
}

/** A formula wants temperatures from absolute zero, so that °C, which starts elsewhere, would not be true in it. */
function shownUnit(sheet: Sheet, key: string): string {
  return treesOf(sheet).units.get(key)!.offset === 0 ? sheet.symbols[key]!.unit : 'K';
}
