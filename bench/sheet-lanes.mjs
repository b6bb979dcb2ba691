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
import { benchSheets, plausible, report, seeded } from './sheet-formulas.mjs';

const LANES = 100_000;
const ROUNDS = 15;
const PIECES = [1024, 2048, 4096, 8192];

const SIGNS = {
  add: '+',
  subtract: '-',
  multiply: '*',
  divide: '/',
  power: '**',
  less: '<',
  lessOrEqual: '<=',
  greater: '>',
  greaterOrEqual: '>=',
  equal: '==',
  unequal: '!=',
  and: '&',
  or: '|',
};
const NAMES = {
  ln: 'log',
  asin: 'arcsin',
  acos: 'arccos',
  atan: 'arctan',
  atan2: 'arctan2',
  min: 'minimum',
  max: 'maximum',
};

/** A key as a Python name that is no word of Python. */
const pythonName = (key) => `${key}_`;

/** A formula as a numpy user would write it. */
function numpy(node) {
  if (node.kind === 'number') return String(node.value);
  if (node.kind === 'symbol') return pythonName(node.key);
  const args = node.args.map(numpy);
  if (node.operation === 'choose') return `np.where(${args.join(', ')})`;
  if (node.operation === 'negate') return `(-${args[0]})`;
  if (node.operation === 'not') return `np.logical_not(${args[0]})`;
  const sign = SIGNS[node.operation];
  if (sign) return `(${args.join(` ${sign} `)})`;
  const name = NAMES[node.operation] ?? node.operation;
  return args.length === 1 ? `np.${name}(${args[0]})` : args.reduce((a, b) => `np.${name}(${a}, ${b})`);
}

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

async function compare({ sheet, formulas }, varying) {
  const next = seeded(5);
  const inputs = sheet.inputs.filter((key) => sheet.symbols[key].kind === 'input');
  const given = Object.fromEntries(
    inputs.map((key, at) => [
      key,
      varying(at)
        ? Float64Array.from({ length: LANES }, () => plausible(sheet, key, next))
        : plausible(sheet, key, next),
    ]),
  );
  const outputs = formulas.map(({ key }) => key);
  const places = Object.fromEntries(
    Object.entries(given).map(([key, value]) => {
      if (typeof value === 'number') return [key, value];
      const path = join(directory, key);
      writeFileSync(path, new Uint8Array(value.buffer));
      return [key, path];
    }),
  );
  const python = startPython({
    lanes: LANES,
    outputs: outputs.map(pythonName),
    inputs: Object.fromEntries(
      Object.entries({ ...sheet.constants, ...places }).map(([key, value]) => [pythonName(key), value]),
    ),
    code: formulas.map(({ key, tree }) => `${pythonName(key)} = ${numpy(tree)}`).join('\n'),
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
  const off = Math.abs(sums[0] - sums[1]) / Math.max(1, Math.abs(sums[1]));
  console.log(
    `${sheet.id}: ${outputs.length} formulas, ${LANES} lanes, numpy ${version} in pieces of ${best.piece}; sums differ by ${off.toExponential(1)} of their size`,
  );
  const unit = { name: 'ns a formula and lane', scale: 1e9 / LANES / outputs.length };
  report('lanes', { name: 'our program', times: times.ours }, { name: 'numpy', times: times.theirs }, unit);
  return times;
}

const sheets = await benchSheets(process.argv[2], process.argv[3]);
const totals = { ours: [], theirs: [] };
try {
  for (const each of sheets) {
    for (const [name, varying] of [
      ['all inputs vary', () => true],
      ['every other input varies', (at) => at % 2 === 0],
    ]) {
      console.log(name);
      const times = await compare(each, varying);
      for (const side of ['ours', 'theirs']) {
        times[side].forEach((seconds, round) => {
          totals[side][round] = (totals[side][round] ?? 0) + seconds;
        });
      }
    }
  }
  if (sheets.length > 1) {
    const unit = { name: 'ms', scale: 1e3 };
    report(
      'all sheets',
      { name: 'our programs', times: totals.ours },
      { name: 'numpy', times: totals.theirs },
      unit,
    );
  }
} finally {
  rmSync(directory, { recursive: true });
}
