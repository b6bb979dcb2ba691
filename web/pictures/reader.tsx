/** A reading line that is moved along a chart with pointer or arrow keys, and says the values under it. */
import type { KeyboardEvent, PointerEvent } from 'react';
import type { ChartPicture } from '../../engine/assess/pictures/index.ts';
import { convert, formatNumber } from '../../engine/quantity/index.ts';
import { type Frame, heightAt } from './scales.ts';
import { amount } from './words.ts';

const STEPS = 100;
const JUMP = 10;

/** 'at 1200 r/min: mains low 3.2 N·m; …' in the order of the lines. */
export function sayReading(picture: ChartPicture, x: number): string {
  const values = picture.series.flatMap(({ name, points }) => {
    const y = heightAt(points, x);
    return y === undefined ? [] : [`${name} ${amount(y, picture.y.unit)}`];
  });
  const { unit } = picture.x;
  const place = `${formatNumber(convert(x, unit), 4)}${unit === '1' ? '' : ` ${unit}`}`;
  return `At ${place}: ${values.length > 0 ? values.join('; ') : 'no line reaches here'}.`;
}

interface Props {
  readonly picture: ChartPicture;
  readonly frame: Frame;
  readonly reading: number | undefined;
  readonly onRead: (x: number | undefined) => void;
}

export function Reader({ picture, frame, reading, onRead }: Props) {
  const { x, left, right, top, bottom } = frame;
  const [from, to] = [x.value(left), x.value(right)];
  const share = reading === undefined ? 0 : (reading - from) / (to - from);
  const at = (part: number): number => from + (to - from) * Math.min(1, Math.max(0, part));

  const key = (event: KeyboardEvent): void => {
    const moves: Readonly<Record<string, number>> = {
      ArrowRight: share + 1 / STEPS,
      ArrowUp: share + 1 / STEPS,
      ArrowLeft: share - 1 / STEPS,
      ArrowDown: share - 1 / STEPS,
      PageUp: share + JUMP / STEPS,
      PageDown: share - JUMP / STEPS,
      Home: 0,
      End: 1,
    };
    if (event.key === 'Escape') onRead(undefined);
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    onRead(at(move));
  };
  const point = (event: PointerEvent<HTMLDivElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    onRead(at((event.clientX - box.left) / box.width));
  };
  return (
    <div
      className="reader"
      style={{ left, top: top - 6, width: right - left, height: bottom - top + 6 }}
      role="slider"
      tabIndex={0}
      aria-label={`Read the lines of “${picture.title}” along: ${picture.x.name}`}
      aria-valuemin={0}
      aria-valuemax={STEPS}
      aria-valuenow={Math.round(share * STEPS)}
      aria-valuetext={reading === undefined ? 'Use the arrow keys.' : sayReading(picture, reading)}
      onKeyDown={key}
      onPointerMove={point}
      onPointerDown={point}
      onPointerLeave={(event) => event.pointerType === 'mouse' && onRead(undefined)}
    />
  );
}
