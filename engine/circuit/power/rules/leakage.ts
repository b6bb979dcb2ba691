/** What leaks past a residual current device all the time, against what it bears. */
import {
  LEAKAGE_SHARE_SOURCE,
  RESIDUAL_SOURCE,
  type ResidualType,
  TRIPS_FROM,
} from '../../../tables/residual-types.ts';
import type { Verdict, WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { addUp, type Leak, leaksOf, namedLeaks, USUAL_SOURCE } from '../leakage.ts';
import { amps, figure, finding, percent } from '../say.ts';
import type { Source } from '../sources.ts';

/** A residual current device; `device` is null for the one before the socket. */
export interface Fitted {
  readonly device: string | null;
  readonly name: string;
  readonly type?: ResidualType | 'none';
  readonly amps?: number;
}

const TITLE = 'Leakage to earth';
const REMEDY =
  'Filters and inverters made for low leakage, shorter motor cables, or a circuit of its own for the machine: ask an electrician, never remove the device.';
const ASK = 'The manuals say it, or an electrician’s clamp shows it.';

export function residualLeakage(
  context: PowerContext,
  mains: Source,
  fitted: readonly Fitted[],
): readonly WiringFinding[] {
  const { leakage: typed, leakageShare } = context.settings;
  const rated = fitted.filter((each): each is Fitted & { amps: number } => each.amps !== undefined);
  if (typed !== undefined && rated.length === 0) return [];
  const leaks = typed === undefined ? leaksOf(context) : [];
  const source = `${RESIDUAL_SOURCE.source}; ${leakageShare === undefined ? '' : `up to ${percent(leakageShare)} of the difference: ${LEAKAGE_SHARE_SOURCE}`}${typed === undefined ? `; ${USUAL_SOURCE}` : ''}`;
  if (rated.length === 0)
    // Supplies alone leak too little to ask about a device that may not be there.
    return fitted.some(({ type }) => type === 'none') ||
      leaks.every(({ device }) => context.wiring.devices.get(device)?.kind === 'supply')
      ? []
      : [withoutDevice(mains, leaks, fitted, source)];
  return rated.map((each) =>
    typed === undefined
      ? fromLeaks(context, mains, each, leaks, source)
      : judged(mains, each, typed, verdictOf(typed, each.amps, leakageShare), '', source),
  );
}

/** Something filters the mains, and whether a device could trip for it has not been said. */
function withoutDevice(
  mains: Source,
  leaks: readonly Leak[],
  fitted: readonly Fitted[],
  source: string,
): WiringFinding {
  const sum = addUp(leaks);
  return finding(
    'leakage',
    [mains.device],
    TITLE,
    'unknown',
    `Filters and drives leak some milliamperes each to earth all the time: here about ${amps(sum.likely)} on the heaviest phase, from ${namedLeaks(sum.leaks)}. Together they may trip a residual current device; at which difference the one before the machine trips has not been said; it is printed on it.`,
    source,
    {
      figures: [figure('leakage on the heaviest phase', sum.likely, 'mA')],
      needs: [...(fitted.length === 0 ? ['settings.residual-type'] : []), 'settings.residual-amps'],
    },
  );
}

function fromLeaks(
  context: PowerContext,
  mains: Source,
  device: Fitted & { readonly amps: number },
  all: readonly Leak[],
  source: string,
): WiringFinding {
  const { leakageShare } = context.settings;
  const inside = (terminal: string): boolean =>
    device.device === null ||
    context.guards.terminals.get(terminal)?.residual.includes(device.device) === true;
  const sum = addUp(all.filter(({ at }) => at.some(inside)));
  const from = sum.leaks.length > 0 ? ` It comes from ${namedLeaks(sum.leaks)}.` : '';
  const sure = verdictOf(sum.sure, device.amps, leakageShare);
  if (sure === 'fails') return judged(mains, device, sum.sure, 'fails', from, source);
  const likely = verdictOf(sum.likely, device.amps, leakageShare);
  if (likely !== 'fails' && !sum.open && leakageShare !== undefined)
    return judged(mains, device, sum.likely, likely, from, source);
  return finding(
    'leakage',
    aboutOf(mains, device),
    TITLE,
    'unknown',
    `About ${amps(sum.likely)} leak to earth all the time on the heaviest phase; ${device.name} trips at ${amps(device.amps)} for certain, and may from ${amps(device.amps * TRIPS_FROM)} on.${from} ${likely === 'fails' ? 'That rests on what is usual: ' : ''}${ASK}`,
    source,
    {
      figures: figuresOf(sum.likely, device.amps),
      needs: leakageShare === undefined ? ['settings.leakage-share', ...sum.needs] : sum.needs,
      remedy: likely === 'fails' ? REMEDY : undefined,
    },
  );
}

const verdictOf = (leakage: number, rated: number, share: number | undefined): Verdict =>
  leakage > rated * TRIPS_FROM ? 'fails' : share !== undefined && leakage > rated * share ? 'tight' : 'fits';

const aboutOf = (mains: Source, { device, name }: Fitted): readonly string[] =>
  device === null ? [mains.device, name] : [device, mains.device];

const figuresOf = (leakage: number, rated: number) => [
  figure('leakage', leakage, 'mA'),
  figure('difference at which it trips', rated, 'mA'),
];

function judged(
  mains: Source,
  device: Fitted & { readonly amps: number },
  leakage: number,
  verdict: Verdict,
  from: string,
  source: string,
): WiringFinding {
  return finding(
    'leakage',
    aboutOf(mains, device),
    TITLE,
    verdict,
    `${amps(leakage)} leak to earth all the time; ${device.name} trips at ${amps(device.amps)} for certain, and may from ${amps(device.amps * TRIPS_FROM)} on.${from}`,
    source,
    {
      margin: leakage > 0 ? (device.amps * TRIPS_FROM) / leakage : undefined,
      figures: figuresOf(leakage, device.amps),
      remedy: verdict === 'fits' ? undefined : REMEDY,
    },
  );
}
