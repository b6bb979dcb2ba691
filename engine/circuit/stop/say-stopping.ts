/** How something stops, in words. */
import { formatQuantity } from '../../quantity/index.ts';
import { SAY_CATEGORY, type Stopping } from './stops.ts';

export const length = (metres: number): string =>
  Math.abs(metres) < 1
    ? formatQuantity(metres, 'mm', { digits: 3 })
    : formatQuantity(metres, 'm', { digits: 3 });
export const seconds = (time: number): string => formatQuantity(time, 's', { digits: 3 });

/** 'X: stop category 0: …, stands after 0.52 s and 24.2 mm' */
export function sayStopping(stop: Stopping): string {
  const how = `${stop.motion}: ${SAY_CATEGORY[stop.category]}`;
  if (stop.category === 'none') return how;
  if (stop.time === undefined || stop.distance === undefined)
    return `${how}; how long it takes is not known (${stop.needs.join(', ')})`;
  if (!Number.isFinite(stop.time)) return `${how}; it never stands: nothing brakes it`;
  const far =
    stop.kind === 'spindle' ? formatQuantity(stop.distance, 'rev', { digits: 3 }) : length(stop.distance);
  const falls =
    stop.drop !== undefined && stop.drop > 0 ? `, and drops ${length(stop.drop)} before the brake holds` : '';
  return `${how}; stands after ${seconds(stop.time)} and ${far}${falls}`;
}
