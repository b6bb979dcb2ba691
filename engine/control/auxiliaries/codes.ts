/** Codes in which a turret tells its positions. */

export type Code = 'binary' | 'bcd' | 'gray' | 'each';
export type Parity = 'none' | 'odd' | 'even';

const bits = (value: number, width: number): boolean[] =>
  Array.from({ length: width }, (_, bit) => ((value >> bit) & 1) === 1);

/**
 * What the inputs show at each of `positions`, lowest bit first, a parity bit last. Gray codes start so far in that an even
 * number of positions closes the ring with one change of one bit; an odd number cannot.
 */
export function patterns(positions: number, code: Code, from: 0 | 1, parity: Parity): boolean[][] {
  const last = positions - 1 + from;
  const width = Math.max(1, Math.ceil(Math.log2(last + 1)));
  const grayWidth = Math.max(1, Math.ceil(Math.log2(positions)));
  const skip = Math.floor((2 ** grayWidth - positions) / 2);
  const plain = (position: number): boolean[] => {
    const number = position + from;
    switch (code) {
      case 'each':
        return Array.from({ length: positions }, (_, each) => each === position);
      case 'gray': {
        const at = position + skip;
        return bits(at ^ (at >> 1), grayWidth);
      }
      case 'bcd':
        return last > 9
          ? [...bits(number % 10, 4), ...bits(Math.floor(number / 10), last > 19 ? 2 : 1)]
          : bits(number, width);
      case 'binary':
        return bits(number, width);
    }
  };
  return Array.from({ length: positions }, (_, position) => {
    const shown = plain(position);
    if (parity === 'none') return shown;
    const odd = shown.filter(Boolean).length % 2 === 1;
    return [...shown, parity === 'odd' ? !odd : odd];
  });
}

/** Names of those inputs. */
export function codeNames(code: Code, parity: Parity, width: number): string[] {
  const own = parity === 'none' ? width : width - 1;
  const names = Array.from({ length: own }, (_, bit) =>
    code === 'each'
      ? `position ${bit + 1}`
      : code === 'bcd'
        ? `position, ${bit < 4 ? 2 ** bit : 10 * 2 ** (bit - 4)}`
        : code === 'gray'
          ? `position, track ${bit + 1}`
          : `position, ${2 ** bit}`,
  );
  return parity === 'none' ? names : [...names, 'position, parity'];
}
