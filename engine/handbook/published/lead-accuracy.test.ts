import { describe, expect, test } from 'vitest';
import {
  MEAN_TRAVEL_UM,
  meanTravelTolerance,
  TRAVEL_STEPS_MM,
  VARIATION_GRADES,
} from '../../tables/lead-accuracy.ts';

const um = (grade: string, travel: number): number => {
  const answer = meanTravelTolerance(grade, travel);
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value.tolerance * 1e6;
};

test('published: ISO grade 3 over 900 mm is 21 µm (a ball-screw maker’s page quoting ISO 3408-3)', () => {
  expect(um('3', 0.9)).toBeCloseTo(21, 9);
  const answer = meanTravelTolerance('3', 0.9);
  expect(answer.ok && answer.value.status).toBe('published');
});

describe('the table of mean travel', () => {
  test('derived: a travel at the end of a step belongs to that step, just above it to the next', () => {
    expect(um('5', 0.315)).toBeCloseTo(23, 9);
    expect(um('5', 0.3151)).toBeCloseTo(25, 9);
  });

  test('derived: tolerances grow with travel and with the grade, one for each step', () => {
    for (const row of Object.values(MEAN_TRAVEL_UM)) {
      expect(row).toHaveLength(TRAVEL_STEPS_MM.length);
      expect([...row].sort((a, b) => a - b)).toEqual(row);
    }
    TRAVEL_STEPS_MM.forEach((_, at) => {
      expect(MEAN_TRAVEL_UM['1'][at]!).toBeLessThan(MEAN_TRAVEL_UM['3'][at]!);
      expect(MEAN_TRAVEL_UM['3'][at]!).toBeLessThan(MEAN_TRAVEL_UM['5'][at]!);
    });
  });

  test('derived: transport grades go with the travel, twice the variation for each 300 mm', () => {
    expect(um('7', 0.6)).toBeCloseTo(208, 9);
    expect(um('10', 0.3)).toBeCloseTo(420, 9);
  });

  test('derived: what the table does not know is refused in words', () => {
    for (const [grade, travel] of [
      ['3', 2.5],
      ['3', 0],
      ['3', Number.NaN],
      ['C5', 0.5],
      ['toString', 0.5],
    ] as const) {
      const answer = meanTravelTolerance(grade, travel);
      expect(answer.ok).toBe(false);
      if (!answer.ok) expect(answer.problem.message).toMatch(/\.$/);
    }
  });
});

test('published: 12 µm over 300 mm for ISO grade 3, 50 µm for JIS C7 (makers’ pages quoting both standards)', () => {
  const over300 = (standard: string, grade: string): number | undefined =>
    VARIATION_GRADES.find((row) => row.standard === standard && row.grade === grade)?.over300;
  expect(over300('ISO 3408-3', '3')).toBeCloseTo(12e-6, 12);
  expect(over300('JIS B 1192', 'C7')).toBeCloseTo(50e-6, 12);
});
