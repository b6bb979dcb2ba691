/** How the kept matrices are laid out. */

/** Rows of a kept step: what motor speed, slide speed, wind-up, current, angle and charge become. */
export const ROWS = 6;
/** Its columns: motor speed, slide speed, wind-up, current, held command, 1, load. */
export const COLUMNS = 7;
/** What the forms of guards on torques are made of: the same columns. */
export const TORQUE_WIDTH = 7;
/** Motor speed, slide speed, wind-up, lack of current, current integrator, command under way, wanted current, 1. */
export const LIFT_WIDTH = 8;
