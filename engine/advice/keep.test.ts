import { describe, expect, test } from 'vitest';
import { assess } from '../assess/index.ts';
import type { Evidence, Refit } from '../refit/types.ts';
import { having, inCondition, sample, unpriced } from './advice.fixture.ts';
import { adviseOn, subjects } from './keep.ts';
import type { PartAdvice } from './types.ts';

const lathe = unpriced(sample('carriage-works-lathe'));
const mill = sample('boatyard-mill');

function on(refit: Refit, at: string): PartAdvice {
  const assessment = assess(refit);
  const subject = subjects(assessment).find((each) => each.at === at);
  if (!subject) throw new Error(`no ${at}`);
  return adviseOn(assessment, subject);
}
const said = ({ sentence, reasons }: PartAdvice): string =>
  [sentence, ...reasons.map((each) => each.sentence)].join(' ');

/** An axis on which nothing fails, so that what is told of a part decides. */
const easy = having(lathe, { 'X.duty.rapid': '3 m/min' });
const working = inCondition(easy, 'x-motor', 'works');

describe('common practice, no source: what is known of old parts', () => {
  test('a resolver on a brushed motor does not matter', () => {
    const advice = on(having(working, { 'X.feedback.type': 'resolver' }), 'X.motor');
    expect(said(advice)).toContain('does not matter');
    expect(advice.recommendation).toBe('keep');
    const feedback = on(
      having(inCondition(working, 'x-feedback', 'works'), { 'X.feedback.type': 'resolver' }),
      'X.feedback',
    );
    expect(feedback.recommendation).toBe('replace');
    expect(said(feedback)).toContain('any encoder');
  });

  test('a resolver on a brushless motor does: the drive must read it, or find the rotor another way', () => {
    const brushless = having(working, {
      'X.motor.type': 'brushless',
      'X.feedback.type': 'resolver',
      'X.feedback.commutation': 'resolver',
      'X.drive.motors': 'brushless',
      'X.drive.feedbacks': 'resolver',
    });
    const reads = on(having(brushless, { 'X.drive.commutations': 'resolver' }), 'X.motor');
    expect(said(reads)).toContain('the drive reads resolvers');
    const blind = on(having(brushless, { 'X.drive.commutations': 'halls' }), 'X.motor');
    expect(blind.reasons.find(({ sentence }) => sentence.includes('commutation'))?.towards).toBe('repair');
    const open = on(brushless, 'X.motor');
    expect(open.reasons.find(({ sentence }) => sentence.includes('does matter'))?.towards).toBe('find-out');
  });

  test('tacho, brushed motor and a drive with a speed loop are a set', () => {
    const set = having(working, {
      'X.feedback.type': 'tacho',
      'X.drive.loop': 'speed',
      'X.drive.feedbacks': 'tacho',
    });
    expect(said(on(set, 'X.motor'))).toContain('just what a drive with a speed loop wants');
    expect(
      on(set, 'X.drive').reasons.some(
        ({ towards, sentence }) => towards === 'keep' && sentence.includes('tacho'),
      ),
    ).toBe(true);
    const alone = having(working, { 'X.feedback.type': 'tacho' });
    expect(on(alone, 'X.feedback').reasons.some(({ towards }) => towards === 'replace')).toBe(true);
  });

  test('worn brushes ask for a repair, not for another motor', () => {
    const worn = having(working, { 'X.motor.brushLength': '6 mm', 'X.motor.brushNew': '20 mm' });
    const advice = on(worn, 'X.motor');
    expect(advice.recommendation).toBe('repair');
    expect(advice.sentence).toContain('30 % of its length');
    expect(advice.keeping.items.map(({ path }) => path)).toContain('X.motor@x-motor.repairCost');
    const good = on(
      having(working, { 'X.motor.brushLength': '15 mm', 'X.motor.brushNew': '20 mm' }),
      'X.motor',
    );
    expect(good.recommendation).toBe('keep');
  });

  test.each([
    ['30 V/krpm', 'replace', 'bad'],
    ['31.5 V/krpm', 'keep', 'doubtful'],
    ['34 V/krpm', 'keep', 'good'],
  ])('back-EMF of %s against a plate of 34: %s', (emf, recommendation, level) => {
    const advice = on(having(working, { 'X.motor.emf': emf, 'X.motor.emfPlate': '34 V/krpm' }), 'X.motor');
    expect(advice.recommendation).toBe(recommendation);
    expect(advice.tests.find(({ title }) => title.startsWith('Back-EMF'))?.level).toBe(level);
  });

  test('a screw worn in one place cannot be compensated; one worn evenly can', () => {
    const screw = inCondition(working, 'x-screw', 'worn');
    const uneven = on(
      having(screw, { 'X.screw.playWorst': '0.12 mm', 'X.screw.playLeast': '0.02 mm' }),
      'X.screw',
    );
    expect(uneven.recommendation).toBe('replace');
    expect(uneven.sentence).toContain('one number everywhere');
    const even = on(
      having(screw, { 'X.screw.playWorst': '0.12 mm', 'X.screw.playLeast': '0.115 mm' }),
      'X.screw',
    );
    expect(even.recommendation).toBe('repair');
    const tight = on(
      having(inCondition(working, 'x-screw', 'works'), {
        'X.screw.playWorst': '0.01 mm',
        'X.screw.playLeast': '0.01 mm',
      }),
      'X.screw',
    );
    expect(tight.recommendation).toBe('keep');
  });

  test('an encoder with too few lines goes for one on offer with more', () => {
    const coarse = having(inCondition(working, 'x-feedback', 'works'), { 'X.feedback.lines': '60 lines' });
    const alone = on(coarse, 'X.feedback');
    expect(alone.asks.some(({ verdict }) => verdict === 'fails')).toBe(true);
    expect(alone.recommendation).not.toBe('keep');
    const fine = { ...working.parts['x-feedback']!, id: 'x-fine', name: 'finer encoder' };
    const chains = coarse.chains.map((chain) =>
      chain.id === 'X'
        ? {
            ...chain,
            places: {
              ...chain.places,
              feedback: { options: ['x-feedback', 'x-fine'], chosen: 'x-feedback' },
            },
          }
        : chain,
    );
    const offered = on({ ...coarse, chains, parts: { ...coarse.parts, 'x-fine': fine } }, 'X.feedback');
    expect(offered.recommendation).toBe('replace');
    expect(offered.sentence).toContain('something on offer can');
  });

  test('an encoder that wants more volts than it gets, or fewer', () => {
    const fed = (wants: string, gets: string): string =>
      said(
        on(
          having(inCondition(working, 'x-feedback', 'works'), {
            'X.feedback.supplyVoltage': wants,
            'X.drive.feedbackSupply': gets,
          }),
          'X.feedback',
        ),
      );
    expect(fed('15 V', '5 V')).toContain('supply of its own');
    expect(fed('5 V', '12 V')).toContain('destroy it');
    expect(fed('5 V', '5 V')).not.toContain('supply of its own');
  });
});

describe('published limits of insulation (IEC 60204-1 18.3: 1 MΩ; IEEE 43-2013: 5 MΩ for armatures)', () => {
  test.each([
    ['0.5 MΩ', 'bad', 'repair'],
    ['3 MΩ', 'bad', 'repair'],
    ['20 MΩ', 'doubtful', 'keep'],
    ['500 MΩ', 'good', 'keep'],
  ])('%s', (insulation, level, recommendation) => {
    const advice = on(having(working, { 'X.motor.insulation': insulation }), 'X.motor');
    expect(advice.tests[0]).toMatchObject({ level });
    expect(advice.recommendation).toBe(recommendation);
  });
});

describe('derived: weighing', () => {
  test('stepper and its drive come in as one swap, with every finding that changes', () => {
    const { swaps } = on(working, 'X.motor');
    expect(swaps).toHaveLength(1);
    expect(swaps[0]!.parts.map(({ at }) => at)).toEqual(['X.motor', 'X.drive']);
    const changes = new Map(swaps[0]!.changes.map((change) => [change.id, change]));
    expect(changes.get('X.bus-high')?.after).toBe('fails');
    expect(changes.get('X.heat')?.after).toBeUndefined();
    expect(changes.has('X.drive-motor')).toBe(false);
  });

  test('a motor that fails only for a wish may stay if less is asked', () => {
    const advice = on(inCondition(lathe, 'x-motor', 'works'), 'X.motor');
    expect(advice.recommendation).toBe('keep');
    expect(advice.cures.map(({ finding }) => finding)).toEqual(
      expect.arrayContaining(['X.volts', 'X.speed']),
    );
    expect(advice.sentence).toContain('a little less');
  });

  test('nobody looked: find out first', () => {
    const { condition: _, ...unseen } = working.parts['x-motor']!;
    expect(on({ ...working, parts: { ...working.parts, 'x-motor': unseen } }, 'X.motor').recommendation).toBe(
      'find-out',
    );
    expect(on(inCondition(working, 'x-motor', 'unknown'), 'X.motor').recommendation).toBe('find-out');
  });

  test('to be bought: judged by what it would do, not by looking at what is not there', () => {
    const advice = on(easy, 'X.feedback');
    expect(advice.recommendation).toBe('buy');
    expect(advice.sentence).toContain('To be bought');
    expect(said(advice)).not.toContain('test it');
    expect(said(advice)).toContain('note its condition');
    const noted = on(inCondition(easy, 'x-feedback', 'unknown'), 'X.feedback');
    expect(noted.recommendation).toBe('find-out');
    // One that cannot do what is asked is not bought.
    const facts = Object.fromEntries(
      Object.entries(easy.parts['x-feedback']!.facts).map(([name, fact]) => [
        name,
        name === 'lines'
          ? { value: { kind: 'quantity' as const, text: '60 lines' }, basis: 'datasheet' as const }
          : fact,
      ]),
    );
    const coarse: Refit = {
      ...easy,
      parts: { ...easy.parts, 'x-feedback': { ...easy.parts['x-feedback']!, facts } },
    };
    expect(on(coarse, 'X.feedback').recommendation).not.toBe('buy');
  });

  test('dead: replaced by what breaks nothing; else a repair is priced', () => {
    const dead = inCondition(working, 'x-motor', 'dead');
    expect(on(dead, 'X.motor').recommendation).toBe('find-out');
    expect(said(on(dead, 'X.motor'))).toContain('asleep');
    const priced = having(dead, {
      'X.motor.price': '0',
      'X.motor.repairCost': '150 EUR',
      'X.drive.price': '200 EUR',
      'X.feedback.price': '40 EUR',
    });
    expect(on(priced, 'X.motor').recommendation).toBe('repair');
    const twin = { ...dead.parts['x-motor']!, id: 'x-twin', name: 'twin' };
    const chains = dead.chains.map((chain) =>
      chain.id === 'X'
        ? {
            ...chain,
            places: { ...chain.places, motor: { options: ['x-motor', 'x-twin'], chosen: 'x-motor' } },
          }
        : chain,
    );
    expect(on({ ...dead, chains, parts: { ...dead.parts, 'x-twin': twin } }, 'X.motor').recommendation).toBe(
      'replace',
    );
  });

  test('a swap that is surely cheaper wins over a repair, in the same currency only', () => {
    const worn = inCondition(working, 'x-screw', 'worn');
    const twin = { ...worn.parts['x-screw']!, id: 'x-new', name: 'new screw' };
    const chains = worn.chains.map((chain) =>
      chain.id === 'X'
        ? {
            ...chain,
            places: { ...chain.places, screw: { options: ['x-screw', 'x-new'], chosen: 'x-screw' } },
          }
        : chain,
    );
    const offered: Refit = { ...worn, chains, parts: { ...worn.parts, 'x-new': twin } };
    const priced = (price: string, repair: string) =>
      on(
        having(offered, { 'X.screw@x-new.price': price, 'X.screw.price': '0', 'X.screw.repairCost': repair }),
        'X.screw',
      ).recommendation;
    expect(priced('200 EUR', '400–600 EUR')).toBe('replace');
    expect(priced('500 EUR', '400–600 EUR')).toBe('repair');
    expect(priced('200 EUR', '400–600 GBP')).toBe('repair');
  });

  test('evidence counts: a weak magnet measured on the bench', () => {
    const evidence: Evidence = {
      id: 'e-1',
      method: 'weak-magnet',
      part: 'x-motor',
      given: { emf: '28 ± 0.3 V/krpm', torqueConstant: '0.267 ± 0.003 N·m/A', plate: '34 V/krpm' },
      readings: {},
      aside: [],
      note: '',
      when: '2024-05-01',
      photos: [],
    };
    const advice = on({ ...working, evidence: { 'e-1': evidence } }, 'X.motor');
    expect(advice.tests.map(({ level }) => level)).toContain('bad');
    expect(advice.recommendation).toBe('replace');
    expect(advice.reasons[0]!.source).toContain('2024-05-01');
  });

  test('the doubt that remains names what is guessed and what is unknown', () => {
    expect(on(lathe, 'X.screw').doubt.join(' ')).toContain('dynamic load rating');
  });

  test('every part of every sample has an answer with a reason, and no number that is none', () => {
    for (const refit of [lathe, mill]) {
      const assessment = assess(refit);
      for (const subject of subjects(assessment)) {
        const advice = adviseOn(assessment, subject);
        expect(advice.reasons.length, advice.at).toBeGreaterThan(0);
        expect(JSON.stringify(advice), advice.at).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  });
});
