/** Dimensions in words. */
import { dimension, dimensionKey, plain } from './dimension.ts';
import type { Dimension, Tally } from './types.ts';

// biome-ignore format: a table reads best with one dimension a line
const NAMES: readonly (readonly [Partial<Dimension>, string])[] = [
  [{}, 'a plain number'],
  [{ m: 1 }, 'a length'],
  [{ m: 2 }, 'an area'],
  [{ m: 3 }, 'a volume'],
  [{ kg: 1 }, 'a mass'],
  [{ s: 1 }, 'a time'],
  [{ A: 1 }, 'a current'],
  [{ K: 1 }, 'a temperature'],
  [{ tally: 'angle', tallyPower: 1 }, 'an angle'],
  [{ s: -1, tally: 'angle', tallyPower: 1 }, 'a turning speed'],
  [{ s: -2, tally: 'angle', tallyPower: 1 }, 'an angular acceleration'],
  [{ s: -1 }, 'a rate per time'],
  [{ s: -1, tally: 'cycle', tallyPower: 1 }, 'a frequency'],
  [{ m: 1, s: -1 }, 'a speed'],
  [{ m: 1, s: -2 }, 'an acceleration'],
  [{ m: 1, s: -3 }, 'a jerk'],
  [{ m: 3, s: -1 }, 'a flow'],
  [{ m: 1, kg: 1, s: -1 }, 'a momentum'],
  [{ m: 1, kg: 1, s: -2 }, 'a force'],
  [{ m: 2, kg: 1, s: -2 }, 'a torque or an energy'],
  [{ m: 2, kg: 1, s: -3 }, 'a power'],
  [{ m: 2, kg: 1 }, 'an inertia'],
  [{ kg: 1, m: -1 }, 'a mass per length'],
  [{ kg: 1, m: -3 }, 'a density'],
  [{ kg: 1, s: -1 }, 'a viscous friction'],
  [{ kg: 1, s: -2 }, 'a stiffness'],
  [{ kg: 1, m: -1, s: -2 }, 'a pressure or an elastic modulus'],
  [{ m: 2, kg: 1, s: -2, tally: 'angle', tallyPower: -1 }, 'a torsional stiffness'],
  [{ m: 2, kg: 1, s: -1, tally: 'angle', tallyPower: -1 }, 'a torque per turning speed'],
  [{ m: 2, kg: 1, s: -1 }, 'a torque times a time'],
  [{ m: 2, kg: 1, s: -3, A: -1 }, 'a voltage'],
  [{ m: 2, kg: 1, s: -3, A: -2 }, 'a resistance'],
  [{ m: -2, kg: -1, s: 3, A: 2 }, 'an electrical conductance'],
  [{ m: 2, kg: 1, s: -2, A: -2 }, 'an inductance'],
  [{ m: -2, kg: -1, s: 4, A: 2 }, 'a capacitance'],
  [{ s: 1, A: 1 }, 'an electric charge'],
  [{ s: 1, A: 2 }, 'a current squared times a time'],
  [{ m: 2, kg: 1, s: -2, A: -1 }, 'a torque per current'],
  [{ m: 2, kg: 1, s: -2, A: -1, tally: 'angle', tallyPower: -1 }, 'a voltage per turning speed'],
  [{ kg: 1, s: -2, A: -1 }, 'a magnetic flux density'],
  [{ m: 1, kg: 0.5, s: -0.5 }, 'a motor constant'],
  [{ m: -2, kg: -1, s: 3, K: 1 }, 'a thermal resistance'],
  [{ m: 2, kg: 1, s: -3, K: -1 }, 'a heat flow per degree'],
  [{ m: 2, kg: 1, s: -2, K: -1 }, 'a heat capacity'],
  [{ kg: 1, s: -3, K: -1 }, 'a heat transfer coefficient'],
  [{ m: 1, kg: 1, s: -3, K: -1 }, 'a thermal conductivity'],
  [{ m: 3, kg: 1, s: -3, A: -2 }, 'a resistivity'],
  [{ K: -1 }, 'a change per degree'],
  [{ m: -1 }, 'a number per length'],
  [{ m: 1, tally: 'angle', tallyPower: -1 }, 'a length per turn'],
  [{ m: 1, K: -1 }, 'a length per degree'],
  [{ m: 1, A: 1 }, 'a current times a length'],
  [{ m: 1, kg: 1, s: -2, A: -1 }, 'a force per current'],
];

const TABLE: ReadonlyMap<string, string> = new Map(
  NAMES.map(([d, words]) => [dimensionKey(dimension(d)), words]),
);

const TALLIES: Readonly<Record<Exclude<Tally, 'none'>, string>> = {
  angle: 'angle',
  line: 'lines',
  count: 'counts',
  pulse: 'pulses',
  step: 'steps',
  tooth: 'teeth',
  start: 'starts',
  cycle: 'cycles',
};

/** Whether this dimension is one a person meets: it has a name here. */
export const isNamed = (d: Dimension): boolean => TABLE.has(dimensionKey(d));

function baseText(d: Dimension): string {
  const above: string[] = [];
  const below: string[] = [];
  for (const unit of ['kg', 'm', 's', 'A', 'K'] as const) {
    const p = d[unit];
    if (p > 0) above.push(p === 1 ? unit : `${unit}^${p}`);
    if (p < 0) below.push(p === -1 ? unit : `${unit}^${-p}`);
  }
  const top = above.join('·') || '1';
  if (below.length === 0) return top;
  return `${top}/${below.length > 1 ? `(${below.join('·')})` : below[0]}`;
}

/** In words, with the article: 'a torque or an energy', 'a number of counts per length'; else the SI base units. */
export function describeDimension(d: Dimension): string {
  const known = TABLE.get(dimensionKey(d));
  if (known) return known;
  const bare = TABLE.get(dimensionKey(plain(d)));
  if (d.tally === 'none' || d.tally === 'angle') {
    const turns = d.tally === 'angle' ? ` (with angle to the power ${d.tallyPower})` : '';
    return `${bare ?? `a quantity in ${baseText(d)}`}${turns}`;
  }
  const what = TALLIES[d.tally];
  const turn = d.anglePower === -1 ? ' per turn' : '';
  if (d.tallyPower === -1 && bare) return `${bare} divided by ${what}${turn}`;
  if (d.tallyPower !== 1) return `a quantity in ${baseText(d)} with ${what}`;
  if (bare === 'a plain number') return `a number of ${what}${turn}`;
  if (bare === 'a number per length') return `a number of ${what} per length${turn}`;
  if (bare === 'a rate per time') return `a number of ${what} per time${turn}`;
  return `a quantity in ${baseText(d)} with ${what}`;
}
