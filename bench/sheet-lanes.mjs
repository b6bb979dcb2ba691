/**
 * A hundred thousand lanes of every formula: our compiled sheet against numpy in cache-sized pieces.
 * Both in processor time, so that other work on the machine counts less.
 * Run after a build: node bench/sheet-lanes.mjs [module] [export]; PYTHON names the interpreter with numpy.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { lanes } from '../dist/engine/sheet/index.js';
import { benchSheets, OPERATORS, report, seeded, written } from './sheet-formulas.mjs';

const LANES = 100_000;
const ROUNDS = 15;
const PIECES = [1024, 2048, 4096, 8192];

const NAMES = {
  ln: 'log',
  asin: 'arcsin',
  acos: 'arccos',
  atan: 'arctan',
  atan2: 'arctan2',
  min: 'minimum',
  max: 'maximum',
};

/** Formulas as a numpy user would write them. */
const numpy = (symbol) => ({
  symbol,
  operators: { ...OPERATORS, power: '**', and: '&', or: '|' },
  functions(operation, args) {
    const name = NAMES[operation] ?? operation;
    return args.length === 1 ? `np.${name}(${args[0]})` : args.reduce((a, b) => `np.${name}(${a}, ${b})`);
  },
  choose: (...args) => `np.where(${args.join(', ')})`,
  negate: (a) => `(-${a})`,
  not: (a) => `np.logical_not(${a})`,
});

const directory = mkdtempSync(join(tmpdir(), 'fettle-bench-'));

function startPython(setup) {
  const child = spawn(
    process.env.PYTHON ?? '/usr/bin/python3',
    [new URL('sheet-lanes.py', import.meta.url).pathname],
    {
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  );
  const answers = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const ask = async (line) => {
    child.stdin.write(`${JSON.stringify(line)}\n`);
    return JSON.parse((await answers.next()).value);
  };
  return { ask, close: () => child.stdin.end(), ready: ask(setup) };
}

async function compare({ sheet, formulas, wanted, given: draw }) {
  const given = draw(seeded(5), LANES);
  // Names of the joined sheet have signs that Python's cannot have.
  const names = new Map(sheet.order.map((key, at) => [key, `v${at}`]));
  const symbol = (key) => names.get(key);
  const places = Object.fromEntries(
    Object.entries(given).map(([key, value]) => {
      if (typeof value === 'number') return [key, value];
      const path = join(directory, symbol(key));
      writeFileSync(path, new Uint8Array(value.buffer));
      return [key, path];
    }),
  );
  const outputs = wanted.filter((key) =>
    sheet.dependsOn[key].some((each) => given[each] instanceof Float64Array),
  );
  const python = startPython({
    lanes: LANES,
    outputs: outputs.map(symbol),
    inputs: Object.fromEntries(
      Object.entries({ ...sheet.constants, ...places }).map(([key, value]) => [symbol(key), value]),
    ),
    code: formulas.map(({ key, tree }) => `${symbol(key)} = ${written(tree, numpy(symbol))}`).join('\n'),
  });
  const version = (await python.ready).numpy;
  // Both sides write to arrays made beforehand.
  let into = {};
  const ours = () => {
    const start = process.cpuUsage();
    const { values } = lanes(sheet, given, LANES, { only: outputs, into });
    into = values;
    const { user, system } = process.cpuUsage(start);
    const seconds = (user + system) / 1e6;
    let sum = 0;
    for (const key of outputs) {
      const column = values[key];
      if (typeof column === 'number') sum += (Number.isNaN(column) ? 0 : column) * LANES;
      else for (const value of column) sum += Number.isFinite(value) ? value : 0;
    }
    return { seconds, sum };
  };
  const best = { piece: 0, seconds: Number.POSITIVE_INFINITY };
  for (const piece of PIECES) {
    for (let warm = 0; warm < 3; warm++) {
      const { seconds } = await python.ask({ piece });
      if (seconds < best.seconds) Object.assign(best, { piece, seconds });
    }
  }
  for (let warm = 0; warm < 10; warm++) ours();
  const times = { ours: [], theirs: [] };
  let sums;
  for (let round = 0; round < ROUNDS; round++) {
    const a = ours();
    const b = await python.ask({ piece: best.piece });
    times.ours.push(a.seconds);
    times.theirs.push(b.seconds);
    sums = [a.sum, b.sum];
  }
  python.close();
  // What only stands for another symbol is no work to count.
  const count = formulas.filter(
    ({ key, isAlias }) =>
      !isAlias && sheet.dependsOn[key].some((each) => given[each] instanceof Float64Array),
  ).length;
  const off = Math.abs(sums[0] - sums[1]) / Math.max(1, Math.abs(sums[1]));
  console.log(
    `${sheet.id}: ${count} formulas that vary, ${outputs.length} wanted, ${LANES} lanes, numpy ${version} in pieces of ${best.piece}; sums differ by ${off.toExponential(1)} of their size`,
  );
  const unit = { name: 'ns a formula and lane', scale: 1e9 / LANES / count };
  report('lanes', { name: 'our program', times: times.ours }, { name: 'numpy', times: times.theirs }, unit);
  return times;
}

const sheets = await benchSheets(process.argv[2], process.argv[3]);
const totals = { ours: [], theirs: [] };
try {
  for (const each of sheets) {
    const times = await compare(each);
    for (const side of ['ours', 'theirs']) {
      times[side].forEach((seconds, round) => {
        totals[side][round] = (totals[side][round] ?? 0) + seconds;
      });
    }
  }
  if (sheets.length > 1) {
    const unit = { name: 'ms', scale: 1e3 };
    report(
      'all together',
      { name: 'our programs', times: totals.ours },
      { name: 'numpy', times: totals.theirs },
      unit,
    );
  }
} finally {
  rmSync(directory, { recursive: true });
}
