import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Refit, Wiring } from '../../../refit/types.ts';
import { judgeSupply } from '../../power/index.ts';
import { readWiring } from '../read.ts';
import type { AskedAuxiliary, AskedInput, AskedOutput } from './asked.ts';
import { proposeWiring } from './index.ts';

const EMPTY: Wiring = { devices: {}, wires: {}, cables: {}, settings: {} };
const ANSWERS = { homes: 'none', limits: 'none', 'spindle-filter': 'no' };

/** The lathe without a wiring, on the larger of its two controls: its inputs take either sort of sensor. */
function lathe(form?: 'pnp' | 'npn' | 'either'): Refit {
  const refit = sample('carriage-works-lathe');
  const control = refit.parts['control-2']!;
  const facts = form
    ? {
        ...control.facts,
        'inputs-take': { value: { kind: 'choice' as const, option: form }, basis: 'told' as const },
      }
    : control.facts;
  return {
    ...refit,
    parts: { ...refit.parts, 'control-2': { ...control, facts } },
    places: { ...refit.places, control: { ...refit.places.control!, chosen: 'control-2' } },
    wiring: { ...EMPTY, settings: ANSWERS },
  };
}

const input = (id: string, sensor: AskedInput['sensor'] = 'switch', shared = false): AskedInput => ({
  id,
  name: id,
  sensor,
  shared,
});
const output = (id: string, more: Partial<AskedOutput> = {}): AskedOutput => ({
  id,
  name: id,
  by: '24 V',
  moves: 'valve',
  ...more,
});
const auxiliary = (
  id: string,
  inputs: readonly AskedInput[],
  outputs: readonly AskedOutput[] = [],
): AskedAuxiliary => ({
  id,
  name: id,
  inputs,
  outputs,
});

const bad = (refit: Refit, asked: readonly AskedAuxiliary[]) =>
  proposeWiring(refit, asked).findings.filter(
    ({ verdict, rule }) => verdict === 'fails' || rule === 'connected',
  );

/** Ids of the devices whose terminals share a net with this terminal. */
const meets = (wiring: Wiring, refit: Refit, terminal: string) =>
  readWiring(wiring, refit).netOf.get(terminal)!.terminals;

describe('auxiliaries', () => {
  test.each(
    (['either', 'pnp', 'npn'] as const).flatMap((form) =>
      (['switch', 'PNP', 'NPN'] as const).map((sensor) => [form, sensor] as const),
    ),
  )('derived: a control that takes %s sensors, %s: nothing fails, and it is whole', (form, sensor) => {
    const refit = lathe(form);
    const asked = [auxiliary('chuck', [input('grips', sensor), input('pressure', sensor)])];
    const { wiring, findings, left } = proposeWiring(refit, asked);
    expect(left).toEqual([]);
    expect(findings.filter(({ verdict, rule }) => verdict === 'fails' || rule === 'connected')).toEqual([]);
    // Every one of them is judged, and read by an input.
    expect(
      findings.filter(({ rule, about }) => rule === 'levels' && /^A1\.in\d/.test(about[0]!)).length,
    ).toBe(2);
    expect(proposeWiring({ ...refit, wiring }, asked).changes).toEqual([]);
  });

  test('derived: a sensor of the other sort goes through an opto board', () => {
    const refit = lathe('npn');
    const { wiring } = proposeWiring(refit, [auxiliary('turret', [input('in place', 'PNP')])]);
    const board = Object.values(wiring.devices).find(({ kind }) => kind === 'opto-board')!;
    expect(board.settings.output).toBe('open collector');
    expect(meets(wiring, refit, `${board.id}.O1`)).toContain('A1.in1');
    const straight = proposeWiring(lathe('pnp'), [auxiliary('turret', [input('in place', 'PNP')])]);
    expect(Object.values(straight.wiring.devices).some(({ kind }) => kind === 'opto-board')).toBe(false);
  });

  test('derived: a pump gets a contactor, a breaker and mains; a free contact switches it where that is asked', () => {
    const refit = lathe();
    const asked = [auxiliary('coolant', [], [output('pump', { moves: 'motor', by: 'contact' })])];
    expect(bad(refit, asked)).toEqual([]);
    const { wiring, questions } = proposeWiring(refit, asked);
    const [motor, contactor, breaker] = ['mains-motor', 'contactor', 'motor-breaker'].map(
      (kind) =>
        Object.values(wiring.devices).find((each) => each.kind === kind && each.name.includes('coolant'))!,
    );
    expect(meets(wiring, refit, `${motor!.id}.U`)).toEqual([`${contactor!.id}.2`, `${motor!.id}.U`]);
    expect(meets(wiring, refit, `${breaker!.id}.2`)).toEqual([`${contactor!.id}.1`, `${breaker!.id}.2`]);
    expect(meets(wiring, refit, `${contactor!.id}.A1`)).toEqual(['A1.r1b', `${contactor!.id}.A1`]);
    expect(meets(wiring, refit, `${motor!.id}.PE`).some((id) => id.startsWith('X1.'))).toBe(true);
    expect(questions.map(({ id }) => id)).toEqual(
      expect.arrayContaining([
        `${motor!.id}.volts`,
        `${contactor!.id}.suppressor`,
        `${contactor!.id}.coil-current`,
      ]),
    );
  });

  test('derived: both directions: two phases exchanged, and neither contactor pulls in beside the other', () => {
    const refit = lathe();
    const asked = [
      auxiliary(
        'turret',
        [],
        [output('forward', { moves: 'motor' }), output('back', { moves: 'motor', against: 'forward' })],
      ),
    ];
    const { wiring, findings, left } = proposeWiring(refit, asked);
    expect(findings.filter(({ verdict, rule }) => verdict === 'fails' || rule === 'connected')).toEqual([]);
    expect(left.filter((each) => /outside the stop circuit/.test(each)).length).toBe(2);
    const own = (name: string) =>
      Object.values(wiring.devices).find(
        (each) => each.kind === 'contactor' && each.name === `turret: ${name}`,
      )!.id;
    const [one, other] = [own('forward'), own('back')];
    const motor = Object.values(wiring.devices).find(({ kind }) => kind === 'mains-motor')!.id;
    for (const [lead, near, far] of [
      ['U', '2', '6'],
      ['V', '4', '4'],
      ['W', '6', '2'],
    ])
      expect(meets(wiring, refit, `${motor}.${lead}`)).toEqual(
        expect.arrayContaining([`${one}.${near}`, `${other}.${far}`]),
      );
    expect(meets(wiring, refit, `${one}.A1`)).toContain(`${other}.52`);
    expect(meets(wiring, refit, `${other}.A1`)).toContain(`${one}.52`);
    expect(Object.values(wiring.devices).filter(({ kind }) => kind === 'mains-motor').length).toBe(1);
    // Only one of them is pulled in at a time: no short circuit between the phases they exchange.
    const judged = judgeSupply({ ...refit, wiring }, readWiring(wiring, refit)).findings;
    expect(judged.filter(({ rule }) => rule === 'short')).toEqual([]);
    const { reverses: _, ...plain } = wiring.devices[other]!.settings;
    const unsaid = {
      ...wiring,
      devices: { ...wiring.devices, [other]: { ...wiring.devices[other]!, settings: plain } },
    };
    expect(
      judgeSupply({ ...refit, wiring: unsaid }, readWiring(unsaid, refit)).findings.some(
        ({ rule }) => rule === 'short',
      ),
    ).toBe(true);
  });

  test('derived: two that ask for one switch share it', () => {
    const refit = lathe();
    const asked = [
      auxiliary('chuck', [input('standstill', 'switch', true)]),
      auxiliary('tailstock', [input('standstill', 'switch', true)]),
    ];
    const { wiring } = proposeWiring(refit, asked);
    expect(Object.values(wiring.devices).filter(({ name }) => name === 'Standstill').length).toBe(1);
    expect(bad(refit, asked)).toEqual([]);
  });

  test('derived: a strong output drives a valve itself, a weak one by a relay', () => {
    const kinds = (amps: string) => {
      const refit = lathe();
      const control = refit.parts['control-2']!;
      const facts = {
        ...control.facts,
        'output-current': { value: { kind: 'quantity' as const, text: amps }, basis: 'datasheet' as const },
      };
      const strong = { ...refit, parts: { ...refit.parts, 'control-2': { ...control, facts } } };
      const { wiring } = proposeWiring(strong, [auxiliary('quill', [], [output('forward')])]);
      return Object.values(wiring.devices)
        .filter(({ name }) => name.startsWith('quill'))
        .map(({ kind }) => kind)
        .sort();
    };
    expect(kinds('2 A')).toEqual(['valve']);
    expect(kinds('0.1 A')).toEqual(['relay', 'valve']);
  });

  test('derived: two of one name, and one whose name is very long, are kept apart', () => {
    const refit = lathe();
    const long = 'x'.repeat(100);
    const asked = [
      { ...auxiliary('one', [input('back')]), name: 'Door' },
      { ...auxiliary('two', [input('back')]), name: 'Door' },
      { ...auxiliary('three', [input('back'), input('front')]), name: long },
    ];
    const { wiring } = proposeWiring(refit, asked);
    const names = Object.values(wiring.devices)
      .filter(({ kind }) => kind === 'switch')
      .map(({ name }) => name);
    expect(names).toHaveLength(4);
    expect(new Set(names).size).toBe(4);
    expect(names).toContain('Door (two): back');
  });

  test('derived: one for which there is no room is left out as a whole, and said so', () => {
    const many = Array.from({ length: 40 }, (_, n) => input(`s${n}`));
    const { left, wiring } = proposeWiring(lathe(), [
      auxiliary('turret', many),
      auxiliary('oil', [input('level')]),
    ]);
    expect(left).toEqual([
      expect.stringMatching(/^turret is left out: it asks A1 for 40 inputs where 32 are free/),
    ]);
    expect(Object.values(wiring.devices).some(({ name }) => name.startsWith('turret'))).toBe(false);
    expect(Object.values(wiring.devices).some(({ name }) => name === 'oil: level')).toBe(true);
    expect(proposeWiring(lathe(), [auxiliary('x', [], [output('y', { by: '5 V' })])]).left[0]).toMatch(
      /5 V logic/,
    );
  });
});

describe('limits, contacts of the spindle drive, filter', () => {
  test('derived: limit switches that open, two in series on one input, for every axis', () => {
    for (const form of ['either', 'pnp', 'npn'] as const) {
      const base = lathe(form);
      const refit = {
        ...base,
        wiring: { ...base.wiring, settings: { ...ANSWERS, limits: 'switches to the control' } },
      };
      const { wiring, findings } = proposeWiring(refit);
      expect(Object.values(wiring.devices).filter(({ kind }) => kind === 'limit').length).toBe(4);
      const judged = findings.filter(({ id }) => /^levels:A1\.in[12]$/.test(id));
      expect(judged.map(({ verdict }) => verdict)).toEqual(['fits', 'fits']);
      expect(judged[0]!.about.filter((each) => /\.1[12]$/.test(each)).length).toBe(2);
    }
  });

  test('derived: the drive is asked whether it has a fault contact; said yes, it is wired', () => {
    const refit = lathe();
    const first = proposeWiring(refit);
    expect(first.questions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['T3.ready-output', 'T3.at-speed-output']),
    );
    const T3 = first.wiring.devices.T3!;
    const settings = { ...T3.settings, 'ready-output': 'yes', 'at-speed-output': 'no' };
    const said = {
      ...refit,
      wiring: { ...first.wiring, devices: { ...first.wiring.devices, T3: { ...T3, settings } } },
    };
    const again = proposeWiring(said);
    expect(meets(again.wiring, said, 'T3.44')).toContain('A1.in1');
    expect(again.findings.find(({ id }) => id === 'levels:A1.in1')!.verdict).toBe('fits');
    expect(again.questions.some(({ id }) => id === 'T3.ready-output')).toBe(false);
  });

  test('derived: a filter stands between contactors and inverter; not where the drive is wired past it', () => {
    const base = lathe();
    const refit = { ...base, wiring: { ...base.wiring, settings: { ...ANSWERS, 'spindle-filter': 'yes' } } };
    const { wiring, findings } = proposeWiring(refit);
    expect(wiring.devices.Z1!.settings.phases).toBe('three');
    expect(findings.find(({ id }) => id === 'filter:Z1')!.verdict).toBe('fits');
    expect(findings.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
    const past = proposeWiring(base);
    const late = proposeWiring({
      ...base,
      wiring: { ...past.wiring, settings: { ...ANSWERS, 'spindle-filter': 'yes' } },
    });
    expect(late.left[0]).toMatch(/Z1 is not wired/);
    expect(late.findings.some(({ id, verdict }) => id.startsWith('filter:') && verdict === 'fails')).toBe(
      false,
    );
  });
});
