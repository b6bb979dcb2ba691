/** What the socket must carry, what comes at switching on, and what the residual current device must see. */
import { breaker as breakerSheet } from '../../../handbook/breaker.ts';
import { inrush } from '../../../handbook/inrush.ts';
import { evaluate } from '../../../sheet/index.ts';
import { BREAKER_SOURCE, INSTANT } from '../../../tables/breakers.ts';
import {
  type Astray,
  LEAKAGE_SHARE,
  LEAKAGE_SHARE_SOURCE,
  RESIDUAL_SOURCE,
  SEES,
  TRIPS_FROM,
  typeFor,
} from '../../../tables/residual-types.ts';
import type { Protection, WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { countryOf } from '../countries/index.ts';
import { amps, byMargin, figure, finding, listed } from '../say.ts';
import type { Source } from '../sources.ts';
import { guardingPoles } from './protection.ts';

/** Of a stacked core at its worst, as a multiple of its rated peak; toroids more. */
const MAGNETISING = 15;

const mainsOf = ({ flow }: PowerContext): readonly Source[] =>
  flow.sources.filter(({ kind }) => kind === 'mains');

export function socket(context: PowerContext): readonly WiringFinding[] {
  return mainsOf(context).map((source) => {
    const given = context.flow.gives.get(source.id) ?? { amps: 0, needs: [] };
    const rated = source.amps ?? context.settings.socketAmps;
    const about = [source.device];
    const title = 'What the socket must carry';
    const why = 'sum of the loads on the heaviest phase, power factors added as if alike: on the safe side';
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
  });
}

/** Transformers that saturate in the first half cycle against the breakers before them. */
export function switchingOn(context: PowerContext): readonly WiringFinding[] {
  const { wiring, guards, settings } = context;
  const made: WiringFinding[] = [];
  const poles = new Map(guardingPoles(context).map(({ terminal }) => [terminal.id, terminal] as const));
  for (const terminal of wiring.terminals.values()) {
    const { nature } = terminal;
    if (
      nature.kind !== 'winding' ||
      nature.side !== 'primary' ||
      terminal.with === null ||
      terminal.id > terminal.with
    )
      continue;
    const guard = guards.terminals.get(terminal.id) ?? guards.terminals.get(terminal.with);
    if (!guard) continue;
    const about = [terminal.device];
    const title = `Switching on ${wiring.devices.get(terminal.device)?.name || terminal.device}`;
    const source = `magnetising inrush of ${MAGNETISING} times the rated peak (recalled; a toroid takes more, ask the maker); ${BREAKER_SOURCE.source}`;
    if (nature.power === undefined || nature.volts === undefined) {
      made.push(
        finding(
          'switching-on',
          about,
          title,
          'unknown',
          `Whether ${terminal.device} trips the breaker when it is switched on depends on its rating, which has not been said.`,
          source,
          { needs: [`${terminal.device}.power`, `${terminal.device}.primary`] },
        ),
      );
      continue;
    }
    const sheet = evaluate(inrush, { k_mag: MAGNETISING, S: nature.power, V_line: nature.volts });
    if (sheet.I_mag.state !== 'known') continue;
    const peak = sheet.I_mag.value;
    const curves = guard.passed.flatMap((id) => {
      const { form, curve, amps: rated } = poles.get(id)!.nature as Protection;
      return form === 'breaker' && rated !== undefined && (curve === 'B' || curve === 'C' || curve === 'D')
        ? [{ name: poles.get(id)!.device, curve, rated }]
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
      made.push(
        finding(
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
        ),
      );
      continue;
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
    made.push(
      finding(
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
      ),
    );
  }
  return made;
}

/** What a fault to earth behind each device on the mains can look like. */
export function astrayOf({
  wiring,
}: PowerContext): readonly { readonly device: string; readonly astray: Astray }[] {
  const made = new Map<string, { device: string; astray: Astray }>();
  for (const terminal of wiring.terminals.values()) {
    const { nature } = terminal;
    if (nature.kind !== 'mains' || nature.side !== 'takes') continue;
    const device = wiring.devices.get(terminal.device);
    if (!device || made.has(device.id)) continue;
    const poles = device.terminals.flatMap((id) => {
      const each = wiring.terminals.get(id)!.nature;
      return each.kind === 'mains' && each.side === 'takes' ? [each.pole] : [];
    });
    const inverter = device.kind === 'inverter' || device.kind === 'drive';
    // Between two phases the bridge never comes back to earth potential: smooth as from three.
    const astray: Astray = !inverter
      ? 'pulses'
      : poles.includes('N') && !poles.includes('L2')
        ? 'mixed'
        : 'smooth';
    made.set(device.id, { device: device.id, astray });
  }
  return [...made.values()];
}

export function residual(context: PowerContext): readonly WiringFinding[] {
  const sources = mainsOf(context);
  if (sources.length === 0) return [];
  return [residualType(context, sources[0]!), ...residualLeakage(context, sources[0]!)];
}

interface Fitted {
  readonly name: string;
  readonly type?: Protection['type'] | 'none';
  readonly amps?: number;
}

function fitted({ wiring, settings }: PowerContext): readonly Fitted[] {
  const own = new Map<string, Fitted>();
  for (const { device, nature } of wiring.terminals.values())
    if (nature.kind === 'protection' && nature.form === 'residual')
      own.set(device, {
        name: device,
        ...(nature.type ? { type: nature.type } : {}),
        ...(nature.residual ? { amps: nature.residual } : {}),
      });
  const before = settings.residualType;
  return [
    ...own.values(),
    ...(before === undefined
      ? []
      : [
          {
            name: 'the one before the socket',
            type: before,
            ...(settings.residualAmps === undefined ? {} : { amps: settings.residualAmps }),
          },
        ]),
  ];
}

function residualType(context: PowerContext, mains: Source): WiringFinding {
  const title = 'Type of the residual current device';
  const about = [mains.device];
  const astray = astrayOf(context);
  const order = ['AC', 'A', 'F', 'B'] as const;
  const worst = astray
    .map((each) => ({ ...each, type: typeFor(each.astray) }))
    .sort((a, b) => order.indexOf(b.type) - order.indexOf(a.type))[0];
  const need = worst?.type ?? 'A';
  const because = worst
    ? `${worst.device} ${worst.astray === 'smooth' ? 'can let smooth direct current stray to earth, which blinds types AC, A and F' : worst.astray === 'mixed' ? 'is an inverter on one phase, whose stray currents have many frequencies' : 'rectifies, so that stray currents come in pulses, which blind type AC'}`
    : 'a machine with rectifiers needs at least this';
  const devices = fitted(context);
  const source = RESIDUAL_SOURCE.source;
  const wrong = devices.filter(
    ({ type }) => type !== undefined && type !== 'none' && !SEES[type].includes(worst?.astray ?? 'pulses'),
  );
  if (wrong.length > 0)
    return finding(
      'residual-type',
      about,
      title,
      'fails',
      `${because[0]!.toUpperCase()}${because.slice(1)}: type ${need} is needed, and ${listed(wrong.map(({ name, type }) => `${name} is type ${type}`))}. It may fail to trip, for other machines behind it too.`,
      source,
      {
        remedy: `Type ${need}, chosen and fitted by a licensed electrician; the inverter’s manual has the last word.`,
      },
    );
  if (devices.length === 0 || devices.some(({ type }) => type === undefined))
    return finding(
      'residual-type',
      about,
      title,
      'unknown',
      `${because[0]!.toUpperCase()}${because.slice(1)}: a residual current device before it must be type ${need} at least. Which one is fitted has not been said.`,
      source,
      { needs: ['settings.residual-type'] },
    );
  if (devices.every(({ type }) => type === 'none')) {
    const country = countryOf(context.settings.country);
    return finding(
      'residual-type',
      about,
      title,
      'unknown',
      `There is no residual current device before the machine. ${country ? country.socket.says : 'Whether there must be one is a rule of your country, which Fettle does not know.'}`,
      country?.socket.source ?? 'local rules',
      { remedy: `Ask ${country?.ask ?? 'a licensed electrician'}; it would have to be type ${need}.` },
    );
  }
  return finding(
    'residual-type',
    about,
    title,
    'fits',
    `${because[0]!.toUpperCase()}${because.slice(1)}: type ${need} is enough, and that is there.`,
    source,
  );
}

function residualLeakage(context: PowerContext, mains: Source): readonly WiringFinding[] {
  const devices = fitted(context).filter(({ amps: rated }) => rated !== undefined);
  const { leakage } = context.settings;
  const filters = astrayOf(context).filter(({ astray }) => astray !== 'pulses');
  const about = [mains.device];
  const title = 'Leakage to earth';
  const source = `${RESIDUAL_SOURCE.source}; up to ${LEAKAGE_SHARE * 100} % of the difference: ${LEAKAGE_SHARE_SOURCE}`;
  if (leakage === undefined)
    return filters.length === 0 && devices.length === 0
      ? []
      : [
          finding(
            'leakage',
            about,
            title,
            'unknown',
            `Filters and drives leak some milliamperes each to earth all the time${filters.length > 0 ? ` (here ${listed(filters.map(({ device }) => device))})` : ''}; together they may trip a residual current device. Their manuals state it, or an electrician’s clamp shows it.`,
            source,
            { needs: ['settings.leakage'] },
          ),
        ];
  return devices.map(({ name, amps: rated }) => {
    const margin = leakage > 0 ? (rated! * TRIPS_FROM) / leakage : undefined;
    const share = leakage / rated!;
    const verdict = margin !== undefined && margin < 1 ? 'fails' : share > LEAKAGE_SHARE ? 'tight' : 'fits';
    return finding(
      'leakage',
      [...about, name],
      title,
      verdict,
      `${amps(leakage)} leak to earth all the time; ${name} trips at ${amps(rated!)} for certain, and may from ${amps(rated! * TRIPS_FROM)} on.`,
      source,
      {
        margin,
        figures: [figure('leakage', leakage, 'A'), figure('difference at which it trips', rated!, 'A')],
        remedy:
          verdict === 'fits'
            ? undefined
            : 'Filters and inverters made for low leakage, shorter motor cables, or a circuit of its own for the machine: ask an electrician, never remove the device.',
      },
    );
  });
}
