/** Words in front of or behind a length that say which length it is: ø, radius, pitch, lead, 3-start. */

export type LengthOf = 'diameter' | 'radius' | 'pitch' | 'lead';

export interface Wording {
  /** What is left to be read as number and unit. */
  readonly text: string;
  readonly of?: LengthOf;
  readonly starts?: number;
}

const FRONT: readonly (readonly [RegExp, LengthOf])[] = [
  [/^(?:[øØ⌀φ∅] ?|(?:diameter|dia\.?)[ :=]*|D ?[:=]? ?(?=[\d.,]))/, 'diameter'],
  [/^(?:radius[ :=]*|rad\.?[ :=]+(?=[\d.,])|R ?[:=]? ?(?=[\d.,]))/, 'radius'],
  [/^pitch[ :=]*/, 'pitch'],
  [/^lead[ :=]*/, 'lead'],
];
const BACK = / (diameter|dia|radius|pitch|lead)\.?$/i;
const STARTS = /^(\d{1,2}|single|double|triple|two|three|four)[ -]?start(?:s|ed)?\b,? ?(?=[a-z.,\d])/i;
const NUMBERS: Readonly<Record<string, number>> = {
  single: 1,
  double: 2,
  two: 2,
  triple: 3,
  three: 3,
  four: 4,
};
const BACKWARDS: Readonly<Record<string, LengthOf>> = {
  diameter: 'diameter',
  dia: 'diameter',
  radius: 'radius',
  pitch: 'pitch',
  lead: 'lead',
};

/** Takes such words off a normalised text. */
export function takeWording(text: string): Wording {
  const started = STARTS.exec(text);
  const rest = started ? text.slice(started[0].length) : text;
  const starts = started ? (NUMBERS[started[1]!.toLowerCase()] ?? Number(started[1])) : 0;
  const known = starts > 0 ? { starts } : {};
  const small =
    /^[A-Z]/.test(rest) && /^(?:dia|rad|pit|lea)/i.test(rest) ? rest[0]!.toLowerCase() + rest.slice(1) : rest;
  for (const [pattern, of] of FRONT) {
    const found = pattern.exec(small);
    if (found && found[0].length < small.length) return { text: small.slice(found[0].length), of, ...known };
  }
  const behind = BACK.exec(rest);
  if (behind)
    return { text: rest.slice(0, behind.index), of: BACKWARDS[behind[1]!.toLowerCase()]!, ...known };
  return { text: rest, ...known };
}
