/** The wirings of the samples through the supply's rules and the sheet for ringing out. */
import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../../samples/index.ts';
import { sample } from '../../../samples/read.fixture.ts';
import { judgeSupply } from '../power/index.ts';
import { readWiring } from '../wiring/read.ts';
import { ringItOut } from './index.ts';

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const refit = sample(id);
  const read = readWiring(refit.wiring, refit);
  const odd = /NaN|undefined|Infinity|\[object/;
  test('derived: the supply is judged without a short circuit, each finding whole and once', () => {
    const { context, findings } = judgeSupply(refit, read);
    expect(context.flow.trouble).toBeUndefined();
    expect(new Set(findings.map((each) => each.id)).size).toBe(findings.length);
    for (const { sentence, remedy = '' } of findings) {
      expect(sentence).not.toMatch(odd);
      expect(remedy).not.toMatch(odd);
    }
  });
  test('derived: every terminal on a wire has a reading, and no two rows of a step are the same', () => {
    const { steps } = ringItOut(read);
    const told = new Set(steps.flatMap(({ rows }) => rows.flatMap(({ at, against }) => [...at, against])));
    for (const { from, to } of read.wires.values()) {
      expect(told).toContain(from);
      expect(told).toContain(to);
    }
    for (const { rows } of steps) {
      expect(new Set(rows.map((each) => each.id)).size).toBe(rows.length);
      for (const { says, expect: band } of rows) {
        expect(says).not.toMatch(odd);
        if (band) expect(band.low <= band.high).toBe(true);
      }
    }
  });
});
