/** A laid-out sheet as a picture of lines and letters: the same tree for the screen, for paper and for a file. */
import { type Element, element, type Node } from '../../refit/sheets/node.ts';
import { type Badness, type Marks, SIGN } from './marks.ts';
import { MARK_LETTERS, markOf, shorten, TEXT } from './measure.ts';
import { FLAG_LINE, flagHead, headLines, headOf, JOINT, MARK, OFF } from './pieces.ts';
import { GLYPH, SYMBOLS, WIDE } from './symbols/index.ts';
import type { Box, LaidCluster, LaidFlag, LaidPiece, LaidWire, Point, Port, Sheet } from './types.ts';

/** Room above the first cluster for the name of the sheet. */
const TITLE = 30;
const EDGE = 12;

export interface PictureOptions {
  readonly marks?: Marks;
  /** Terminals with a photo pinned to them. */
  readonly pinned?: ReadonlySet<string>;
  /** A terminal or wire that is picked out. */
  readonly picked?: ReadonlySet<string>;
}

/** Every text of a sheet with the rectangle it lies in, and every device, for those who look whether anything covers anything. */
export interface Placed {
  readonly kind: 'device' | 'text';
  readonly owner: string;
  readonly box: Box;
}

export const sheetTitle = ({ title, number, of }: Sheet): string =>
  of > 1 ? `${title}, ${number} of ${of}` : title;

export const sheetSize = ({ width, height }: Sheet): { readonly width: number; readonly height: number } => ({
  width: Math.max(width, 300) + 2 * EDGE,
  height: height + TITLE + 2 * EDGE,
});

export function pictureOfSheet(sheet: Sheet, options: PictureOptions = {}): Element {
  const { width, height } = sheetSize(sheet);
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'diagram',
      viewBox: `0 0 ${width} ${height}`,
      role: 'group',
      'aria-label': `Diagram: ${sheetTitle(sheet)}`,
    },
    element('text', { class: 'sheet-title', x: String(EDGE), y: String(EDGE + 14) }, sheetTitle(sheet)),
    sheet.clusters.map(({ at, laid }) =>
      element(
        'g',
        { transform: `translate(${EDGE + at.x} ${EDGE + TITLE + at.y})` },
        laid.wires.map((wire) => drawWire(wire, options)),
        laid.stubs.map((points) => element('path', { class: 'line wire', d: lineOf(points) })),
        laid.joints.map(({ x, y }) =>
          element('circle', { class: 'solid', cx: String(x), cy: String(y), r: '2.4' }),
        ),
        laid.flags.map((flag) => drawFlag(flag, options)),
        laid.pieces.map((piece) => drawPiece(piece, options)),
      ),
    ),
  );
}

const text = (x: number, y: number, words: string, kind: string, anchor = 'start'): Element =>
  element('text', { class: kind, x: String(x), y: String(y), 'text-anchor': anchor }, words);

const lineOf = (points: readonly Point[]): string =>
  points.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${x} ${y}`).join('');

const signOf = (bad: Badness | undefined, x: number, y: number): readonly Node[] =>
  bad ? [text(x, y, SIGN[bad], `sign ${bad}`)] : [];

const classes = (...names: readonly (string | false | undefined)[]): string =>
  names.filter(Boolean).join(' ');

function drawWire({ wire, points, label }: LaidWire, { marks, picked }: PictureOptions): Element {
  const bad = marks?.get(wire.id);
  return element(
    'g',
    { class: classes('wire-group', bad, picked?.has(wire.id) && 'picked'), 'data-wire': wire.id },
    element('title', {}, `${wire.label}: ${wire.from} to ${wire.to}`),
    element('path', { class: 'line wire', d: lineOf(points) }),
    signOf(bad, label.x, label.y + TEXT.small),
    text(label.x + MARK, label.y + TEXT.small, wire.label, 'small'),
  );
}

function drawFlag({ flag, side, x, y, width, height }: LaidFlag, options: PictureOptions): Element {
  const { marks, picked } = options;
  const way = side === 'left' ? -1 : 1;
  const head = flagHead(flag);
  const first = y + (head ? 13 : 1);
  const edge = side === 'left' ? x + width : x;
  return element(
    'g',
    { class: classes('flag', flag.rail?.role), 'data-flag': flag.at },
    element('path', { class: 'line', d: `M${edge} ${y + 2}V${y + height - 2}` }),
    head
      ? text(
          side === 'left' ? x + width - 7 : x + 7,
          y + 11,
          head,
          'title',
          side === 'left' ? 'end' : 'start',
        )
      : undefined,
    flag.lines.map(({ wire, text: words, joint }, at) => {
      const bad = marks?.get(wire);
      const base = first + 10 + at * 12;
      const line = `${bad ? `${SIGN[bad]} ` : ''}${shorten(words, FLAG_LINE)}`;
      const start = edge + way * (7 + (joint ? JOINT : 0));
      return element(
        'g',
        {
          class: classes('flag-line', bad, picked?.has(wire) && 'picked'),
          ...(wire ? { 'data-wire': wire } : {}),
        },
        joint ? drawJoint(joint, edge, edge + way * JOINT, base - 3, options) : undefined,
        text(start, base, line, 'small', side === 'left' ? 'end' : 'start'),
      );
    }),
  );
}

/** The terminal of a strip in line with its wire. */
function drawJoint(
  terminal: string,
  from: number,
  x: number,
  y: number,
  { marks, picked, pinned }: PictureOptions,
): Element {
  const bad = marks?.get(terminal);
  return element(
    'g',
    { class: classes('terminal', bad, picked?.has(terminal) && 'picked'), 'data-terminal': terminal },
    element('circle', { class: 'hit', cx: String(x), cy: String(y), r: '6' }),
    element('path', { class: 'line', d: `M${from} ${y}H${x + (from < x ? -3.2 : 3.2)}` }),
    element('circle', { class: 'line', cx: String(x), cy: String(y), r: '3.2' }),
    pinned?.has(terminal) ? element('path', { class: 'pin', d: `M${x - 2} ${y - 2}h4v4h-4z` }) : undefined,
    bad ? element('circle', { class: `ring ${bad}`, cx: String(x), cy: String(y), r: '5' }) : undefined,
  );
}

function drawPiece(laid: LaidPiece, options: PictureOptions): Element {
  const { piece, x, y, width, height, ports } = laid;
  const lines = headLines(piece);
  const head = headOf(piece);
  const bad = options.marks?.get(piece.device);
  return element(
    'g',
    { class: classes('device', bad), 'data-device': piece.device, transform: `translate(${x} ${y})` },
    element(
      'title',
      {},
      `${piece.device}${piece.name ? `: ${piece.name}` : ''} (${SYMBOLS[piece.group.symbol].name})`,
    ),
    signOf(bad, 0, 11),
    lines.map((line, at) => text(MARK, at === 0 ? 11 : 11 + at * 12, line, at === 0 ? 'title' : 'small')),
    symbolOf(laid, head, width, height),
    ports.flatMap((port) => drawPort(laid, port, options) ?? []),
  );
}

function symbolOf(
  { piece: { group }, ports }: LaidPiece,
  head: number,
  width: number,
  height: number,
): Node[] {
  const spec = SYMBOLS[group.symbol];
  const glyph = (dx: number, dy: number, turned = false): Element =>
    element(
      'g',
      { class: 'symbol', transform: `translate(${dx} ${dy})${turned ? ' scale(-1 1)' : ''}` },
      spec.draw(),
    );
  if ('points' in group) {
    const y = ports[0]!.y;
    const near = group.symbol === 'terminal' ? 4 : 9;
    const leads = ports.map(({ side }) =>
      side === 'left' ? `M0 ${y}H${width / 2 - near}` : `M${width / 2 + near} ${y}H${width}`,
    );
    return [element('path', { class: 'line', d: leads.join('') }), glyph(width / 2, y)];
  }
  if ('box' in group) {
    const frame = element('path', { class: 'line frame', d: `M0 ${head}H${width}V${height}H0Z` });
    return group.symbol === 'box'
      ? [frame]
      : [frame, glyph(glyphX(group.box, ports, width), (head + height) / 2)];
  }
  const left = (width - WIDE) / 2;
  const rows = group.poles.map(([a, b]) => {
    const pa = ports.find((port) => port.terminal === a)!;
    const pb = ports.find((port) => port.terminal === b)!;
    const turned = pa.x > pb.x;
    return [
      element('path', { class: 'line', d: `M0 ${pa.y}H${left}M${left + WIDE} ${pa.y}H${width}` }),
      glyph(turned ? left + WIDE : left, pa.y, turned),
    ];
  });
  const ys = group.poles.map(([a]) => ports.find((port) => port.terminal === a)!.y);
  const link =
    spec.linked && ys.length > 1
      ? [
          element('path', {
            class: 'line dashed',
            d: `M${width / 2} ${Math.min(...ys) - 4}V${Math.max(...ys) - 5}`,
          }),
        ]
      : [];
  return [...rows.flat(), ...link];
}

/** Between the marks of both sides. */
function glyphX(box: readonly string[], ports: readonly Port[], width: number): number {
  const room = (side: 'left' | 'right') =>
    ports
      .filter((port) => port.side === side && box.includes(port.terminal))
      .reduce((most, { terminal }) => Math.max(most, shorten(markOf(terminal), MARK_LETTERS).length), 0);
  const unit = TEXT.small * 0.62;
  const [left, right] = [room('left') * unit, room('right') * unit];
  return Math.min(Math.max((width + left - right) / 2, left + GLYPH / 2 + 6), width - right - GLYPH / 2 - 6);
}

/** A terminal: the point a wire meets, its mark, and room to hit it with a finger. */
function drawPort(
  laid: LaidPiece,
  port: Port,
  { marks, picked, pinned }: PictureOptions,
): Element | undefined {
  const { piece } = laid;
  const isPoint = 'points' in piece.group;
  // A point has a port on either side; it is one terminal all the same.
  if (isPoint && port !== laid.ports[0]) return undefined;
  const bad = marks?.get(port.terminal);
  const place = markPlace(laid, port);
  const x = isPoint ? laid.width / 2 : port.x;
  return element(
    'g',
    {
      class: classes('terminal', bad, picked?.has(port.terminal) && 'picked'),
      'data-terminal': port.terminal,
    },
    element('circle', { class: 'hit', cx: String(x), cy: String(port.y), r: '9' }),
    isPoint ? undefined : element('circle', { class: 'end', cx: String(x), cy: String(port.y), r: '2' }),
    isPoint
      ? undefined
      : text(place.x, place.y, shorten(markOf(port.terminal), MARK_LETTERS), 'small', place.anchor),
    pinned?.has(port.terminal)
      ? element('path', { class: 'pin', d: `M${x - 3} ${port.y + 4}h6v5h-6z` })
      : undefined,
    bad
      ? element('circle', { class: `ring ${bad}`, cx: String(x), cy: String(port.y), r: isPoint ? '6' : '4' })
      : undefined,
  );
}

function markPlace({ piece }: LaidPiece, port: Port): { x: number; y: number; anchor: 'start' | 'end' } {
  const inwards = port.side === 'left' ? 1 : -1;
  const anchor = port.side === 'left' ? 'start' : 'end';
  return 'box' in piece.group
    ? { x: port.x + OFF.box * inwards, y: port.y + 3, anchor }
    : { x: port.x + OFF.pole * inwards, y: port.y - 4, anchor };
}

/** Where every device and every text of a cluster lies. */
export function placesOf({ pieces, flags, wires }: LaidCluster): readonly Placed[] {
  return [
    ...pieces.map(
      ({ piece, x, y, width, height }): Placed => ({
        kind: 'device',
        owner: piece.id,
        box: { x, y, width, height },
      }),
    ),
    ...flags.map(
      ({ flag, x, y, width, height }): Placed => ({
        kind: 'text',
        owner: flag.id,
        box: { x, y, width, height },
      }),
    ),
    ...wires.map(({ wire, label }): Placed => ({ kind: 'text', owner: wire.id, box: label })),
  ];
}
