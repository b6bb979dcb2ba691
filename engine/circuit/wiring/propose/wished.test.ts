import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Fact, Refit } from '../../../refit/types.ts';
import { readWiring } from '../read.ts';
import { proposeWiring } from './index.ts';

const told = (value: Fact['value']): Fact => ({ value, basis: 'told' });

/** The lathe on its larger control, without a wiring, with what the job wants besides. */
function lathe(
  wished: readonly string[],
  control: Readonly<Record<string, Fact>> = {},
  settings: Readonly<Record<string, string>> = {},
): Refit {
  const refit = sample('carriage-works-lathe');
  const job = refit.places.job!.chosen!;
  const facts = (id: string, more: Readonly<Record<string, Fact>>) => ({
    ...refit.parts[id]!,
    facts: { ...refit.parts[id]!.facts, ...more },
  });
  return {
    ...refit,
    parts: {
      ...refit.parts,
      [job]: facts(job, { 'control-wanted': told({ kind: 'choices', options: wished }) }),
      'control-2': facts('control-2', {
        'encoder-inputs': told({ kind: 'quantity', text: '4' }),
        'inputs-24v': told({ kind: 'quantity', text: '24' }),
        'inputs-take': told({ kind: 'choice', option: 'npn' }),
        ...control,
      }),
    },
    places: { ...refit.places, control: { ...refit.places.control!, chosen: 'control-2' } },
    wiring: {
      devices: {},
      wires: {},
      cables: {},
      settings: { homes: 'none', limits: 'none', 'spindle-filter': 'no', ...settings },
    },
  };
}

/** The refit with what was proposed recorded and one setting answered. */
function answered(refit: Refit, kind: string, settings: Readonly<Record<string, string>>): Refit {
  const { wiring } = proposeWiring(refit);
  const device = Object.values(wiring.devices).find((each) => each.kind === kind)!;
  const now = { ...device, settings: { ...device.settings, ...settings } };
  return { ...refit, wiring: { ...refit.wiring, devices: { [device.id]: now } } };
}

/** Ids of the terminals whose net holds this one. */
function meets(refit: Refit, terminal: string): readonly string[] {
  const { wiring } = proposeWiring(refit);
  return readWiring(wiring, refit).netOf.get(terminal)?.terminals ?? [];
}

const bad = (refit: Refit, about: RegExp) =>
  proposeWiring(refit)
    .findings.filter(({ verdict, rule }) => verdict === 'fails' || rule === 'connected')
    .filter((each) => each.about.some((id) => about.test(id)))
    .map(({ id, sentence }) => `${id}: ${sentence}`);

const idOf = (refit: Refit, kind: string): string =>
  Object.values(proposeWiring(refit).wiring.devices).find((each) => each.kind === kind)!.id;

describe('a touch probe', () => {
  test('derived: only where the job wants one; first it is asked what it gives', () => {
    const none = proposeWiring(lathe([]));
    expect(Object.values(none.wiring.devices).some(({ kind }) => kind === 'probe')).toBe(false);
    const { questions, changes } = proposeWiring(lathe(['probing']));
    const asked = questions.find(({ place }) => place.setting === 'output')!;
    expect(asked.options).toContain('contact that opens at the touch');
    const own = 'id' in asked.place ? asked.place.id : '';
    expect(changes.some((change) => change.do === 'wire' && change.new?.to.startsWith(`${own}.`))).toBe(
      false,
    );
  });

  test.each([
    ['contact that opens at the touch', false],
    ['contact that closes at the touch', false],
    ['NPN', false],
    ['PNP', true],
  ] as const)('derived: one that gives a %s arrives at a free input with what it needs', (output, board) => {
    const refit = answered(lathe(['probing']), 'probe', { output });
    const own = idOf(refit, 'probe');
    expect(bad(refit, new RegExp(`^${own}\\.`))).toEqual([]);
    const isContact = output.startsWith('contact');
    const net = meets(refit, isContact ? `${own}.2` : `${own}.BK`);
    // The inputs of this control want to be pulled down: a PNP probe goes through an opto board.
    expect(net.some((id) => /^A1\.in\d+$/.test(id))).toBe(!board);
    expect(net.some((id) => /\.I\d+\+$/.test(id))).toBe(board);
    if (!isContact) {
      expect(meets(refit, `${own}.BN`).some((id) => /plus$|^F\w+\.2$/.test(id))).toBe(true);
      expect(meets(refit, `${own}.BU`).some((id) => /minus$/.test(id))).toBe(true);
    }
    // Laid once.
    const { wiring } = proposeWiring(refit);
    expect(proposeWiring({ ...refit, wiring }).changes).toEqual([]);
  });

  test('derived: without a free input it is left out, and says so', () => {
    const full = lathe(['probing'], { 'inputs-24v': told({ kind: 'quantity', text: '0' }) });
    const { left } = proposeWiring(answered(full, 'probe', { output: 'NPN' }));
    expect(left).toContain('The touch probe is left out: no input of A1 is free.');
  });
});

describe('a handwheel', () => {
  test('derived: only where the job wants one and an encoder input is left; its lines are asked', () => {
    expect(
      Object.values(proposeWiring(lathe([])).wiring.devices).some(({ kind }) => kind === 'handwheel'),
    ).toBe(false);
    expect(proposeWiring(lathe(['handwheel'])).questions.map(({ place }) => place.setting)).toContain(
      'lines',
    );
    const none = lathe(['handwheel'], { 'encoder-inputs': told({ kind: 'quantity', text: '0' }) });
    expect(proposeWiring(none).left.join(' ')).toMatch(/handwheel is left out.*A1 has none/);
  });

  test.each([
    ['differential', 'differential', 0, 0],
    ['single-ended', 'differential', 1, 0],
    ['open collector', 'differential', 1, 2],
    ['differential', 'single-ended', 1, 0],
    ['single-ended', 'single-ended', 0, 0],
    ['open collector', 'single-ended', 0, 2],
    ['open collector', 'open collector', 0, 0],
  ] as const)(
    'derived: %s lines on inputs for %s: %d line units, %d pull-ups, nothing fails',
    (lines, reads, units, pulls) => {
      const wished = answered(lathe(['handwheel']), 'handwheel', { lines });
      const { wiring: bare } = proposeWiring(wished);
      const A1 = { ...bare.devices.A1!, settings: { ...bare.devices.A1!.settings, 'encoder-lines': reads } };
      // Another encoder has settled what the inputs of the control are.
      const { A1: _, ...others } = wished.wiring.devices;
      const refit = {
        ...wished,
        wiring: {
          ...wished.wiring,
          devices: { ...others, A1: { ...A1, settings: { ...A1.settings, encoders: 'S' } } },
        },
      };
      const { wiring } = proposeWiring(refit);
      const own = idOf(refit, 'handwheel');
      const of = (kind: string) => Object.values(wiring.devices).filter((each) => each.kind === kind);
      expect(of('line-unit').length).toBe(units);
      expect(of('resistor').filter(({ name }) => name.includes('handwheel')).length).toBe(pulls);
      expect(
        bad(refit, new RegExp(`^(${own}|A1\\.HW-[ABS05].*|${of('line-unit')[0]?.id ?? own})\\.?`)),
      ).toEqual([]);
      expect(proposeWiring({ ...refit, wiring }).changes).toEqual([]);
    },
  );

  test('derived: each contact of its switches on an input of its own, one end of all of them together', () => {
    const refit = answered(lathe(['handwheel']), 'handwheel', { lines: 'differential' });
    const own = idOf(refit, 'handwheel');
    const inputs = ['X-2', 'Z-2', 'step1-2', 'step2-2', 'step3-2'].map((mark) =>
      meets(refit, `${own}.${mark}`).filter((id) => /^A1\.in\d+$/.test(id)),
    );
    expect(inputs.every((each) => each.length === 1)).toBe(true);
    expect(new Set(inputs.flat()).size).toBe(5);
    expect(meets(refit, `${own}.X-1`)).toEqual(expect.arrayContaining([`${own}.Z-1`, `${own}.step3-1`]));
    const few = lathe(['handwheel'], { 'inputs-24v': told({ kind: 'quantity', text: '3' }) });
    const { left } = proposeWiring(answered(few, 'handwheel', { lines: 'differential' }));
    expect(left.join(' ')).toMatch(/switches of the handwheel are left out/);
  });
});
