/** Where things stand in the drawing of a travel: its end zones, labels that do not run into each other, a bar for the scale. */
import type { AxisDistances, Mark } from '../../../engine/circuit/stop/index.ts';

/** A mark that has a place in the drawing, known or wanted, in metres from the lower hard stop. */
export interface Placed {
  readonly mark: Mark;
  readonly at: number;
  readonly known: boolean;
}

/** A stretch of the travel, metres. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export function placedMarks({ marks, travel }: AxisDistances): readonly Placed[] {
  return marks
    .flatMap((mark): Placed[] => {
      const at = mark.at ?? mark.needed;
      return at === undefined || travel === undefined || at < 0 || at > travel
        ? []
        : [{ mark, at, known: mark.at !== undefined }];
    })
    .sort((a, b) => a.at - b.at);
}

/** More of the travel than this is not drawn large: it is large enough as it is. */
const LARGEST_ZONE = 0.4;
/** A home switch no further in than this many times the rest of an end belongs to it. */
const HOME_NEAR = 2.5;
/** Beyond the innermost mark, and behind the hard stop, as a share of the zone. */
const MARGIN = 0.12;

/** The zone at each end in which its marks stand; none where there are none or where it is no small part of the travel. */
export function endZones({
  travel,
  marks,
  runOn,
}: AxisDistances): Readonly<Record<'low' | 'high', Stretch | undefined>> {
  const placed = placedMarks({ travel, marks, runOn } as AxisDistances);
  const zone = (high: boolean): Stretch | undefined => {
    if (travel === undefined) return undefined;
    const depth = (at: number) => (high ? travel - at : at);
    const own = placed.filter(
      ({ mark: { id } }) => id === `limit-${high ? 'high' : 'low'}` || id === `soft-${high ? 'high' : 'low'}`,
    );
    if (own.length === 0) return undefined;
    const run = runOn !== undefined && runOn < travel * LARGEST_ZONE ? runOn : 0;
    let deep = Math.max(run, ...own.map(({ at }) => depth(at)));
    const home = placed.find(({ mark }) => mark.id === 'home');
    if (home && depth(home.at) <= HOME_NEAR * deep) deep = Math.max(deep, depth(home.at));
    if (!(deep > 0) || deep > LARGEST_ZONE * travel) return undefined;
    const [inner, outer] = [deep * (1 + MARGIN), deep * MARGIN];
    return high ? { from: travel - inner, to: travel + outer } : { from: -outer, to: inner };
  };
  return { low: zone(false), high: zone(true) };
}

export interface LabelAsked {
  /** Pixels from the left. */
  readonly x: number;
  readonly width: number;
}

export interface LabelPlace {
  /** From the top, 0 first. */
  readonly row: number;
  /** 'start' stands to the right of its line, 'end' to the left. */
  readonly anchor: 'start' | 'end';
}

type Anchor = LabelPlace['anchor'];

/**
 * Each label hangs on a line that goes down from its mark. None covers another, and no line goes through a label: one that lies
 * over another's line hangs lower than that line reaches. Of all ways to turn them, one with the fewest rows. Where there is none,
 * each has a row of its own.
 */
export function hangLabels(asked: readonly LabelAsked[], width: number): readonly LabelPlace[] {
  const choices = asked.map(({ x, width: own }): readonly Anchor[] => {
    const fits: readonly Anchor[] = [
      ...(x + own <= width ? (['start'] as const) : []),
      ...(x - own >= 0 ? (['end'] as const) : []),
    ];
    return fits.length > 0 ? fits : [x < width / 2 ? 'start' : 'end'];
  });
  let best: readonly LabelPlace[] | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const anchors of waysToTurn(choices)) {
    const rows = rowsOf(asked, anchors);
    const most = rows ? Math.max(0, ...rows) : Number.POSITIVE_INFINITY;
    if (!rows || most >= fewest) continue;
    fewest = most;
    best = anchors.map((anchor, n) => ({ anchor, row: rows[n]! }));
  }
  return best ?? choices.map(([anchor], n) => ({ anchor: anchor!, row: asked.length - 1 - n }));
}

function* waysToTurn(choices: readonly (readonly Anchor[])[]): Generator<readonly Anchor[]> {
  const [first, ...rest] = choices;
  if (!first) yield [];
  else for (const anchor of first) for (const others of waysToTurn(rest)) yield [anchor, ...others];
}

/** Undefined where two would each have to hang below the other. */
function rowsOf(asked: readonly LabelAsked[], anchors: readonly Anchor[]): readonly number[] | undefined {
  const boxes = asked.map(
    ({ x, width }, n): Stretch =>
      anchors[n] === 'start' ? { from: x, to: x + width } : { from: x - width, to: x },
  );
  const covers = (i: number, j: number): boolean =>
    asked[j]!.x > boxes[i]!.from && asked[j]!.x < boxes[i]!.to;
  const overlap = (i: number, j: number): boolean =>
    boxes[i]!.from < boxes[j]!.to && boxes[j]!.from < boxes[i]!.to;
  const isBelow = (i: number, j: number): boolean =>
    covers(i, j) || (i < j && !covers(j, i) && overlap(i, j));
  const rows = asked.map(() => 0);
  for (let again = true; again; ) {
    again = false;
    for (const i of asked.keys())
      for (const j of asked.keys()) {
        if (i === j || rows[i]! > rows[j]! || !isBelow(i, j)) continue;
        rows[i] = rows[j]! + 1;
        if (rows[i]! >= asked.length) return undefined;
        again = true;
      }
  }
  return rows;
}

/** A length of one, two or five with noughts that is drawn about a quarter as wide as there is room; metres. */
export function barLength({ from, to }: Stretch): number {
  const wanted = (to - from) / 4;
  const step = 10 ** Math.floor(Math.log10(wanted));
  return ([5, 2, 1].find((each) => each * step <= wanted) ?? 1) * step;
}
