/** Texts of people, short enough for a sentence. */

/** On one line, and no longer than `max`. */
export function brief(text: string, max = 200): string {
  const line = text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  return line.length <= max ? line : `${line.slice(0, max - 1).replace(/\p{Surrogate}$/u, '')}…`;
}
