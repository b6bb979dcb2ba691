/** The shape of what a device takes from the mains, where both parts of it have been said. */
import type { Device } from '../wiring/types.ts';
import type { Shape } from './grid/channels.ts';

/** Nothing where either is missing: half of it tells nothing of how currents add. */
export function shapeOf(device: Device | undefined): { readonly shape?: Shape } {
  const { displacement, distortion } = device?.settings ?? {};
  return typeof displacement === 'number' &&
    displacement > 0 &&
    displacement <= 1 &&
    typeof distortion === 'number'
    ? { shape: { displacement, distortion: Math.max(0, distortion) } }
    : {};
}
