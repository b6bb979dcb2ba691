/** Units written in one line. */

const SUPERSCRIPT: Readonly<Record<string, string>> = {
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
};

function raise(symbol: string, exponent: number): string {
  if (exponent === 1) return symbol;
  const size = String(exponent);
  return /^\d$/.test(size) ? symbol + SUPERSCRIPT[size]! : `${symbol}^${size}`;
}

export interface Piece {
  readonly symbol: string;
  power: number;
  readonly hyphen: boolean;
}

function join(pieces: readonly Piece[], sign: 1 | -1): string {
  let out = '';
  for (const p of pieces) out += (out === '' ? '' : p.hyphen ? '-' : '·') + raise(p.symbol, p.power * sign);
  return out;
}

/** The unit in one line that reads back as the same unit. */
export function symbolOf(pieces: readonly Piece[]): string {
  const merged: Piece[] = [];
  for (const p of pieces) {
    const last = merged.at(-1);
    // Numbers (the 300 of µm/300 mm) stay as they are.
    if (last && last.symbol === p.symbol && !/^\d/.test(p.symbol)) last.power += p.power;
    else merged.push({ ...p });
  }
  const above = merged.filter((p) => p.power > 0);
  const below = merged.filter((p) => p.power < 0);
  const top = join(above, 1);
  if (below.length === 0) return top === '' ? '1' : top;
  const bottom = join(below, -1);
  return `${top === '' ? '1' : top}/${below.length > 1 ? `(${bottom})` : bottom}`;
}
