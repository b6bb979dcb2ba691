/**
 * Diagrams of 500 and of 5000 terminals: one edit drawn again against everything drawn from the start, as ratios; and how
 * the time of one edit grows with what there is. Run after a build: node bench/drawing.mjs
 */
import { layOut } from '../dist/engine/circuit/drawing/layout.js';
import { libraryLayouter } from '../dist/engine/circuit/drawing/library.js';

const PLUS = { name: '+24 V', role: 'feeds' };
const MINUS = { name: '0 V', role: 'returns' };
const NAMES = [
  'Door',
  'Limit X',
  'Oil pressure',
  'Coolant level',
  'Turret locked',
  'Chuck',
  'Way lubrication',
];

/** Six terminals a step: a switch, a strip terminal and an input; an output and a relay. Names differ, as they do. */
function plan(terminals) {
  const devices = [
    { id: 'G1', name: 'Supply', groups: [{ symbol: 'power-supply', box: ['G1.plus', 'G1.minus'] }] },
  ];
  const wires = [];
  const wire = (from, to, rail, circuit) => {
    const n = wires.length + 1;
    wires.push({
      id: `w${n}`,
      from,
      to,
      label: `${n} · ${n % 3 ? 'blue' : 'white-brown'} · 0.75`,
      rail,
      circuit,
    });
  };
  const steps = Math.round(terminals / 7);
  for (let first = 0; first < steps; first += 16) {
    const control = `A${first / 16 + 1}`;
    const circuit = `inputs ${first}`;
    const box = [];
    for (let n = first; n < Math.min(steps, first + 16); n++) {
      const name = `${NAMES[n % NAMES.length]} ${n}`;
      devices.push(
        { id: `S${n}`, name, groups: [{ symbol: 'limit-switch', poles: [[`S${n}.13`, `S${n}.14`]] }] },
        { id: `X${n}`, name: '', groups: [{ symbol: 'terminal', points: [`X${n}.1`] }] },
        { id: `K${n}`, name, groups: [{ symbol: 'coil', poles: [[`K${n}.A1`, `K${n}.A2`]] }] },
      );
      box.push(`${control}.I${n}`, `${control}.Q${n}`);
      wire('G1.plus', `S${n}.13`, PLUS, circuit);
      wire(`S${n}.14`, `X${n}.1`, null, circuit);
      wire(`X${n}.1`, `${control}.I${n}`, null, circuit);
      wire(`${control}.Q${n}`, `K${n}.A1`, null, circuit);
      wire(`K${n}.A2`, 'G1.minus', MINUS, circuit);
    }
    devices.push({ id: control, name: 'Control', groups: [{ symbol: 'control', box }] });
  }
  const circuits = [...new Set(wires.map(({ circuit }) => circuit))].map((id) => ({ id, title: id }));
  return { circuits, devices, wires };
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const timed = async (work) => {
  const start = performance.now();
  const answer = await work();
  return [performance.now() - start, answer];
};

const layouter = libraryLayouter();
await layOut(plan(200), layouter);
const edits = new Map();
for (const terminals of [500, 5000]) {
  const whole = plan(terminals);
  const full = [];
  let before;
  for (let run = 0; run < 3; run++) {
    const [time, diagrams] = await timed(() => layOut(whole, layouter));
    full.push(time);
    before = diagrams;
  }
  const one = [];
  let laidOut = 0;
  for (let run = 0; run < 7; run++) {
    const at = 3 + 5 * run;
    const wires = whole.wires.map((wire, n) =>
      n === at ? { ...wire, label: `${wire.label} · W${run + 1}` } : wire,
    );
    const [time, after] = await timed(() => layOut({ ...whole, wires }, layouter, { previous: before }));
    one.push(time);
    laidOut = Math.max(laidOut, after.laidOut);
  }
  edits.set(terminals, median(one));
  console.log(
    `${terminals} terminals, ${before.of} groups: everything drawn takes ${(median(full) / median(one)).toFixed(0)} times as long as one edit (${laidOut} groups laid out again for it)`,
  );
}
console.log(
  `one edit among 5000 terminals against one among 500: ${(edits.get(5000) / edits.get(500)).toFixed(1)} times`,
);
