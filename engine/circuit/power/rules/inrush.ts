/** Empty capacitors switched on together, against each breaker and fuse before them. */

import { breaker as breakerSheet } from '../../../handbook/breaker.ts';
import { andList } from '../../../quantity/words.ts';
import { evaluate } from '../../../sheet/index.ts';
import { BREAKER_SOURCE, type BreakerCurve, INSTANT } from '../../../tables/breakers.ts';
import type { Protection, WiringFinding } from '../../wiring/types.ts';
import { CHARGING_SOURCE, type Charging, chargingOf } from '../charging.ts';
import type { PowerContext } from '../context.ts';
import { amps, byMargin, figure, finding } from '../say.ts';
import { byName } from '../sorted.ts';
import { mainsOf } from './mains.ts';
import type { SupplyRule } from './rule.ts';

const FUSE_SOURCE =
  'a fuse goes when the integral of the current squared reaches what its sheet gives; half of it each time ages it (from memory)';
/** In hand for a fuse that is to last. */
const FUSE_TIGHT = 2;
const SOFT_START =
  'Switch them on one after the other, or put a resistor in the mains for the first second (a soft start)';

/** One pole of something before the capacitors, with those behind it. */
interface Before {
  readonly about: readonly string[];
  readonly name: string;
  readonly nature: Pick<Protection, 'form' | 'amps' | 'curve'>;
  readonly needs: readonly string[];
  readonly charging: readonly Charging[];
}

export const chargingRule: SupplyRule = {
  id: 'inrush',
  of: 'whole',
  needs: 'nothing',
  judge: (context) => ({ findings: charging(context) }),
};

function charging(context: PowerContext): readonly WiringFinding[] {
  const all = chargingOf(context);
  if (all.length === 0) return [];
  const { guards, wiring } = context;
  const behind = new Map<string, Set<Charging>>();
  for (const each of all)
    for (const id of each.at)
      for (const pole of guards.terminals.get(id)?.passed ?? [])
        behind.set(pole, (behind.get(pole) ?? new Set()).add(each));
  const poles = [...behind]
    .sort(([a], [b]) => byName(a, b))
    .flatMap(([id, charging]): readonly Before[] => {
      const { device, nature } = wiring.terminals.get(id)!;
      if (nature.kind !== 'protection') return [];
      return [
        {
          about: [device, id],
          name: device,
          nature,
          needs: [`${device}.curve`, `${device}.amps`],
          charging: [...charging],
        },
      ];
    });
  // Of several poles the one with the most behind it counts; they trip together.
  const worst = new Map<string, Before>();
  for (const pole of [...poles, ...socketPoles(context, all)]) {
    const before = worst.get(pole.about[0]!);
    if (pole.charging.length > 0 && (!before || sumOf(pole.charging).likely > sumOf(before.charging).likely))
      worst.set(pole.about[0]!, pole);
  }
  return [...worst.values()].map((before) =>
    before.nature.form === 'fuse' ? fuse(context, before) : breaker(before),
  );
}

/** The breaker before the socket, once for each phase; nobody is asked about it for this alone. */
function socketPoles(context: PowerContext, all: readonly Charging[]): readonly Before[] {
  const { socketAmps, socketCurve } = context.settings;
  if (socketAmps === undefined || socketCurve === undefined || socketCurve === 'fuse') return [];
  const mains = mainsOf(context);
  return mains.flatMap(({ device, live }) =>
    live.map(
      (line): Before => ({
        about: [device, line],
        name: 'the breaker before the socket',
        nature: { form: 'breaker', amps: socketAmps, curve: socketCurve },
        needs: [],
        charging: all.filter(({ at }) => at.some((id) => context.phases(id).includes(line))),
      }),
    ),
  );
}

interface Sum {
  /** A: of what has been said, and with what is usual. */
  readonly sure: number;
  readonly likely: number;
  readonly open: boolean;
  readonly needs: readonly string[];
}

function sumOf(all: readonly Charging[]): Sum {
  const add = (of: (each: Charging) => boolean) =>
    all.reduce((sum, each) => sum + (of(each) ? (each.peak ?? 0) : 0), 0);
  return {
    sure: add(({ usual }) => !usual),
    likely: add(() => true),
    open: all.some(({ peak }) => peak === undefined),
    needs: all.flatMap(({ needs, usual, peak }) => (usual || peak === undefined ? needs : [])),
  };
}

const named = (all: readonly Charging[]): string =>
  andList(
    all.map(({ device, peak, usual }) =>
      peak === undefined ? `${device} (not known)` : `${device} ${amps(peak)}${usual ? ' (usual)' : ''}`,
    ),
  );

const opening = (all: readonly Charging[], { likely }: Sum): string =>
  `Switched on at the worst moment, empty capacitors take ${amps(likely)} for an instant: ${named(all)}`;

function breaker({ about, name, nature, needs, charging: all }: Before): WiringFinding {
  const sum = sumOf(all);
  const title = `Capacitors switched on behind ${name}`;
  const source = `${CHARGING_SOURCE}; ${BREAKER_SOURCE.source}`;
  const { amps: rated, curve } = nature;
  const peak = figure('peak at switching on', sum.likely, 'A');
  if (rated === undefined || !isCurve(curve))
    return finding(
      'inrush',
      about,
      title,
      'unknown',
      `${opening(all, sum)}. Whether ${name} lets that pass depends on its letter and its amperes, which have not been said.`,
      source,
      { figures: [peak], needs },
    );
  const against = (amperes: number): { readonly margin: number | undefined; readonly stays: number } => {
    const { m, I_stays } = evaluate(breakerSheet, {
      I_n: rated,
      m_never: INSTANT[curve][0],
      ...(amperes > 0 ? { I_inrush: amperes } : {}),
    });
    return {
      margin: m.state === 'known' ? m.value : undefined,
      stays: I_stays.state === 'known' ? I_stays.value : 0,
    };
  };
  const sure = against(sum.sure);
  const likely = against(sum.likely);
  const figures = [peak, figure('peak the breaker surely lets pass', sure.stays, 'A')];
  const sentence = `${opening(all, sum)}; ${name} (${curve}${rated}) surely lets ${amps(sure.stays)} pass.`;
  const remedy = `${SOFT_START}, or take a more patient breaker: whether the mains are strong enough for that is for an electrician to measure.`;
  if (sure.margin !== undefined && sure.margin < 1)
    return finding('inrush', about, title, 'fails', sentence, source, {
      margin: sure.margin,
      figures,
      remedy,
    });
  if (sum.open || (likely.margin !== undefined && likely.margin < 1))
    return finding(
      'inrush',
      about,
      title,
      'unknown',
      `${sentence} The manuals give the peak at switching on.`,
      source,
      { figures, needs: sum.needs, remedy },
    );
  return finding(
    'inrush',
    about,
    title,
    likely.margin === undefined ? 'fits' : byMargin(likely.margin),
    sentence,
    source,
    { margin: likely.margin, figures },
  );
}

const isCurve = (curve: Protection['curve']): curve is BreakerCurve =>
  curve === 'B' || curve === 'C' || curve === 'D';

function fuse({ wiring }: PowerContext, { about, name, nature, charging: all }: Before): WiringFinding {
  const sum = sumOf(all);
  const title = `Capacitors switched on behind fuse ${name}`;
  const source = `${CHARGING_SOURCE}; ${FUSE_SOURCE}`;
  const { melting } = wiring.devices.get(name)!.settings;
  // Currents add before they are squared: several at once are at most the square of the sum of the roots.
  const squared = (of: (each: Charging) => boolean): number =>
    all.reduce((total, each) => total + (of(each) ? Math.sqrt(each.squared ?? 0) : 0), 0) ** 2;
  const likely = squared(() => true);
  const peak = figure('peak at switching on', sum.likely, 'A');
  const gaps = all.flatMap((each) =>
    each.squared === undefined ? [...each.needsSquared, ...each.needs] : [],
  );
  const slow =
    nature.curve === 'slow'
      ? 'Ask for its sheet: the I²t at which it melts must be at least twice what the capacitors ask.'
      : 'Ask for a slow fuse (marked T), and its sheet: the I²t at which it melts must be at least twice what the capacitors ask.';
  if (typeof melting !== 'number')
    return finding(
      'inrush',
      about,
      title,
      'unknown',
      `${opening(all, sum)}. A fuse bears that for as long as its I²t (current squared times time) allows${gaps.length === 0 ? `; the capacitors ask ${squareSeconds(likely)}` : ''}. What it melts at has not been said.`,
      source,
      {
        figures: [peak, ...(gaps.length === 0 ? [figure('I²t of the charge', likely, 'A²·s')] : [])],
        needs: [`${name}.melting`, ...gaps],
        remedy: slow,
      },
    );
  const figures = [
    peak,
    figure('I²t of the charge', likely, 'A²·s'),
    figure('I²t at which it melts', melting, 'A²·s'),
  ];
  const sentence = `${opening(all, sum)}. That asks ${squareSeconds(likely)} (current squared times time) of ${name}, which melts at ${squareSeconds(melting)}.`;
  const remedy = `${SOFT_START}. ${slow}`;
  const sure = squared(({ usual }) => !usual);
  if (sure > melting)
    return finding('inrush', about, title, 'fails', sentence, source, {
      margin: melting / sure,
      figures,
      remedy,
    });
  if (gaps.length > 0 || likely > melting)
    return finding('inrush', about, title, 'unknown', sentence, source, {
      figures,
      needs: [...gaps, ...sum.needs],
      remedy,
    });
  const margin = likely > 0 ? melting / likely : undefined;
  return finding(
    'inrush',
    about,
    title,
    margin === undefined ? 'fits' : byMargin(margin, FUSE_TIGHT),
    sentence,
    source,
    { margin, figures, remedy: margin !== undefined && margin < FUSE_TIGHT ? remedy : undefined },
  );
}

const squareSeconds = (value: number): string => `${Number(value.toPrecision(3))} A²s`;
