/** Which usual lead a measured one is: pitches times starts, weighed by how near they lie and how common they are. */
import { formatQuantity } from '../quantity/index.ts';
import { standardOf } from './estimate.ts';
import { MOST_STARTS, STANDARD_PITCHES } from './leads.ts';
import type { Estimate, QuantityResult } from './types.ts';

export interface RankedLead {
  /** SI; undefined for 'none of these'. */
  readonly lead: number | undefined;
  /** How it can come about: '10 mm', '5 mm pitch with 2 starts'; the likeliest first. */
  readonly names: readonly string[];
  readonly likely: number;
}

/** How much rarer screws of several starts are: a judgement, no source. */
const STARTS = [1, 0.25, 0.1, 0.12, 0.03, 0.03] as const;
/** How often a screw is none of these: a judgement, no source. */
const NONE = 0.03;

/** Density of Student's t, but for what is the same for all candidates. */
const density = (off: number, standard: number, freedom: number): number => {
  const z = off / standard;
  const shape = Number.isFinite(freedom)
    ? (1 + (z * z) / freedom) ** (-(freedom + 1) / 2)
    : Math.exp((-z * z) / 2);
  return shape / (standard * Math.sqrt(2 * Math.PI));
};

/** Bayes' rule over the usual leads; the likeliest first. With a pitch, only what has about that pitch stays likely. */
export function rankLeads(found: QuantityResult, pitch: Estimate | undefined): RankedLead[] {
  const standard = Math.max(found.standard, 1e-6 * found.value);
  const groups = new Map<
    string,
    { lead: number; weight: number; ways: { name: string; weight: number }[] }
  >();
  let all = 0;
  for (const each of STANDARD_PITCHES)
    for (let starts = 1; starts <= MOST_STARTS; starts++) {
      const lead = each.pitch * starts;
      const known = pitch
        ? density(
            pitch.value - each.pitch,
            Math.max(standardOf(pitch), 0.01 * each.pitch),
            Number.POSITIVE_INFINITY,
          ) * each.pitch
        : 1;
      const rarity = each.common * STARTS[starts - 1]!;
      const prior = rarity * known;
      all += rarity;
      const weight = prior * density(found.value - lead, standard, found.freedom);
      const key = (lead * 1000).toFixed(6);
      const group = groups.get(key) ?? { lead, weight: 0, ways: [] };
      group.weight += weight;
      group.ways.push({ name: wayName(lead, each.says, each.system, starts), weight });
      groups.set(key, group);
    }
  // As likely anywhere within a factor of e around.
  const none = (NONE * all) / found.value;
  const total = none + [...groups.values()].reduce((sum, { weight }) => sum + weight, 0);
  const ranked: RankedLead[] = [...groups.values()].map(({ lead, weight, ways }) => ({
    lead,
    names: ways
      .sort((a, b) => b.weight - a.weight)
      .slice(0, 3)
      .map(({ name }) => name),
    likely: weight / total,
  }));
  return [...ranked, { lead: undefined, names: ['none of the usual leads'], likely: none / total }]
    .sort((a, b) => b.likely - a.likely || distance(a, found) - distance(b, found))
    .filter(({ lead }, at) => at < 8 || lead === undefined);
}

const distance = ({ lead }: RankedLead, { value }: QuantityResult): number =>
  lead === undefined ? Number.POSITIVE_INFINITY : Math.abs(lead - value);

function wayName(lead: number, says: string, system: 'mm' | 'in', starts: number): string {
  if (starts === 1)
    return system === 'mm' ? says : `${says}, which is ${formatQuantity(lead, 'mm', { digits: 5 })}`;
  return `${formatQuantity(lead, 'mm', { digits: 5 })} from ${says} with ${starts} starts`;
}
