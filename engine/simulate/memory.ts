/** What a sampled control remembers from run to run, by its place in `Controller.memory`. */

/** The speed loop's integrator (the single loop's own), and the speed that the position loop wants. */
export const INTEGRAL = 0;
export const WANTED_SPEED = 1;
/** Where the axis was seen and commanded at the last run. */
export const LAST_SEEN = 2;
export const LAST_COMMAND = 3;
/** Of the current loop: its integrator, and the command under way with a delay of one sample. */
export const CURRENT_INTEGRAL = 4;
export const UNDER_WAY = 5;
