/** What the socket must carry, and what comes at switching on. */
import { breaker as breakerSheet } from '../../../handbook/breaker.ts';
import { inrush } from '../../../handbook/inrush.ts';
import { evaluate } from '../../../sheet/index.ts';
import { BREAKER_SOURCE, INSTANT } from '../../../tables/breakers.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import { FOR_GOOD } from '../bus-share.ts';
import type { PowerContext } from '../context.ts';
import { amps, byMargin, figure, finding } from '../say.ts';
import type { Source } from '../sources.ts';
import { NOTHING, type SupplyRule } from './rule.ts';

/** Of a stacked core at its worst, as a multiple of its rated peak; toroids more. */
const MAGNETISING = 15;

export const mainsOf = ({ flow }: PowerContext): readonly Source[] =>
  flow.sources.filter(({ kind }) => kind === 'mains');

export const socketRule: SupplyRule = {
  id: 'socket',
  of: 'source',
  needs: 'currents',
  judge: (context, subject) => {
    const source = context.flow.source.get(subject);
    return source?.kind === 'mains' ? { findings: [socket(context, source)] } : NOTHING;
  },
};

function socket(context: PowerContext, source: Source): WiringFinding {
  const given = context.flow.gives.get(source.id) ?? { amps: 0, needs: [] };
  const rated = source.amps ?? context.settings.socketAmps;
  const about = [source.device];
  const title = 'What the socket must carry';
  const why = `sum of the loads on the heaviest phase: those whose power factor and harmonics have been said add as arrows (harmonics by their size), all others by their size, as if all peaked together: on the safe side; ${FOR_GOOD}`;
  const figures = [
    figure('current on the heaviest phase', given.amps, 'A'),
    ...(rated === undefined ? [] : [figure('fuse before it', rated, 'A')]),
  ];
  if (rated !== undefined && given.amps > rated)
    return finding(
      'socket',
      about,
      title,
      'fails',
      `The machine draws ${amps(given.amps)}${given.needs.length > 0 ? ' or more' : ''} with everything on; the fuse before the socket is ${amps(rated)}.`,
      why,
      {
        margin: rated / given.amps,
        figures,
        remedy: 'Spread the load over three phases, or have an electrician provide a larger socket.',
      },
    );
  if (rated === undefined || given.needs.length > 0)
    return finding(
      'socket',
      about,
      title,
      'unknown',
      `The machine draws ${amps(given.amps)}${given.needs.length > 0 ? ' or more' : ''} with everything on; ${rated === undefined ? 'the fuse before its socket has not been said' : 'some loads have not been said'}.`,
      why,
      {
        figures,
        needs: [...(rated === undefined ? ['settings.socket-amps'] : []), ...given.needs],
      },
    );
  const margin = given.amps > 0 ? rated / given.amps : undefined;
  return finding(
    'socket',
    about,
    title,
    margin === undefined ? 'fits' : byMargin(margin),
    `The machine draws ${amps(given.amps)} with everything on; the fuse before the socket is ${amps(rated)}.`,
    why,
    { margin, figures },
  );
}

/** Transformers that saturate in the first half cycle against the breakers before them. */
export const switchingOnRule: SupplyRule = {
  id: 'switching-on',
  of: 'primary',
  needs: 'nothing',
  judge: (context, subject) => {
    const found = switchingOn(context, subject);
    return found ? { findings: [found] } : NOTHING;
  },
};

function switchingOn(context: PowerContext, subject: string): WiringFinding | undefined {
  const { wiring, guards, settings } = context;
  const terminal = wiring.terminals.get(subject);
  if (!terminal) return undefined;
  const { nature } = terminal;
  if (
    nature.kind !== 'winding' ||
    nature.side !== 'primary' ||
    terminal.with === null ||
    terminal.id > terminal.with
  )
    return undefined;
  const guard = guards.terminals.get(terminal.id) ?? guards.terminals.get(terminal.with);
  if (!guard) return undefined;
  const about = [terminal.device];
  const title = `Switching on ${wiring.devices.get(terminal.device)?.name || terminal.device}`;
  const source = `magnetising inrush of ${MAGNETISING} times the rated peak (recalled; a toroid takes more, ask the maker); ${BREAKER_SOURCE.source}`;
  if (nature.power === undefined || nature.volts === undefined) {
    return finding(
      'switching-on',
      about,
      title,
      'unknown',
      `Whether ${terminal.device} trips the breaker when it is switched on depends on its rating, which has not been said.`,
      source,
      { needs: [`${terminal.device}.power`, `${terminal.device}.primary`] },
    );
  }
  const sheet = evaluate(inrush, { k_mag: MAGNETISING, S: nature.power, V_line: nature.volts });
  if (sheet.I_mag.state !== 'known') return undefined;
  const peak = sheet.I_mag.value;
  const curves = guard.passed.flatMap((id) => {
    const { nature: passed, device } = wiring.terminals.get(id)!;
    if (passed.kind !== 'protection') return [];
    const { form, curve, amps: rated } = passed;
    return form === 'breaker' && rated !== undefined && (curve === 'B' || curve === 'C' || curve === 'D')
      ? [{ name: device, curve, rated }]
      : [];
  });
  if (
    settings.socketAmps !== undefined &&
    settings.socketCurve !== undefined &&
    settings.socketCurve !== 'fuse'
  )
    curves.push({
      name: 'the breaker before the socket',
      curve: settings.socketCurve,
      rated: settings.socketAmps,
    });
  if (curves.length === 0) {
    return finding(
      'switching-on',
      about,
      title,
      'unknown',
      `Switched on at the wrong moment ${terminal.device} takes up to ${amps(peak)} for half a cycle. The breaker before it, its letter and its amperes, has not been said.`,
      source,
      {
        figures: [figure('peak at switching on', peak, 'A')],
        needs: ['settings.socket-curve', 'settings.socket-amps'],
      },
    );
  }
  const each = curves.map((one) => {
    const { m, I_stays } = evaluate(breakerSheet, {
      I_n: one.rated,
      m_never: INSTANT[one.curve][0],
      I_inrush: peak,
    });
    return {
      ...one,
      margin: m.state === 'known' ? m.value : 0,
      stays: I_stays.state === 'known' ? I_stays.value : 0,
    };
  });
  const worst = each.sort((a, b) => a.margin - b.margin)[0]!;
  return finding(
    'switching-on',
    about,
    title,
    byMargin(worst.margin),
    `Switched on at the wrong moment ${terminal.device} takes up to ${amps(peak)} for half a cycle; ${worst.name} (${worst.curve}${worst.rated}) surely lets ${amps(worst.stays)} pass.`,
    source,
    {
      margin: worst.margin,
      figures: [
        figure('peak at switching on', peak, 'A'),
        figure('peak the breaker surely lets pass', worst.stays, 'A'),
      ],
      remedy:
        worst.margin < 1
          ? 'A soft start (a resistor in the mains, bridged after a second), or a more patient breaker: whether the mains are strong enough for that is for an electrician to measure.'
          : undefined,
    },
  );
}
