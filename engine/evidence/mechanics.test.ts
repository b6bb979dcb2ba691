/** Bench tests of slides, screws, brakes and counting against worked examples computed apart. */
import { expect, test } from 'vitest';
import { levels, outcome, quantity, refusal } from './methods.fixture.ts';

test('derived: twenty turns of 100 mm are a lead of 5 mm, and nothing else is likely', () => {
  const found = outcome(
    'travel-per-turn',
    { turns: '20', rule: '0.02 mm' },
    { travel: ['100.01', '99.99', '100.00'] },
  );
  expect(quantity(found, 'lead').value).toBeCloseTo(0.005, 8);
  expect(found.candidates![0]!.name).toMatch(/^5 mm/);
  expect(found.candidates![0]!.likely).toBeGreaterThan(0.95);
  expect(levels(found)[0]).toBe('good');
});

test('derived: an inch screw of five threads is told from 5 mm once the turns are many', () => {
  const found = outcome(
    'travel-per-turn',
    { turns: '20', rule: '0.1 mm' },
    { travel: ['101.6', '101.5', '101.6'] },
  );
  expect(found.candidates![0]!.name).toContain('5 threads an inch');
  expect(levels(found)[0]).toBe('good');
});

test('derived: one turn with a rule cannot tell 5 mm from a fifth of an inch, and says how many more turns would', () => {
  const found = outcome(
    'travel-per-turn',
    { turns: '1', mark: '0 ± 5 °', rule: '0.3 mm' },
    { travel: ['5.0', '5.1'] },
  );
  const said = found.verdicts[0]!;
  expect(said.level).toBe('doubtful');
  expect(said.sentence).toMatch(/5 mm/);
  expect(said.sentence).toMatch(/5 threads an inch/);
  const more = Number(/About (\d+) turns/.exec(said.sentence)![1]);
  const lead = quantity(found, 'lead');
  // After that many turns ±2 standard doubts either side no longer meet.
  expect((4 * lead.standard) / more).toBeLessThanOrEqual(0.00008 + 1e-9);
  const after = outcome(
    'travel-per-turn',
    { turns: String(more), mark: '0 ± 5 °', rule: '0.3 mm' },
    { travel: [(5.08 * more).toFixed(1), (5.08 * more).toFixed(1)] },
  );
  expect(after.candidates![0]!.name).toContain('5 threads an inch');
});

test('derived: a pitch tells how many starts a lead of 10 mm has', () => {
  const given = { turns: '10', rule: '0.05 mm' };
  const two = outcome('travel-per-turn', { ...given, pitch: '5.0 ± 0.1 mm' }, { travel: ['100.0', '100.0'] });
  expect(two.candidates![0]!.name).toMatch(/^10 mm from 5 mm with 2 starts/);
  const one = outcome(
    'travel-per-turn',
    { ...given, pitch: '10.0 ± 0.1 mm' },
    { travel: ['100.0', '100.0'] },
  );
  expect(one.candidates![0]!.name).toMatch(/^10 mm(?! from)/);
});

test('derived: a lead that no screw has is said to be none of the usual', () => {
  const found = outcome(
    'travel-per-turn',
    { turns: '20', rule: '0.02 mm' },
    { travel: ['93.20', '93.21', '93.20'] },
  );
  expect(found.candidates![0]!.name).toBe('none of the usual leads');
  expect(levels(found)[0]).toBe('bad');
});

test('derived: backlash of five approaches from either side (statistics, worked apart)', () => {
  const found = outcome(
    'backlash-split',
    {},
    {
      place: Array(5).fill('slide'),
      plus: ['41.2 µm', '41.8 µm', '40.9 µm', '41.5 µm', '41.1 µm'],
      minus: ['0.3 µm', '-0.2 µm', '0.4 µm', '0.1 µm', '0.2 µm'],
    },
  );
  const B = quantity(found, 'slide');
  expect(B.value).toBeCloseTo(41.14e-6, 12);
  expect(B.standard).toBeCloseTo(0.2580698e-6, 12);
  // Nothing else was read, so that nothing may be blamed on the nut.
  expect(levels(found)[0]).toBe('doubtful');
});

test('derived: what thrust bearing, belt and bracket lose is not the nut’s', () => {
  const found = outcome(
    'backlash-split',
    { lead: '5 mm', arm: '100 mm' },
    {
      place: ['slide', 'slide', 'screw', 'screw', 'arm', 'arm', 'bracket', 'bracket', 'edge', 'edge'],
      plus: [0.0412, 0.0408, 0.0305, 0.0295, 0.25, 0.25, 0.0011, 0.0009, 0.056, 0.054].map(String),
      minus: Array(10).fill('0'),
    },
  );
  expect(quantity(found, 'nut').value).toBeCloseTo(41e-6 - 30e-6 - 1.9894368e-6 - 1e-6, 11);
  expect(found.verdicts[0]!.sentence).toContain('thrust bearing');
  expect(found.verdicts.map(({ sentence }) => sentence).join(' ')).toContain('gib');
});

test('derived: 0.85 kg on 40 mm starts the screw; friction and imbalance parted (statics, worked apart)', () => {
  const found = outcome(
    'breakaway',
    { what: 'screw', moment: 'crawl', radius: '40 mm' },
    { weight: ['0.850', '0.850', '0.850', '0.850'], way: ['one', 'one', 'other', 'other'] },
  );
  expect(quantity(found, 'friction').value).toBeCloseTo(0.3334261, 7);
  expect(quantity(found, 'friction').fact).toEqual({ place: 'screw', fact: 'dragTorque' });
  expect(quantity(found, 'bias').value).toBeCloseTo(0, 12);
});

test('derived: 210 N up and 90 N down are 150 N friction and 60 N weight (statics)', () => {
  const found = outcome(
    'breakaway',
    { what: 'slide', moment: 'start' },
    { pull: ['210', '90'], way: ['one', 'other'] },
  );
  expect(quantity(found, 'friction').value).toBeCloseTo(150, 9);
  expect(quantity(found, 'bias').value).toBeCloseTo(60, 9);
  expect(quantity(found, 'friction').fact).toBeUndefined();
});

test('derived: a slide that runs down by itself is held back with a pull below zero', () => {
  const found = outcome(
    'breakaway',
    { what: 'slide', moment: 'crawl' },
    { pull: ['300', '-100'], way: ['one', 'other'] },
  );
  expect(quantity(found, 'friction').value).toBeCloseTo(100, 9);
  expect(quantity(found, 'bias').value).toBeCloseTo(200, 9);
});

test('derived: inductance at 50 Hz (impedance, worked apart)', () => {
  const found = outcome('inductance', { resistance: '1.309 Ω' }, { volts: ['6.31'], amps: ['3.74'] });
  expect(quantity(found, 'inductance').value).toBeCloseTo(0.00338823994, 10);
});

test('derived: three pole pairs by frequency and by hand', () => {
  expect(quantity(outcome('pole-pairs', {}, { hertz: ['50.6'], speed: ['1012'] }), 'polePairs').value).toBe(
    3,
  );
  expect(
    quantity(outcome('pole-pairs', {}, { cycles: ['15', '30'], turns: ['5', '10'] }), 'polePairs').value,
  ).toBe(3);
  const between = outcome('pole-pairs', { mark: '0 ± 1 °' }, { cycles: ['14', '14'], turns: ['4', '4'] });
  expect(levels(between)).toContain('doubtful');
  expect(between.results.map(({ key }) => key)).toEqual(['measured']);
});

test('derived: 20003 counts in five turns are an encoder of 1000 lines', () => {
  const found = outcome('encoder-lines', {}, { counts: ['20003', '19996'], turns: ['5', '5'] });
  expect(quantity(found, 'lines').value).toBe(1000);
  expect(levels(outcome('encoder-lines', { mark: '0 ± 10 °' }, { counts: ['4060'], turns: ['1'] }))[0]).toBe(
    'doubtful',
  );
});

test('derived: 3997 counts for 4000 are a fault, worth −3.75 µm on a 5 mm screw', () => {
  const found = outcome(
    'lost-counts',
    { lines: '1000 lines', lead: '5 mm' },
    { counts: ['4000', '3997'], turns: ['1', '1'], run: ['slow', 'fast'] },
  );
  expect(quantity(found, 'lost').value).toBe(-3);
  expect(quantity(found, 'travel').value).toBeCloseTo(-3.75e-6, 12);
  expect(found.verdicts[0]!.sentence).toContain('when fast only');
  const other = outcome(
    'lost-counts',
    { lines: '1000 lines' },
    { counts: ['81920', '40960'], turns: ['20', '10'] },
  );
  expect(other.verdicts[0]!.sentence).toContain('has not 1000 lines');
});

test('derived: a tacho of 6.9565 V/krpm with 3 % ripple (definition, worked apart)', () => {
  const found = outcome(
    'tacho-constant',
    {},
    { volts: ['7.06', '7.02'], speed: ['1012', '1012'], way: ['cw', 'ccw'], ripple: ['0.21', '0.21'] },
  );
  expect(quantity(found, 'constant').value).toBeCloseTo((6.9565217 * 60) / (2000 * Math.PI), 8);
  expect(levels(found).slice(0, 2)).toEqual(['good', 'good']);
});

test('derived: a resolver of ratio 0.49986 at 139.97° (resolver format, worked apart)', () => {
  const found = outcome('resolver-ratio', { excitation: '4.000 V' }, { sine: ['1.286'], cosine: ['-1.531'] });
  expect(quantity(found, 'ratio').value).toBeCloseTo(0.49985979, 8);
  expect(quantity(found, 'angle').value).toBeCloseTo((139.97062 * Math.PI) / 180, 7);
});

test('derived: a brake of 60 N on 0.3 m holds 18 N·m, and its coil takes 0.625 A', () => {
  const found = outcome(
    'holding-brake',
    { coil: '38.4 Ω', lever: '300 mm', load: '12 N·m', scale: '2 N' },
    { slip: ['62', '60', '65'], release: ['17.5', '17.6', '17.4'] },
  );
  expect(quantity(found, 'torque').value).toBeCloseTo(18, 9);
  expect(quantity(found, 'current').value).toBeCloseTo(0.625, 9);
  expect(levels(found).slice(0, 2)).toEqual(['good', 'good']);
  expect(levels(outcome('holding-brake', { lever: '300 mm', load: '20 N·m' }, { slip: ['60'] }))).toContain(
    'bad',
  );
});

test('derived: run-out near and far, and the tilt between', () => {
  const found = outcome(
    'run-out',
    { distance: '300 mm', allowed: '0.02 mm' },
    { high: ['0.012', '0.042'], low: ['0.002', '0.002'], where: ['near', 'far'] },
  );
  expect(quantity(found, 'near').value).toBeCloseTo(10e-6, 12);
  expect(quantity(found, 'tilt').value).toBeCloseTo(50e-6 / 0.6, 10);
  expect(levels(found)).toContain('doubtful');
});

test('derived: a socket that sags by 7 V at 14 A leaves 211 V at 20 A when the mains are low', () => {
  const found = outcome(
    'mains-voltage',
    { rated: '230 V', most: '20 A' },
    { idle: ['233', '221'], loaded: ['226', '214'], amps: ['14', '14'] },
  );
  expect(quantity(found, 'source').value).toBeCloseTo(0.5, 9);
  expect(quantity(found, 'worst').value).toBeCloseTo(211, 9);
  expect(quantity(found, 'mains').value).toBeCloseTo(227, 9);
});

test('derived: motors are known by their signs, and what would decide is said', () => {
  const type = (given: Record<string, string>): string | undefined => {
    const [first] = outcome('which-motor', given).results;
    return first?.kind === 'choice' ? first.option : undefined;
  };
  expect(type({ leads: '2', brushes: 'yes', spun: 'dc' })).toBe('brushed');
  expect(type({ leads: '3', brushes: 'no', cogging: 'few', spun: 'ac' })).toBe('brushless');
  expect(type({ leads: '8', cogging: 'many' })).toBe('stepper');
  const open = outcome('which-motor', { leads: '3', brushes: 'no', ohms: 'three' });
  expect(open.results).toEqual([]);
  expect(open.verdicts[0]!.sentence).toMatch(/decide/);
  const induction = outcome('which-motor', { leads: '3', brushes: 'no', spun: 'nothing', cogging: 'smooth' });
  expect(induction.candidates![0]!.name).toContain('induction');
  expect(induction.results).toEqual([]);
});

test('derived: feedback is known by its leads and ohms', () => {
  const resolver = outcome('which-feedback', { leads: '6' }, { ohms: ['62', '38.1', '38.4'] });
  expect(resolver.results).toMatchObject([{ option: 'resolver', fact: { place: 'feedback', fact: 'type' } }]);
  expect(resolver.verdicts[1]!.sentence).toMatch(/row 2 .* row 3 .*excitation is row 1/);
  expect(outcome('which-feedback', { leads: '2', turning: 'volts' }).results).toMatchObject([
    { option: 'tacho' },
  ]);
  expect(
    outcome('which-feedback', { leads: 'more', steady: 'no', marks: 'supply', moves: 'round' }).results,
  ).toMatchObject([{ option: 'encoder' }]);
});

test('derived: a misread row is asked about and nothing is thrown out', () => {
  const travel = ['50.01', '50.02', '50.00', '50.01', '52.01', '50.02'];
  const found = outcome('travel-per-turn', { turns: '10', rule: '0.02 mm' }, { travel });
  expect(found.questions.map(({ row }) => row)).toEqual([5]);
  const aside = outcome('travel-per-turn', { turns: '10', rule: '0.02 mm' }, { travel }, [4]);
  expect(aside.questions).toEqual([]);
  expect(quantity(aside, 'lead').value).toBeCloseTo(0.0050012, 9);
});

test('derived: what makes no sense is refused by name', () => {
  expect(refusal('travel-per-turn', { turns: '0' }, { travel: ['5'] })).toMatch(/^turns: turns of the screw/);
  expect(refusal('travel-per-turn', { turns: '2.5' }, { travel: ['5'] })).toMatch(/whole number/);
  expect(refusal('travel-per-turn', { turns: '1', mark: '0 ± 700 °' }, { travel: ['5'] })).toMatch(
    /doubt is as large/,
  );
  expect(refusal('travel-per-turn', {}, { travel: ['5'] })).toMatch(/has to be given/);
  expect(refusal('travel-per-turn', { turns: '10', turn: '10' }, { travel: ['5'] })).toMatch(
    /Did you mean “turns”/,
  );
  expect(refusal('travel-per-turn', { turns: '10' }, { travels: ['5'] })).toMatch(/no column/);
  expect(refusal('travel-per-turn', { turns: '10' }, { travel: ['5 kg'] })).toMatch(/travel in row 1/);
  expect(refusal('travel-per-turn', { turns: '10', rule: 'good' }, { travel: ['50'] })).toMatch(
    /as the instrument’s manual does/,
  );
  expect(refusal('backlash-split', {}, { place: ['screw'], plus: ['1'], minus: ['0'] })).toMatch(
    /place “slide”/,
  );
  expect(
    refusal('backlash-split', {}, { place: ['slide', 'arm'], plus: ['1', '1'], minus: ['0', '0'] }),
  ).toMatch(/^lead: /);
  expect(refusal('breakaway', { what: 'motor', moment: 'crawl' }, { pull: ['1', '2'] })).toMatch(/^radius: /);
  expect(refusal('inductance', { resistance: '2 Ω' }, { volts: ['6.31'], amps: ['3.74'] })).toMatch(
    /no more than its resistance/,
  );
  expect(refusal('pole-pairs', {}, { cycles: ['3'], speed: ['3'] })).toMatch(/either cycles and turns/);
  expect(refusal('run-out', {}, { high: ['1'], low: ['2'] })).toMatch(/swapped/);
  expect(refusal('which-motor', {})).toMatch(/Nothing was looked at/);
  expect(refusal('mains-voltage', {}, { idle: ['230'], loaded: ['225'] })).toMatch(/both/);
});

test('derived: encoder, tacho, resolver, brake and feedback refuse what makes no sense', () => {
  expect(refusal('encoder-lines', {}, { counts: ['4000.5'], turns: ['1'] })).toMatch(
    /counts in row 1: .*whole number/,
  );
  expect(refusal('encoder-lines', {}, { counts: ['4000'], turns: ['0'] })).toMatch(
    /turns in row 1: .*above zero/,
  );
  expect(refusal('lost-counts', { lines: '0' }, { counts: ['4000'], turns: ['1'] })).toMatch(/^lines: /);
  expect(refusal('tacho-constant', {}, { volts: ['7'], speed: ['fast'] })).toMatch(/speed in row 1/);
  expect(refusal('resolver-ratio', { excitation: '4 V' }, { sine: ['0.000'], cosine: ['0.000'] })).toMatch(
    /both pairs read nothing/,
  );
  expect(refusal('holding-brake', {}, {})).toMatch(/Nothing was measured/);
  expect(refusal('holding-brake', {}, { slip: ['60'] })).toMatch(/^lever: /);
  expect(refusal('which-feedback', {}, {})).toMatch(/Nothing was looked at/);
  expect(refusal('which-feedback', { leads: '7' }, {})).toMatch(/none of the answers/);
});

test('derived: a zero that was not written at the end does not make a reading coarser', () => {
  const lost = (plus: string[]): number =>
    quantity(
      outcome(
        'backlash-split',
        {},
        { place: ['slide', 'slide', 'slide'], plus, minus: ['0.000', '0.000', '0.000'] },
      ),
      'slide',
    ).standard;
  expect(lost(['0.04', '0.041', '0.042'])).toBeCloseTo(lost(['0.040', '0.041', '0.042']), 15);
  // On a coarser range the last digit is what it is.
  const ohms = (reading: string[]): number =>
    quantity(outcome('winding-resistance', { temperature: '20 °C' }, { reading }), 'resistance').standard;
  expect(ohms(['12.4', '12.4'])).toBeCloseTo(0.1 / Math.sqrt(24), 9);
});

test('derived: what nobody said is said: instruments, exact entries, a single row', () => {
  const said = (given: Record<string, string>, travel: string[]): string =>
    outcome('travel-per-turn', { turns: '10', ...given }, { travel })
      .verdicts.filter(({ level }) => level === 'note')
      .map(({ sentence }) => sentence)
      .join(' ');
  expect(said({}, ['50.0'])).toMatch(/Not stated: .*\(rule\).*one row only/);
  expect(said({ rule: '0.1 mm', pitch: '5 mm' }, ['50.0', '50.1'])).toBe(
    'Taken as exact, since no ± was given: pitch (pitch).',
  );
  expect(said({ rule: '0.1 mm', pitch: '5 ± 0.1 mm' }, ['50.0', '50.1'])).toBe('');
});
