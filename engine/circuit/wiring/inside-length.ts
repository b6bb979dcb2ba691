/** The length that is said once for all wires in the cabinet. */
import { own } from '../../quantity/own.ts';
import type { Wiring, WiringWire } from '../../refit/types.ts';
import { deviceOf } from './device-of.ts';
import { amount, mostly, readSettings } from './setting.ts';
import type { Wire } from './types.ts';

/** A setting of the wiring as a whole. */
export const CABINET_WIRE = 'cabinet-wire-length';

export const CABINET_WIRE_LENGTH = {
  ...mostly(amount('length of a wire in the cabinet, at most', 'm'), '0.2 m', '10 m'),
  help: 'Asked once for all wires between parts in the cabinet; one that is longer can have a length of its own.',
};

/** Whether a wire lies in no cable and both its ends are in the cabinet. */
export function isInside(wiring: Wiring, { from, to, cable }: WiringWire): boolean {
  if (cable !== null) return false;
  return [from, to].every((end) => own(wiring.devices, deviceOf(end))?.where === 'cabinet');
}

/** Metres; undefined where nobody has said it, or what was said cannot be read. */
export function insideLength(wiring: Wiring): number | undefined {
  const typed = own(wiring.settings, CABINET_WIRE);
  if (typed === undefined) return undefined;
  const read = readSettings({ [CABINET_WIRE]: CABINET_WIRE_LENGTH }, { [CABINET_WIRE]: typed }, '', [])[
    CABINET_WIRE
  ];
  return typeof read === 'number' ? read : undefined;
}

/** What to ask where the length of a wire is missing. */
export const lengthNeed = ({ id, isInside: inside }: Wire): string =>
  inside ? `settings.${CABINET_WIRE}` : `${id}.length`;
