/** The wiring looked through by everything that judges it: what may be joined, the supply, and what is listed and drawn of it. */
export { type Looked, lookThrough, WiringLook } from './look.ts';
export { photosOf } from './photos.ts';
