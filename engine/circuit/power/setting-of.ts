/** The setting of a device in which something is to be said, by what its kind calls it. */
import type { Device } from '../wiring/types.ts';

/** 'T2.supply-current': the first of these names that the device has; the first of all where it has none. */
export function settingOf(
  wiring: { readonly devices: { readonly get: (id: string) => Device | undefined } },
  device: string,
  ...names: readonly [string, ...string[]]
): string {
  const settings = wiring.devices.get(device)?.settings ?? {};
  return `${device}.${names.find((name) => Object.hasOwn(settings, name)) ?? names[0]}`;
}
