/** What may stand for what: counts for lines, turns for plain rates, a lead per turn for a lead. */
import { sameDimension } from './dimension.ts';
import type { Dimension, Tally, Unit } from './types.ts';

/** How a unit as typed serves where another is wanted. `factor` takes its SI value to the wanted one. */
export interface Adaptation {
  readonly factor: number;
  /** Unit to show the value in from now on. */
  readonly unit: Unit;
  readonly says?: string;
}

/** Why two units of the same base are not taken for each other, with what the person probably means. */
export interface Mismatch {
  readonly why: string;
  readonly suggestFactor?: number;
}

const TURN = 2 * Math.PI;

/** How many of `to` one `from` is, in common practice (no source): an encoder's counts are four to a line. */
const TALLY_FACTORS: Partial<Record<Tally, Partial<Record<Tally, readonly [number, string]>>>> = {
  count: { line: [1 / 4, 'four counts to a line, the usual ×4 reading'] },
  line: {
    count: [4, 'four counts to a line, the usual ×4 reading'],
    cycle: [1, 'one signal cycle to a line'],
    pulse: [1, 'one pulse to a line'],
  },
  pulse: {
    line: [1, 'one pulse to a line'],
    step: [1, 'one step to a pulse'],
    cycle: [1, 'one cycle to a pulse'],
  },
  step: { pulse: [1, 'one step to a pulse'], cycle: [1, 'one cycle to a step'] },
  cycle: {
    line: [1, 'one signal cycle to a line'],
    pulse: [1, 'one cycle to a pulse'],
    step: [1, 'one cycle to a step'],
  },
};

const angleOf = (d: Dimension): number => (d.tally === 'angle' ? d.tallyPower : (d.anglePower ?? 0));
const discreteOf = (d: Dimension): Tally => (d.tally === 'angle' ? 'none' : d.tally);

const isBase = (d: Dimension, m: number, kg: number, s: number, A: number): boolean =>
  d.m === m && d.kg === kg && d.s === s && d.A === A && d.K === 0;

function fromAngles(given: Dimension, wanted: Dimension): { factor: number; says: string } | undefined {
  const change = angleOf(wanted) - angleOf(given);
  if (isBase(wanted, 1, 0, 0, 0) && Math.abs(change) === 1 && angleOf(given) + angleOf(wanted) === -1)
    return change === 1
      ? { factor: TURN, says: 'the length for one turn was taken' }
      : { factor: 1 / TURN, says: 'taken as the length for one turn' };
  if (isBase(wanted, 0, 0, -1, 0)) {
    if (change === 1 && angleOf(wanted) === 1) return { factor: TURN, says: 'taken as turns' };
    if (change === -1 && angleOf(wanted) === 0)
      return { factor: 1, says: 'radians per second were taken as a plain rate' };
  }
  // In SI the torque constant in N·m/A and the voltage constant in V·s/rad of one winding are the same number.
  const constant = isBase(wanted, 2, 1, -2, -1);
  const friction = isBase(wanted, 2, 1, -1, 0);
  if ((constant || friction) && Math.abs(change) === 1 && angleOf(given) + angleOf(wanted) === -1)
    return {
      factor: 1,
      says: constant
        ? 'a torque per current and a voltage per turning speed are the same number in SI; for a motor with three phases check which currents and voltages are meant'
        : 'taken per radian per second',
    };
  return undefined;
}

/** How `given` can serve where `wanted` is asked for; a reason when it looks alike but must not; undefined when it is another thing. */
export function adapt(given: Unit, wanted: Unit): Adaptation | Mismatch | undefined {
  const a = given.dimension;
  const b = wanted.dimension;
  if (sameDimension(a, b)) return { factor: 1, unit: given };
  if (!sameDimension(a, b, true)) return undefined;
  const [have, want] = [discreteOf(a), discreteOf(b)];
  if (have === 'none' && want === 'none') {
    const turned = fromAngles(a, b);
    return turned && { factor: turned.factor, unit: wanted, says: turned.says };
  }
  const rate = isBase(b, 0, 0, -1, 0);
  if (rate && have === 'cycle' && want === 'none')
    return {
      why: `a frequency in ${given.symbol} is not a turning speed: one turn can take several cycles. Write r/min or turn/s`,
      ...(angleOf(b) === 1 ? { suggestFactor: TURN } : {}),
    };
  if (rate && have === 'none' && want === 'cycle')
    return {
      why: `a rate in ${given.symbol} is not yet a frequency: it depends on what is counted. Write it in Hz`,
      ...(angleOf(a) === 1 ? { suggestFactor: 1 / TURN } : {}),
    };
  if (want === 'none')
    return a.tallyPower === 1 && angleOf(a) === 0 && angleOf(b) === 0
      ? { factor: 1, unit: wanted, says: 'counted as a plain number' }
      : undefined;
  if (have === 'none' || a.tallyPower !== b.tallyPower) return undefined;
  const turns = angleOf(b) - angleOf(a);
  if (turns !== 0 && !(Math.abs(turns) === 1 && a.tallyPower === 1 && angleOf(a) + angleOf(b) === -1))
    return undefined;
  // A person says '1000 lines' and means per turn.
  const perTurn = TURN ** turns;
  if (have === want) return { factor: perTurn, unit: wanted, says: 'taken per turn' };
  const known = TALLY_FACTORS[have]?.[want];
  if (!known)
    return {
      why: `${given.symbol} cannot be turned into ${wanted.symbol} without knowing how many there are to one`,
    };
  return { factor: perTurn * known[0] ** a.tallyPower, unit: wanted, says: known[1] };
}
