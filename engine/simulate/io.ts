/**
 * What the parts of an axis hand one another at every look. Numbers travel in one typed array: handed over as arguments
 * they would each be put into an object of their own, which costs more than the work itself.
 */
export const T = 0;
/** The command and two derivatives, rad at the motor. */
export const REFERENCE = 1;
export const REFERENCE1 = 2;
export const REFERENCE2 = 3;
/** Where the position loop sees the axis, rad. */
export const SEEN = 4;
/** V that the drive can pass on. */
export const VOLTAGE = 5;
/** A that a cascade wants. */
export const WANTED = 6;
/** s from this look to the next. */
export const SPAN = 7;
/** J taken from the bus over it. */
export const TAKEN = 8;
/** m. */
export const COMMANDED = 9;
export const ACTUAL = 10;
export const FOLLOWING = 11;
/** rad/s and A. */
export const SPEED = 12;
export const AMPERES = 13;
/** V of the bus. */
export const BUS = 14;
export const IO_SIZE = 15;
