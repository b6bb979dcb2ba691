/** Heat in the cabinet, without and with a fan. */
import { cabinetHeat } from '../../../handbook/cabinet-heat.ts';
import { formatQuantity } from '../../../quantity/index.ts';
import { evaluate } from '../../../sheet/index.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { SWITCHED } from '../loads.ts';
import { byMargin, figure, finding } from '../say.ts';

const SOURCE =
  'VDE 0660-500 / IEC 60890 as quoted in an enclosure data sheet; 5.5 W/(m²·K) for painted steel, 3.5 for plastic (approximate)';
const THROUGH = { 'painted steel': 5.5, plastic: 3.5 } as const;
/** m³·K/(h·W) in SI, near sea level: catalogue figure, from memory. */
const AIR = 3.1 / 3600;

/** Two diodes of a bridge, for good on the way. */
const BRIDGE_VOLTS = 2.2;

/** What the supplies turn into heat, at the usual efficiency: a lower bound of the heat inside. */
export function heatKnown({ flow }: PowerContext): number {
  let watts = 0;
  for (const source of flow.sources)
    if (source.kind === 'supply' && source.volts !== undefined)
      watts +=
        (flow.gives.get(source.id)?.amps ?? 0) *
        (source.limits ? source.volts * (1 / SWITCHED.efficiency - 1) : BRIDGE_VOLTS);
  return watts;
}

export function cabinet(context: PowerContext): readonly WiringFinding[] {
  const { settings } = context;
  const { height, width, depth, material, stands, heat, fan, roomTemperature, limit } = settings;
  const asked = { height, width, depth, material, stands, heat, limit };
  // Nobody has begun to describe it: one question is enough.
  const settingOf: Readonly<Record<keyof typeof asked, string>> = {
    height: 'settings.cabinet-height',
    width: 'settings.cabinet-width',
    depth: 'settings.cabinet-depth',
    material: 'settings.cabinet-material',
    stands: 'settings.cabinet-stands',
    heat: 'settings.cabinet-heat',
    limit: 'settings.cabinet-limit',
  };
  const about = ['cabinet'];
  const title = 'Heat in the cabinet';
  const needs = (Object.keys(asked) as (keyof typeof asked)[])
    .filter((key) => asked[key] === undefined)
    .map((key) => settingOf[key]);
  if (roomTemperature === undefined) needs.push('settings.room-temperature');
  if (needs.length > 0) {
    const known = heatKnown(context);
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        'unknown',
        `How warm the cabinet gets depends on its size and on the heat of drives and supplies${known > 1 ? `; the supplies alone give off about ${Math.round(known)} W at the usual efficiency` : ''}.`,
        SOURCE,
        { needs },
      ),
    ];
  }
  const rise = limit! - roomTemperature!;
  if (rise <= 0)
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        'fails',
        'The room itself is as hot as the parts inside may get: no fan helps, only cooling.',
        SOURCE,
        { margin: undefined },
      ),
    ];
  const sheet = evaluate(cabinetHeat, {
    H: height!,
    W: width!,
    D: depth!,
    P: heat!,
    k: THROUGH[material!],
    dT_want: rise,
    k_air: AIR,
  });
  const side = stands === 'free on all sides' ? 'free' : 'wall';
  const value = (key: 'A' | 'dT' | 'Q' | 'V'): number => {
    const outcome = sheet[`${key}_${side}`];
    return outcome.state === 'known' ? outcome.value : 0;
  };
  const without = heat! > 0 ? rise / value('dT') : undefined;
  const figures = [
    figure('heat inside', heat!, 'W'),
    figure('surface that counts', value('A'), 'm²'),
    figure('rise of the air inside without a fan', value('dT'), 'K'),
    figure('rise that is allowed', rise, 'K'),
    figure('air a fan has to move', value('V'), 'm³/h'),
  ];
  if (without === undefined || without >= 1)
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        without === undefined ? 'fits' : byMargin(without),
        `Closed and without a fan the air inside gets ${kelvins(value('dT'))} warmer than the room; ${kelvins(rise)} are allowed.`,
        SOURCE,
        { margin: without, figures },
      ),
    ];
  const need = value('V');
  const remedy = `A fan that moves ${formatQuantity(need, 'm³/h', { digits: 2 })} through its filter: twice that as its free-air figure (habit). It must not draw in chips and coolant mist.`;
  if (fan === undefined || fan === 0)
    return [
      finding(
        'cabinet-heat',
        about,
        title,
        'fails',
        `Closed and without a fan the air inside gets ${kelvins(value('dT'))} warmer than the room; ${kelvins(rise)} are allowed.`,
        SOURCE,
        { margin: without, figures, remedy },
      ),
    ];
  const margin = fan / need;
  return [
    finding(
      'cabinet-heat',
      about,
      title,
      byMargin(margin),
      `The fan has to move ${formatQuantity(need, 'm³/h', { digits: 2 })} and moves ${formatQuantity(fan, 'm³/h', { digits: 2 })}.`,
      SOURCE,
      {
        margin,
        figures: [...figures, figure('air the fan moves', fan, 'm³/h')],
        remedy: margin < 1 ? remedy : undefined,
      },
    ),
  ];
}

const kelvins = (value: number): string => `${Math.round(value * 10) / 10} K`;
