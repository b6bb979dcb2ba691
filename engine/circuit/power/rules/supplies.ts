/** What each source gives against what it can give: mains, secondaries, rectifiers, supplies. */
import { transformerRating } from '../../../handbook/transformer-rating.ts';
import { evaluate } from '../../../sheet/index.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import { FOR_GOOD } from '../bus-share.ts';
import type { PowerContext } from '../context.ts';
import { amps, byMargin, figure, finding, volts } from '../say.ts';
import type { Source } from '../sources.ts';
import { drivesOn } from '../stored.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

const SUM = `sum of the currents that hang on it, by Kirchhoff’s laws; ${FOR_GOOD}`;

/**
 * What a supply gives is added up with the wiring's own rules; here stand transformers, bridges, and the drives' bus where
 * its current has been worked out.
 */
export const suppliesRule: SupplyRule = {
  id: 'supply-load',
  of: 'source',
  needs: 'currents',
  judge: (context, subject) => {
    const source = context.flow.source.get(subject);
    return source &&
      (source.kind === 'secondary' || source.kind === 'rectifier' || feedsDrives(context, source))
      ? { findings: [judge(context, source)] }
      : NOTHING;
  },
};

/** Whether drives hang on this source, and what their axes take together has been worked out. */
const feedsDrives = (context: PowerContext, source: Source): boolean =>
  context.facts.drawn.busSteadyAmps !== undefined && !source.ac && drivesOn(context, source.id).length > 0;

function judge(context: PowerContext, source: Source): WiringFinding {
  const { amps: load, needs: waits } = context.flow.gives.get(source.id) ?? { amps: 0, needs: [] };
  const name = context.wiring.devices.get(source.device)?.name || source.device;
  const about = [source.id, source.device];
  const title = `Load of ${name}`;
  const figures = [
    figure('current it gives for good', load, 'A'),
    ...(source.volts === undefined ? [] : [figure('its voltage', source.volts, 'V')]),
  ];
  if (source.amps === undefined)
    return finding(
      'supply-load',
      about,
      title,
      'unknown',
      `${name} gives ${amps(load)}${waits.length > 0 ? ' or more' : ''}; what it can give has not been said.`,
      SUM,
      {
        figures,
        needs: [
          source.kind === 'secondary' ? `${source.device}.power` : `${source.device}.current`,
          ...waits,
        ],
        remedy: sizeWords(source, load),
      },
    );
  figures.push(figure('what it can give for good', source.amps, 'A'));
  const margin = load > 0 ? source.amps / load : undefined;
  if (margin !== undefined && margin < 1)
    return finding(
      'supply-load',
      about,
      title,
      'fails',
      `${name} has to give ${amps(load)}${waits.length > 0 ? ' or more' : ''} for good and can give ${amps(source.amps)}.`,
      SUM,
      { margin, figures, remedy: sizeWords(source, load) },
    );
  if (waits.length > 0)
    return finding(
      'supply-load',
      about,
      title,
      'unknown',
      `${name} gives ${amps(load)}, and what hangs on it besides has not been said; it can give ${amps(source.amps)}.`,
      SUM,
      { figures, needs: waits },
    );
  return finding(
    'supply-load',
    about,
    title,
    margin === undefined ? 'fits' : byMargin(margin),
    `${name} gives ${amps(load)} for good and can give ${amps(source.amps)}${source.volts === undefined ? '' : ` at ${volts(source.volts)}`}.`,
    SUM,
    { margin, figures },
  );
}

/** What to buy instead: amperes with a quarter in hand, or volt-amperes of a transformer. */
export function sizeWords(source: Source, load: number): string | undefined {
  if (load <= 0) return undefined;
  if (source.kind === 'secondary' && source.volts !== undefined) {
    // Currents on the secondary are effective already.
    const { VA } = evaluate(transformerRating, { Vsec: source.volts, I_dc: load / 1.8 });
    return VA.state === 'known' ? `A transformer of ${Math.ceil(VA.value / 10) * 10} VA or more.` : undefined;
  }
  return `One that gives ${amps(load * 1.25)} or more (a quarter in hand, habit).`;
}
