/** Who gets what: demands of several sorts shared among supplies of several sorts, of which some serve some. */

/**
 * How much of each demand each supply takes, so that as much as possible is served in all (largest flow, by ways that give
 * more). `serves[d][s]`: whether supply s can serve demand d. Earlier supplies of a demand are taken first.
 */
export function share(
  demands: readonly number[],
  supplies: readonly number[],
  serves: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const given = demands.map(() => supplies.map(() => 0));
  const left = [...supplies];
  const open = [...demands];
  /** A way from demand d to something left, over demands that can give way; returns how much goes along it. */
  const push = (d: number, wish: number, seen: Set<number>): number => {
    for (const s of serves[d]!) {
      if (seen.has(s)) continue;
      seen.add(s);
      if (left[s]! > 0) {
        const now = Math.min(wish, left[s]!);
        left[s]! -= now;
        given[d]![s]! += now;
        return now;
      }
      for (let other = 0; other < demands.length; other++) {
        const held = other === d ? 0 : given[other]![s]!;
        if (held === 0) continue;
        const moved = push(other, Math.min(wish, held), seen);
        if (moved > 0) {
          given[other]![s]! -= moved;
          given[d]![s]! += moved;
          return moved;
        }
      }
    }
    return 0;
  };
  for (let d = 0; d < demands.length; d++)
    while (open[d]! > 0) {
      const now = push(d, open[d]!, new Set());
      if (now === 0) break;
      open[d]! -= now;
    }
  return given;
}
