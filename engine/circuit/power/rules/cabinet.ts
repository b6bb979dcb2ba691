/** Heat in the cabinet, without and with a fan. */
import { cabinetHeat } from '../../../handbook/cabinet-heat.ts';
import { formatQuantity } from '../../../quantity/index.ts';
import { evaluate } from '../../../sheet/index.ts';
import type { Figure, WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { HEAT_SOURCE, type Heat, heatIn, inWatts, namedHeat } from '../heat.ts';
import { byMargin, figure, finding, TIGHT } from '../say.ts';
import { byName } from '../sorted.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

const SOURCE =
  'VDE 0660-500 / IEC 60890 as quoted in an enclosure data sheet; 5.5 W/(m²·K) for painted steel, 3.5 for plastic (approximate)';
const THROUGH = { 'painted steel': 5.5, plastic: 3.5 } as const;
/** m³·K/(h·W) in SI, near sea level: catalogue figure, from memory. */
const AIR = 3.1 / 3600;

/** A sum of usual losses is right within a third or so: less in hand than that is tight. */
const TIGHT_WHEN_USUAL = 1.3;

export const cabinetRule: SupplyRule<Heat> = {
  id: 'cabinet-heat',
  of: 'device',
  needs: 'nothing',
  judge: (context, subject) => {
    const heat = heatIn(context, subject);
    return heat ? { ...NOTHING, open: heat } : NOTHING;
  },
  gather: { order: (a, b) => b.watts - a.watts || byName(a.device, b.device), judge: cabinet },
};

function cabinet(context: PowerContext, all: readonly Heat[]): readonly WiringFinding[] {
  const { settings } = context;
  const { height, width, depth, material, stands, fan, roomTemperature, limit } = settings;
  const asked = { height, width, depth, material, stands, limit };
  // Nobody has begun to describe it: one question is enough.
  const settingOf: Readonly<Record<keyof typeof asked, string>> = {
    height: 'settings.cabinet-height',
    width: 'settings.cabinet-width',
    depth: 'settings.cabinet-depth',
    material: 'settings.cabinet-material',
    stands: 'settings.cabinet-stands',
    limit: 'settings.cabinet-limit',
  };
  const about = ['cabinet'];
  const title = 'Heat in the cabinet';
  const needs = (Object.keys(asked) as (keyof typeof asked)[])
    .filter((key) => asked[key] === undefined)
    .map((key) => settingOf[key]);
  if (roomTemperature === undefined) needs.push('settings.room-temperature');
  const heats = settings.heat === undefined ? all : [];
  const heat = settings.heat ?? heats.reduce((sum, { watts }) => sum + watts, 0);
  const gaps = [...new Set(heats.flatMap((each) => each.needs))];
  // Where no current could be worked out, so is no heat.
  if (settings.heat === undefined && context.flow.trouble) gaps.push('settings.cabinet-heat');
  const source = settings.heat === undefined ? `${SOURCE}; ${HEAT_SOURCE}` : SOURCE;
  const from =
    heat > 0 && settings.heat === undefined
      ? ` About ${inWatts(heat)}${gaps.length > 0 ? ' or more' : ''} of heat: ${namedHeat(heats)}.`
      : '';
  const contributors = contributorsOf(heats);
  if (needs.length > 0)
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        'unknown',
        `How warm the cabinet gets depends on its size and on the heat of drives and supplies.${from}`,
        source,
        { needs: [...needs, ...gaps], figures: contributors },
      ),
    ];
  const rise = limit! - roomTemperature!;
  if (rise <= 0)
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        'fails',
        'The room itself is as hot as the parts inside may get: no fan helps, only cooling.',
        source,
        { margin: undefined },
      ),
    ];
  const sheet = evaluate(cabinetHeat, {
    H: height!,
    W: width!,
    D: depth!,
    P: heat,
    k: THROUGH[material!],
    dT_want: rise,
    k_air: AIR,
  });
  const side = stands === 'free on all sides' ? 'free' : 'wall';
  const value = (key: 'A' | 'dT' | 'Q' | 'V'): number => {
    const outcome = sheet[`${key}_${side}`];
    return outcome.state === 'known' ? outcome.value : 0;
  };
  const without = heat > 0 ? rise / value('dT') : undefined;
  const figures = [
    figure('heat inside', heat, 'W'),
    figure('surface that counts', value('A'), 'm²'),
    figure('rise of the air inside without a fan', value('dT'), 'K'),
    figure('rise that is allowed', rise, 'K'),
    figure('air a fan has to move', value('V'), 'm³/h'),
    ...contributors,
  ];
  const tight = settings.heat === undefined ? TIGHT_WHEN_USUAL : TIGHT;
  /** What would fit may not, with what has not been said besides. */
  const enough = (sentence: string, margin: number | undefined, more: readonly Figure[] = []) => [
    gaps.length > 0
      ? finding('cabinet-heat', about, title, 'unknown', `${sentence}${from}`, source, {
          figures: [...figures, ...more],
          needs: gaps,
        })
      : finding(
          'cabinet-heat',
          about,
          title,
          margin === undefined ? 'fits' : byMargin(margin, tight),
          `${sentence}${from}`,
          source,
          { margin, figures: [...figures, ...more] },
        ),
  ];
  const closed = `Closed and without a fan the air inside gets ${kelvins(value('dT'))}${gaps.length > 0 ? ' or more' : ''} warmer than the room; ${kelvins(rise)} are allowed.`;
  if (without === undefined || without >= 1) return enough(closed, without);
  const need = value('V');
  const remedy = `A fan that moves ${formatQuantity(need, 'm³/h', { digits: 2 })} through its filter: twice that as its free-air figure (habit). It must not draw in chips and coolant mist.`;
  const fails = (sentence: string, margin: number, more: readonly Figure[] = []) => [
    finding('cabinet-heat', about, title, 'fails', `${sentence}${from}`, source, {
      margin,
      figures: [...figures, ...more],
      remedy,
    }),
  ];
  if (fan === undefined || fan === 0) return fails(closed, without);
  const margin = fan / need;
  const moves = `The fan has to move ${formatQuantity(need, 'm³/h', { digits: 2 })}${gaps.length > 0 ? ' or more' : ''} and moves ${formatQuantity(fan, 'm³/h', { digits: 2 })}.`;
  const air = [figure('air the fan moves', fan, 'm³/h')];
  return margin < 1 ? fails(moves, margin, air) : enough(moves, margin, air);
}

/** Those listed one by one; of a large cabinet the rest are many and small. */
const LISTED = 20;

function contributorsOf(heats: readonly Heat[]): readonly Figure[] {
  const listed = heats.slice(0, LISTED).filter(({ watts }) => watts >= 0.05);
  const rest = heats.slice(LISTED).reduce((sum, { watts }) => sum + watts, 0);
  return [
    ...listed.map(({ device, watts }) => figure(`from ${device}`, watts, 'W')),
    ...(rest > 0 ? [figure('from all others together', rest, 'W')] : []),
  ];
}

const kelvins = (value: number): string => `${Math.round(value * 10) / 10} K`;
