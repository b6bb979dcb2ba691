/** Against which terminal each net is measured: the minus or neutral of what feeds it. */
import type { Guards } from '../power/guards.ts';
import type { Source } from '../power/sources.ts';
import type { ReadWiring } from '../wiring/types.ts';

export interface Commons {
  /** 0 V of the control supply. */
  readonly main?: string;
  readonly earth?: string;
  /** By net. */
  readonly of: ReadonlyMap<string, string>;
  /** Nets that carry alternating current. */
  readonly alternating: ReadonlySet<string>;
}

export function commonsOf(
  wiring: ReadWiring,
  sources: readonly Source[],
  guards: Guards,
  returns: Guards,
): Commons {
  const direct = sources.filter(({ ac, back }) => !ac && back.length > 0);
  const reach = (source: Source): number => {
    const net = wiring.netOf.get(source.back[0]!);
    return net?.terminals.length ?? 0;
  };
  // The control's 0 V is the one most hangs on, of those of up to 30 V if there is one.
  const low = direct.filter(({ volts }) => volts !== undefined && volts <= 30);
  const main = [...(low.length > 0 ? low : direct)].sort(
    (a, b) => reach(b) - reach(a) || (a.id < b.id ? -1 : 1),
  )[0]?.back[0];
  const earths = [...wiring.terminals.values()].filter(({ nature }) => nature.kind === 'earth');
  const rank = { bar: 0, source: 1, device: 2, metal: 3, passes: 4 } as const;
  const earth = earths.sort((a, b) => {
    const [x, y] = [a.nature, b.nature];
    return x.kind === 'earth' && y.kind === 'earth'
      ? rank[x.role] - rank[y.role] || (a.id < b.id ? -1 : 1)
      : 0;
  })[0]?.id;
  const of = new Map<string, string>();
  const alternating = new Set<string>();
  for (const net of wiring.nets) {
    const source =
      first(net.terminals, (id) => guards.terminals.get(id)?.source) ??
      first(net.terminals, (id) => returns.terminals.get(id)?.source);
    const own = first(net.terminals, (id) => wiring.terminals.get(id)?.common ?? undefined);
    const back = source?.back[0] ?? own ?? main;
    if (back !== undefined) of.set(net.id, back);
    if (source?.ac === true) alternating.add(net.id);
  }
  return {
    ...(main === undefined ? {} : { main }),
    ...(earth === undefined ? {} : { earth }),
    of,
    alternating,
  };
}

function first<T>(ids: readonly string[], of: (id: string) => T | undefined): T | undefined {
  for (const id of ids) {
    const found = of(id);
    if (found !== undefined) return found;
  }
  return undefined;
}
