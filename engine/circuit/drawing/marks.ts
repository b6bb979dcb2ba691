/** Which wires and terminals a finding speaks of, and how bad it is. */

export type Badness = 'fails' | 'tight' | 'unknown';
export type Marks = ReadonlyMap<string, Badness>;

const ORDER: readonly Badness[] = ['fails', 'tight', 'unknown'];
/** A sign beside the colour, for eyes that do not tell colours apart and for printers without any. */
export const SIGN: Readonly<Record<Badness, string>> = { fails: '✕', tight: '!', unknown: '?' };

/** By the id of a wire or a terminal: the worst that is said of it. */
export function marksOf(
  findings: readonly { readonly verdict: string; readonly about: readonly string[] }[],
): Marks {
  const marks = new Map<string, Badness>();
  for (const { verdict, about } of findings) {
    const bad = ORDER.find((each) => each === verdict);
    if (!bad) continue;
    for (const id of about) {
      const before = marks.get(id);
      if (before === undefined || ORDER.indexOf(bad) < ORDER.indexOf(before)) marks.set(id, bad);
    }
  }
  return marks;
}
