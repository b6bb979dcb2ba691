/** The wiring looked through by everything that judges it. */
export { type Looked, lookThrough, WiringLook } from './look.ts';
export { photosOf } from './photos.ts';
export { sayNeeds } from './say-needs.ts';
