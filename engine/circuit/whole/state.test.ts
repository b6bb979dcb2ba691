import { describe, expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { applyEdit } from '../../refit/edit.ts';
import type { Change, Refit, Wiring } from '../../refit/types.ts';
import { NATURES, proposeWiring, type Question, readWiring } from '../wiring/index.ts';
import { fieldOf } from '../wiring/natures.ts';
import { wired } from '../wiring/wired.fixture.ts';
import {
  exampleOf,
  lookThrough,
  setBack,
  settingAt,
  settledOf,
  specAt,
  state,
  terminalSheet,
} from './index.ts';

const EMPTY: Wiring = { devices: {}, wires: {}, cables: {}, settings: {} };
const bench = (): Refit => ({
  ...sample('carriage-works-lathe'),
  wiring: wired(
    [
      'A1 control output-level=24v pulse-axes=X volts=24_V',
      'G1 supply volts=24_V current=5_A',
      'K1 relay coil-volts=24_V coil-current=20_mA suppressor=diode',
      'B1 sensor output=PNP',
    ],
    [
      'G1.plus A1.plus',
      'G1.minus A1.minus',
      'A1.out1 K1.A1',
      'K1.A2 G1.minus',
      'G1.plus B1.BN',
      'G1.minus B1.BU',
    ],
  ),
});

function record(refit: Refit, changes: readonly Change[]): Refit {
  const done = applyEdit(refit, { changes: [...changes] });
  if (!done.ok) throw new Error(done.problem.message);
  return done.value;
}

function say(refit: Refit, name: string, typed: string): Refit {
  const place = settingAt(name, refit.wiring, readWiring(refit.wiring, refit));
  if (!place.ok) throw new Error(place.problem.message);
  const done = state(refit, place.value, typed);
  if (!done.ok) throw new Error(done.problem.message);
  return record(refit, done.value);
}

describe('what somebody says of the wiring', () => {
  test('derived: a terminal said to give 5 V no longer suits a coil of 24 V, and does again when set back', () => {
    const refit = bench();
    const fails = (of: Refit) =>
      lookThrough(of)
        .findings.filter(
          ({ verdict, about }) => verdict === 'fails' && about.some((id) => /^(A1\.out1|K1\.)/.test(id)),
        )
        .map(({ id }) => id);
    expect(fails(refit)).toEqual([]);
    const said = say(say(refit, 'A1.out1.high', '5 V'), 'A1.out1.top', '5 V');
    expect(said.wiring.devices.A1!.terminals.out1).toEqual({
      kind: 'output',
      name: '',
      settings: { high: '5 V', top: '5 V' },
    });
    expect(fails(said).length).toBeGreaterThan(0);
    const back = setBack(said, 'A1', 'out1');
    if (!back.ok) throw new Error(back.problem.message);
    expect(record(said, back.value)).toEqual(refit);
    // Field by field it comes to the same.
    expect(say(say(said, 'A1.out1.high', 'usual'), 'A1.out1.top', '')).toEqual(refit);
  });

  test('derived: what cannot be is refused with the name of the field and an example; nothing is recorded', () => {
    const refit = bench();
    const read = readWiring(refit.wiring, refit);
    for (const [name, typed, words] of [
      ['K1.coil-current', '5 kg', /^Current of the coil: .*(mA|A)/],
      ['K1.coil-current', 'plenty', /^Current of the coil: /],
      ['K1.suppressor', 'sponge', /spike of the coil.*diode/],
      ['A1.out1.high', '-3 V', /^Lowest voltage when high: .*24 V|5 V/],
      ['A1.out1.kind', 'magnet', /^What it is: .*output/],
      ['wiring.homes', 'ghosts', /zero.*PNP sensors/],
    ] as const) {
      const place = settingAt(name, refit.wiring, read);
      if (!place.ok) throw new Error(place.problem.message);
      const done = state(refit, place.value, typed);
      expect(done.ok, `${name}=${typed}`).toBe(false);
      if (!done.ok) expect(done.problem.message).toMatch(words);
    }
    for (const [name, words] of [
      ['K1.supressor', /Did you mean suppressor\?/],
      ['A1.out1.hgih', /digital output.*There are: kind/],
      ['K9.volts', /no device, terminal, cable or wire “K9”/],
      ['wiring.home', /Did you mean homes\?/],
      ['__proto__.kind', /no device/],
      ['K1.constructor', /has no setting/],
      ['', /no device/],
    ] as const) {
      const place = settingAt(name, refit.wiring, read);
      expect(place.ok, name).toBe(false);
      if (!place.ok) expect(place.problem.message).toMatch(words);
    }
  });

  test('derived: another nature keeps only what it is asked as well; an added terminal goes only without wires', () => {
    const refit = bench();
    const said = say(say(refit, 'A1.out1.gives', '0.2 A'), 'A1.out1.stage', 'SINKING');
    expect(said.wiring.devices.A1!.terminals.out1!.settings.stage).toBe('sinking');
    const turned = say(said, 'A1.out1.kind', 'contact');
    expect(turned.wiring.devices.A1!.terminals.out1).toEqual({ kind: 'contact', name: '', settings: {} });
    expect(say(turned, 'A1.out1.kind', 'usual')).toEqual(refit);
    const { A1 } = refit.wiring.devices;
    const more = { ...A1!, terminals: { spare: { kind: 'joint', name: '', settings: {} } } };
    const wires = {
      ...refit.wiring.wires,
      mine: { id: 'mine', from: 'A1.spare', to: 'K1.A1', cable: null, settings: {} },
    };
    const added = { ...refit, wiring: { ...refit.wiring, devices: { ...refit.wiring.devices, A1: more } } };
    expect(setBack({ ...added, wiring: { ...added.wiring, wires } }, 'A1', 'spare')).toMatchObject({
      ok: false,
    });
    const gone = setBack(added, 'A1', 'spare');
    expect(gone.ok && record(added, gone.value)).toEqual(refit);
  });

  test('derived: where a field comes from is found by leaving each setting out', () => {
    const refit = bench();
    const from = (of: Refit, device: string, mark: string, setting: string) =>
      terminalSheet(of, device, mark)!.fields.find((each) => each.setting === setting)!;
    expect(from(refit, 'K1', 'A1', 'volts')).toMatchObject({ value: '24 V', typed: '' });
    expect(from(refit, 'K1', 'A1', 'volts').from).toMatch(/^follows from “.*” of K1 \(24 V\)$/);
    expect(from(refit, 'A1', 'out1', 'gives')).toMatchObject({ value: '', from: '' });
    expect(from(refit, 'A1', 'out1', 'leaks').from).toMatch(/^as a .* has it$/);
    const said = say(refit, 'A1.out1.gives', '0.2 A');
    expect(from(said, 'A1', 'out1', 'gives')).toMatchObject({
      value: '0.2 A',
      from: 'said of this terminal',
    });
    expect(terminalSheet(said, 'A1', 'out1')).toMatchObject({ isStated: true, isAdded: false });
    expect(terminalSheet(refit, 'A1', 'nothing')).toBeUndefined();
    expect(terminalSheet(refit, 'toString', 'A1')).toBeUndefined();
  });

  test('derived: every field of every nature can be said and reads back the same', () => {
    const refit = bench();
    for (const [kind, { fields }] of Object.entries(NATURES)) {
      let now = say(refit, 'A1.out1.kind', kind);
      // A rating of a contact, or a pull-up, says nothing before its voltage or its ohms.
      const settings: Record<string, string> = {};
      for (const [setting, [, spec]] of Object.entries(fields)) {
        settings[setting] = exampleOf(spec);
        now = say(now, `A1.out1.${setting}`, settings[setting]);
      }
      const { nature } = readWiring(now.wiring, now).terminals.get('A1.out1')!;
      expect(nature.kind).toBe(kind);
      for (const setting of Object.keys(fields))
        expect(fieldOf(nature, setting), `${kind}.${setting}`).toBeDefined();
      expect(readWiring(now.wiring, now).problems).toEqual([]);
    }
  });
});

describe('questions of a proposal', () => {
  /** An answer that a machine may have. */
  const answerTo = ({ place }: Question, wiring: Wiring): string => {
    const spec = specAt(place, wiring)!;
    return spec.kind === 'choice'
      ? (spec.options.find((each) => each !== 'none') ?? 'none')
      : exampleOf(spec);
  };

  for (const id of ['carriage-works-lathe', 'boatyard-mill'] as const)
    test(`derived: ${id}: each answered question is gone; wires wait for open ones, and none is left waiting at the end`, () => {
      let refit: Refit = { ...sample(id), wiring: EMPTY };
      const first = proposeWiring(refit);
      const settled = settledOf(first, refit);
      // Everything is asked or taken as usual; what is taken may ask for more.
      const both = [...settled.open, ...settled.taken].map(({ question }) => question.id);
      expect(new Set(both).size).toBe(both.length);
      expect(both).toEqual(expect.arrayContaining(first.questions.map(({ id: each }) => each)));
      expect(settled.groups.flatMap(({ facts }) => facts.flatMap(({ questions }) => questions))).toHaveLength(
        settled.open.length,
      );
      // What most wires wait for is asked first, after what the whole hangs on.
      const counts = settled.open
        .filter(({ question }) => question.place.of !== 'wiring')
        .map(({ wires }) => wires.length);
      expect(counts).toEqual([...counts].sort((a, b) => b - a));
      const held = new Set(settled.open.flatMap(({ wires }) => wires));
      expect(settled.waiting).toBe(held.size);
      expect(held.size).toBeGreaterThan(5);
      for (const change of settled.changes) expect(change.do === 'wire' && held.has(change.id)).toBe(false);
      expect(settled.changes.length).toBe(first.changes.length - held.size);
      for (const { question, wires, waits } of settled.open)
        expect(waits, question.id).toMatch(
          wires.length > 0 ? /not laid before/ : /laid before|stays unknown/,
        );
      // What needs no answer is recorded in between; the rest follows as answers come.
      refit = record(refit, settled.changes);
      const answered = new Set<string>();
      for (let round = 0; round < 6; round++) {
        const proposal = proposeWiring(refit);
        const { open } = settledOf(proposal, refit);
        expect(open.filter(({ question }) => answered.has(question.id))).toEqual([]);
        if (open.length === 0) break;
        for (const { question } of open) {
          const done = state(refit, question.place, answerTo(question, proposal.wiring), proposal.wiring);
          if (!done.ok) throw new Error(`${question.id}: ${done.problem.message}`);
          refit = record(refit, done.value);
          answered.add(question.id);
        }
      }
      const last = proposeWiring(refit);
      expect(settledOf(last, refit)).toMatchObject({ open: [], waiting: 0 });
      refit = record(refit, last.changes);
      expect(proposeWiring(refit).changes).toEqual([]);
      // Laid in pieces or at once after every answer: the same ends stay without a wire, if any (a sensor of the wrong kind).
      const loose = (wiring: Wiring) =>
        proposeWiring({ ...refit, wiring })
          .findings.filter(({ rule }) => rule === 'connected')
          .map(({ sentence }) => sentence);
      expect(loose(refit.wiring)).toEqual(loose({ ...refit.wiring, wires: {} }));
    }, 120_000);
});
