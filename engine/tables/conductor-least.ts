/** The thinnest copper allowed by place and use, in mm². */

export type WireUse = 'power' | 'control' | 'data';

const SOURCE = 'IEC 60204-1:2016, Table 5';

export interface LeastArea {
  readonly place: 'inside' | 'outside';
  readonly moved: boolean;
  readonly use: WireUse;
  /** A wire alone, flexible; a core of a two-core cable without and with shield; of three or more cores. */
  readonly single: number;
  readonly twoCores: number;
  readonly twoCoresShielded: number;
  readonly threeCores: number;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const recalled = { source: `${SOURCE} (recalled, check the standard)`, status: 'from memory' } as const;
const quoted = { source: `${SOURCE}, as quoted on a page on least areas`, status: 'published' } as const;

/** Where nothing is asked of a form (data over single wires), the least of the row stands. */
export const LEAST_AREAS: readonly LeastArea[] = [
  {
    place: 'outside',
    moved: false,
    use: 'power',
    single: 1,
    twoCores: 0.75,
    twoCoresShielded: 0.75,
    threeCores: 0.75,
    ...quoted,
  },
  {
    place: 'outside',
    moved: true,
    use: 'power',
    single: 1,
    twoCores: 0.75,
    twoCoresShielded: 0.75,
    threeCores: 0.75,
    ...recalled,
  },
  {
    place: 'outside',
    moved: false,
    use: 'control',
    single: 1,
    twoCores: 0.5,
    twoCoresShielded: 0.2,
    threeCores: 0.2,
    ...recalled,
  },
  {
    place: 'outside',
    moved: true,
    use: 'control',
    single: 1,
    twoCores: 0.5,
    twoCoresShielded: 0.2,
    threeCores: 0.2,
    ...recalled,
  },
  {
    place: 'outside',
    moved: false,
    use: 'data',
    single: 0.08,
    twoCores: 0.08,
    twoCoresShielded: 0.08,
    threeCores: 0.08,
    ...recalled,
  },
  {
    place: 'outside',
    moved: true,
    use: 'data',
    single: 0.08,
    twoCores: 0.08,
    twoCoresShielded: 0.08,
    threeCores: 0.08,
    ...recalled,
  },
  {
    place: 'inside',
    moved: false,
    use: 'power',
    single: 0.75,
    twoCores: 0.75,
    twoCoresShielded: 0.75,
    threeCores: 0.75,
    ...quoted,
  },
  {
    place: 'inside',
    moved: false,
    use: 'control',
    single: 0.2,
    twoCores: 0.2,
    twoCoresShielded: 0.2,
    threeCores: 0.2,
    ...quoted,
  },
  {
    place: 'inside',
    moved: false,
    use: 'data',
    single: 0.08,
    twoCores: 0.08,
    twoCoresShielded: 0.08,
    threeCores: 0.08,
    ...recalled,
  },
];

/** The row and the area of it that applies. */
export function leastArea(
  place: 'inside' | 'outside',
  moved: boolean,
  use: WireUse,
  cable: { readonly cores: number; readonly shielded: boolean } | undefined,
): { readonly area: number; readonly row: LeastArea } {
  const row = LEAST_AREAS.find(
    (each) => each.place === place && each.use === use && each.moved === (place === 'outside' && moved),
  )!;
  if (!cable || cable.cores < 2) return { area: row.single, row };
  if (cable.cores > 2) return { area: row.threeCores, row };
  return { area: cable.shielded ? row.twoCoresShielded : row.twoCores, row };
}
