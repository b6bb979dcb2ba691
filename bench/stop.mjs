/**
 * All single faults of a stop circuit of sixty elements in all states of its operator: our simulation against a plain
 * exhaustive evaluation of the same circuit that spreads potentials from contact to contact until nothing changes.
 * Run after a build: node bench/stop.mjs
 */

import { act, actsOf, canAct, takeOver } from '../dist/engine/circuit/stop/acts.js';
import { compileStop } from '../dist/engine/circuit/stop/compile.js';
import { draw } from '../dist/engine/circuit/stop/draw.js';
import { singleFaults } from '../dist/engine/circuit/stop/faults.js';
import { networkOf } from '../dist/engine/circuit/stop/network.js';
import { Simulation } from '../dist/engine/circuit/stop/simulate.js';
import { atRest, copyState, keyOf } from '../dist/engine/circuit/stop/state.js';

/** One button and two contactors, then relays in a row, each pulled in by the one before and a limit switch. */
function circuit() {
  const elements = [
    ['G1 supply', ''],
    ['F1 fuse', ''],
    ['S1 mushroom', '', { nc: '2' }],
    ['S2 button', ''],
    ['S3 door', '', { nc: '2' }],
    ['K1 contactor', '', { main: '2' }],
    ['K2 contactor', '', { main: '2' }],
    ['K3 relay', '', { 'drop-out': '50 ms' }],
    ['G2 supply', ''],
    ['T1 drive', '', { enable: 'no' }],
  ];
  const runs = [
    'G1.plus F1.1',
    'F1.2 S1.11',
    'F1.2 S1.21',
    'S1.12 S3.11',
    'S1.22 S3.21',
    'S3.12 K3.13',
    'S3.22 K3.23',
    'K3.13 K1.13',
    'K3.23 K2.13',
    'K3.14 K1.A1',
    'K3.24 K2.A1',
    'K1.14 K1.A1',
    'K2.14 K2.A1',
    'K1.A2 G1.minus',
    'K2.A2 G1.minus',
    'F1.2 S2.13',
    'S2.14 K1.51',
    'K1.52 K2.51',
    'K2.52 K3.A1',
    'K3.A2 G1.minus',
    'G2.plus K1.1',
    'K1.2 K2.1',
    'K2.2 T1.L',
    'G2.minus K1.3',
    'K1.4 K2.3',
    'K2.4 T1.N',
  ];
  let before = 'S3.12';
  for (let n = 10; elements.length < 60; n++) {
    elements.push([`K${n} relay`, '', {}]);
    runs.push(`${before} K${n}.A1`, `K${n}.A2 G1.minus`, `F1.2 K${n}.13`);
    before = `K${n}.14`;
  }
  return draw({
    pattern: null,
    elements,
    runs,
    motions: [{ id: 'X', kind: 'axis', name: 'X', drive: 'T1', brake: null, settings: {} }],
  });
}

const made = compileStop(circuit());
if (!made.ok) throw new Error(made.problem.message);
const model = made.value;

/** Every state a hand can bring about, from power off. */
function statesOf() {
  const simulation = new Simulation(networkOf(model));
  const first = atRest(model);
  const seen = new Map([[keyOf(first), first]]);
  const queue = [first];
  for (let state = queue.shift(); state; state = queue.shift())
    for (const each of actsOf(model)) {
      if (!canAct(simulation, state, each)) continue;
      const next = copyState(state);
      act(simulation, next, each);
      if (seen.has(keyOf(next))) continue;
      seen.set(keyOf(next), next);
      queue.push(next);
    }
  return [...seen.values()];
}

/** The rival: no nets made beforehand; plus and minus spread over wires and contacts, one step at a time. */
function plainSettle(network, state) {
  const { movers, contacts, wires, sources, frame } = model;
  const off = new Set(network.faults.filter(({ kind }) => kind === 'wire-off').map(({ wire }) => wire));
  const touching = network.faults.filter(({ kind }) => kind === 'touch').map(({ nodes }) => nodes);
  for (let moment = 0; moment < 1000; moment++) {
    const joins = [];
    for (const [at, { a, b }] of wires.entries()) if (!off.has(at)) joins.push([a, b]);
    for (const nodes of touching) for (const node of nodes.slice(1)) joins.push([nodes[0], node]);
    for (const { minus, earthed } of sources) if (earthed) joins.push([minus, frame]);
    for (const [at, { a, b, mover, closedAt }] of contacts.entries()) {
      const force = network.forced[at];
      if (!state.melted[at] && (force !== 0 ? force > 0 : mover < 0 || state.at[mover] === closedAt))
        joins.push([a, b]);
    }
    const spread = (from, over = joins) => {
      const on = new Set([from]);
      for (let grown = true; grown; ) {
        grown = false;
        for (const [a, b] of over)
          if (on.has(a) !== on.has(b)) {
            on.add(a).add(b);
            grown = true;
          }
      }
      return on;
    };
    const rails = sources.map(({ plus, minus }, at) =>
      state.power && !network.lost[at] && !state.tripped[at] ? [spread(plus), spread(minus)] : undefined,
    );
    const short = rails.findIndex((rail, at) => rail?.[0].has(sources[at].minus));
    if (short >= 0) {
      const clears = ({ a, b }) => {
        const without = joins.filter((join) => join[0] !== a || join[1] !== b);
        return !spread(sources[short].plus, without).has(sources[short].minus);
      };
      const fuse = contacts.findIndex((each, at) => each.fuse && !state.melted[at] && clears(each));
      if (fuse >= 0) state.melted[fuse] = 1;
      else state.tripped[short] = 1;
      continue;
    }
    let next = Number.POSITIVE_INFINITY;
    for (const [at, { kind, a, b }] of movers.entries()) {
      if (kind === 'hand') continue;
      const held = network.stuck[at];
      const pulled = rails.some(
        (rail) => rail && ((rail[0].has(a) && rail[1].has(b)) || (rail[0].has(b) && rail[1].has(a))),
      );
      const want = held >= 0 ? held : pulled ? 1 : 0;
      if (want === state.at[at]) state.due[at] = Number.POSITIVE_INFINITY;
      else if (held >= 0) state.due[at] = state.time;
      else if (state.due[at] === Number.POSITIVE_INFINITY)
        state.due[at] = state.time + (want === 1 ? network.pickUp[at] : network.dropOut[at]);
      next = Math.min(next, state.due[at]);
    }
    if (next === Number.POSITIVE_INFINITY) return;
    state.time = next;
    for (const at of movers.keys())
      if (state.due[at] <= next + 1e-7) {
        state.due[at] = Number.POSITIVE_INFINITY;
        state.at[at] = state.at[at] === 1 ? 0 : 1;
      }
  }
}

const states = statesOf();
const faults = singleFaults(model);
const settled = (settle) => {
  const begun = process.cpuUsage();
  const ends = [];
  for (const fault of faults) {
    const network = networkOf(model, fault.faults);
    const run = settle(network);
    for (const state of states) {
      const now = takeOver(network, state);
      run(now);
      ends.push(keyOf(now));
    }
  }
  const { user, system } = process.cpuUsage(begun);
  return { seconds: (user + system) / 1e6, ends };
};
const ours = () =>
  settled((network) => {
    const simulation = new Simulation(network);
    return (state) => simulation.settle(state);
  });
const plain = () => settled((network) => (state) => plainSettle(network, state));

ours();
const [mine, other] = [ours(), plain()];
const different = mine.ends.filter((end, at) => end !== other.ends[at]).length;
console.log(
  `${Object.keys(circuit().elements).length} elements, ${faults.length} faults in ${states.length} states: ${mine.ends.length} runs`,
);
console.log(
  `ours ${mine.seconds.toFixed(2)} s, plain ${other.seconds.toFixed(2)} s: ${(other.seconds / mine.seconds).toFixed(1)} times as fast`,
);
console.log(different === 0 ? 'the same end in every run' : `${different} runs END DIFFERENTLY`);
