/** A measurement that is being typed survives a reload: it is kept in the browser until it is recorded. */
import type { Draft, Row } from './rows.ts';

const PREFIX = 'fettle-bench:';
/** Characters; a browser holds only a few millions. */
const LONGEST = 400_000;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const texts = (value: unknown): Record<string, string> =>
  isRecord(value)
    ? Object.fromEntries(
        Object.entries(value).filter((each): each is [string, string] => typeof each[1] === 'string'),
      )
    : {};

/** What somebody or something else put there is not trusted. */
export function readBenchDraft(key: string): Draft | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PREFIX + key) ?? 'null');
    if (!isRecord(kept)) return undefined;
    const rows = Array.isArray(kept.rows) ? kept.rows.slice(0, 5_000) : [];
    return {
      given: texts(kept.given),
      rows: rows.map((row: unknown): Row => {
        const { cells, aside } = isRecord(row) ? row : {};
        return { cells: texts(cells), ...(typeof aside === 'string' ? { aside } : {}) };
      }),
      note: typeof kept.note === 'string' ? kept.note : '',
      photos: Array.isArray(kept.photos) ? kept.photos.filter((each) => typeof each === 'string') : [],
    };
  } catch {
    return undefined;
  }
}

/** False where the browser does not keep it. */
export function keepBenchDraft(key: string, draft: Draft | undefined): boolean {
  try {
    const text = draft === undefined ? '' : JSON.stringify(draft);
    if (draft === undefined || text.length > LONGEST) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, text);
    return text.length <= LONGEST;
  } catch {
    return false;
  }
}
