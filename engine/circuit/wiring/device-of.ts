/** The device of a terminal: 'K1' of 'K1.A1'. */
export const deviceOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));
