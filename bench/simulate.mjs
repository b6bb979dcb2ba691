/**
 * One axis simulated: ours against an extrapolation solver of the registry, scipy and a C program, each at the loosest
 * setting whose peak following error lies within 0.5 % of a reference at 1e-10 or finer. The C program takes no fewer than one
 * step a sample, since its control acts at each.
 * None of them books energies, and neither do we here; what booking costs is printed beside.
 * Run after a build: node bench/simulate.mjs [path of the built engine]. Needs gcc, and python3 with scipy for its part.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { MODEL, MOVE, numbers } from './simulate-model.mjs';
import { byOdex } from './simulate-odex.mjs';

const engine = resolve(process.argv[2] ?? join(import.meta.dirname, '..', 'dist', 'engine'));
const { band, simulate } = await import(join(engine, 'simulate', 'index.js'));
const folder = mkdtempSync(join(tmpdir(), 'fettle-'));
const program = join(folder, 'simulate-axis');
const SETTLE = 0.25;

const with_ = (model, changes) => {
  const out = { ...model };
  for (const [group, values] of Object.entries(changes)) out[group] = { ...model[group], ...values };
  return out;
};
const compile = spawnSync('gcc', [
  '-O3',
  '-march=native',
  '-o',
  program,
  join(import.meta.dirname, 'simulate-axis.c'),
  '-lm',
]);
const hasC = compile.status === 0;

const until = (move) => {
  const { steady, jerkTime, cruise } = numbers(MODEL, move);
  return 2 * (2 * jerkTime + steady) + cruise + SETTLE;
};
function inC(model, move, steps, repeats) {
  const samples = Math.round(until(move) / model.control.sample);
  const { tacho, ...fields } = numbers(model, move);
  const input = [...Object.values(fields), tacho].join(' ');
  const out = execFileSync(program, [steps, repeats, samples].map(String), { input, encoding: 'utf8' });
  const [peak, slips, ns] = out.trim().split(' ').map(Number);
  return { peak, slips, ms: ns / 1e6 };
}
/** The shortest of many, in ms of this process. */
function ours(model, move, repeats, options = { points: 0, books: false }) {
  let best = Number.POSITIVE_INFINITY;
  let run;
  for (let k = 0; k < repeats; k++) {
    const start = performance.now();
    run = simulate(model, move, { ...options, until: until(move) });
    best = Math.min(best, performance.now() - start);
  }
  return { ms: best, run };
}
const TURNS = 7;
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
const near = (peak, truth) => Math.abs(peak / truth - 1) < 0.005;

const CASES = [
  ['50 mm, speed from counts', MODEL, MOVE],
  ['50 mm, speed from a tacho', with_(MODEL, { control: { speedFrom: 'tacho' } }), MOVE],
  [
    '200 mm, speed from a tacho',
    with_(MODEL, { control: { speedFrom: 'tacho' } }),
    { ...MOVE, distance: 0.2 },
  ],
  [
    '50 mm, 20 µm of play',
    with_(MODEL, { transmission: { backlash: 2e-5 }, control: { speedFrom: 'tacho' } }),
    MOVE,
  ],
];

console.log(`Node ${process.version}; simulated time over wall time for scale; ratios are theirs ÷ ours`);
for (const [name, model, move] of CASES) {
  if (!hasC) break;
  const truth = inC(model, move, 256, 1).peak;
  const finer = inC(model, move, 128, 1).peak;
  let steps = 1;
  while (!near(inC(model, move, steps, 1).peak, truth)) steps *= 2;
  // Turn by turn, so that a busy computer disturbs all alike; of the turns the median counts.
  const again = [];
  const fresh = [];
  const theirs = [];
  let run;
  for (let turn = 0; turn < TURNS; turn++) {
    theirs.push(inC(model, move, steps, 60).ms);
    const one = ours(model, move, 60);
    run = one.run;
    again.push(one.ms);
    // The first run of a model works out its modes; later ones begin with them.
    let first = Number.POSITIVE_INFINITY;
    for (let k = 0; k < 60; k++) first = Math.min(first, ours(structuredClone(model), move, 1).ms);
    fresh.push(first);
  }
  const traced = ours(model, move, 60, {}).ms;
  const ratio = (mine) => median(theirs.map((each, turn) => each / mine[turn])).toFixed(2);
  console.log(
    `${name}: C ${steps} step(s) a sample ${median(theirs).toFixed(3)} ms; ours ${median(again).toFixed(3)} ms, ratio ${ratio(again)}; first run of a model ${median(fresh).toFixed(3)} ms, ratio ${ratio(fresh)}; with traces and energies ${traced.toFixed(3)} ms; ${((run.until * 1000) / median(again)).toFixed(0)} times real time; peaks differ ${(run.summary.peakFollowing / truth - 1).toExponential(1)}, reference converged to ${Math.abs(finer / truth - 1).toExponential(1)}`,
  );
}

const [, model, move] = CASES[0];
const span = 0.1;
const exact = byOdex(numbers(model, move), span, 1e-11).peak;
let best = Number.POSITIVE_INFINITY;
for (let k = 0; k < 200; k++) {
  const start = performance.now();
  simulate(model, move, { until: span, points: 0, books: false });
  best = Math.min(best, performance.now() - start);
}
let tolerance = 1e-1;
while (!near(byOdex(numbers(model, move), span, tolerance).peak, exact)) tolerance /= 10;
let rival = Number.POSITIVE_INFINITY;
for (let k = 0; k < 8; k++) {
  const start = performance.now();
  byOdex(numbers(model, move), span, tolerance);
  rival = Math.min(rival, performance.now() - start);
}
console.log(
  `first ${span} s: ours ${best.toFixed(3)} ms, odex at ${tolerance} ${rival.toFixed(1)} ms, ratio ${(rival / best).toFixed(0)}`,
);
for (const rtol of [1e-1, 1e-2, 1e-3, 1e-4]) {
  const script = join(import.meta.dirname, '..', 'tests', 'outside', 'simulate.py');
  const out = spawnSync('python3', [script, String(rtol)], { encoding: 'utf8' });
  if (out.status !== 0) {
    console.log('scipy is not there; skipped');
    break;
  }
  const { peak, seconds } = JSON.parse(out.stdout);
  if (!near(peak, exact)) continue;
  console.log(
    `first ${span} s: scipy solve_ivp RK45 at ${rtol} ${(seconds * 1e3).toFixed(0)} ms, ratio ${((seconds * 1e3) / best).toFixed(0)}`,
  );
  break;
}

const start = performance.now();
const spread = [
  { path: 'slide.coulomb', share: 0.3, form: 'normal' },
  { path: 'slide.staticFriction', share: 0.1, form: 'even' },
  { path: 'transmission.stiffness', share: 0.3, form: 'even' },
  { path: 'motor.resistance', share: 0.1, form: 'even' },
];
const thousand = band(with_(MODEL, { slide: { staticFriction: 700 } }), spread, MOVE, 1000, 1);
console.log(`1000 variants: ${((performance.now() - start) / 1000).toFixed(2)} s, ${thousand.runs} runs`);
rmSync(folder, { recursive: true, force: true });
