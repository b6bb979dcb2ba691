/** A straight line through readings that carry their doubt. */
import { fitLinear } from '../metrology/index.ts';
import { type Estimate, type Part, Senseless } from './types.ts';

export interface Line {
  readonly intercept: Estimate;
  readonly slope: Estimate;
  /** Reading less line, in the order of the points. */
  readonly residuals: readonly number[];
  /** Residual standard deviation; 0 where two points leave nothing over. */
  readonly deviation: number;
  readonly freedom: number;
}

/**
 * y = intercept + slope · x by least squares. The scatter about the line becomes two sources that keep how intercept and slope
 * hang together; a doubt that rows share (one meter for all) moves the line as it moves the rows. Doubt of x counts as doubt
 * of y by the slope. Throws Senseless, blamed on `where`, when all x are the same.
 */
export function lineThrough(
  points: readonly { readonly x: Estimate; readonly y: Estimate }[],
  name: string,
  where: string,
): Line {
  const columns = [points.map(() => 1), points.map(({ x }) => x.value)];
  const fit = fitLinear(
    columns,
    points.map(({ y }) => y.value),
  );
  if (!fit.ok)
    throw new Senseless(where, `No line can be drawn through these readings: ${fit.problem.message}`);
  const { parameters, covariance, residuals, deviation, freedom } = fit.value;
  const [c, m] = parameters as [number, number];
  const parts: [Part[], Part[]] = [[], []];
  for (const [id, { part, amounts }] of sharedBy(points, m)) {
    if (part.kind === 'resolution' && freedom > 0) continue;
    const moved = fitLinear(columns, amounts);
    if (!moved.ok) continue;
    moved.value.parameters.forEach((amount, at) => {
      if (amount !== 0) parts[at]!.push({ ...part, id, amount });
    });
  }
  if (freedom > 0 && deviation > 0) {
    const [[vc = 0, vcm = 0] = [], [, vm = 0] = []] = covariance;
    const own = Math.sqrt(Math.max(0, vc));
    const tied = own === 0 ? 0 : vcm / own;
    const source = (id: string): Omit<Part, 'amount'> => ({
      id: `${id}:${name}`,
      name,
      kind: 'readings',
      freedom,
    });
    parts[0].push({ ...source('line'), amount: own });
    parts[1].push({ ...source('line'), amount: tied });
    parts[1].push({ ...source('tilt'), amount: Math.sqrt(Math.max(0, vm - tied * tied)) });
  }
  return {
    intercept: { value: c, parts: parts[0] },
    slope: { value: m, parts: parts[1] },
    residuals,
    deviation: freedom > 0 ? deviation : 0,
    freedom,
  };
}

/** What each source does to each row's y, doubt of x included. */
function sharedBy(points: readonly { readonly x: Estimate; readonly y: Estimate }[], slope: number) {
  const sources = new Map<string, { part: Part; amounts: number[] }>();
  const add = (part: Part, at: number, amount: number): void => {
    const known = sources.get(part.id) ?? { part, amounts: points.map(() => 0) };
    known.amounts[at]! += amount;
    sources.set(part.id, known);
  };
  points.forEach(({ x, y }, at) => {
    for (const part of y.parts) add(part, at, part.amount);
    for (const part of x.parts) add(part, at, -slope * part.amount);
  });
  return sources;
}
