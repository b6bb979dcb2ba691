/** A sheet described for the command line and the generated handbook. */

import { symbolTex } from './explain.ts';
import { plainKey, plainText } from './print-plain.ts';
import { texText } from './print-tex.ts';
import { treesOf } from './trees.ts';
import type { Domain, Sheet, SymbolSpec } from './types.ts';

export interface SymbolDescription {
  readonly key: string;
  readonly kind: SymbolSpec['kind'];
  readonly name: string;
  readonly unit: string;
  /** `η_b` */
  readonly plain: string;
  readonly tex: string;
  readonly domain: Domain;
  readonly note: string | undefined;
  /** A constant's value as written. */
  readonly value: string | undefined;
  /** Right-hand side of a formula. */
  readonly formula: { readonly plain: string; readonly tex: string } | undefined;
  /** What a procedure reads, and what a curve runs over. */
  readonly reads: readonly string[];
  readonly over: { readonly name: string; readonly unit: string } | undefined;
  readonly says: string | undefined;
  readonly source: string | undefined;
  /** Inputs a derived symbol depends on, directly or not. */
  readonly dependsOn: readonly string[];
}

export interface SheetDescription {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  /** In working order: inputs, constants, derived symbols. */
  readonly symbols: readonly SymbolDescription[];
}

export function describeSheet(sheet: Sheet): SheetDescription {
  return {
    id: sheet.id,
    title: sheet.title,
    about: sheet.about,
    symbols: sheet.order.map((key) => describeSymbol(sheet, key)),
  };
}

function describeSymbol(sheet: Sheet, key: string): SymbolDescription {
  const spec = sheet.symbols[key]!;
  const tree = treesOf(sheet).expressions.get(key);
  const leaf = (read: string) => ({ tex: symbolTex(sheet.symbols[read]!, read), word: true });
  return {
    key,
    kind: spec.kind,
    name: spec.name,
    unit: spec.unit,
    plain: plainKey(key),
    tex: symbolTex(spec, key),
    domain: 'domain' in spec ? (spec.domain ?? 'any') : 'any',
    note: spec.note,
    value: spec.kind === 'constant' ? spec.value : undefined,
    formula: tree && { plain: plainText(tree), tex: texText(tree, leaf) },
    reads: spec.kind === 'procedure' ? spec.reads : [],
    over: spec.kind === 'curve' ? { name: spec.xName, unit: spec.xUnit } : undefined,
    says: 'says' in spec ? spec.says : undefined,
    source: 'source' in spec ? spec.source : undefined,
    dependsOn: sheet.dependsOn[key]!,
  };
}
