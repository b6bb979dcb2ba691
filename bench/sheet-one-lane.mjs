/**
 * One answer of every formula: our compiled sheet against mathjs's compiled expressions.
 * Run after a build: node bench/sheet-one-lane.mjs [module] [export]
 */
import { all, create } from 'mathjs';
import { oneLane } from '../dist/engine/sheet/compile/one-lane.js';
import { evaluate } from '../dist/engine/sheet/index.js';
import { benchSheets, plausible, report, seeded } from './sheet-formulas.mjs';

const ROUNDS = 40;
const math = create(all);
math.import({ ln: Math.log }, { override: true });

// A sheet with a procedure would run it on our side only.
const sheets = (await benchSheets(process.argv[2], process.argv[3])).filter(({ sheet }) =>
  sheet.derived.every((key) => sheet.symbols[key].kind === 'formula'),
);
const next = seeded(11);
const formulas = sheets.reduce((count, each) => count + each.formulas.length, 0);
const work = sheets.map(({ sheet, formulas: timed }) => ({
  sheet,
  program: oneLane(sheet),
  last: sheet.derived.at(-1),
  compiled: timed.map(({ key, text }) => [key, math.compile(text)]),
  points: Array.from({ length: 64 }, () =>
    Object.fromEntries(
      sheet.inputs
        .filter((key) => sheet.symbols[key].kind === 'input')
        .map((key) => [key, plausible(sheet, key, next)]),
    ),
  ),
}));
let consumed = 0;

function time(repeats, one) {
  const start = performance.now();
  for (let turn = 0; turn < repeats; turn++) one(turn);
  return (performance.now() - start) / repeats / formulas;
}

const program = (turn) => {
  let sum = 0;
  for (const { program: ours, points } of work) {
    ours.run(points[turn & 63]);
    const { numbers } = ours.arena;
    const { derived } = ours;
    for (let at = 0; at < derived.length; at++) sum += numbers[derived[at].slot];
  }
  consumed += sum;
};
const outcomes = (turn) => {
  let count = 0;
  for (const { sheet, points, last } of work) count += evaluate(sheet, points[turn & 63])[last].value;
  consumed += count;
};
const outside = (turn) => {
  let sum = 0;
  for (const { sheet, compiled, points } of work) {
    const scope = { ...sheet.constants, ...points[turn & 63] };
    for (const [key, code] of compiled) {
      scope[key] = code.evaluate(scope);
      sum += Number(scope[key]);
    }
  }
  consumed += sum;
};

for (let warm = 0; warm < 5; warm++) {
  time(4000, program);
  time(2000, outcomes);
  time(40, outside);
}
const times = { program: [], outcomes: [], outside: [] };
for (let round = 0; round < ROUNDS; round++) {
  times.program.push(time(1500, program));
  times.outcomes.push(time(800, outcomes));
  times.outside.push(time(15, outside));
}
const unit = { name: 'ns a formula', scale: 1e6 };
console.log(`${formulas} formulas in ${sheets.length} sheet(s), one answer each, Node ${process.version}`);
const theirs = { name: 'mathjs, compiled', times: times.outside };
report('numbers', { name: 'our program, numbers', times: times.program }, theirs, unit);
report('outcomes', { name: 'our evaluate, outcomes with names', times: times.outcomes }, theirs, unit);
if (consumed === 0.5) console.log(consumed);
