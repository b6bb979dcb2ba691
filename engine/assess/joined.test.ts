/** All sheets of a sample as one, held against the assessment that works them one by one. */
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { lanes } from '../sheet/index.ts';
import { assess } from './assess.ts';
import { join } from './joined.ts';

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const assessment = assess(sample(id));
  const joined = join(assessment);

  test('derived: one program gives what every finding compares', () => {
    const one = lanes(joined.sheet, joined.given, 1).values as Record<string, number>;
    const numbers = assessment.findings.filter(({ asked }) => asked);
    expect(numbers.length).toBeGreaterThan(50);
    for (const { id: name, asked, there, side } of numbers) {
      const { demand, capacity, most } = joined.compares.get(name)!;
      const [needs, has] = side === 'high' ? [capacity, most!] : [demand, capacity];
      expect(one[needs] ?? joined.given[needs], name).toBeCloseTo(asked!.value, digits(asked!.value));
      expect(one[has] ?? joined.given[has], name).toBeCloseTo(there!.value, digits(there!.value));
    }
  });

  test('derived: the program is kept as long as only numbers change', () => {
    expect(join(assessment).sheet).toBe(joined.sheet);
  });
});

/** Twelve digits of a number's own size. */
const digits = (value: number): number => 12 - Math.ceil(Math.log10(Math.abs(value) + 1e-30));
