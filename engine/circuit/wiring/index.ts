/** What is connected to what: devices, their terminals, wires, nets. */
export type * from './types.ts';
