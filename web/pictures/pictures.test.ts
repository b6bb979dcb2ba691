import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { assess } from '../../engine/assess/index.ts';
import { type ChartPicture, type Picture, pictures } from '../../engine/assess/pictures/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { Chart, drawChart } from './chart.tsx';
import { along, placeLabels } from './labels.ts';
import { PictureCard } from './picture-card.tsx';
import { sayReading } from './reader.tsx';
import { frameOf, heightAt } from './scales.ts';
import { strokesOf } from './strokes.ts';

const all: Picture[] = ['carriage-works-lathe', 'boatyard-mill'].flatMap((id) => {
  const assessment = assess(sample(id));
  return assessment.refit.chains.flatMap((chain) => pictures(assessment, chain.id));
});
const charts = all.filter((picture): picture is ChartPicture => picture.kind === 'chart');
const overlap = (a: { left: number; right: number; top: number; bottom: number }, b: typeof a): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

describe.each([300, 560, 900])('derived: charts %i px wide', (width) => {
  test('every line and mark stands within the frame, every tick apart from its neighbour', () => {
    for (const picture of charts) {
      const { frame, lines } = drawChart(picture, width);
      for (const [x, y] of [
        ...lines.flat(),
        ...picture.marks.map((m) => [frame.x.place(m.x), frame.y.place(m.y)] as const),
      ]) {
        expect(x).toBeGreaterThanOrEqual(frame.left - 0.01);
        expect(x).toBeLessThanOrEqual(frame.right + 0.01);
        expect(y).toBeGreaterThanOrEqual(frame.top - 20);
        expect(y).toBeLessThanOrEqual(frame.bottom + 0.01);
      }
      const gaps = (axis: typeof frame.x) =>
        axis.ticks.slice(1).map(({ at }, i) => Math.abs(at - axis.ticks[i]!.at));
      expect(Math.min(...gaps(frame.x))).toBeGreaterThan(36);
      expect(Math.min(...gaps(frame.y))).toBeGreaterThan(13);
    }
  });

  test('every line and every mark has its name in the drawing, and no two names overlap', () => {
    for (const picture of charts) {
      const { lineLabels, markLabels } = drawChart(picture, width);
      const labels = [...lineLabels, ...markLabels];
      expect(labels.map(({ text }) => text).sort()).toEqual(
        [...picture.series, ...picture.marks].map(({ name }) => name).sort(),
      );
      labels.forEach((label, i) => {
        for (const other of labels.slice(i + 1))
          expect(overlap(label, other), `${picture.title}: ${label.text} over ${other.text}`).toBe(false);
      });
    }
  });
});

test('derived: lines of one picture differ in pattern, colour left aside', () => {
  for (const picture of charts) {
    const seen = strokesOf(picture.series).map(({ dash, colour }) => `${dash} ${colour}`);
    expect(new Set(seen).size).toBe(seen.length);
    // Without colour: a full line may be both what is asked and what is there, told apart by the names at them.
    const dashed = strokesOf(picture.series).flatMap(({ dash, colour }) =>
      dash && colour !== 'var(--accent)' ? [dash] : [],
    );
    expect(new Set(dashed).size).toBe(dashed.length);
  }
});

test('derived: place and value of an axis undo each other', () => {
  for (const picture of charts) {
    const { x } = frameOf(picture, 500);
    const at = picture.marks[0]!.x;
    expect(x.value(x.place(at))).toBeCloseTo(at, 9);
  }
});

test('derived: the height between two points lies on their line, and beyond the ends there is none', () => {
  const points = [
    [0, 0],
    [2, 4],
    [3, 0],
  ] as const;
  expect([-1, 0, 1, 2, 2.5, 3, 4].map((x) => heightAt(points, x))).toEqual([
    undefined,
    0,
    2,
    4,
    2,
    0,
    undefined,
  ]);
  expect(heightAt([], 0)).toBeUndefined();
});

test('derived: a name stands beside a lone line, not on it', () => {
  const line = along([
    [0, 50],
    [300, 50],
  ]);
  const frame = { left: 0, right: 300, top: 0, bottom: 100 };
  const [label] = placeLabels([{ text: 'a line', at: line, own: 0 }], [line], [], frame);
  expect(label!.on).toBe(false);
  expect(label!.bottom < 50 || label!.top > 50).toBe(true);
});

test('derived: a chart says its answer to those who do not see it', () => {
  const picture = charts[0]!;
  const html = renderToStaticMarkup(createElement(Chart, { picture, width: 400, reading: undefined }));
  expect(html).toContain('role="img"');
  expect(html).toContain(`aria-label="${picture.title}. ${picture.says.replaceAll('"', '&quot;')}"`);
  expect(html).not.toMatch(/NaN|undefined|Infinity/);
});

test('derived: every card has its question, answer and, for a chart, the table', () => {
  for (const picture of all) {
    const html = renderToStaticMarkup(
      createElement(PictureCard, { picture, onSelectFinding: () => undefined }),
    );
    expect(html).toContain(picture.question);
    expect(html).not.toMatch(/NaN|>undefined|Infinity/);
    if (picture.kind === 'chart') expect(html.match(/<tr>/g)).toHaveLength(picture.table.rows.length + 1);
    else for (const step of picture.steps) expect(html).toContain(step.name);
  }
});

test('derived: a reading names every line that reaches there', () => {
  const picture = charts[0]!;
  expect(sayReading(picture, 0)).toMatch(/^At 0 r\/min: mains low .* N·m; mains as usual .* N·m; mains high/);
});
