/** How large a piece is and where its terminals sit. Everything written of it lies inside its own rectangle. */
import { MARK_LETTERS, markOf, shorten, TEXT, widthOf, wrapped } from './measure.ts';
import { GLYPH, WIDE } from './symbols/index.ts';
import type { Flag, Piece, Port } from './types.ts';

/** Between the rows of terminals. */
export const ROW = 24;
/** From a pole's end to the edge of its piece; at least as much as the terminal's mark. */
const LEAD = 12;
/** Room above for the marks of terminals that stand over their leads. */
const OVER = 12;
/** From a port to its mark, clear of the ring that points out a finding. */
export const OFF = { pole: 6, box: 7 } as const;
/** Room of a mark that points out a finding. */
export const MARK = 14;

export interface PieceSize {
  readonly width: number;
  readonly height: number;
  /** Height of the lines of text above the symbol. */
  readonly head: number;
  /** Of the poles: where the symbol begins. */
  readonly left: number;
  /** Absent where the layout may put them in any order. */
  readonly ports: readonly Port[];
  readonly free: boolean;
}

/** Longest line that says where else something is drawn. */
const REFERENCE = 34;

export const headLines = ({ device, name, group, refers }: Piece): readonly string[] =>
  'points' in group
    ? [
        `${shorten(device)}:${shorten(markOf(group.points[0]!), MARK_LETTERS)}`,
        ...refers.flatMap((each) => wrapped(each, REFERENCE)),
      ]
    : [shorten(device), ...wrapped(name), ...refers.flatMap((each) => wrapped(each, REFERENCE))];

/** Height of what is written over a piece. */
export const headOf = (piece: Piece): number =>
  headLines(piece).reduce((sum, _, at) => sum + (at === 0 ? 14 : 12), 2);

/** `sideOf` says on which side a terminal of a box, or of a pole that may be turned, meets its neighbours. */
export function sizeOf(piece: Piece, sideOf: (terminal: string) => 'left' | 'right'): PieceSize {
  const lines = headLines(piece);
  const head = headOf(piece);
  const text = Math.max(...lines.map((line, at) => widthOf(line, at === 0 ? TEXT.title : TEXT.small))) + MARK;
  const { group } = piece;
  if ('points' in group) {
    const width = Math.max(24, text);
    const terminal = group.points[0]!;
    const y = head + 10;
    return {
      width,
      height: head + 20,
      head,
      left: width / 2,
      free: false,
      ports: [
        { terminal, side: 'left', x: 0, y },
        { terminal, side: 'right', x: width, y },
      ],
    };
  }
  if ('poles' in group) {
    const turned = isTurned(group.poles, sideOf);
    const mark = Math.max(
      ...group.poles.flat().map((each) => widthOf(shorten(markOf(each), MARK_LETTERS), TEXT.small)),
    );
    const lead = Math.max(LEAD, mark + OFF.pole + 2);
    const width = Math.max(WIDE + 2 * lead, text);
    const left = (width - WIDE) / 2;
    return {
      width,
      height: head + OVER + (group.poles.length - 1) * (ROW + 6) + 20,
      head,
      left,
      free: false,
      ports: group.poles.flatMap(([a, b], row): readonly Port[] => {
        const y = head + OVER + 6 + row * (ROW + 6);
        const [first, second] = turned ? [b, a] : [a, b];
        return [
          { terminal: first, side: 'left', x: 0, y },
          { terminal: second, side: 'right', x: width, y },
        ];
      }),
    };
  }
  const sides = { left: [] as string[], right: [] as string[] };
  for (const each of group.box) sides[sideOf(each)].push(each);
  const widest = (side: readonly string[]) =>
    side.reduce((most, each) => Math.max(most, widthOf(shorten(markOf(each), MARK_LETTERS), TEXT.small)), 0);
  const rows = Math.max(sides.left.length, sides.right.length, 1);
  const hasGlyph = group.symbol !== 'box';
  return {
    width: Math.max(
      widest(sides.left) + widest(sides.right) + 2 * OFF.box + (hasGlyph ? GLYPH + 12 : 14),
      text,
      48,
    ),
    height: head + Math.max(rows * ROW, hasGlyph ? GLYPH + 8 : ROW),
    head,
    left: 0,
    free: true,
    ports: [
      ...sides.left.map((terminal): Port => ({ terminal, side: 'left', x: 0, y: 0 })),
      ...sides.right.map((terminal): Port => ({ terminal, side: 'right', x: 0, y: 0 })),
    ],
  };
}

/** A pole is turned where most of its right terminals belong on the left. */
export const isTurned = (
  poles: readonly (readonly [string, string])[],
  sideOf: (terminal: string) => 'left' | 'right',
): boolean => {
  let wish = 0;
  for (const [a, b] of poles) {
    const [at, bt] = [sideOf(a), sideOf(b)];
    if (at !== bt) wish += at === 'right' ? 1 : -1;
  }
  return wish > 0;
};

/** Longest line of a flag. */
export const FLAG_LINE = 90;
/** Room of a strip's terminal before its line. */
export const JOINT = 12;

/** Flags are a name over a line a wire. */
export const flagHead = ({ rail }: Flag): string => (rail ? shorten(rail.name, 30) : '');
export function flagSize(flag: Flag): { readonly width: number; readonly height: number } {
  const head = flagHead(flag);
  const widths = [
    widthOf(head, TEXT.title),
    ...flag.lines.map(
      ({ text, joint }) => widthOf(shorten(text, FLAG_LINE), TEXT.small) + MARK + (joint ? JOINT : 0),
    ),
  ];
  return {
    width: Math.max(...widths) + 18,
    height: (head ? 14 : 2) + flag.lines.length * 12 + 4,
  };
}
