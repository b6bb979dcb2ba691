export function byOdex(
  numbers: Readonly<Record<string, number>>,
  until: number,
  tolerance: number,
  marks?: readonly number[],
): {
  peak: number;
  rows: { t: number; following: number; slide: number; speed: number; current: number }[];
};
