/** Lengths of threads and round things: pitch, lead, threads per inch, radius, diameter. */
import { formatNumber } from './format.ts';
import type { LengthOf, Wording } from './length-words.ts';
import type { Read } from './parts.ts';
import { readParts } from './parts.ts';
import type { Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import { unitOf } from './unit.ts';

const TPI = (unit: Unit): boolean => unit.symbol === 'tpi';
const isLength = (unit: Unit): boolean => {
  const d = unit.dimension;
  return d.m === 1 && d.kg === 0 && d.s === 0 && d.A === 0 && d.K === 0 && d.tally === 'none';
};

/** '5 TPI' in a field of length, or where nothing says otherwise, is the pitch. */
export function threadsPerInch(text: string, wanted: Unit | undefined): Result<Read> | undefined {
  if (!/tpi|thread/i.test(text) || (wanted && !isLength(wanted))) return undefined;
  const read = readParts(text, undefined);
  if (!read.ok) return read;
  const { value, half, chosen } = read.value;
  if (!TPI(chosen.unit)) return undefined;
  if (value <= 0)
    return refuse({ code: 'out-of-domain', message: 'Threads per inch are above zero, such as 5 TPI.' });
  const unit = wanted ?? unitOf('mm');
  const pitch = 1 / value;
  const note = `${formatNumber(value / chosen.unit.scale, 6)} threads per inch are a pitch of ${formatNumber(pitch * 1000, 6)} mm`;
  return ok({
    value: pitch,
    half: pitch * (half / value),
    chosen: { unit, factor: 1, shown: unit },
    notes: [...read.value.notes, note],
    form: read.value.form,
  });
}

/** Radius for diameter, pitch for lead, and the other way round. */
export function settleLength(
  read: Read,
  wording: Wording,
  of: LengthOf | undefined,
): Result<{ factor: number; note?: string }> {
  const { of: said, starts } = wording;
  if (said === undefined && starts === undefined) return ok({ factor: 1 });
  if (!isLength(read.chosen.shown))
    return refuse({
      code: 'wrong-dimension',
      message: `A ${said ?? 'thread with starts'} is a length, but the unit here is ${read.chosen.shown.symbol}. Write it like 20 mm.`,
    });
  const unit = read.chosen.shown;
  const show = (v: number): string => `${formatNumber(v / unit.scale, 6)} ${unit.symbol}`;
  const becomes = (factor: number, what: string): Result<{ factor: number; note: string }> =>
    ok({
      factor,
      note: `${said ?? 'pitch'} ${show(read.value)} is a ${what} of ${show(read.value * factor)}`,
    });
  if (said === 'radius' && of === 'diameter') return becomes(2, 'diameter');
  if (said === 'diameter' && of === 'radius') return becomes(0.5, 'radius');
  if (said === 'radius' && of === undefined)
    return ok({
      factor: 1,
      note: `${show(read.value)} was taken as it stands, as the radius; it was not doubled`,
    });
  if (said === 'diameter' && of === undefined)
    return ok({ factor: 1, note: `${show(read.value)} was taken as it stands, as the diameter` });
  const isLead = said === 'lead';
  if (starts !== undefined && said !== 'radius' && said !== 'diameter') {
    if (of === 'lead' && !isLead) return starts === 1 ? ok({ factor: 1 }) : becomes(starts, 'lead');
    if (of === 'pitch' && isLead) return starts === 1 ? ok({ factor: 1 }) : becomes(1 / starts, 'pitch');
    if (isLead)
      return ok({ factor: 1, note: `the pitch of ${starts} starts is ${show(read.value / starts)}` });
    return ok({
      factor: 1,
      note: `the value is the pitch; the lead of ${starts} starts is ${show(read.value * starts)}`,
    });
  }
  const wrong = of !== undefined && said !== undefined && said !== of;
  if (wrong && !(said === 'pitch' && of === 'lead') && !(said === 'lead' && of === 'pitch'))
    return refuse({
      code: 'wrong-dimension',
      message: `A ${said} was given where a ${of} is wanted. Write the ${of}, such as 20 mm.`,
    });
  if (wrong) return ok({ factor: 1, note: `${said} taken as the ${of}: that holds for one start` });
  return ok({ factor: 1 });
}
