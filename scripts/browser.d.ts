/** Path of a Chromium; ends the program where there is none. */
export function browser(): string;
/** How it is started without a screen. */
export const ARGUMENTS: readonly string[];
