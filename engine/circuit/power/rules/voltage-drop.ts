/** Volts lost from the supply to a load and back. */
import { CLASS_5_SOURCE } from '../../../tables/conductor-resistance.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import type { Drops } from '../drops.ts';
import type { Load } from '../loads.ts';
import { amps, byMargin, figure, finding, percent, volts } from '../say.ts';
import { byName } from '../sorted.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

/** IEC 60204-1, 12.5 (recalled). */
const ALLOWED = 0.05;
const SOURCE = `IEC 60204-1:2016, 12.5: 5 % from the supply to the load (recalled, check the standard); ${CLASS_5_SOURCE.source}; copper at 70 °C, the hottest its insulation stands; volts lost are rounded up to a thousandth of the supply`;

export const voltageDropRule: SupplyRule<WiringFinding> = {
  id: 'voltage-drop',
  of: 'load',
  needs: 'currents',
  judge: (context, subject, drops) => {
    const found = judge(context, subject, drops);
    if (!found) return NOTHING;
    return found.verdict === 'unknown' ? { ...NOTHING, open: found } : { findings: [found] };
  },
  gather: { order: (a, b) => byName(a.id, b.id), judge: (_, open) => gathered(open) },
};

/** One question for all loads whose wires have not been described. */
function gathered(open: readonly WiringFinding[]): readonly WiringFinding[] {
  if (open.length < 2) return open;
  return [
    finding(
      'voltage-drop',
      ['unsaid', ...open.flatMap(({ about }) => about)],
      'Volts that reach the loads',
      'unknown',
      `How many volts reach ${open.length} loads depends on lengths, areas or currents that have not been said.`,
      SOURCE,
      { needs: open.flatMap((each) => each.needs ?? []) },
    ),
  ];
}

/** What a device fed with d.c. for its electronics still works at. */
function leastAt({ wiring }: PowerContext, load: Load): number | undefined {
  const nature = wiring.terminals.get(load.from)?.nature;
  return nature?.kind === 'feed' && nature.role === 'logic' ? nature.least : undefined;
}

function judge(context: PowerContext, subject: string, drops: Drops): WiringFinding | undefined {
  const { flow } = context;
  const load = flow.load.get(subject);
  const way = context.ways.get(subject);
  const taken = flow.takes.get(subject);
  if (!load || !way || !taken?.fed || (taken.amps === 0 && taken.needs.length === 0)) return undefined;
  const supply = way.volts;
  const about = [load.id];
  const title = `Volts that reach ${load.name}`;
  const needs = new Set<string>(taken.needs);
  if (supply === undefined) needs.add(`${way.device}.volts`);
  for (const each of drops.needs(subject)) needs.add(each);
  const lost = drops.volts(subject);
  const figures = [
    figure('current of this load', taken.amps, 'A'),
    figure('volts lost on the way there and back', lost, 'V'),
    ...(supply === undefined ? [] : [figure('voltage of the supply', supply, 'V')]),
  ];
  const share = supply === undefined ? undefined : lost / supply;
  const least = leastAt(context, load);
  const arrives = supply === undefined ? undefined : supply - lost;
  if (least !== undefined && arrives !== undefined)
    figures.push(figure('volts that arrive', arrives, 'V'), figure('volts it needs at least', least, 'V'));
  // Fed with too little to begin with is another question, asked of the feed.
  if (least !== undefined && arrives !== undefined && supply! >= least && arrives < least)
    return finding(
      'voltage-drop',
      about,
      title,
      'fails',
      `${load.name} loses ${volts(lost)}${needs.size > 0 ? ' or more' : ''} of ${volts(supply!)} in the wires while they are hot; ${volts(arrives)} arrive, and it needs ${volts(least)}.`,
      SOURCE,
      {
        margin: arrives / least,
        figures,
        remedy: `Put spare cores in parallel with the two of its supply, or take a thicker or shorter wire ${drops.worst(subject)}.`,
      },
    );
  if (share !== undefined && share > ALLOWED)
    return finding(
      'voltage-drop',
      about,
      title,
      'fails',
      `${load.name} loses ${volts(lost)}${needs.size > 0 ? ' or more' : ''} of ${volts(supply!)} in the wires while they are hot (${percent(share)}); 5 % are allowed.`,
      SOURCE,
      {
        margin: ALLOWED / share,
        figures,
        remedy: `A thicker or shorter wire ${drops.worst(subject)} helps most.`,
      },
    );
  if (needs.size > 0 || share === undefined)
    return finding(
      'voltage-drop',
      about,
      title,
      'unknown',
      `How many volts reach ${load.name} depends on lengths, areas or currents that have not been said.`,
      SOURCE,
      { figures, needs: [...needs] },
    );
  const margin = share > 0 ? ALLOWED / share : undefined;
  return finding(
    'voltage-drop',
    about,
    title,
    margin === undefined ? 'fits' : byMargin(margin),
    `${load.name} takes ${amps(taken.amps)} and loses ${volts(lost)} of ${volts(supply!)} in the wires while they are hot (${percent(share)}); 5 % are allowed${least === undefined ? '' : `. ${volts(arrives!)} arrive, and it needs ${volts(least)}`}.`,
    SOURCE,
    { margin, figures },
  );
}
