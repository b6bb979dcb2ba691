/** The wiring looked through by everything that judges it, and what may be joined in it. */
export { type Fit, whatFits } from './fits.ts';
export { type Looked, lookThrough, WiringLook } from './look.ts';
export { photosOf } from './photos.ts';
