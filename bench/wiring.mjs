/**
 * One wire taken off and laid again in a wiring of 500 and of 5000 terminals: the rules asked anew where the edit
 * reaches, against all rules asked of the whole from the start. The findings must be the same.
 * Run after a build: node bench/wiring.mjs
 */
import { WiringChecker } from '../dist/engine/circuit/wiring/check/checker.js';
import { readWiring } from '../dist/engine/circuit/wiring/read.js';
import { cellsOf } from './wiring-network.mjs';
import { ringOutCase } from './wiring-readings.mjs';
import { supplyCase } from './wiring-supply.mjs';

/** Seconds of processor time; other work on the computer does not count. */
function seconds(run) {
  const begun = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1e6;
}
const median = (list) => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)];

const EDITED = ['s1', 's2', 's3', 'd1', 'd2', 'd6', 'k1', 'k2', 'k4', 'eA+', 'e5V', 'm1', 'p1', 'f3'];
const ROUNDS = 40;

/** The wirings before and after each edit are made beforehand: copying them is no work of the rules. */
function prepare(cells) {
  const wiring = cellsOf(cells);
  const edited = [0, 1, 2, 3].flatMap((cell) =>
    EDITED.map((each) => {
      const { [`c${cell}-${each}`]: wire, ...wires } = wiring.wires;
      return { wire, without: { ...wiring, wires } };
    }),
  );
  return { wiring, edited, checker: new WiringChecker(wiring), edits: [] };
}

function editAll({ wiring, edited, checker, edits }) {
  for (const { wire, without } of edited)
    edits.push(
      seconds(() => {
        checker.apply([{ do: 'wire', id: wire.id, old: wire, new: null }], without);
        checker.apply([{ do: 'wire', id: wire.id, old: null, new: wire }], wiring);
      }) / 2,
    );
}

function result({ wiring, checker, edits }) {
  let whole;
  const full = median(
    Array.from({ length: 5 }, () =>
      seconds(() => {
        whole = new WiringChecker(wiring);
      }),
    ),
  );
  const same = JSON.stringify(whole.findings()) === JSON.stringify(checker.findings());
  return {
    terminals: readWiring(wiring).terminals.size,
    edit: median(edits.slice(edits.length / 4)),
    full,
    same,
  };
}

const both = [prepare(4), prepare(60)];
// In turns, so that whatever else the computer does troubles both alike.
for (let round = 0; round < ROUNDS; round++) for (const each of both) editAll(each);
const [small, large] = both.map(result);
for (const { terminals, edit, full, same } of [small, large])
  console.log(
    `${terminals} terminals: an edit ${(edit * 1e6).toFixed(0)} µs, all from the start ${(full * 1e3).toFixed(0)} ms: ${(full / edit).toFixed(0)} times; findings ${same ? 'the same' : 'DIFFERENT'}`,
  );
console.log(
  `an edit of the large one takes ${(large.edit / small.edit).toFixed(2)} times as long as of the small one`,
);
ringOutCase(seconds, median);
supplyCase(seconds, median);
