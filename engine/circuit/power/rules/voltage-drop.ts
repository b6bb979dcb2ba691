/** Volts lost from the supply to a load and back. */
import { conductorDrop } from '../../../handbook/conductor-drop.ts';
import { evaluate } from '../../../sheet/index.ts';
import { CLASS_5_SOURCE, COPPER, ohmsPerMetre } from '../../../tables/conductor-resistance.ts';
import type { Wire, WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import type { Load } from '../loads.ts';
import { amps, byMargin, figure, finding, percent, volts } from '../say.ts';

/** IEC 60204-1, 12.5 (recalled). */
const ALLOWED = 0.05;
const SOURCE = `IEC 60204-1:2016, 12.5: 5 % from the supply to the load (recalled, check the standard); ${CLASS_5_SOURCE.source}`;
const HOT = 343.15;

export function voltageDrop(context: PowerContext): readonly WiringFinding[] {
  const made: WiringFinding[] = [];
  for (const load of context.flow.loads) {
    const found = judge(context, load);
    if (found) made.push(found);
  }
  return gathered(made);
}

/** One question for all loads whose wires have not been described. */
function gathered(made: readonly WiringFinding[]): readonly WiringFinding[] {
  const open = made.filter(({ verdict }) => verdict === 'unknown');
  if (open.length < 2) return made;
  const needs = open.flatMap((each) => each.needs ?? []);
  return [
    ...made.filter(({ verdict }) => verdict !== 'unknown'),
    finding(
      'voltage-drop',
      ['unsaid', ...open.flatMap(({ about }) => about)],
      'Volts that reach the loads',
      'unknown',
      `How many volts reach ${open.length} loads depends on lengths, areas or currents that have not been said.`,
      SOURCE,
      { needs },
    ),
  ];
}

function judge(context: PowerContext, load: Load): WiringFinding | undefined {
  const { guards, returns, wiring, flow } = context;
  const there = guards.terminals.get(load.from) ?? guards.terminals.get(load.to);
  const back = returns.terminals.get(load.to) ?? returns.terminals.get(load.from);
  const taken = flow.takes.get(load.id);
  if (!there || !taken?.fed || (taken.amps === 0 && taken.needs.length === 0)) return undefined;
  const way = [...new Set([...there.way, ...(back?.source === there.source ? back.way : [])])];
  if (way.length === 0) return undefined;
  const supply = there.source.volts;
  const about = [load.id];
  const title = `Volts that reach ${load.name}`;
  const needs = new Set<string>(taken.needs);
  if (supply === undefined) needs.add(`${there.source.device}.volts`);
  let lost = 0;
  let longest: { readonly wire: Wire; readonly dV: number } | undefined;
  for (const id of way) {
    const wire = wiring.wires.get(id)!;
    const current = context.currents.get(id)!;
    if (wire.length === undefined) needs.add(`${id}.length`);
    if (wire.section === undefined) needs.add(`${id}.section`);
    for (const each of current.needs) needs.add(each);
    if (wire.length === undefined || wire.section === undefined || current.amps === 0) continue;
    const mm2 = wire.section * 1e6;
    // The sheet reckons there and back; each wire stands for one way.
    const { dV } = evaluate(conductorDrop, {
      l: wire.length,
      A: wire.section,
      I: current.amps,
      t: HOT,
      extra: (ohmsPerMetre(mm2) * mm2 * 1e-6) / COPPER.resistivity,
    });
    if (dV.state !== 'known') continue;
    lost += dV.value / 2;
    if (!longest || dV.value > longest.dV) longest = { wire, dV: dV.value };
  }
  const figures = [
    figure('current of this load', taken.amps, 'A'),
    figure('volts lost on the way there and back', lost, 'V'),
    ...(supply === undefined ? [] : [figure('voltage of the supply', supply, 'V')]),
  ];
  const share = supply === undefined ? undefined : lost / supply;
  if (share !== undefined && share > ALLOWED)
    return finding(
      'voltage-drop',
      about,
      title,
      'fails',
      `${load.name} loses ${volts(lost)}${needs.size > 0 ? ' or more' : ''} of ${volts(supply!)} in the wires (${percent(share)}); 5 % are allowed.`,
      SOURCE,
      {
        margin: ALLOWED / share,
        figures,
        remedy: `A thicker or shorter wire ${longest!.wire.id} helps most.`,
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
    `${load.name} takes ${amps(taken.amps)} and loses ${volts(lost)} of ${volts(supply!)} in the wires (${percent(share)}); 5 % are allowed.`,
    SOURCE,
    { margin, figures },
  );
}
