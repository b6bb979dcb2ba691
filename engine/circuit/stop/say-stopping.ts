/** How something stops, in words, and whether that will do. */
import { formatQuantity } from '../../quantity/index.ts';
import { type Verdict, worstVerdict } from '../../quantity/verdict.ts';
import { SAY_CATEGORY, type Stopping } from './stops.ts';

export const length = (metres: number): string =>
  Math.abs(metres) < 1
    ? formatQuantity(metres, 'mm', { digits: 3 })
    : formatQuantity(metres, 'm', { digits: 3 });
export const seconds = (time: number): string => formatQuantity(time, 's', { digits: 3 });
const speed = (each: number): string => formatQuantity(each, 'm/min', { digits: 3 });

/** A millimetre is what a tool can be forgiven. */
export const SMALL_DROP = 0.001;

/** 'X: stop category 0: …, stands after 0.52 s and 24.2 mm' */
export function sayStopping(stop: Stopping): string {
  const how = `${stop.motion}: ${SAY_CATEGORY[stop.category]}`;
  if (stop.category === 'none') return how;
  const friction =
    stop.load === 'friction' ? '; only friction holds its load then, which is not to be relied on' : '';
  return `${how}${sayRun(stop)}${friction}`;
}

function sayRun(stop: Stopping): string {
  const { time, distance, strikes, load, needs, drop, kind, category } = stop;
  if (load === 'drops')
    return `; then it drops, nothing holds it${
      strikes
        ? `: with no help from friction it runs into its hard stop after ${seconds(strikes.time)}, ${length(strikes.room)} on, at ${speed(strikes.speed)}`
        : needs.length > 0
          ? `; how fast is not known (${needs.join(', ')})`
          : ', until it lies at its lower end'
    }`;
  if (time === undefined || distance === undefined)
    return `; how long it takes is not known (${needs.join(', ')})`;
  const coasts = category === '0' ? ', it coasts' : '';
  if (strikes)
    return `${coasts}; it runs into its hard stop after ${seconds(strikes.time)}, ${length(strikes.room)} on, still at ${speed(strikes.speed)}`;
  if (!Number.isFinite(time)) return `${coasts}; it never stands: nothing brakes it`;
  const far = kind === 'spindle' ? formatQuantity(distance, 'rev', { digits: 3 }) : length(distance);
  const falls = drop !== undefined && drop > 0 ? `, and drops ${length(drop)} before the brake holds` : '';
  return `${coasts}; stands after ${seconds(time)} and ${far}${falls}`;
}

/** Whether something that stops like this stops well enough; what asks for it is judged elsewhere. */
export function stoppingVerdict({ time, strikes, load, drop }: Stopping): Verdict {
  const all: { verdict: Verdict }[] = [{ verdict: 'fits' }];
  if (strikes !== undefined || load === 'drops' || time === Number.POSITIVE_INFINITY)
    all.push({ verdict: 'fails' });
  if (time === undefined || load === 'unknown') all.push({ verdict: 'unknown' });
  if (load === 'friction' || (drop !== undefined && drop > SMALL_DROP)) all.push({ verdict: 'tight' });
  return worstVerdict(all)!;
}
