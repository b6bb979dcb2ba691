/** What is connected to what: devices, their terminals, wires, nets. */
export type { Draft, WiringKind } from './kind.ts';
export { WIRING_KINDS } from './kinds/index.ts';
export { NATURES, natureSettings } from './natures.ts';
export { readWiring } from './read.ts';
export type { Around } from './read-device.ts';
export { CABLE_SETTINGS, WIRE_SETTINGS } from './read-wire.ts';
export type { Setting, SettingSpec, SettingSpecs, Settings } from './setting.ts';
export { readSetting } from './setting.ts';
export type * from './types.ts';
