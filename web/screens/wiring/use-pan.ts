/** Moving and enlarging a picture: by buttons, keys, wheel, mouse and fingers. */
import { type PointerEvent, useCallback, useEffect, useRef, useState } from 'react';

export interface Frame {
  /** Left and top edge of what is seen, and its width, in units of the picture. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

const CLOSEST = 120;
const STEP = 0.8;

export function usePan(whole: Size, shape: number) {
  const full = useCallback((): Frame => {
    const width = Math.max(whole.width, whole.height / shape);
    return { x: 0, y: 0, width, height: width * shape };
  }, [whole.width, whole.height, shape]);
  const [frame, setFrame] = useState<Frame>(full);
  useEffect(() => setFrame(full()), [full]);
  const pointers = useRef(new Map<number, { x: number; y: number }>());
  const moved = useRef(false);

  const zoom = useCallback(
    (by: number, at?: { x: number; y: number }): void =>
      setFrame((now) => {
        const width = Math.min(Math.max(now.width * by, CLOSEST), full().width * 1.2);
        const height = width * shape;
        const { x, y } = at ?? { x: now.x + now.width / 2, y: now.y + now.height / 2 };
        return {
          x: x - ((x - now.x) / now.width) * width,
          y: y - ((y - now.y) / now.height) * height,
          width,
          height,
        };
      }),
    [full, shape],
  );
  const pan = useCallback(
    (right: number, down: number): void =>
      setFrame((now) => ({ ...now, x: now.x + right * now.width, y: now.y + down * now.height })),
    [],
  );
  const showBox = useCallback(
    (box: Frame): void => {
      const width = Math.max(box.width, box.height / shape, CLOSEST);
      const height = width * shape;
      setFrame({
        x: box.x + box.width / 2 - width / 2,
        y: box.y + box.height / 2 - height / 2,
        width,
        height,
      });
    },
    [shape],
  );

  const onPointerDown = (event: PointerEvent<SVGSVGElement>): void => {
    pointers.current.set(event.pointerId, { x: event.clientX, y: event.clientY });
    moved.current = false;
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    const before = pointers.current.get(event.pointerId);
    if (!before) return;
    const now = { x: event.clientX, y: event.clientY };
    const rect = event.currentTarget.getBoundingClientRect();
    if (pointers.current.size === 2) {
      const [other] = [...pointers.current].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
      const was = Math.hypot(before.x - other!.x, before.y - other!.y);
      const is = Math.hypot(now.x - other!.x, now.y - other!.y);
      if (is > 0) zoom(was / is);
      moved.current = true;
    } else {
      const [dx, dy] = [now.x - before.x, now.y - before.y];
      if (Math.hypot(dx, dy) < 3 && !moved.current) return;
      moved.current = true;
      pan(-dx / rect.width, -dy / rect.height);
    }
    pointers.current.set(event.pointerId, now);
  };
  const onPointerUp = (event: PointerEvent<SVGSVGElement>): void => {
    pointers.current.delete(event.pointerId);
  };

  return {
    frame,
    zoomIn: () => zoom(STEP),
    zoomOut: () => zoom(1 / STEP),
    pan,
    zoom,
    showAll: () => setFrame(full()),
    showBox,
    /** Whether the last press was a drag and no click. */
    wasDrag: () => moved.current,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel: onPointerUp,
      onPointerLeave: onPointerUp,
    },
  };
}
