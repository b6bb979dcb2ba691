/** Powers as they are printed: 'kg·m^2' typed is 'kg·m²' shown. */

const RAISED: Readonly<Record<string, string>> = {
  '-': '⁻',
  ...Object.fromEntries([...'⁰¹²³⁴⁵⁶⁷⁸⁹'].map((raised, digit) => [String(digit), raised])),
};

/** Only whole powers of one or two digits that follow a letter or a bracket; all else stays as typed. */
export const raisePowers = (text: string): string =>
  text.replace(/(?<=[\p{L})])\^(-?\d{1,2})(?![\d.])/gu, (_, power: string) =>
    [...power].map((letter) => RAISED[letter]!).join(''),
  );
