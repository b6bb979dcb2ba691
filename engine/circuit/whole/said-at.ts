/** What is stated where an answer would be written. */
import { own } from '../../quantity/own.ts';
import type { Wiring } from '../../refit/types.ts';
import type { AnswerPlace } from '../wiring/index.ts';

/** Whether the setting of a place is stated; never where the device or cable is not there, or the place is neither. */
export function isSaid(place: AnswerPlace, { devices, cables }: Wiring): boolean {
  const settings =
    place.of === 'device'
      ? own(devices, place.id)?.settings
      : place.of === 'cable'
        ? own(cables, place.id)?.settings
        : undefined;
  return settings !== undefined && own(settings, place.setting) !== undefined;
}
