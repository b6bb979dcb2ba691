/** The answers of a sheet as JSON for scripts. */
import type { Sheet } from '../../engine/sheet/index.ts';
import type { SheetAnswer } from '../sheet-answer.ts';
import type { SheetGiven } from '../sheet-given.ts';

/** Values and doubts (standard uncertainties) are SI; `text` is in the unit it is read in. */
export function answersJson(sheet: Sheet, given: SheetGiven, answers: readonly SheetAnswer[]) {
  return {
    format: 'fettle-sheet',
    version: 1,
    sheet: { id: sheet.id, title: sheet.title },
    given: Object.entries(given.values).map(([key, value]) => ({
      key,
      name: sheet.symbols[key]!.name,
      unit: sheet.symbols[key]!.unit,
      value,
      doubt: given.doubts.get(key),
    })),
    answers: answers.map(({ key, name, unit, outcome, doubt, text }) => ({
      key,
      name,
      unit,
      state: outcome.state,
      value: outcome.state === 'known' ? outcome.value : undefined,
      doubt,
      text,
      needs: outcome.state === 'missing' ? outcome.needs : undefined,
      reason: outcome.state === 'undefined' ? outcome.reason : undefined,
    })),
    notes: given.notes,
  };
}
