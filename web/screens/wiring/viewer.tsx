/** One sheet of a diagram to look at and to pick terminals in. */
import { type KeyboardEvent, type MouseEvent, memo, useCallback, useEffect, useMemo, useRef } from 'react';
import {
  type Marks,
  pictureOfSheet,
  type Sheet,
  sheetSize,
  sheetTitle,
} from '../../../engine/circuit/drawing/index.ts';
import type { Element } from '../../../engine/refit/sheets/index.ts';
import { drawNode } from './draw-node.tsx';
import { usePan } from './use-pan.ts';

interface Props {
  readonly sheet: Sheet;
  readonly marks: Marks;
  readonly pinned: ReadonlySet<string>;
  readonly picked: string | undefined;
  /** A terminal to bring into view. */
  readonly seek: string | undefined;
  readonly pick: (terminal: string) => void;
}

export function Viewer({ sheet, marks, pinned, picked, seek, pick }: Props) {
  const narrow = matchMedia('(max-width: 700px)').matches;
  const size = sheetSize(sheet);
  // As high as the sheet wants, within what a screen has.
  const shape = narrow ? 1.15 : Math.min(0.6, Math.max(0.3, size.height / size.width));
  const pan = usePan(size, shape);
  const svg = useRef<SVGSVGElement>(null);
  const group = useRef(0);
  const { frame, showBox } = pan;

  const showGroup = useCallback(
    (number: number): void => {
      const cluster = sheet.clusters[number];
      if (!cluster) return;
      const { at, laid } = cluster;
      const whole = { x: at.x, y: at.y + 30, width: laid.width + 24, height: laid.height + 24 };
      if (!narrow || whole.width <= LEGIBLE) {
        showBox(whole);
        return;
      }
      // Too wide for a phone: it begins at the left, at a size that can be read.
      const [first] = [...laid.pieces].sort((a, b) => a.x - b.x);
      const height = LEGIBLE * shape;
      const y = at.y + 42 + (first ? first.y + first.height / 2 : 0) - height / 2;
      showBox({ x: at.x, y, width: LEGIBLE, height });
    },
    [sheet, showBox, narrow, shape],
  );
  // On a phone the first group is shown large; the whole sheet is one button away.
  useEffect(() => {
    group.current = 0;
    if (narrow) showGroup(0);
  }, [narrow, showGroup]);
  useEffect(() => {
    if (!seek) return;
    for (const { at, laid } of sheet.clusters) {
      const shown =
        laid.pieces.find(({ ports }) => ports.some(({ terminal }) => terminal === seek)) ??
        laid.flags.find(({ flag }) => flag.lines.some(({ joint }) => joint === seek));
      if (!shown) continue;
      showBox({
        x: at.x + shown.x - 120,
        y: at.y + shown.y - 60,
        width: shown.width + 260,
        height: shown.height + 200,
      });
      return;
    }
  }, [seek, sheet, showBox]);
  useEffect(() => {
    const element = svg.current;
    if (!element) return;
    const onWheel = (event: WheelEvent): void => {
      // Without a key held the wheel moves the page, as everywhere.
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const rect = element.getBoundingClientRect();
      const now = element.viewBox.baseVal;
      pan.zoom(event.deltaY < 0 ? 0.85 : 1.18, {
        x: now.x + ((event.clientX - rect.left) / rect.width) * now.width,
        y: now.y + ((event.clientY - rect.top) / rect.height) * now.height,
      });
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [pan.zoom]);

  const turn = (by: number): void => {
    const count = sheet.clusters.length;
    group.current = (group.current + by + count) % count;
    showGroup(group.current);
  };
  const terminalAt = (target: EventTarget): string | undefined =>
    (target as HTMLElement).closest?.('[data-terminal]')?.getAttribute('data-terminal') ?? undefined;
  const onClick = (event: MouseEvent): void => {
    const terminal = terminalAt(event.target);
    if (terminal && !pan.wasDrag()) pick(terminal);
  };
  const onKeyDown = (event: KeyboardEvent<SVGSVGElement>): void => {
    const terminal = terminalAt(event.target);
    if (terminal && (event.key === 'Enter' || event.key === ' ')) {
      event.preventDefault();
      pick(terminal);
      return;
    }
    const step = STEPS[event.key];
    if (step) {
      event.preventDefault();
      if (terminal) walk(event.currentTarget, terminal, step);
      else pan.pan(step[0] * 0.15, step[1] * 0.15);
    } else if (event.key === '+' || event.key === '=') pan.zoomIn();
    else if (event.key === '-') pan.zoomOut();
    else if (event.key === '0') pan.showAll();
  };
  return (
    <section className="wiring-viewer" aria-label={`Diagram ${sheetTitle(sheet)}`}>
      <div className="row" role="toolbar" aria-label="Move and enlarge the diagram">
        <button type="button" onClick={pan.zoomIn} aria-label="Larger">
          +
        </button>
        <button type="button" onClick={pan.zoomOut} aria-label="Smaller">
          −
        </button>
        <button type="button" onClick={pan.showAll}>
          Whole sheet
        </button>
        <button type="button" onClick={() => pan.pan(-0.25, 0)} aria-label="Look further left">
          ←
        </button>
        <button type="button" onClick={() => pan.pan(0.25, 0)} aria-label="Look further right">
          →
        </button>
        <button type="button" onClick={() => pan.pan(0, -0.25)} aria-label="Look further up">
          ↑
        </button>
        <button type="button" onClick={() => pan.pan(0, 0.25)} aria-label="Look further down">
          ↓
        </button>
        {sheet.clusters.length > 1 && (
          <>
            <button type="button" onClick={() => turn(-1)}>
              Group before
            </button>
            <button type="button" onClick={() => turn(1)}>
              Next group
            </button>
          </>
        )}
      </div>
      <svg
        ref={svg}
        className="diagram wiring-diagram"
        viewBox={`${frame.x} ${frame.y} ${frame.width} ${frame.height}`}
        style={{ aspectRatio: `1 / ${shape}` }}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a picture larger than its window is moved by keys
        tabIndex={0}
        role="application"
        aria-label="The diagram. Arrow keys move it, plus and minus change its size; Tab goes to its terminals."
        onClick={onClick}
        onKeyDown={onKeyDown}
        {...pan.handlers}
      >
        <Inner sheet={sheet} marks={marks} pinned={pinned} picked={picked} />
      </svg>
    </section>
  );
}

/** Units of the drawing across a phone at which its letters can be read. */
const LEGIBLE = 420;

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** From one terminal to the nearest that way. */
function walk(svg: SVGSVGElement, from: string, [dx, dy]: readonly [number, number]): void {
  const all = [...svg.querySelectorAll<SVGGElement>('[data-terminal]')].map((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { element, x: left + width / 2, y: top + height / 2 };
  });
  const own = all.find(({ element }) => element.dataset.terminal === from);
  if (!own) return;
  let best: (typeof all)[number] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const each of all) {
    const [x, y] = [each.x - own.x, each.y - own.y];
    const along = x * dx + y * dy;
    if (each === own || along <= 1) continue;
    const far = along + 3 * Math.abs(x * dy + y * dx);
    if (far < least) [least, best] = [far, each];
  }
  best?.element.focus();
}

interface InnerProps {
  readonly sheet: Sheet;
  readonly marks: Marks;
  readonly pinned: ReadonlySet<string>;
  readonly picked: string | undefined;
}

/** Drawn anew only when what it shows changes, not while it is moved. */
const Inner = memo(function Inner({ sheet, marks, pinned, picked }: InnerProps) {
  const picture = useMemo(
    () =>
      withButtons(pictureOfSheet(sheet, { marks, pinned, picked: new Set(picked ? [picked] : []) }), picked),
    [sheet, marks, pinned, picked],
  );
  return <>{picture.children.map((child, at) => drawNode(child, at))}</>;
});

/** Every terminal as a button; one of them is reached by Tab, the others from it by arrows. */
function withButtons(picture: Element, picked: string | undefined): Element {
  let first = true;
  const visit = (node: Element): Element => {
    const terminal = node.attributes['data-terminal'];
    if (terminal === undefined)
      return {
        ...node,
        children: node.children.map((child) => (typeof child === 'string' ? child : visit(child))),
      };
    const tab = picked === undefined ? first : terminal === picked;
    first = false;
    return {
      ...node,
      attributes: {
        ...node.attributes,
        role: 'button',
        tabIndex: tab ? '0' : '-1',
        'aria-pressed': String(terminal === picked),
        'aria-label': `Terminal ${terminal}`,
      },
    };
  };
  return visit(picture);
}
