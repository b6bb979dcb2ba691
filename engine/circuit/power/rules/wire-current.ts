/** The wire against the current it carries for good, and the thinnest copper allowed where it runs. */
import {
  AMBIENT_SOURCE,
  CONDUCTOR_CURRENT,
  GROUPING_SOURCE,
  LAYINGS,
} from '../../../tables/conductor-current.ts';
import { leastArea, type WireUse } from '../../../tables/conductor-least.ts';
import type { Wire, WiringFinding } from '../../wiring/types.ts';
import type { Capacity, PowerContext } from '../context.ts';
import { amps, area, byMargin, figure, finding, TIGHT } from '../say.ts';
import { byName } from '../sorted.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

/** Before a thicker wire is bought. */
export const HOW_IT_LIES =
  'Say first how hot it is around it and how many loaded circuits lie together; that may settle it.';

/** Currents below this belong to signals, which no wire is too thin for. */
export const SIGNAL_AMPS = 0.05;

/** A wire whose thickness nobody has said. */
interface Unsaid {
  readonly id: string;
  readonly amps: number;
  readonly need: string;
}

export const wireCurrentRule: SupplyRule<Unsaid> = {
  id: 'wire-current',
  of: 'wire',
  needs: 'currents',
  judge: (context, subject) => {
    const wire = context.wiring.wires.get(subject);
    const current = context.currents.get(subject);
    if (!wire || !current || (current.amps < SIGNAL_AMPS && current.needs.length === 0)) return NOTHING;
    if (wire.section === undefined)
      return { ...NOTHING, open: { id: wire.id, amps: current.amps, need: `${wire.id}.section` } };
    return { findings: [judge(wire, current.amps, current.needs, context.capacity(wire))] };
  },
  gather: {
    order: (a, b) => b.amps - a.amps || byName(a.id, b.id),
    judge: (_, unsaid) => withoutArea(unsaid),
  },
};

/** One question for all wires whose thickness nobody has said, the heaviest load first. */
function withoutArea(unsaid: readonly Unsaid[]): readonly WiringFinding[] {
  const [heaviest] = unsaid;
  if (!heaviest) return [];
  const ids = unsaid.map(({ id }) => id);
  return [
    finding(
      'wire-current',
      ['unsaid', ...ids],
      'Wires whose thickness has not been said',
      'unknown',
      `${ids.length === 1 ? `Wire ${ids[0]} carries` : `${ids.length} wires carry`} current and how thick ${ids.length === 1 ? 'it is' : 'they are'} has not been said; the most is ${amps(heaviest.amps)} in wire ${heaviest.id}.`,
      'IEC 60204-1:2016, 12.4',
      { needs: unsaid.map(({ need }) => need) },
    ),
  ];
}

function judge(wire: Wire, load: number, waits: readonly string[], capacity: Capacity): WiringFinding {
  const rule = 'wire-current';
  const about = [wire.id];
  const title = `Current of wire ${wire.id}`;
  const { worst, best, table } = capacity;
  const source = `${capacity.source}; ${AMBIENT_SOURCE.source}; ${GROUPING_SOURCE.source}`;
  if (worst === undefined || best === undefined)
    return finding(
      rule,
      about,
      title,
      'unknown',
      `Wire ${wire.id} of ${area(wire.section!)} is thicker than the tables here go.`,
      source,
      { needs: waits },
    );
  const figures = [
    figure('current it carries', load, 'A'),
    figure(`current of the table (${LAYINGS[capacity.laying]})`, table!, 'A'),
    figure('what it may carry where it lies, at worst', worst, 'A'),
    ...(best > worst ? [figure('and at best', best, 'A')] : []),
  ];
  const there = `${amps(load)}${waits.length > 0 ? ' or more' : ''}`;
  // Judged at the worst of what is not known; where that decides, what is not known is asked for.
  const atWorst = load > 0 ? worst / load : Number.POSITIVE_INFINITY;
  const atBest = load > 0 ? best / load : Number.POSITIVE_INFINITY;
  if (atBest < 1)
    return finding(
      rule,
      about,
      title,
      'fails',
      `Wire ${wire.id} carries ${there}; its ${area(wire.section!)} may carry ${amps(best)} at most. It gets too hot.`,
      source,
      {
        margin: atBest,
        figures,
        remedy: thicker(load, capacity),
      },
    );
  if (waits.length > 0)
    return finding(
      rule,
      about,
      title,
      'unknown',
      load > 0
        ? `Wire ${wire.id} carries ${amps(load)}, and what hangs on it besides has not been said. It may carry ${amps(worst)}.`
        : `What wire ${wire.id} carries has not been said. It may carry ${amps(worst)}.`,
      source,
      {
        figures,
        needs: waits,
      },
    );
  if (atWorst >= 1)
    return finding(
      rule,
      about,
      title,
      capacity.needs.length > 0 ? (atWorst < TIGHT ? 'tight' : 'fits') : byMargin(atWorst),
      `Wire ${wire.id} carries ${there}; its ${area(wire.section!)} may carry ${amps(worst)}${capacity.needs.length > 0 ? ' even in the hottest and fullest duct' : ''}.`,
      source,
      { margin: atWorst, figures },
    );
  return finding(
    rule,
    about,
    title,
    capacity.needs.length > 0 ? 'unknown' : 'fails',
    capacity.needs.length > 0
      ? `Wire ${wire.id} carries ${there}; its ${area(wire.section!)} may carry ${amps(worst)} to ${amps(best)}, by how hot it is around it and how many circuits lie together.`
      : `Wire ${wire.id} carries ${there}; its ${area(wire.section!)} may carry ${amps(worst)} there. It gets too hot.`,
    source,
    {
      figures,
      remedy: capacity.needs.length > 0 ? HOW_IT_LIES : thicker(load, capacity),
      ...(capacity.needs.length > 0 ? { needs: capacity.needs } : { margin: atWorst }),
    },
  );
}

/** The thinnest area that carries a load even at the worst, in words. */
export function thicker(load: number, capacity: Capacity): string | undefined {
  const { worst, table } = capacity;
  if (worst === undefined || !table) return undefined;
  const row = CONDUCTOR_CURRENT.find((each) => (each[capacity.laying] * worst) / table >= load);
  return row ? `Take ${row.area} mm².` : 'Split the load over more wires, or ask somebody who can reckon it.';
}

export const leastWireRule: SupplyRule = {
  id: 'least-wire',
  of: 'wire',
  needs: 'nothing',
  judge: (context, subject) => {
    const found = leastWire(context, subject);
    return found ? { findings: [found] } : NOTHING;
  },
};

function leastWire(context: PowerContext, subject: string): WiringFinding | undefined {
  const { wiring, currents } = context;
  const wire = wiring.wires.get(subject);
  if (wire?.section === undefined) return undefined;
  const { inside } = context.capacity(wire);
  const cable = wire.cable === null ? undefined : wiring.cables.get(wire.cable);
  const { area: least, row } = leastArea(
    inside ? 'inside' : 'outside',
    cable?.moved ?? false,
    purposeOf(context, wire, () => currents.get(wire.id)?.amps ?? 0),
    cable
      ? {
          cores: cable.cores ?? cable.wires.length,
          shielded: cable.shield === 'foil' || cable.shield === 'braid',
        }
      : undefined,
  );
  const margin = (wire.section * 1e6) / least;
  if (margin >= 0.995) return undefined;
  return finding(
    'least-wire',
    [wire.id],
    `Thickness of wire ${wire.id}`,
    'fails',
    `Wire ${wire.id} is ${area(wire.section)}; ${inside ? 'inside the cabinet' : 'outside the cabinet'} the least for ${row.use === 'power' ? 'power' : row.use === 'control' ? 'control circuits' : 'data'} is ${least} mm², so that it does not break when it is pulled.`,
    row.source,
    {
      margin,
      figures: [figure('its area', wire.section, 'mm²'), figure('least area', least * 1e-6, 'mm²')],
      remedy: `Take ${least} mm².`,
    },
  );
}

/**
 * Power: mains, drives, motors. Data: encoders and other signals. Control: the rest.
 *
 * @param load what it carries in A; looked at only where that decides, so that a change of current asks no more than it must
 */
function purposeOf({ wiring }: PowerContext, wire: Wire, load: () => number): WireUse {
  const natures = [wire.from, wire.to].map((id) => wiring.terminals.get(id)?.nature);
  for (const nature of natures) {
    if (!nature) continue;
    if (nature.kind === 'mains' || nature.kind === 'motor-phase' || nature.kind === 'winding') return 'power';
    if (nature.kind === 'rectifier' || nature.kind === 'earth') return 'power';
    if (nature.kind === 'feed' && nature.role === 'power') return 'power';
    if (nature.kind === 'contact' && nature.role === 'main') return 'power';
  }
  const data = new Set([
    'differential-output',
    'differential-input',
    'analogue-output',
    'analogue-input',
    'shield',
    'sensor',
  ]);
  if (natures.some((nature) => nature && data.has(nature.kind))) return 'data';
  const logic = natures.some(
    (nature) => nature?.kind === 'input' && nature.rated !== undefined && nature.rated < 12,
  );
  return logic && load() < SIGNAL_AMPS ? 'data' : 'control';
}
