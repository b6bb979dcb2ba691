/** What stays charged on a d.c. bus after switching off, and for how long. */
import { discharge } from '../../../handbook/discharge.ts';
import { formatQuantity } from '../../../quantity/index.ts';
import { andList } from '../../../quantity/words.ts';
import { evaluate } from '../../../sheet/index.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { byMargin, figure, finding, volts } from '../say.ts';
import type { Source } from '../sources.ts';
import {
  bleederOf,
  EXEMPT_CHARGE,
  highestVolts,
  PIN_SECONDS,
  SAFE_SECONDS,
  SAFE_VOLTS,
  STORED_SOURCE,
  storedOn,
} from '../stored.ts';
import { plugsBetween } from './hot-plug.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

export const storedRule: SupplyRule = {
  id: 'stored-charge',
  of: 'source',
  needs: 'nothing',
  judge: (context, subject) => {
    const source = context.flow.source.get(subject);
    const found = source && !source.ac ? judge(context, source) : undefined;
    return found ? { findings: [found] } : NOTHING;
  },
};

const MEASURE = 'Measure between plus and minus before you touch, every time.';

function judge(context: PowerContext, source: Source): WiringFinding | undefined {
  const stored = storedOn(context, source);
  const device = context.wiring.devices.get(source.device);
  if (device?.kind !== 'bus' && stored.drives.length === 0) return undefined;
  const name = device?.name || source.device;
  const about = [source.id, source.device, ...stored.drives];
  const title = `Charge left in ${name} after switching off`;
  const high = highestVolts(context, source, stored.drives);
  const answer = (
    verdict: WiringFinding['verdict'],
    sentence: string,
    more: Parameters<typeof finding>[6] = {},
  ) => finding('stored-charge', about, title, verdict, sentence, STORED_SOURCE, more);
  if (high === undefined)
    return answer(
      'unknown',
      `How long ${name} stays charged depends on its volts, which have not been said.`,
      {
        needs: [`${source.device}.volts`],
      },
    );
  if (high <= SAFE_VOLTS)
    return answer(
      'fits',
      `${name} never gets above ${volts(high)}: up to ${SAFE_VOLTS} V nothing is asked for.`,
    );
  const with_ = stored.drives.length > 0 ? `, with the capacitors of ${andList(stored.drives)}` : '';
  if (stored.needs.length === 0 && stored.farads * high <= EXEMPT_CHARGE)
    return answer('fits', `${name}${with_} holds no more than 60 µC, which is exempt.`);
  const plugs = stored.drives.flatMap((drive) => plugsBetween(context, drive, source));
  const limit = plugs.length > 0 ? PIN_SECONDS : SAFE_SECONDS;
  const why =
    plugs.length > 0
      ? `the pins of ${andList([...new Set(plugs)])} can be touched, so ${limit} s is allowed`
      : `${limit} s are allowed without a warning plate`;
  const R = bleederOf(context, source);
  const sheet = evaluate(discharge, {
    V0: high,
    ...(stored.farads > 0 ? { C: stored.farads } : {}),
    ...(R === undefined ? {} : { R }),
  });
  const largest = stored.farads > 0 ? limit / (stored.farads * Math.log(high / SAFE_VOLTS)) : undefined;
  const bleeder =
    largest === undefined
      ? 'A bleeder resistor across it that is never switched off.'
      : `A bleeder of ${Math.floor(largest)} Ω or less across it, for at least ${Math.ceil((2 * high * high) / largest)} W, never switched off.`;
  const figures = [
    figure('highest voltage', high, 'V'),
    figure('capacitors together', stored.farads, 'µF'),
    ...(sheet.E_cap.state === 'known' ? [figure('energy they hold', sheet.E_cap.value, 'J')] : []),
  ];
  if (sheet.t_60.state !== 'known')
    return answer(
      'unknown',
      `${name}${with_} is charged to ${volts(high)}. How long that takes to fall to ${SAFE_VOLTS} V depends on ${R === undefined ? 'the bleeder across it' : 'its capacitors'}, of which nothing has been said. ${MEASURE}`,
      {
        figures,
        needs: [...stored.needs, ...(R === undefined ? [`${source.device}.bleeder`] : [])],
        remedy: bleeder,
      },
    );
  const time = sheet.t_60.value;
  const all = [...figures, figure(`time to ${SAFE_VOLTS} V`, time, 's'), figure('time allowed', limit, 's')];
  const takes = `${name}${with_} falls from ${volts(high)} to ${SAFE_VOLTS} V in ${seconds(time)}${stored.needs.length > 0 ? ' or more' : ''}; ${why}. ${MEASURE}`;
  const margin = limit / time;
  if (margin < 1)
    return answer('fails', takes, {
      margin,
      figures: all,
      remedy: `${bleeder} Or a warning plate on the door: wait ${Math.ceil(2 * time)} s, then measure.`,
    });
  if (stored.needs.length > 0) return answer('unknown', takes, { figures: all, needs: stored.needs });
  return answer(byMargin(margin), takes, { margin, figures: all });
}

const seconds = (value: number): string => formatQuantity(value, 's', { digits: 2 });
