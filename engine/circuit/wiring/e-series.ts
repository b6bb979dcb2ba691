/** Values resistors are sold in. */

/** IEC 60063, series E24: twenty-four values a decade. */
const E24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8,
  7.5, 8.2, 9.1,
] as const;

/** Ratings resistors are sold in, in W; common practice, no source. */
const WATTS = [0.25, 0.5, 1, 2, 5, 10, 25, 50, 100] as const;

/** The largest value of the series not above `ohms`, which must be above zero. */
export function e24Below(ohms: number): number {
  const decade = 10 ** Math.floor(Math.log10(ohms) + 1e-12);
  const within = ohms / decade;
  const best = E24.filter((each) => each <= within * (1 + 1e-9)).at(-1) ?? 9.1 / 10;
  return Number((best * decade).toPrecision(3));
}

/** The smallest value of the series not below `ohms`. */
export function e24Above(ohms: number): number {
  const below = e24Below(ohms);
  if (below >= ohms * (1 - 1e-9)) return below;
  const decade = 10 ** Math.floor(Math.log10(below) + 1e-12);
  const at = E24.findIndex((each) => Math.abs(each - below / decade) < 1e-6);
  return Number(((E24[at + 1] ?? 10) * decade).toPrecision(3));
}

/** The smallest rating of at least twice the power, in W: a resistor at its rating is hot enough to burn. */
export const ratingFor = (watts: number): number => WATTS.find((each) => each >= 2 * watts) ?? 2 * watts;
