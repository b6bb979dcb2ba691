/** A run, a band or gains as JSON and as tables of comma-separated values. All SI; angles of the motor in radians. */
import {
  type AxisModel,
  type Band,
  type Beside,
  coastIntoEnd,
  gainWords,
  type Hunting,
  limitOfGain,
  loopMargins,
  type Move,
  peakOf,
  type Run,
  type StartingGains,
} from '../../engine/simulate/index.ts';
import type { Subject } from '../simulate-subject.ts';

export function runJson(
  { name, model, words }: Subject,
  move: Move,
  run: Run,
  beside: (Beside & { readonly run: Run }) | null,
  notes: readonly string[],
  atRest: Hunting | null,
): object {
  return {
    format: 'fettle-simulation',
    version: 1,
    name,
    move,
    assumed: notes,
    until: run.until,
    stopped: run.stopped,
    summary: run.summary,
    second: run.second?.summary ?? null,
    trips: run.trips,
    circle: run.circle && { ...run.circle, byDegree: [...run.circle.byDegree] },
    supply: run.supply,
    events: run.events,
    atRest,
    endStop: coastIntoEnd(run, model, words.travel) ?? null,
    beside: beside && {
      name: beside.name,
      summary: beside.run.summary,
      trips: beside.run.trips,
      endStop: coastIntoEnd(beside.run, beside.model, words.travel) ?? null,
    },
  };
}

export function runCsv(run: Run): string {
  const columns: Column[] = [
    ['time s', run.time],
    ['commanded m', run.commanded],
    ['actual m', run.actual],
    ['following error m', run.following],
    ['motor speed rad/s', run.speed],
    ['current A', run.current],
    ['bus V', run.bus],
  ];
  if (run.second)
    columns.push(['second commanded m', run.second.commanded], ['second actual m', run.second.actual]);
  return table(columns);
}

export function bandJson(
  { name, spread }: Subject,
  move: Move,
  band: Band,
  asked: number,
  notes: readonly string[],
): object {
  return {
    format: 'fettle-band',
    version: 1,
    name,
    move,
    assumed: notes,
    asked,
    runs: band.runs,
    tripped: band.tripped,
    stalled: band.stalled,
    unstable: band.unstable,
    peakFollowing: { half: peakOf(band, 0.5), nineOfTen: peakOf(band, 0.9), worst: peakOf(band, 1) },
    peaks: [...band.peaks],
    spread,
    time: [...band.time],
    low: [...band.low],
    middle: [...band.middle],
    high: [...band.high],
  };
}

/** At each time the following error below which 5, 50 and 95 % of the draws lie. */
export const bandCsv = ({ time, low, middle, high }: Band): string =>
  table([
    ['time s', time],
    ['following error m 5 %', low],
    ['following error m 50 %', middle],
    ['following error m 95 %', high],
  ]);

export function gainsJson(
  name: string,
  model: AxisModel,
  started: StartingGains | null,
  notes: readonly string[],
): object {
  const start = { format: 'fettle-gains', version: 1, name, assumed: notes };
  if (started === null || model.control.kind === 'open') return { ...start, loop: null };
  const structure = model.control.kind === 'pid' ? 'single' : 'cascade';
  const own = started[structure] as unknown as Readonly<Record<string, number>>;
  const tried: AxisModel = { ...model, control: { ...model.control, ...own } };
  const { bode: _bode, ...margins } = loopMargins(tried)!;
  return {
    ...start,
    loop: structure,
    reasons: started.reasons[structure],
    margins,
    gains: Object.entries(gainWords(model).gains).map(([key, { unit }]) => ({
      name: key,
      value: own[key],
      unit,
      swingsFrom: limitOfGain(tried, key),
    })),
  };
}

type Column = readonly [name: string, values: Float64Array];

function table(columns: readonly Column[]): string {
  const lines = [columns.map(([name]) => name).join(',')];
  for (let row = 0; row < columns[0]![1].length; row++)
    lines.push(columns.map(([, values]) => String(values[row])).join(','));
  return `${lines.join('\n')}\n`;
}
