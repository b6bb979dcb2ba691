/** How each line of a chart is drawn. The pattern tells lines apart without colour; the colour only helps. */
import type { Role, Series } from '../../engine/assess/pictures/index.ts';

export interface Stroke {
  readonly colour: string;
  readonly dash: string | undefined;
  readonly width: number;
}

const STROKES: Readonly<
  Record<Role, { colour: string; dashes: readonly (string | undefined)[]; width: number }>
> = {
  low: { colour: 'var(--ink)', dashes: [undefined], width: 2.4 },
  nominal: { colour: 'var(--ink)', dashes: ['9 5', '14 3 3 3'], width: 1.8 },
  high: { colour: 'var(--ink)', dashes: ['2 4'], width: 1.8 },
  limit: { colour: 'var(--ink)', dashes: ['14 4 2 4', '5 3', '14 4 2 4 2 4'], width: 1.8 },
  asked: { colour: 'var(--accent)', dashes: [undefined, '6 4'], width: 2.4 },
};

/** Lines of one role take the patterns of that role in turn; a limit that stands alone is drawn in full. */
export function strokesOf(series: readonly Series[]): Stroke[] {
  const seen = new Map<Role, number>();
  const hasMains = series.some(({ role }) => role === 'low' || role === 'nominal');
  return series.map(({ role }) => {
    const nth = seen.get(role) ?? 0;
    seen.set(role, nth + 1);
    const { colour, dashes, width } = STROKES[role];
    if (role === 'limit' && nth === 0 && !hasMains) return { colour, dash: undefined, width: 2.4 };
    return { colour, dash: dashes[nth % dashes.length], width };
  });
}
