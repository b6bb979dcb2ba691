/**
 * The units met on plates and in catalogues of CNC axes.
 *
 * All conversions are exact by definition: inch 25.4 mm and avoirdupois pound 0.45359237 kg (international yard and
 * pound agreement, 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901), horsepower 550 ft·lbf/s, metric
 * horsepower 75 kgf·m/s.
 */
import { dimension } from './dimension.ts';
import type { Dimension, Tally } from './types.ts';

export interface Meaning {
  /** Spelling that has this meaning only. */
  readonly symbol: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly scale: number;
  readonly offset: number;
}

/** One spelling may mean several things (oz: mass or force; F: farad or °F); the first is the usual one alone. */
export interface Atom {
  readonly print: string;
  readonly meanings: readonly Meaning[];
}

interface Row {
  readonly symbol: string;
  readonly name: string;
  readonly d: Dimension;
  readonly scale: number;
  readonly offset?: number;
  /** Short spellings beside the symbol; prefixes go in front of these too. */
  readonly also?: readonly string[];
  /** Words, e.g. 'volt volts'; they take word prefixes (millivolt). */
  readonly words?: string;
  readonly prefixes?: string;
}

const INCH = 0.0254;
const FOOT = 12 * INCH;
const POUND = 0.45359237;
const OUNCE = POUND / 16;
export const STANDARD_GRAVITY = 9.80665;
const POUND_FORCE = POUND * STANDARD_GRAVITY;
const TURN = 2 * Math.PI;

const length = dimension({ m: 1 });
const mass = dimension({ kg: 1 });
const force = dimension({ m: 1, kg: 1, s: -2 });
const time = dimension({ s: 1 });
const energy = dimension({ m: 2, kg: 1, s: -2 });
const watt = dimension({ m: 2, kg: 1, s: -3 });
const pressure = dimension({ m: -1, kg: 1, s: -2 });
const kelvin = dimension({ K: 1 });
const angle = dimension({ tally: 'angle', tallyPower: 1 });
const turningSpeed = dimension({ s: -1, tally: 'angle', tallyPower: 1 });
const plainNumber = dimension({});
const tallied = (tally: Tally): Dimension => dimension({ tally, tallyPower: 1 });

// biome-ignore format: a table reads best with one unit a line
const ROWS: readonly Row[] = [
  { symbol: 'm', name: 'metre', d: length, scale: 1, words: 'metre metres meter meters', prefixes: 'n µ m c d k' },
  { symbol: 'µm', name: 'micrometre', d: length, scale: 1e-6, words: 'micron microns' },
  { symbol: 'in', name: 'inch', d: length, scale: INCH, also: ['"'], words: 'inch inches' },
  { symbol: 'thou', name: 'thousandth of an inch', d: length, scale: INCH / 1000, also: ['mil', 'mils'] },
  { symbol: 'ft', name: 'foot', d: length, scale: FOOT, also: ["'"], words: 'foot feet' },
  { symbol: 'L', name: 'litre', d: dimension({ m: 3 }), scale: 1e-3, also: ['l'], words: 'litre litres liter liters', prefixes: 'm' },
  { symbol: 'g', name: 'gram', d: mass, scale: 1e-3, words: 'gram grams', prefixes: 'µ m k' },
  { symbol: 'kg', name: 'kilogram', d: mass, scale: 1, also: ['kgs'], words: 'kilo kilos' },
  { symbol: 't', name: 'tonne', d: mass, scale: 1000, words: 'tonne tonnes' },
  { symbol: 'lb', name: 'pound', d: mass, scale: POUND, also: ['lbs', 'lbm'], words: 'pound pounds' },
  { symbol: 'oz', name: 'ounce', d: mass, scale: OUNCE, also: ['ozm'], words: 'ounce ounces' },
  { symbol: 'N', name: 'newton', d: force, scale: 1, words: 'newton newtons', prefixes: 'µ m c d k M' },
  { symbol: 'lbf', name: 'pound-force', d: force, scale: POUND_FORCE },
  { symbol: 'ozf', name: 'ounce-force', d: force, scale: POUND_FORCE / 16 },
  { symbol: 'kgf', name: 'kilogram-force', d: force, scale: STANDARD_GRAVITY, also: ['kp'] },
  { symbol: 'gf', name: 'gram-force', d: force, scale: STANDARD_GRAVITY / 1000 },
  { symbol: 'g_n', name: 'standard gravity', d: dimension({ m: 1, s: -2 }), scale: STANDARD_GRAVITY, also: ['gn'] },
  { symbol: 's', name: 'second', d: time, scale: 1, also: ['sec', 'secs'], words: 'second seconds', prefixes: 'n µ m' },
  { symbol: 'min', name: 'minute', d: time, scale: 60, also: ['mins'], words: 'minute minutes' },
  { symbol: 'h', name: 'hour', d: time, scale: 3600, also: ['hr', 'hrs'], words: 'hour hours' },
  { symbol: 'Hz', name: 'hertz', d: dimension({ s: -1, tally: 'cycle', tallyPower: 1 }), scale: 1, words: 'hertz', prefixes: 'm k M G' },
  { symbol: 'V', name: 'volt', d: dimension({ m: 2, kg: 1, s: -3, A: -1 }), scale: 1, also: ['VDC', 'VAC', 'Vdc', 'Vac'], words: 'volt volts', prefixes: 'µ m k' },
  { symbol: 'A', name: 'ampere', d: dimension({ A: 1 }), scale: 1, words: 'amp amps ampere amperes', prefixes: 'n µ m k' },
  { symbol: 'Ω', name: 'ohm', d: dimension({ m: 2, kg: 1, s: -3, A: -2 }), scale: 1, also: ['ohm', 'Ohm', 'ohms', 'Ohms'], prefixes: 'µ m k M G' },
  { symbol: 'H', name: 'henry', d: dimension({ m: 2, kg: 1, s: -2, A: -2 }), scale: 1, words: 'henry henries', prefixes: 'n µ m' },
  { symbol: 'F', name: 'farad', d: dimension({ m: -2, kg: -1, s: 4, A: 2 }), scale: 1, words: 'farad farads', prefixes: 'p n µ m' },
  { symbol: 'C', name: 'coulomb', d: dimension({ s: 1, A: 1 }), scale: 1, words: 'coulomb coulombs', prefixes: 'n µ m' },
  { symbol: 'T', name: 'tesla', d: dimension({ kg: 1, s: -2, A: -1 }), scale: 1, words: 'tesla', prefixes: 'µ m' },
  { symbol: 'Wb', name: 'weber', d: dimension({ m: 2, kg: 1, s: -2, A: -1 }), scale: 1, words: 'weber webers', prefixes: 'µ m' },
  { symbol: 'J', name: 'joule', d: energy, scale: 1, words: 'joule joules', prefixes: 'm k M' },
  { symbol: 'W', name: 'watt', d: watt, scale: 1, words: 'watt watts', prefixes: 'µ m k M' },
  { symbol: 'VA', name: 'volt-ampere', d: watt, scale: 1, prefixes: 'k M' },
  { symbol: 'hp', name: 'horsepower', d: watt, scale: 550 * FOOT * POUND_FORCE, words: 'horsepower' },
  { symbol: 'PS', name: 'metric horsepower', d: watt, scale: 75 * STANDARD_GRAVITY },
  { symbol: 'Pa', name: 'pascal', d: pressure, scale: 1, words: 'pascal pascals', prefixes: 'm k M G' },
  { symbol: 'bar', name: 'bar', d: pressure, scale: 1e5, prefixes: 'm' },
  { symbol: 'psi', name: 'pound-force per square inch', d: pressure, scale: POUND_FORCE / INCH ** 2 },
  { symbol: 'K', name: 'kelvin', d: kelvin, scale: 1, words: 'kelvin kelvins', prefixes: 'm' },
  { symbol: '°C', name: 'degree Celsius', d: kelvin, scale: 1, offset: 273.15, also: ['degC', '℃'], words: 'celsius' },
  { symbol: '°F', name: 'degree Fahrenheit', d: kelvin, scale: 5 / 9, offset: 459.67, also: ['degF', '℉'], words: 'fahrenheit' },
  { symbol: 'rad', name: 'radian', d: angle, scale: 1, words: 'radian radians', prefixes: 'µ m' },
  { symbol: 'deg', name: 'degree', d: angle, scale: TURN / 360, also: ['°'], words: 'degree degrees' },
  { symbol: 'arcmin', name: 'minute of arc', d: angle, scale: TURN / 21600 },
  { symbol: 'arcsec', name: 'second of arc', d: angle, scale: TURN / 1296000 },
  { symbol: 'rev', name: 'turn', d: angle, scale: TURN, also: ['r', 'revs', 'U'], words: 'revolution revolutions' },
  { symbol: 'turn', name: 'turn', d: angle, scale: TURN, also: ['turns'] },
  { symbol: 'r/min', name: 'turns per minute', d: turningSpeed, scale: TURN / 60, also: ['rev/min', 'U/min', 'tr/min'] },
  { symbol: 'rpm', name: 'turns per minute', d: turningSpeed, scale: TURN / 60, prefixes: 'k' },
  { symbol: 'rps', name: 'turns per second', d: turningSpeed, scale: TURN },
  { symbol: 'ipm', name: 'inches per minute', d: dimension({ m: 1, s: -1 }), scale: INCH / 60 },
  { symbol: 'ips', name: 'inches per second', d: dimension({ m: 1, s: -1 }), scale: INCH },
  { symbol: 'sfm', name: 'feet per minute', d: dimension({ m: 1, s: -1 }), scale: FOOT / 60, also: ['fpm'] },
  { symbol: 'tpi', name: 'threads per inch', d: dimension({ m: -1 }), scale: 1 / INCH, also: ['TPI'] },
  { symbol: 'ppr', name: 'pulses per turn', d: dimension({ tally: 'pulse', tallyPower: 1, anglePower: -1 }), scale: 1 / TURN },
  { symbol: 'lines', name: 'line', d: tallied('line'), scale: 1, also: ['line'] },
  { symbol: 'counts', name: 'count', d: tallied('count'), scale: 1, also: ['count', 'cts', 'ct'] },
  { symbol: 'pulses', name: 'pulse', d: tallied('pulse'), scale: 1, also: ['pulse'] },
  { symbol: 'steps', name: 'step', d: tallied('step'), scale: 1, also: ['step', 'microsteps', 'microstep'] },
  { symbol: 'teeth', name: 'tooth', d: tallied('tooth'), scale: 1, also: ['tooth'] },
  { symbol: 'starts', name: 'start', d: tallied('start'), scale: 1, also: ['start'] },
  { symbol: 'cycles', name: 'cycle', d: tallied('cycle'), scale: 1, also: ['cycle'] },
  { symbol: '%', name: 'per cent', d: plainNumber, scale: 0.01, words: 'percent' },
  { symbol: 'ppm', name: 'parts per million', d: plainNumber, scale: 1e-6 },
];

const PREFIXES: Readonly<Record<string, { scale: number; spellings: readonly string[]; word: string }>> = {
  p: { scale: 1e-12, spellings: ['p'], word: 'pico' },
  n: { scale: 1e-9, spellings: ['n'], word: 'nano' },
  µ: { scale: 1e-6, spellings: ['µ', 'u'], word: 'micro' },
  m: { scale: 1e-3, spellings: ['m'], word: 'milli' },
  c: { scale: 1e-2, spellings: ['c'], word: 'centi' },
  d: { scale: 1e-1, spellings: ['d'], word: 'deci' },
  k: { scale: 1e3, spellings: ['k'], word: 'kilo' },
  M: { scale: 1e6, spellings: ['M'], word: 'mega' },
  G: { scale: 1e9, spellings: ['G'], word: 'giga' },
};

/** Other things a spelling can mean when the place where it stands asks for them, in order of likelihood. */
const SECOND_MEANINGS: Readonly<Record<string, readonly string[]>> = {
  g: ['gf', 'g_n'],
  kg: ['kgf'],
  lb: ['lbf'],
  oz: ['ozf'],
  C: ['°C'],
  F: ['°F'],
  T: ['teeth'],
  '"': ['arcsec'],
  "'": ['arcmin'],
};

/** Written together on plates; an exponent behind belongs to the last. */
export const RUN_TOGETHER: ReadonlyMap<string, readonly [string, string]> = new Map(
  (
    'N|m N|cm N|mm mN|m µN|m uN|m kN|m cN|m dN|m kg|m kg|cm kg|mm g|cm kgf|m kgf|cm gf|cm kp|m kp|cm ' +
    'oz|in ozf|in lb|in lbf|in lb|ft lbf|ft in|lb in|oz ft|lb in|lbf ft|lbf V|s A|s A|h mA|h W|h kW|h W|s'
  )
    .split(' ')
    .map((pair) => {
      const [a, b] = pair.split('|') as [string, string];
      return [a + b, [a, b] as const];
    }),
);

interface Refused {
  readonly says: string;
  readonly instead: readonly [string, string];
}

/** Spellings that people use for two different things: refused with what to write instead. */
export const REFUSED_SPELLINGS: ReadonlyMap<string, Refused> = new Map<string, Refused>([
  [
    'cpr',
    {
      says: 'can mean counts or lines (cycles) per turn, which differ by four',
      instead: ['counts/rev', 'lines/rev'],
    },
  ],
  ['ton', { says: 'can be 1000 kg or 2000 lb', instead: ['t', 'lb'] }],
  ['tons', { says: 'can be 1000 kg or 2000 lb', instead: ['t', 'lb'] }],
]);

const RUN_TOGETHER_FOLDED = new Map([...RUN_TOGETHER].map(([run, pair]) => [run.toLowerCase(), pair]));

/** The two units of a word like Nm or OZIN. */
export const runTogether = (word: string): readonly [string, string] | undefined =>
  RUN_TOGETHER.get(word) ?? RUN_TOGETHER_FOLDED.get(word.toLowerCase());

function buildTable(): { exact: Map<string, Atom>; folded: Map<string, Atom | null> } {
  const exact = new Map<string, Atom>();
  const add = (spelling: string, atom: Atom): void => {
    if (!exact.has(spelling)) exact.set(spelling, atom);
  };
  const atomOf = (row: Row, prefix?: { symbol: string; scale: number; word: string }): Atom => {
    const symbol = (prefix?.symbol ?? '') + row.symbol;
    const meaning: Meaning = {
      symbol,
      name: (prefix?.word ?? '') + row.name,
      dimension: row.d,
      scale: row.scale * (prefix?.scale ?? 1),
      offset: row.offset ?? 0,
    };
    return { print: symbol, meanings: [meaning] };
  };
  // Whole spellings before prefixed ones, so that min is a minute and not a milli-inch.
  for (const row of ROWS)
    for (const spelling of [row.symbol, ...(row.also ?? []), ...(row.words?.split(' ') ?? [])])
      add(spelling, atomOf(row));
  for (const row of ROWS)
    for (const symbol of row.prefixes?.split(' ') ?? []) {
      const prefix = PREFIXES[symbol]!;
      const atom = atomOf(row, { symbol, scale: prefix.scale, word: prefix.word });
      const shorts = [row.symbol, ...(row.also ?? []).filter((s) => !/^V.C$/i.test(s))];
      for (const front of prefix.spellings) for (const short of shorts) add(front + short, atom);
      for (const word of row.words?.split(' ') ?? []) add(prefix.word + word, atom);
    }
  for (const [spelling, others] of Object.entries(SECOND_MEANINGS)) {
    const first = exact.get(spelling)!;
    const meanings = [first.meanings[0]!, ...others.map((symbol) => exact.get(symbol)!.meanings[0]!)];
    const several = { print: first.print, meanings };
    for (const [known, atom] of exact)
      if (
        known === spelling ||
        (atom.print === first.print && !'"\''.includes(spelling) && !'"\''.includes(known))
      )
        exact.set(known, several);
  }
  const nano = exact.get('nm')!;
  const torque: Meaning = { symbol: 'Nm', name: 'newton metre', dimension: energy, scale: 1, offset: 0 };
  exact.set('nm', { print: 'nm', meanings: [nano.meanings[0]!, torque] });
  // Resistors are called '10 k'.
  exact.set('k', { print: 'kΩ', meanings: exact.get('kΩ')!.meanings });
  // Nothing is measured in capital milliohms: on a plate in capitals it is megohms.
  for (const spelling of ['MOHM', 'megohm', 'megohms'])
    exact.set(spelling, { print: 'MΩ', meanings: exact.get('MΩ')!.meanings });
  // lbm and ozm say mass outright.
  exact.set('lbm', { print: 'lbm', meanings: [exact.get('lb')!.meanings[0]!] });
  exact.set('ozm', { print: 'ozm', meanings: [exact.get('oz')!.meanings[0]!] });
  const folded = new Map<string, Atom | null>();
  for (const [spelling, atom] of exact) {
    const key = spelling.toLowerCase();
    const seen = folded.get(key);
    folded.set(key, seen === undefined || seen?.print === atom.print ? atom : null);
  }
  return { exact, folded };
}

const TABLE = buildTable();

/** What a spelling stands for: exact first, then with the case ignored where that leaves one meaning only. */
export function lookUp(spelling: string): Atom | undefined {
  return TABLE.exact.get(spelling) ?? TABLE.folded.get(spelling.toLowerCase()) ?? undefined;
}

/** Every spelling understood, for tests and for finding the nearest. */
export const spellings = (): readonly string[] => [...TABLE.exact.keys()];
