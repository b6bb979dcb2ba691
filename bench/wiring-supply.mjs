/**
 * The rules of the supply after one edit, in a network of 500 terminals and in one of 5000, against all of them asked from
 * the start. Every wire's area and length is said, so that volts lost on a common way count for every load beyond it.
 */
import { judgeSupply, SupplyChecker } from '../dist/engine/circuit/power/index.js';
import { WiringChecker } from '../dist/engine/circuit/wiring/check/checker.js';
import { readWiring } from '../dist/engine/circuit/wiring/read.js';
import { newRefit } from '../dist/engine/refit/index.js';
import { suppliedCells } from './wiring-network.mjs';

/** Wires of a cell, taken off and laid again; and those that everything of a phase hangs on. */
const DEEP = ['s1', 's2', 'd1', 'k1', 'k4', 'k5', 'f2', 'm1', 'eA+', 'p1'];
const SOCKET = ['mL10', 'mN0'];
const ROUNDS = 30;

function prepare(cells) {
  const wiring = suppliedCells(cells);
  const refit = { ...newRefit({ id: 'bench', name: 'Bench', machine: 'other' }), wiring };
  const joined = new WiringChecker(wiring, refit);
  const supply = new SupplyChecker(refit);
  supply.update(refit, joined.drawing, joined.news());
  const edits = (ids) =>
    ids.map((id) => {
      const { [id]: wire, ...wires } = wiring.wires;
      return { wire, without: { ...refit, wiring: { ...wiring, wires } } };
    });
  return {
    refit,
    joined,
    supply,
    groups: {
      deep: {
        edits: edits([1, 2, 3].flatMap((cell) => DEEP.map((each) => `c${cell}-${each}`))),
        took: [],
        listed: [],
      },
      socket: { edits: edits(SOCKET), took: [], listed: [] },
    },
  };
}

function editAll({ refit, joined, supply, groups }, seconds) {
  for (const { edits, took, listed } of Object.values(groups))
    for (const { wire, without } of edits) {
      const take = (now, old, wired) => {
        joined.apply([{ do: 'wire', id: wire.id, old, new: wired }], now.wiring);
        const news = joined.news();
        took.push(seconds(() => supply.update(now, joined.drawing, news)));
        listed.push(seconds(() => supply.findings()));
      };
      take(without, wire, null);
      take(refit, null, wire);
    }
}

export function supplyCase(seconds, median) {
  const both = [prepare(5), prepare(52)];
  for (let round = 0; round < ROUNDS; round++) for (const each of both) editAll(each, seconds);
  const results = both.map(({ refit, supply, groups }) => {
    const read = readWiring(refit.wiring, refit);
    let whole;
    const full = median(
      Array.from({ length: 3 }, () =>
        seconds(() => {
          whole = judgeSupply(refit, read);
        }),
      ),
    );
    const same = JSON.stringify(whole.findings) === JSON.stringify(supply.findings());
    const after = (list) => list.slice(list.length / 4);
    const mean = (list) => list.reduce((sum, each) => sum + each, 0) / list.length;
    const [deep, socket] = [groups.deep, groups.socket].map(({ took }) => mean(after(took)));
    return {
      terminals: read.terminals.size,
      deep,
      socket,
      list: mean(after(groups.deep.listed)),
      full,
      same,
    };
  });
  for (const { terminals, deep, socket, list, full, same } of results)
    console.log(
      `supply, ${terminals} terminals: an edit deep in the tree ${(deep * 1e6).toFixed(0)} µs, at the socket ${(socket * 1e3).toFixed(1)} ms, all from the start ${(full * 1e3).toFixed(0)} ms: ${(full / deep).toFixed(0)} times; listing the findings ${(list * 1e6).toFixed(0)} µs; findings ${same ? 'the same' : 'DIFFERENT'}`,
    );
  const [small, large] = results;
  console.log(
    `supply: an edit deep in the large one takes ${(large.deep / small.deep).toFixed(2)} times as long as in the small one; at the socket, which all hangs on, ${(large.socket / small.socket).toFixed(1)} times`,
  );
}
