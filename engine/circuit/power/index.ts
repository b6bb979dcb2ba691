/** The supply: from the mains socket to every load. */
export type { Size } from './buying.ts';
export { type Changed, type Drawing, SupplyChecker } from './checker.ts';
export type { Capacity, PowerContext } from './context.ts';
export { COUNTRIES, type Country, countryOf } from './countries/index.ts';
export type { Current, Flow } from './flow.ts';
export type { Drawn } from './given.ts';
export { judgeSupply, type PowerAnswer } from './judge.ts';
export type { Load } from './loads.ts';
export { POWER_SETTINGS, type PowerSettings } from './settings.ts';
export type { Source } from './sources.ts';
