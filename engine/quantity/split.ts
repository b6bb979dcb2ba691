/** Cuts a quantity's text at its ±, +a/−b or range, before any number is read. */

export type Shape =
  | { readonly kind: 'single'; readonly main: string }
  | { readonly kind: 'plus-minus'; readonly main: string; readonly half: string }
  | { readonly kind: 'unequal'; readonly main: string; readonly up: string; readonly down: string }
  | { readonly kind: 'range'; readonly low: string; readonly high: string }
  | { readonly kind: 'malformed'; readonly why: string };

/** A sign of an exponent (1e+5, 10^-3) is none of a tolerance. */
const isExponentSign = (text: string, at: number): boolean =>
  /(?:\d[eE]|\^)\(?$/.test(text.slice(Math.max(0, at - 3), at));

function signAt(text: string, sign: string, from: number): number {
  for (let i = text.indexOf(sign, from); i >= 0; i = text.indexOf(sign, i + 1))
    if (!isExponentSign(text, i)) return i;
  return -1;
}

/** Where the bracket closes that was opened before the text; −1 where it does not. */
function closing(text: string): number {
  let depth = 1;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '(') depth++;
    if (text[i] === ')' && --depth === 0) return i;
  }
  return -1;
}

const bare = (text: string): string => text.replace(/^[ ,/]+/, '').replace(/[ ,/]+$/, '');

/** Takes normalised text. */
export function splitQuantity(text: string): Shape {
  const t = text.replace(/\+ ?\/ ?-|\+ ?-|\bplus or minus\b/gi, '±');
  const [main, half, ...more] = t.split('±');
  if (more.length > 0)
    return { kind: 'malformed', why: 'More than one ± stands in it. Write it like 1.32 ± 0.06 ohm.' };
  if (half !== undefined && main !== undefined) {
    // (1.32 ± 0.06) ohm, (2.06 ± 0.05) × 10¹¹ Pa: what stands behind the bracket holds for both.
    const close = closing(half);
    if (main.startsWith('(') && close >= 0) {
      const behind = half.slice(close + 1);
      const inside = half.slice(0, close).trim();
      return {
        kind: 'plus-minus',
        main: (main.slice(1).trim() + behind).trim(),
        // ((0.8 % + 3 digits)): a sum in brackets of its own has its units inside.
        half: inside.endsWith(')') ? inside : inside + behind,
      };
    }
    return { kind: 'plus-minus', main: main.trim(), half: half.trim() };
  }
  const plus = signAt(t, '+', 1);
  if (plus > 0) {
    const before = t.slice(0, plus).trimEnd();
    if (before.endsWith('/')) {
      const minus = before.lastIndexOf('-');
      if (minus > 0)
        return {
          kind: 'unequal',
          main: t.slice(0, minus).trim(),
          up: bare(t.slice(plus + 1)),
          down: bare(before.slice(minus + 1)),
        };
    }
    const minus = signAt(t, '-', plus + 1);
    if (minus > 0)
      return {
        kind: 'unequal',
        main: before.trim(),
        up: bare(t.slice(plus + 1, minus)),
        down: bare(t.slice(minus + 1)),
      };
    return { kind: 'malformed', why: 'A + stands inside it without its −. Write it like 230 V +10/-15 %.' };
  }
  const range = /(?: to |\.{2,3}|…|[–—](?!$)| - (?=[\d.,]))/i.exec(t.slice(1));
  if (range) {
    const at = range.index + 1;
    return { kind: 'range', low: t.slice(0, at).trim(), high: t.slice(at + range[0].length).trim() };
  }
  // 20-30 mm, but not 1-3/8 in nor 10^-3.
  const hyphen = /^([+-]? ?[\d.,]+) ?- ?(\d.*)$/.exec(t);
  if (hyphen && !/^\d{1,4}\/\d/.test(hyphen[2]!)) return { kind: 'range', low: hyphen[1]!, high: hyphen[2]! };
  return { kind: 'single', main: t };
}
