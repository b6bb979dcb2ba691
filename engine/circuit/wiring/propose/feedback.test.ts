import { describe, expect, test } from 'vitest';
import { sample } from '../../../../samples/read.fixture.ts';
import type { Fact, Refit, Wiring } from '../../../refit/types.ts';
import { readWiring } from '../read.ts';
import { proposeWiring } from './index.ts';

const choice = (option: string): Fact => ({ value: { kind: 'choice', option }, basis: 'plate' });
const choices = (...options: string[]): Fact => ({ value: { kind: 'choices', options }, basis: 'plate' });

/** The lathe whose X has this feedback, read by a drive that takes these. */
function lathe(
  feedback: Record<string, Fact>,
  drive: Record<string, Fact>,
  devices: Wiring['devices'] = {},
): Refit {
  const refit = sample('carriage-works-lathe');
  const part = (id: string, facts: Record<string, Fact>, fresh = false) => ({
    ...refit.parts[id]!,
    facts: { ...(fresh ? {} : refit.parts[id]!.facts), ...facts },
  });
  return {
    ...refit,
    parts: {
      ...refit.parts,
      'x-feedback': part('x-feedback', feedback, true),
      'x-drive': part('x-drive', drive),
    },
    wiring: {
      devices,
      wires: {},
      cables: {},
      settings: { homes: 'none', limits: 'none', 'spindle-filter': 'no' },
    },
  };
}

const about = (refit: Refit, rule: string) =>
  proposeWiring(refit).findings.filter((each) => each.rule === rule && each.about[0]!.startsWith('T1.'));
const fails = (refit: Refit) => proposeWiring(refit).findings.filter(({ verdict }) => verdict === 'fails');

describe('what tells a drive speed and angle', () => {
  test('derived: a resolver: three pairs like to like in one twisted cable; what excites it is asked', () => {
    const refit = lathe({ type: choice('resolver') }, { feedbacks: choices('resolver') });
    const { wiring, questions } = proposeWiring(refit);
    expect(fails(refit)).toEqual([]);
    const read = readWiring(wiring, refit);
    for (const mark of ['R1', 'R2', 'S1', 'S2', 'S3', 'S4'])
      expect(read.netOf.get(`B1.${mark}`)!.terminals, mark).toEqual([`B1.${mark}`, `T1.RS-${mark}`]);
    expect(wiring.cables['WR-X']!.settings).toMatchObject({ cores: '6', twisted: 'yes', shield: 'braid' });
    expect(about(refit, 'resolver').map(({ verdict }) => verdict)).toEqual(['fits', 'fits']);
    expect(questions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['B1.volts', 'B1.hertz', 'T1.excitation-volts', 'T1.excitation-hertz']),
    );
  });

  test('derived: a tacho: plus to plus; its volts and those of the drive are asked', () => {
    const refit = lathe({ type: choice('tacho') }, { feedbacks: choices('tacho') });
    const { wiring, questions } = proposeWiring(refit);
    expect(fails(refit)).toEqual([]);
    expect(readWiring(wiring, refit).netOf.get('B1.T+')!.terminals).toEqual(['B1.T+', 'T1.TA+']);
    expect(questions.map(({ id }) => id)).toEqual(expect.arrayContaining(['B1.volts', 'T1.tacho-volts']));
  });

  test('derived: Hall sensors: nothing is laid that rests on pull-ups nobody has spoken of', () => {
    const facts = { type: choice('encoder'), output: choice('differential'), commutation: choice('halls') };
    const refit = lathe(facts, { commutations: choices('halls') });
    const first = proposeWiring(refit);
    expect(first.questions.some(({ id }) => id === 'T1.hall-pull-up')).toBe(true);
    expect(fails(refit)).toEqual([]);
    const said = (answer: string): Refit => {
      const T1 = first.wiring.devices.T1!;
      return {
        ...refit,
        wiring: {
          ...first.wiring,
          devices: {
            ...first.wiring.devices,
            T1: { ...T1, settings: { ...T1.settings, 'hall-pull-up': answer } },
          },
        },
      };
    };
    for (const answer of ['yes', 'no']) {
      const then = proposeWiring(said(answer));
      expect(then.findings.filter(({ verdict }) => verdict === 'fails').map((each) => each.sentence)).toEqual(
        [],
      );
      const judged = then.findings.filter(({ id }) => /^levels:T1\.HA-\d$/.test(id));
      expect(
        judged.map(({ verdict }) => verdict),
        answer,
      ).toEqual(['fits', 'fits', 'fits']);
      const pulls = Object.values(then.wiring.devices).filter(({ kind }) => kind === 'resistor');
      expect(pulls.length).toBe(answer === 'no' ? 3 : 0);
    }
  });

  test('derived: a drive that is said to read none of it gets none, and that is told', () => {
    const refit = lathe({ type: choice('resolver') }, { feedbacks: choices('tacho') });
    const { left, wiring } = proposeWiring(refit);
    expect(left).toEqual([expect.stringMatching(/resolver of X is left out/)]);
    expect(Object.values(wiring.devices).some(({ kind }) => kind === 'resolver')).toBe(false);
  });
});
