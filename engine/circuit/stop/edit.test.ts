import { describe, expect, test } from 'vitest';
import type { StopCircuit } from '../../refit/types.ts';
import { analyseStop } from './analyse.ts';
import {
  addElement,
  cutWire,
  EMPTY_CIRCUIT,
  joinTerminals,
  removeElement,
  setPlace,
  wholeCircuit,
} from './edit.ts';
import { PATTERNS } from './patterns/index.ts';

const circuit = PATTERNS.find(({ id }) => id === 'two-contactors')!.make([
  { id: 'X', kind: 'axis', name: 'table' },
]);
const need = <T>(result: { ok: true; value: T } | { ok: false; problem: { message: string } }): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const message = (result: { ok: boolean; problem?: { message: string } }): string =>
  result.problem?.message ?? '';
const set = (from: StopCircuit, path: string, value: string) => need(setPlace(from, path, value)).circuit;

describe('a stop circuit changed by words', () => {
  test('derived: an ordinary contact made a mirror contact: the welded contactor is noticed, and back again', () => {
    const verdict = (each: StopCircuit) =>
      need(analyseStop(each)).faults.find(({ fault }) => fault.id === 'K1 welded')!.judged.verdict;
    const plain = set(circuit, 'K1.linked', 'no');
    expect(verdict(plain)).toBe('unnoticed');
    expect(verdict(set(plain, 'K1.linked', 'yes'))).toBe('noticed');
    expect(set(plain, 'K1.linked', 'usual').elements.K1!.settings.linked).toBeUndefined();
  });

  test('derived: what is added, joined, cut and taken out leaves the circuit as it was', () => {
    const more = need(joinTerminals(need(addElement(circuit, 'K9', 'relay')), 'K9.A1', 'F1.2', 'W7'));
    const id = Object.keys(more.wires).find((each) => !Object.hasOwn(circuit.wires, each))!;
    expect(more.wires[id]).toEqual({ id, from: 'K9.A1', to: 'F1.2', cable: 'W7' });
    expect(set(more, `${id}.cable`, 'none').wires[id]!.cable).toBe('');
    expect(need(cutWire(more, id)).wires).toEqual(circuit.wires);
    expect(need(cutWire(more, 'F1.2 K9.A1')).wires).toEqual(circuit.wires);
    expect(need(removeElement(more, 'K9'))).toEqual(circuit);
  });

  test('derived: a circuit is begun from nothing; one without a drive, or with a terminal gone, is not taken', () => {
    let made = EMPTY_CIRCUIT;
    for (const [id, kind] of [
      ['G1', 'supply'],
      ['S1', 'mushroom'],
      ['T1', 'drive'],
      ['X', 'axis'],
    ] as const)
      made = need(addElement(made, id, kind));
    expect(message(wholeCircuit(made))).toMatch(/X\.drive=T1/);
    made = set(made, 'X.drive', 'T1');
    for (const [from, to] of [
      ['G1.plus', 'S1.11'],
      ['S1.12', 'T1.L'],
      ['T1.N', 'G1.minus'],
      ['G1.plus', 'T1.EN'],
      ['T1.COM', 'G1.minus'],
    ] as const)
      made = need(joinTerminals(made, from, to));
    expect(need(analyseStop(need(wholeCircuit(made)))).base.runs).toEqual([0]);
    expect(message(wholeCircuit(set(made, 'S1.nc', '0')))).toMatch(/S1 has no terminal S1\.11/);
    expect(message(wholeCircuit(set(made, 'X.drive', 'S1')))).toMatch(/S1 is no drive/);
    expect(message(removeElement(made, 'T1'))).toMatch(/T1 moves X/);
  });

  test('derived: hostile words are answered with what would be right', () => {
    for (const id of ['', '1K', 'K 9', '__proto__', 'constructor.x', 'x'.repeat(60), 'stop'])
      expect(addElement(circuit, id, 'relay').ok, id).toBe(false);
    expect(message(addElement(circuit, 'K9', 'relais'))).toMatch(/did you mean relay/);
    expect(message(addElement(circuit, 'K1', 'relay'))).toMatch(/There is K1 already/);
    expect(message(joinTerminals(circuit, 'K1.A1', 'K1.A3'))).toMatch(/no terminal “K1\.A3”/);
    expect(message(joinTerminals(circuit, 'K1.A1', 'K1.A1'))).toMatch(/two different/);
    expect(message(joinTerminals(circuit, 'K1.14', 'K1.A1'))).toMatch(/already/);
    expect(message(cutWire(circuit, '__proto__'))).toMatch(/no wire/);
    expect(message(removeElement(circuit, 'toString'))).toMatch(/no element/);
    for (const [path, value] of [
      ['K1', 'yes'],
      ['K1.', 'yes'],
      ['K1.linked', 'perhaps'],
      ['K1.drop-out', '5 kg'],
      ['K1.main', '99'],
      ['K1.__proto__', '1'],
      ['__proto__.linked', 'yes'],
      ['X.travel', 'far'],
      ['stop.toString', '1'],
      ['w1.colour', 'red'],
    ] as const) {
      const made = setPlace(circuit, path, value);
      expect(made.ok, path).toBe(false);
      expect(message(made)).not.toMatch(/undefined|NaN|\[object/);
    }
  });
});
