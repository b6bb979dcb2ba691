/** The wiring looked through by everything that judges it, and what somebody says of it. */
export { type AskedFact, type AskGroup, groupsOf, STAGES, type Stage } from './ask-groups.ts';
export { type Assumed, assumedOf } from './assumed.ts';
export { type Looked, lookThrough, type Resting, WiringLook } from './look.ts';
export { type OpenQuestion, type Settled, settledOf } from './open-questions.ts';
export { photosOf } from './photos.ts';
export { restingOf } from './resting-of.ts';
export { sayAbout } from './say-about.ts';
export { sayNeeds } from './say-needs.ts';
export { NATURE, sayPlace, settingAt, specAt, terminalSettings } from './setting-at.ts';
export { exampleOf, setBack, state, stateAll } from './state.ts';
export { type Taken, type TakenGroup, takenGroups } from './take-usual.ts';
export { type FieldLine, type TerminalSheet, terminalSheet } from './terminal-sheet.ts';
export { type UsualHere, usualHere } from './usual-here.ts';
export { type WireGroup, wireGroupsOf } from './wire-groups.ts';
