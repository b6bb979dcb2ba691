import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { assess } from '../assess/index.ts';
import { judgeSupply } from '../circuit/power/index.ts';
import { readWiring } from '../circuit/wiring/read.ts';
import { newRefit } from '../refit/index.ts';
import { supplyDrawn } from './supply-drawn.ts';

describe.each(SAMPLES.map(({ id }) => id))('%s', (id) => {
  const refit = sample(id);
  const assessment = assess(refit);
  const drawn = supplyDrawn(assessment);
  test('derived: the numbers are those the findings compare', () => {
    const asked = (check: string, of: 'asked' | 'there' = 'asked'): number | undefined =>
      assessment.findings.find((each) => each.check === check)?.[of]?.value;
    expect(drawn.busPeakAmps).toBeCloseTo(asked('supply-current')!, 9);
    expect(drawn.busHigh).toBeCloseTo(asked('bus-high')!, 9);
    expect(drawn.busLow).toBeCloseTo(asked('bus-low', 'there')!, 9);
    expect(drawn.busSteadyAmps! / drawn.busPeakAmps!).toBeCloseTo(0.6, 12);
    expect(drawn.busOneAmps!).toBeGreaterThan(drawn.busSteadyAmps!);
    expect(drawn.busOneAmps!).toBeLessThanOrEqual(drawn.busPeakAmps!);
  });
  test('derived: sizes to buy for a transformer’s bus, none for a bought supply', () => {
    const { sizes } = judgeSupply(refit, readWiring(refit.wiring, refit), drawn);
    const kinds = sizes.filter(({ device }) => device === null).map(({ what }) => what);
    const isTransformer = refit.parts.supply!.facts.type!.value;
    const wanted =
      isTransformer.kind === 'choice' && isTransformer.option === 'transformer'
        ? ['transformer', 'capacitor', 'bleeder']
        : [];
    expect(kinds).toEqual(wanted);
    for (const { value, sentence } of sizes) {
      expect(value).toBeGreaterThan(0);
      expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});

test('derived: of an empty refit nothing is known', () => {
  expect(supplyDrawn(assess(newRefit({ id: 'r', name: 'x', machine: 'mill' })))).toEqual({});
});
