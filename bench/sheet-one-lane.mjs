/**
 * One answer of every formula: our compiled sheet against mathjs's compiled expressions.
 * Run after a build: node bench/sheet-one-lane.mjs [module] [export]
 */
import { all, create } from 'mathjs';
import { oneLane } from '../dist/engine/sheet/compile/one-lane.js';
import { evaluate } from '../dist/engine/sheet/index.js';
import { benchSheets, OPERATORS, report, seeded, written } from './sheet-formulas.mjs';

const ROUNDS = 40;
const math = create(all);
math.import({ ln: Math.log }, { override: true });

const LANGUAGE = {
  operators: { ...OPERATORS, power: '^', and: 'and', or: 'or' },
  functions: (name, args) => `${name}(${args.join(', ')})`,
  choose: (c, a, b) => `(${c} ? ${a} : ${b})`,
  negate: (a) => `(-${a})`,
  not: (a) => `(not ${a})`,
};

const next = seeded(11);
const sheets = (await benchSheets(process.argv[2], process.argv[3])).filter(({ sheet }) =>
  // A sheet with a procedure would run it on our side only.
  sheet.derived.every((key) => sheet.symbols[key].kind === 'formula'),
);
const work = sheets.map(({ sheet, wanted, formulas, given }) => {
  // Names of the joined sheet have signs that an expression cannot have.
  const names = new Map(sheet.order.map((key, at) => [key, `v${at}`]));
  const symbol = (key) => names.get(key);
  const constants = Object.fromEntries(
    Object.entries(sheet.constants).map(([key, value]) => [symbol(key), value]),
  );
  const points = Array.from({ length: 16 }, () => given(next));
  return {
    sheet,
    // What only stands for another symbol is no work to count.
    count: formulas.filter(({ isAlias }) => !isAlias).length,
    ours: oneLane(sheet, wanted),
    last: wanted.at(-1),
    compiled: formulas.map(({ key, tree }) => [
      symbol(key),
      math.compile(written(tree, { symbol, ...LANGUAGE })),
    ]),
    points,
    theirPoints: points.map((point) => ({
      ...constants,
      ...Object.fromEntries(Object.entries(point).map(([key, value]) => [symbol(key), value])),
    })),
  };
});
let consumed = 0;

function time(repeats, one) {
  const start = performance.now();
  for (let turn = 0; turn < repeats; turn++) one(turn & 15);
  return (performance.now() - start) / repeats;
}

const ways = {
  /** Numbers in memory. */
  program: (each) => (turn) => {
    each.ours.run(each.points[turn]);
    const { numbers } = each.ours.arena;
    const { derived } = each.ours;
    for (let at = 0; at < derived.length; at++) consumed += numbers[derived[at].slot];
  },
  /** All of the sheet as outcomes by name. */
  outcomes: (each) => (turn) => {
    consumed += evaluate(each.sheet, each.points[turn])[each.last].value;
  },
  outside: (each) => (turn) => {
    const scope = { ...each.theirPoints[turn] };
    for (const [key, code] of each.compiled) {
      scope[key] = code.evaluate(scope);
      consumed += Number(scope[key]);
    }
  },
};

for (const each of work) {
  const one = Object.fromEntries(Object.entries(ways).map(([name, way]) => [name, way(each)]));
  const times = { program: [], outcomes: [], outside: [] };
  const scale = 60 / each.count;
  const repeats = {
    program: Math.ceil(1500 * scale),
    outcomes: Math.ceil(800 * scale),
    outside: Math.ceil(15 * scale),
  };
  for (let round = -5; round < ROUNDS; round++) {
    for (const name of Object.keys(ways)) {
      const took = time(repeats[name], one[name]) / each.count;
      if (round >= 0) times[name].push(took);
    }
  }
  const unit = { name: 'ns a formula', scale: 1e6 };
  console.log(`${each.sheet.id}: ${each.count} formulas, one answer each, Node ${process.version}`);
  const theirs = { name: 'mathjs, compiled', times: times.outside };
  report('numbers', { name: 'our program, numbers', times: times.program }, theirs, unit);
  report('outcomes', { name: 'our evaluate, outcomes with names', times: times.outcomes }, theirs, unit);
}
if (consumed === 0.5) console.log(consumed);
