/** What is connected to what: devices, their terminals, wires, nets. */
export { checkWiring, type Rejudged, WiringChecker } from './check/checker.ts';
export type { Rule } from './check/rule.ts';
export { type Fit, fitting } from './fitting.ts';
export type { Draft, WiringKind } from './kind.ts';
export { WIRING_KINDS } from './kinds/index.ts';
export { NATURES, natureSettings } from './natures.ts';
export {
  type AnswerPlace,
  type AskedAuxiliary,
  type AskedInput,
  type AskedOutput,
  PROPOSAL_SETTINGS,
  type Proposal,
  proposeWiring,
  type Question,
} from './propose/index.ts';
export { readWiring } from './read.ts';
export type { Around } from './read-device.ts';
export { CABLE_SETTINGS, WIRE_SETTINGS } from './read-wire.ts';
export { RULES } from './rules/index.ts';
export type { Setting, SettingSpec, SettingSpecs, Settings } from './setting.ts';
export { readSetting } from './setting.ts';
export type * from './types.ts';
