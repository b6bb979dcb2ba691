export { MOST_ELEMENTS, nodesOf } from './check.ts';
export { diodeOf } from './kinds.ts';
export { type Drawn, type Flowing, LinearNetwork } from './linear-network.ts';
export { DIODE_METER, deadElements, HAND_METER, type Meter, ohmsTo } from './ohms.ts';
export { operatingPoint, type Point, type Volts, wattsOf } from './operate.ts';
export { THERMAL_VOLTS } from './physics.ts';
export { piecesOf } from './pieces.ts';
export { type Run, type RunOptions, runCircuit } from './run.ts';
export type {
  Answer,
  Capacitor,
  Circuit,
  CurrentSource,
  Diode,
  Element,
  Inductor,
  Mirror,
  Piece,
  Resistor,
  Switch,
  Transistor,
  Trouble,
  VoltageSource,
  Waveform,
} from './types.ts';
