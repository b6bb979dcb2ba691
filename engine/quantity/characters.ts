/** Many characters look alike on plates and in copied text; one is kept of each. */

const SAME: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '\u2000': ' ',
  '\u2001': ' ',
  '\u2002': ' ',
  '\u2003': ' ',
  '\u2004': ' ',
  '\u2005': ' ',
  '\u2006': ' ',
  '\u2007': ' ',
  '\u2008': ' ',
  '\u2009': ' ',
  '\u200a': ' ',
  '\u202f': ' ',
  '\u3000': ' ',
  '\t': ' ',
  '\n': ' ',
  '\r': ' ',
  '\u200b': '',
  '\u2060': '',
  '\ufeff': '',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '﹣': '-',
  '－': '-',
  '＋': '+',
  '，': ',',
  '．': '.',
  '\u03bc': 'µ',
  '\u2126': 'Ω',
  '\u212a': 'K',
  '⋅': '·',
  '∙': '·',
  '•': '·',
  '‧': '·',
  '×': '×',
  '∗': '*',
  '∕': '/',
  '⁄': '/',
  '÷': '/',
  '″': '"',
  '“': '"',
  '”': '"',
  '′': "'",
  '’': "'",
  '‘': "'",
  º: '°',
  '˚': '°',
  '½': ' 1/2',
  '¼': ' 1/4',
  '¾': ' 3/4',
  '⅛': ' 1/8',
  '⅜': ' 3/8',
  '⅝': ' 5/8',
  '⅞': ' 7/8',
};

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Text with look-alike characters made one, superscripts written as `^2`, blanks single. Length grows at most fourfold. */
export function normalise(text: string): string {
  let out = '';
  let raised = false;
  for (const character of text) {
    const digit = SUPERSCRIPTS.indexOf(character);
    if (digit >= 0 || character === '⁻' || character === '⁺') {
      if (!raised) out += '^';
      raised = true;
      out += digit >= 0 ? String(digit) : character === '⁻' ? '-' : '';
      continue;
    }
    raised = false;
    const kept = SAME[character] ?? character;
    if (kept.startsWith(' ') && (out === '' || out.endsWith(' '))) out += kept.slice(1);
    else out += kept;
  }
  return out.endsWith(' ') ? out.slice(0, -1) : out;
}

/** What a person typed, short enough to stand in a message. */
export function quote(text: string): string {
  const shown = normalise(text.slice(0, 80)).replace(/\p{C}/gu, '');
  return `“${shown.length > 40 || text.length > 80 ? `${shown.slice(0, 40)}…` : shown}”`;
}

/** Longest text read as a quantity or a unit. */
export const LONGEST = 200;
